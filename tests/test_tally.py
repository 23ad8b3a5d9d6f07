"""A class's answers: known mixtures are counted exactly, ties are listed, no pair is named from one number, and
nobody is named unless asked.
"""

from __future__ import annotations

import csv
import io
import json
import random
from collections import Counter
from collections.abc import Sequence
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from explain import Walkthrough, work
from explain.tally.api import asked_of, of_answers, of_workings
from explain.document.passage import Plot, Table
from explain.tally.cells import Cell, cell, unit_of_header
from explain.tally.chance import covered
from explain.tally.entry import Entry
from explain.tally.from_marking import entry_of
from explain.tally.explanation import Matcher
from explain.marking.marks.scheme import scheme_of
from explain.tally.page import Sheetful, chart, page, summary
from explain.tally.answer_table import Row, read_sheet
from explain.table import safe
from explain.tally.rows import csv_rows, json_text
from explain.tally.first_step import Steps
from explain.write.text.pages import text
from markings import ALL_RIGHT, ARM_LEFT_OUT

TESTS = Path(__file__).parent
TIN = TESTS.parent / "samples" / "02-treacle-tin-again.toml"
# The statement of the sample, by hand: tin 2.5 kg at 31 cm, arm 1.8 kg at 16.5 cm, flexors at 4.4 cm, forearm and hand
# 38 cm long.
W, A = 2.5 * 9.81, 1.8 * 9.81
F = (W * 31 + A * 16.5) / 4.4
R = F - W - A
NO_ARM = W * 31 / 4.4
AT_TIP = (W * 31 + A * 38) / 4.4
IN_KG = (2.5 * 31 + 1.8 * 16.5) / 4.4


@cache
def worked(path: Path) -> Walkthrough:
    return work(path)


@cache
def matcher() -> Matcher:
    walkthrough = worked(TIN)
    return Matcher(walkthrough.marker.account, walkthrough.marker.rules, asked_of(walkthrough))


def tallied(
    tmp: Path,
    rows: Sequence[str],
    head: str = "student,elbow flexors,reaction",
    names: bool = False,
    problem: Path = TIN,
    attempt: str = "last",
) -> Sheetful:
    table = tmp / "answers.csv"
    table.write_text("\n".join((head, *rows)), encoding="utf-8")
    walkthrough = worked(problem)
    return of_answers(walkthrough, read_sheet(table, asked_of(walkthrough)), names=names, attempt=attempt)


def table_of(data: bytes) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(data.decode("utf-8-sig"))))


def entry(tmp: Path, row: str) -> Entry:
    return tallied(tmp, [row]).tally.entries[0]


def ways(found: Entry) -> list[tuple[str, ...]]:
    return [way for wrong in found.wrongs for way in wrong.ways]


@pytest.mark.parametrize(
    "name", ["02-treacle-tin-again", "09-fish-crate", "12-one-leg-on-the-gangway", "10-regatta-flag"]
)
def test_every_slip_by_which_the_judge_of_workings_explains_an_answer_is_looked_for(name: str) -> None:
    walkthrough = worked(TIN.parent / f"{name}.toml")
    marker, asked = walkthrough.marker, asked_of(walkthrough)
    single = Matcher(marker.account, marker.rules, asked).single
    missing = []
    for slip in marker.known.slips:
        for place, each in enumerate(asked):
            value = float(slip.rows[each.key][0]) * each.factor if each.key in slip.rows else each.value
            near = abs(value) * 1e-6
            if abs(value - each.value) > 0.005 * abs(each.value) and not single.near(
                [(place, (abs(value) - near, abs(value) + near))]
            ):
                missing.append((slip.name, each.name))
    assert missing == [] and len(marker.known.slips) > 50


class TestRight:
    @pytest.mark.parametrize(
        "row",
        [
            "Leo,239,197",
            "Leo,239.0 N,196.8 N down",
            "Leo,240,197",
            'Leo,"239,0","196,8"',
            "Leo,0.239 kN,197",
            "Leo,≈ 239 N,",
        ],
    )
    def test_a_right_answer_is_right_however_it_is_written(self, row: str, tmp_path: Path) -> None:
        assert (entry(tmp_path, row).right, entry(tmp_path, row).wrongs) == (True, ())

    @pytest.mark.parametrize(
        ("cell_", "right"),
        [("120", True), ("1.2e2", True), ("0.12 kN", True), ("125", True), ("124.6", True), ("124", True)]
        + [("140", False), ("110", False), ("100", False), ("1e2", False), ("120.0", False), ("0.120 kN", False)],
    )
    def test_a_right_answer_is_right_in_any_rounding_to_two_figures_or_more(self, cell_: str, right: bool) -> None:
        """124.6 N to two figures is 120 N, written in any way in which the last nought need not be a figure."""
        marker, (flexors, *_) = worked(TIN).marker, asked_of(worked(TIN))
        scaled = flexors._replace(factor=flexors.factor * 124.6 / flexors.value, value=124.6)
        row = Row(1, "x", {"elbow flexors": cell(cell_)}, {"elbow flexors": cell_})
        assert right == Matcher(marker.account, marker.rules, [scaled]).entry(row, {}, frozenset()).right

    @pytest.mark.parametrize("g", [9.8, 9.80665, 10.0])
    def test_another_g_is_right_and_says_so(self, g: float, tmp_path: Path) -> None:
        found = entry(tmp_path, f"Leo,{F * g / 9.81:.2f},{R * g / 9.81:.2f}")
        assert (True, g == 10.0) == (found.right, found.said[0].note == "with g = 10 m/s²")

    def test_pounds_where_newtons_are_asked_are_converted(self, tmp_path: Path) -> None:
        assert entry(tmp_path, f"Leo,{F / 4.4482216:.2f} lb,").right  # 1 lbf = 4.4482216 N: NIST SP 811, appendix B.8

    def test_a_published_answer_is_right(self, tmp_path: Path) -> None:
        """OpenStax, College Physics, example 9.4: the biceps pulls with 470 N (its figures: 38 cm, 16 cm, 4.0 cm,
        4.0 kg, 2.50 kg).
        """
        problem = TESTS / "published" / "CP-EX9.4.toml"
        name = asked_of(worked(problem))[0].name
        assert tallied(tmp_path, ["470", "4700"], head=name, problem=problem).tally.right == 1

    @pytest.mark.parametrize(
        "name",
        [
            "03-tiller",
            "05-crab-pot",
            "10-regatta-flag",
            "12-one-leg-on-the-gangway",
            "14-sea-boot",
            "18-toffee",
            "19-hazelnut",
            "22-crate-at-the-mark",
            "25-lantern",
            "28-tray-of-loaves",
            "30-brass-band",
            "32-painters-plank",
            "35-measuring-chair",
        ],
    )
    def test_what_the_walkthrough_says_is_right_in_every_kind_of_problem(self, name: str, tmp_path: Path) -> None:
        """The printed answers of the certified walkthrough, each in the column of its name."""
        problem = TIN.parent / f"{name}.toml"
        answers = {each.name: worked(problem).answers[each.name].shown for each in asked_of(worked(problem))}
        assert (
            answers
            and tallied(tmp_path, [",".join(answers.values())], head=",".join(answers), problem=problem).tally.right
            == 1
        )


class TestOneSlip:
    @pytest.mark.parametrize(
        ("row", "slip"),
        [
            (f"x,{IN_KG:.1f},{IN_KG - 4.3:.1f}", "mass-for-weight"),
            (f"x,{AT_TIP:.1f},{AT_TIP - W - A:.1f}", "segment-at-tip"),
            (f"x,{F:.1f},{W + A:.1f}", "reaction-omits-muscle"),
            (f"x,{F:.0f},{F:.0f}", "reaction-equals-muscle"),
            ("x,293,", "digit-transposed"),
        ],
    )
    def test_a_slip_that_nothing_else_explains_is_named(self, row: str, slip: str, tmp_path: Path) -> None:
        assert [(slip,)] == ways(entry(tmp_path, row))

    @pytest.mark.parametrize(
        ("cell_", "slip"),
        [
            (f"{F:.0f} kg", "kilogram-answer"),
            (f"{IN_KG:.1f} kg", "kilogram-answer"),
            (f"{F:.0f} cm", "unit-label-wrong"),
            (f"{F * 4.4:.0f}", "stopped-at-moment"),
            (f"-{F:.0f}", "negative-muscle"),
            (f"{F * 10:.0f}", "decimal-shift"),
            (f"{F / 4.4482216:.2f}", "unit-missing"),
            (f"{F * 0.98:.1f}", "rounded-too-early"),
        ],
    )
    def test_slips_of_the_last_moment_are_among_the_explanations(self, cell_: str, slip: str, tmp_path: Path) -> None:
        assert (slip,) in ways(entry(tmp_path, f"x,{cell_},"))

    def test_what_follows_from_the_students_own_number_is_no_new_slip(self, tmp_path: Path) -> None:
        found = entry(tmp_path, f"x,{NO_ARM:.1f},{NO_ARM - W - A:.1f}")
        assert (["wrong", "carried"], 1) == ([each.verdict for each in found.said], len(found.wrongs))
        assert ("segment-left-out",) in ways(found)

    def test_two_answers_narrow_each_other_down(self, tmp_path: Path) -> None:
        alone, both = entry(tmp_path, f"x,{NO_ARM:.1f},"), entry(tmp_path, f"x,{NO_ARM:.1f},{NO_ARM - W:.1f}")
        assert set(ways(both)) < set(ways(alone)) and ("segment-left-out",) in ways(both)


class TestSeveral:
    def test_every_single_slip_within_half_a_per_cent_is_listed(self, tmp_path: Path) -> None:
        near = {
            cause.slips
            for each in matcher().single.worlds
            for cause in each.causes
            if abs(abs(each.numbers[0] or 0.0) - NO_ARM) <= 0.005 * NO_ARM
        }
        assert len(near) > 1 and near <= set(ways(entry(tmp_path, f"x,{NO_ARM:.2f},")))

    def test_no_pair_is_named_from_one_number(self) -> None:
        """Every value that a pair leads to, as one answer alone."""
        draw, made = random.Random(7), matcher()
        for each in draw.sample(made.pair.worlds, 300):
            number = each.numbers[0] or 0.0
            if 0.01 < number < 1e5:
                found = made.entry(_row({"elbow flexors": f"{number:.4g}"}), {}, frozenset())
                assert [way for way in ways(found) if len(way) > 1] == []

    def test_a_pair_is_counted_where_one_number_is_left_unexplained(self, tmp_path: Path) -> None:
        wrong = entry(tmp_path, f"x,555,{555 - W - A:.1f}").wrongs[0]
        assert ((), True) == (wrong.causes, wrong.pairs > 0)

    def test_two_independent_numbers_may_name_a_pair(self, tmp_path: Path) -> None:
        assert ("segment-at-tip", "reaction-omits-muscle") in ways(entry(tmp_path, f"x,{AT_TIP:.1f},{W + A:.1f}"))

    def test_what_fits_nothing_is_told_as_such(self, tmp_path: Path) -> None:
        found = tallied(tmp_path, ["a,987654,", "b,987654,", "c,239,"])
        assert [(2, ())] == [(each.students, each.wrong.causes) for each in found.tally.unexplained]

    def test_the_tables_find_what_a_search_of_everything_finds(self) -> None:
        """Against numpy: every world within a window, for random windows."""
        draw, table = random.Random(11), matcher().single
        sizes = np.array([abs(each.numbers[0] or 0.0) for each in table.worlds])
        for _ in range(200):
            middle = draw.choice(sizes) * draw.uniform(0.98, 1.02)
            expected = {
                id(table.worlds[place])
                for place in np.flatnonzero((sizes >= middle * 0.995) & (sizes <= middle * 1.005))
            }
            assert expected == {id(each) for each in table.near([(0, (middle * 0.995, middle * 1.005))])}

    def test_the_share_that_chance_fits_is_that_of_random_numbers(self) -> None:
        """Against numpy: numbers drawn evenly in ratio; three thousand draws leave an error of about one in a
        hundred.
        """
        sizes, draws = np.array(matcher().single.sizes(0)), F * 10 ** np.random.default_rng(5).uniform(-1, 1, 3000)
        hit = np.mean([np.any(np.abs(x - sizes) <= 0.005 * sizes) for x in draws])
        assert abs(hit - covered(matcher().single.sizes(0), F)) < 0.025


class TestCounting:
    ROWS = (
        *(f"right{n},239,197" for n in range(5)),
        *(f"tip{n},{AT_TIP:.1f},{AT_TIP - W - A:.1f}" for n in range(4)),
        *(f"kg{n},{IN_KG:.1f},{IN_KG - 4.3:.1f}" for n in range(3)),
        *(f"joint{n},239,{W + A:.1f}" for n in range(2)),
        "odd,987654,",
        "words,many,",
    )

    def test_a_known_mixture_is_counted_exactly(self, tmp_path: Path) -> None:
        tally = tallied(tmp_path, self.ROWS).tally
        counted = {each.sort.slip: (each.alone, each.among) for each in tally.slips}
        assert {"segment-at-tip": (4, 0), "mass-for-weight": (3, 0), "reaction-omits-muscle": (2, 0)} == counted
        no_number = sum(said.verdict == "no number" for each in tally.entries for said in each.said)
        assert (16, 5, 1, 1) == (len(tally.entries), tally.right, len(tally.unexplained), no_number)

    def test_three_students_make_a_lesson_and_two_do_not(self, tmp_path: Path) -> None:
        found = tallied(tmp_path, self.ROWS)
        assert [("distances", 4.0), ("weight and mass", 3.0)] == [
            (each.family, each.students) for each in found.lessons
        ]
        assert "Not enough evidence" in text(page(found), 100)

    @pytest.mark.parametrize(("attempt", "line"), [("first", 2), ("last", 5), ("best", 4)])
    def test_a_student_counts_once_by_one_attempt(self, attempt: str, line: int, tmp_path: Path) -> None:
        rows = [f"Leo,{AT_TIP:.1f},197", "Mo,239,197", "leo ,239,197", "LEO,239,", ",1,1", ",2,2"]
        found = tallied(tmp_path, rows, attempt=attempt)
        assert [line, 3, 6, 7] == [
            each.place for each in sorted(found.tally.entries, key=lambda one: one.place != line)
        ]
        assert {2, 4, 5} - {line} == {each.place for each in found.tally.further}
        said = f"1 student has more than one attempt, 3 in all: of each student the {attempt} counts."
        assert said in found.tally.remarks and said in text(page(found), 200)
        assert ({"no": 2, "yes": 4}, 4) == (
            dict(Counter(each["counted"] for each in table_of(csv_rows(found)))),
            json.loads(json_text(found))["students"],
        )

    def test_blank_cells_are_counted_and_shown_and_a_student_who_gives_nothing_is_not_right(
        self, tmp_path: Path
    ) -> None:
        found = tallied(tmp_path, ["Leo,239,197", "Mo,239,", "Jo,,", "Bo,lots,197"])
        assert ("4 students, 5 answers: 4 right, 1 not, and 3 cells left blank.", 1) == (
            summary(found.tally),
            found.tally.right,
        )
        assert ["Right", "Follow from a wrong one", "Wrong", "No number", "Blank"] == [
            cell[0].text for cell in next(each for each in page(found).passages if isinstance(each, Table)).header[2:]
        ]
        assert ["right", "blank", "blank", "no number, no number"] == [
            each["elbow flexors verdict"] if place != 1 else each["reaction verdict"]
            for place, each in enumerate(table_of(csv_rows(found)))
        ]
        assert not tallied(tmp_path, ["Leo,239,197", "Mo,239,"]).tally.needs_a_person

    def test_students_of_several_explanations_are_shared_out(self, tmp_path: Path) -> None:
        tally = tallied(tmp_path, [f"s{n},{NO_ARM:.1f}," for n in range(4)]).tally
        assert sum(tally.weights.values()) == pytest.approx(4.0)
        assert {0} == {each.alone for each in tally.slips}

    def test_where_a_slip_first_shows_is_a_step_of_the_walkthrough(self) -> None:
        steps = Steps(worked(TIN).outcome)
        assert ("step 1, Weights", "step 3, The moments", "step 4, The joint force") == tuple(
            steps.of(key) for key in ("tin.weight", "total", "reaction.up")
        )
        assert "3 The moments" in worked(TIN).text() and "4 The joint" in worked(TIN).text()

    def test_lines_count_once_a_student_and_what_is_carried_not_at_all(self) -> None:
        scheme = scheme_of(worked(TIN).outcome)
        entries = [
            entry_of(1, "leo", ALL_RIGHT, scheme),
            entry_of(2, "mo", ARM_LEFT_OUT, scheme),
            entry_of(3, "jo", ARM_LEFT_OUT, scheme),
        ]
        tally = of_workings(worked(TIN), entries).tally
        assert (1, [2, 2], [2, 0]) == (
            tally.right,
            [each.alone for each in tally.slips],
            sorted((each.first for each in tally.slips), reverse=True),
        )


class TestWhatComesOut:
    NAMES = ("Saoirse", "O'Brien")

    @pytest.mark.parametrize("names", [False, True])
    def test_names_stand_in_nothing_unless_asked(self, names: bool, tmp_path: Path) -> None:
        found = tallied(tmp_path, [f"Saoirse O'Brien,{NO_ARM:.1f},", "O'Brien,ask Saoirse,"], names=names)
        for written in (text(page(found), 100), json_text(found), csv_rows(found).decode("utf-8-sig")):
            assert names == any(each in written for each in self.NAMES)

    def test_names_are_taken_out_of_lines_that_are_quoted(self) -> None:
        of = of_workings(worked(TIN), [entry_of(1, "Saoirse", ARM_LEFT_OUT, scheme_of(worked(TIN).outcome))])
        assert "…: F = 3" == of.typed("Saoirse: F = 3")

    @pytest.mark.parametrize(
        "name", ["=1+1", "+1+1", "-1+1", "@SUM(A1)", "\t=1", " =1", "\r=1", "|calc", '=HYPERLINK("x")', "＝1+1"]
    )
    def test_a_formula_is_neutralised_in_the_table(self, name: str, tmp_path: Path) -> None:
        assert safe(name).startswith("'")
        found = tallied(tmp_path, [f'"{name.replace(chr(34), chr(34) * 2)}",239,'], names=True)
        rows = list(csv.reader(io.StringIO(csv_rows(found).decode("utf-8-sig"))))
        assert [] == [each for row in rows for each in row if each[:1] in tuple("=+-@\t\r|＝")]

    def test_a_negative_number_stays_a_number(self) -> None:
        assert ("-196.8", "'-196.8 N") == (safe("-196.8"), safe("-196.8 N"))

    def test_there_is_a_row_for_each_student(self, tmp_path: Path) -> None:
        rows = list(csv.DictReader(io.StringIO(csv_rows(tallied(tmp_path, TestCounting.ROWS)).decode("utf-8-sig"))))
        assert (16, ["segment-at-tip"] * 4) == (len(rows), [each["slips"] for each in rows[5:9]])

    def test_json_has_everything(self, tmp_path: Path) -> None:
        value = json.loads(json_text(tallied(tmp_path, TestCounting.ROWS)))
        assert (16, 4, "step 3, The moments") == (
            len(value["rows"]),
            value["slips"][0]["alone"],
            value["slips"][0]["where"],
        )
        assert {"summary", "several", "unexplained", "teach_again", "chance", "remarks", "families"} <= set(value)

    def test_the_chart_has_the_numbers_of_the_table(self, tmp_path: Path) -> None:
        found = tallied(tmp_path, TestCounting.ROWS)
        bars = next(each for each in page(found).passages if isinstance(each, Plot))
        table = next(
            each
            for each in page(found).passages
            if isinstance(each, Table) and each.caption.startswith("Students by slip")
        )
        assert [row[1][0].text for row in table.rows] == [f"{y:.0f}" for _, y in bars.curves[0].points if y is not None]  # type: ignore[union-attr]
        assert chart(tallied(tmp_path, ["a,239,"])).names == ("no slip was found",)

    def test_a_class_without_a_slip_has_a_page_too(self, tmp_path: Path) -> None:
        assert "Nothing wrong was found" in text(page(tallied(tmp_path, ["a,239,197"])), 100)


class TestCells:
    @pytest.mark.parametrize(
        ("typed", "value", "half", "way"),
        [
            ("239", 239, 0.5, 0),
            ("239.0", 239, 0.05, 0),
            ("2.4e2", 240, 5, 0),
            ("2.4 x 10^2 N", 240, 5, 0),
            ("1 051,6", 1051.6, 0.05, 0),
            ("−12", -12, 0.5, 0),
            ("= 7", 7, 0.35, 0),
            ("F = 239 N up", 239, 0.5, 1),
            ("197 N, downwards", 197, 0.5, -1),
            ("45 N/cm²", 45, 0.5, 0),
            ("12°", 12, 0.5, 0),
        ],
    )
    def test_a_number_is_read_with_its_last_place(self, typed: str, value: float, half: float, way: int) -> None:
        found = cell(typed)
        assert isinstance(found, Cell) and (pytest.approx(value), pytest.approx(half), way) == (
            found.value,
            found.half,
            found.way,
        )

    @pytest.mark.parametrize(
        "typed",
        ["abc", "=1+1", "12-15", "3 or 4", "nan", "inf", "1e999", "=cmd|' /C calc'!A0", "1" * 100, "९", "--5", ""],
    )
    def test_what_is_no_single_number_is_refused(self, typed: str) -> None:
        assert isinstance(cell(typed), str)

    @pytest.mark.parametrize(
        ("head", "name", "unit"),
        [
            ("biceps (N)", "biceps", (("N", 1),)),
            ("M [N cm]", "M", (("N", 1), ("cm", 1))),
            ("biceps (left)", "biceps (left)", ()),
            ("R", "R", ()),
        ],
    )
    def test_a_header_may_tell_the_unit(self, head: str, name: str, unit: object) -> None:
        assert (name, unit) == unit_of_header(head)


def _row(cells: dict[str, str]):  # type: ignore[no-untyped-def]
    from explain.tally.answer_table import Row

    return Row(2, "x", {name: cell(typed) for name, typed in cells.items()}, cells)
