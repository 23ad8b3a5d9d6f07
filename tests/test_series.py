"""Series of problems: every step's answer, what is shown in full and what is referred back to, the reasons, and the
pages in every format.
"""

from __future__ import annotations

import json
import re
import tomllib
from collections.abc import Sequence
from functools import cache
from io import BytesIO
from os.path import relpath
from pathlib import Path

import jsonschema
import pikepdf
import pytest
from lxml import html as reader

from explain.series import api
from explain import work, work_series
from explain.series.api import WorkedSeries, suggested
from explain.document.passage import Caution, Page, Picture, Plot, Table
from explain.problem.schema import schema
from explain.formula.plain import plain
from explain.series.comparison import lines_of
from explain.series.pages import joined
from explain.series.written_lines import written
from explain.write.pdf.pages import pdf_pages
from explain.write.text.pages import text

TESTS = Path(__file__).parent
ELBOW = TESTS / "series" / "elbow.toml"
TIN = TESTS.parent / "samples" / "series" / "treacle-tin.toml"
# Our own elbow ladder, rungs 0 to 14: each value by closed form and by a numerical balance, apart from the program; and
# the change in per cent.
LADDER: Sequence[tuple[int, str, float, str]] = (
    (0, "flexors", 313.92, "N"),
    (1, "flexors", 347.7645, "N"),
    (2, "flexors", 377.1945, "N"),
    (3, "reaction", 322.2585, "N"),
    (4, "flexors", 534.1545, "N"),
    (5, "flexors", 534.1545, "N"),
    (6, "flexors", 544.2251371126765, "N"),
    (7, "flexors", 552.9974305088577, "N"),
    (8, "reaction", 481.3687873983927, "N"),
    (8, "reaction.right", 143.126267, "N"),
    (8, "reaction.up", -459.5985, "N"),
    (9, "first flexor", 315.60088626292475, "N"),
    (10, "bottle.mass", 6.83900993883792, "kg"),
    (11, "bottle.at", 36.47471967380224, "cm"),
    (12, "forearm.direction", 56.15452635264774, "deg"),
    (13, "flexors", 82.34375, "lb"),
    (14, "flexors", 543.08724075, "N"),
)
PREDICTED = {
    1: "more",
    2: "more",
    3: "same",
    4: "more",
    5: "same",
    6: "more",
    7: "more",
    8: "same",
    9: "less",
    10: "none",
    11: "none",
    12: "none",
    13: "open",
    14: "open",
}


@cache
def series(path: Path) -> WorkedSeries:
    return work_series(path)


def page(path: Path, number: int) -> str:
    """The page of a step as text, with single spaces; the first page is that of the series."""
    return " ".join(text(series(path).pages[number + 1], 100).split())


@pytest.mark.parametrize(("number", "name", "value", "unit"), LADDER)
def test_a_rung_of_the_elbow_ladder_has_its_answer(number: int, name: str, value: float, unit: str) -> None:
    found = series(ELBOW).steps[number].outcome.answers[name]
    assert (pytest.approx(value, rel=1e-6), unit) == (found.value, found.unit)


def test_the_joint_force_of_rung_8_points_below_the_level() -> None:
    """Our own ladder, rung 8.5: 72.70 degrees below the level, towards the hand."""
    assert pytest.approx(360 - 72.7025825289886) == series(ELBOW).steps[8].outcome.answers["reaction"].direction


@pytest.mark.parametrize(("number", "per_cent"), [(1, 10.8), (2, 8.5), (5, 0.0), (7, 3.5)])
def test_a_rung_is_compared_with_the_one_before_in_per_cent(number: int, per_cent: float) -> None:
    comparison = series(ELBOW).steps[number].comparison
    assert comparison is not None and comparison.per_cent is not None and per_cent == round(comparison.per_cent, 1)


def test_each_rung_is_predicted_and_no_prediction_is_contradicted() -> None:
    found = {each.step.number: each.comparison for each in series(ELBOW).steps if each.comparison}
    assert {number: each.prediction.way for number, each in found.items()} == PREDICTED
    assert [] == [number for number, each in found.items() if each.prediction.way not in ("open", each.way)]


@pytest.mark.parametrize("number", range(15))
def test_a_rung_s_lines_are_those_of_the_problem_alone(number: int) -> None:
    """A step is worked like a problem file of its own: the same lines, each certified."""
    each = series(ELBOW).steps[number]
    alone = work(each.tables)
    assert [plain(move.line.equation) for move in alone.moves] == [
        plain(move.line.equation) for move in each.outcome.working.moves
    ]
    assert {True} == {each.outcome.working.checker.vouches_for(move.line) for move in each.outcome.working.moves}


def test_lines_that_are_the_same_are_referred_to_and_those_that_changed_are_in_full() -> None:
    second = page(ELBOW, 2)
    assert "As at the start: W_B = 39.24 N" in second and "As in step 1: W_Fo = 11.772 N" in second
    assert "1.2 kg × 9.81 m/s²" not in second and "0.4 kg × 9.81 m/s² = 3.924 N" in second
    assert "1508.8 N·cm / 4.0 cm = 377.19 N" in second


def test_what_is_referred_to_stands_in_full_where_it_is_said_to() -> None:
    for each in series(ELBOW).steps:
        for key, home in each.homes.items():
            there = series(ELBOW).steps[home]
            assert home == there.homes[key]
            assert [
                plain(move.line.equation)
                for move in each.outcome.working.moves
                if (move.goal.kind, move.goal.key, move.goal.sought, move.goal.about) == key
            ] == [
                plain(move.line.equation)
                for move in there.outcome.working.moves
                if (move.goal.kind, move.goal.key, move.goal.sought, move.goal.about) == key
            ]


@pytest.mark.parametrize(
    ("number", "said"),
    [
        (1, "Added: the mass of the forearm, 1.2 kg"),
        (4, "Changed: the mass of the bottle, 6.0 kg (4.0 kg in step 3)."),
        (4, "bottle is 1.50 times what it was, but the pull of the flexors only 1.42 times"),
        (5, "the pull of the flexors is what it was: 534 N. As predicted."),
        (5, "drops out of the balance"),
        (3, "only the question is new"),
        (7, "grows from 534 N to 553 N: 3.5 % more. As predicted."),
        (9, "where the pull of the flexors was 534 N: 40.9 % less"),
        (10, "asks for another quantity than step 4"),
        (13, "82.3 lb, after 348 N: in one unit 5.3 % more"),
        (6, "New here: The cosine stays"),
        (14, "Several effects pull opposite ways"),
        (1, "A teaching model"),
    ],
)
def test_a_page_says_what_is_new_and_what_became_of_the_answer(number: int, said: str) -> None:
    assert said in page(ELBOW, number)


def test_the_prediction_stands_before_the_working() -> None:
    found = page(ELBOW, 4)
    assert found.index("must be larger") < found.index("2 The moments") < found.index("As predicted")


def test_a_segment_that_is_added_moves_nothing_that_was_on_another() -> None:
    """Things act on the last segment where nothing is told: the bottle and the flexors stay on the forearm."""
    tables = series(ELBOW).steps[14].tables
    assert ["forearm", "forearm"] == [tables[kind][0]["on"] for kind in ("load", "muscle")]


def test_the_series_closes_with_a_table_and_a_plot_of_the_answers() -> None:
    last = series(TIN).pages[-1]
    table = next(each for each in last.passages if isinstance(each, Table))
    plot = next(each for each in last.passages if isinstance(each, Plot))
    assert (11, 10) == (len(table.rows), len(plot.names))
    values = [each.outcome.answers["elbow flexors"].value for each in series(TIN).steps if not each.points]
    assert values == [y for _, y in plot.curves[0].points]


def test_opposite_effects_that_make_up_for_each_other_are_told_on_the_page() -> None:
    found = page(TIN, 9)
    assert "Two effects pull opposite ways" in found and "The opposite effects are equally large" in found


@pytest.mark.parametrize("path", [ELBOW, TIN], ids=["elbow", "tin"])
def test_every_format_comes_out(path: Path) -> None:
    worked = series(path)
    titles = [page.title for page in worked.pages]
    told = json.loads(worked.json())
    assert (len(worked.steps), worked.title) == (len(told["steps"]), told["title"])
    assert {(True,)} == {tuple({line["certified"] for line in step["lines"]}) for step in told["steps"]}
    assert titles == [each.text for each in reader.fromstring(worked.html()).iterfind(".//h1")]
    assert titles == re.findall(r"(?m)^# (.*)$", worked.markdown().replace("\\", ""))
    assert titles != [] and [] == [title for title in titles if title not in worked.text(400)]


def test_the_pdf_has_words_for_every_plot(tmp_path: Path) -> None:
    path = series(TIN).save(tmp_path / "tin.pdf")
    with pikepdf.open(path) as document:
        words = [
            str(obj.get("/Alt")) for obj in document.objects if isinstance(obj, pikepdf.Dictionary) and "/Alt" in obj
        ]
    assert any("is largest at 5°" in each for each in words) and any("step by step" in each for each in words)


def test_the_same_file_gives_the_same_bytes() -> None:
    assert work_series(TIN).written("html") == series(TIN).written("html")


def test_a_series_costs_no_more_workings_than_it_has_steps_and_angles(monkeypatch: pytest.MonkeyPatch) -> None:
    count = []
    real = api.work
    monkeypatch.setattr(api, "work", lambda problem: count.append(1) or real(problem))
    worked = work_series(TIN)
    _ = worked.pages, worked.json(), worked.csv()
    assert len(worked.steps) + sum(len(each.points) for each in worked.steps) == len(count)


class TestSchema:
    @pytest.mark.parametrize("path", [ELBOW, TIN], ids=["elbow", "tin"])
    def test_the_files_are_accepted(self, path: Path) -> None:
        checker = jsonschema.Draft202012Validator(json.loads(schema("series")))
        assert [] == [error.message for error in checker.iter_errors(tomllib.loads(path.read_text(encoding="utf-8")))]

    def test_reader_and_schema_know_the_same_keys(self) -> None:
        from explain.series import series_file, sweep

        found = json.loads(schema("series"))["properties"]
        step, start = found["step"]["items"]["properties"], found["start"]["properties"]
        assert [
            set(series_file.KEYS[""]),
            set(series_file.KEYS["step"]),
            set(series_file.KEYS["start"]),
            set(series_file.KEYS["add"]),
            set(sweep.KEYS),
        ] == [
            set(found),
            set(step),
            set(start),
            set(step["add"]["properties"]),
            set(step["sweep"]["properties"]),
        ]

    def test_what_is_added_has_the_keys_of_a_problem_file(self) -> None:
        problem, added = json.loads(schema("problem")), json.loads(schema("series"))
        for kind, each in added["properties"]["step"]["items"]["properties"]["add"]["properties"].items():
            assert problem["properties"][kind]["items"] == each["oneOf"][0]
        assert [] == [name for name, each in added["$defs"].items() if problem["$defs"].get(name) != each]


class TestSuggest:
    @pytest.mark.parametrize(
        "name",
        [
            "contract/jug-level",
            "contract/rock-oblique",
            "contract/two-links",
            "contract/two-flexors",
            "contract/shopping-us",
            "scenarios/S05",
            "scenarios/S11",
            "scenarios/S18",
            "published/OZ-5.2",
        ],
    )
    def test_a_proposal_works_and_comes_back_to_the_problem(self, name: str, tmp_path: Path) -> None:
        problem = TESTS / f"{name}.toml"
        path = tmp_path / "series.toml"
        path.write_text(suggested(problem, base=relpath(problem, tmp_path)), encoding="utf-8")
        worked = work_series(path)
        whole = work(problem).answers
        goal = worked.steps[0].follow
        assert any(
            goal in each.outcome.answers and each.outcome.answers[goal].value == pytest.approx(whole[goal].value)
            for each in worked.steps
        )
        assert not worked.needs_a_person and len(worked.steps) > 2

    def test_the_elbow_ladder_is_found_again(self) -> None:
        """The order of our own ladder: the limb's weight, further weights, an oblique pull, the joint force, a
        heavier load, a load, a distance, a sweep.
        """
        found = tomllib.loads(suggested(TESTS / "scenarios" / "rung-08.toml"))
        assert ["forearm.com", "forearm.mass"] == sorted(key for key in found["start"]["remove"] if key != "hand")
        assert [
            "The weight of the forearm",
            "The hand too",
            "The pull at an angle",
            "What the joint carries",
            "The bottle, half as heavy again",
            "The greatest load",
            "The greatest distance",
            "The forearm through its angles",
            "The angle sought",
        ] == [step["title"] for step in found["step"]]


def test_pages_have_titles_of_their_own() -> None:
    pages: tuple[Page, ...] = series(ELBOW).pages
    assert len(pages) == len({each.title for each in pages}) == 17


# ---------------------------------------------------------------------- the cases of our own files
CASES = Path(__file__).parent / "series"


def test_a_step_may_follow_whatever_the_earlier_one_asks_too() -> None:
    """follow.toml: the lengthwise part of the joint force, asked at the start, and back to the pull."""
    worked = work_series(CASES / "follow.toml")
    found = [(each.follow, each.comparison.way, each.comparison.prediction.way) for each in worked.steps[1:]]
    assert found == [
        ("reaction.along", "more", "more"),
        ("reaction.along", "less", "less"),
        ("back muscles", "more", "more"),
    ]
    said = " ".join(worked.text().split())
    assert "asks for another quantity" not in said and said.count("As predicted.") == 3


def test_what_the_earlier_step_does_not_ask_is_still_told(tmp_path: Path) -> None:
    (tmp_path / "back-base.toml").write_text((CASES / "back-base.toml").read_text("utf-8"), "utf-8")
    text_ = (CASES / "follow.toml").read_text("utf-8")
    path = tmp_path / "s.toml"
    path.write_text(
        text_.replace(
            "[[step]]", '[start]\nask = ["back muscles"]\n[[step]]\nask = ["reaction.along", "back muscles"]', 1
        )
    )
    assert "asks for another quantity than the start" in work_series(path).text()


def test_a_sweep_of_a_distance_has_plot_table_and_file() -> None:
    """sw.toml; T = (W_S 25 cm + W_C d) / 4.0 cm by hand (moments about the knee)."""
    worked = work_series(CASES / "sw.toml")
    rows = [line.split(",") for line in worked.csv().decode("utf-8-sig").splitlines()]
    assert rows[0] == ["cuff.at (cm)", "quadriceps (N)"]
    for (at, pull), far in zip(rows[1:], range(10, 41, 5), strict=True):
        assert float(at) == far
        assert float(pull) == pytest.approx(9.81 * (3.9 * 25 + 2.0 * far) / 4.0)


def test_the_author_s_story_is_kept_with_each_step_s_numbers(tmp_path: Path) -> None:
    """A slot has the number of the step; what has no slot is told before the question; what is not so is not told."""
    (tmp_path / "knee-base.toml").write_text((CASES / "knee-base.toml").read_text("utf-8"), "utf-8")
    path = tmp_path / "s.toml"
    path.write_text(
        """title = "S"
base = "knee-base.toml"
[[step]]
title = "Heavier"
set = { "cuff.mass" = "4.0 kg" }
[[step]]
title = "Nearer"
set = { "cuff.at" = "19 cm" }
[[step]]
title = "Down"
from = 1
set = { "shank and foot.direction" = "30 deg below right" }
[[step]]
title = "Sought"
from = 1
set = { "quadriceps.force" = "300 N", "cuff.at" = "?" }
ask = ["cuff.at"]
[[step]]
title = "Own words"
from = 1
remove = ["cuff"]
add.load = [{ name = "boot", mass = "3.0 kg", at = "40 cm" }]
statement = "Now a boot of {boot.mass}. How hard does it pull?"
[[step]]
title = "Another boot"
set = { "boot.mass" = "3.5 kg" }
""",
        "utf-8",
    )
    said = [" ".join(each.problem.statement.replace("*", "").split()) for each in work_series(path).steps]
    assert "Tobias" in said[0] and "an ankle weight of 2.0 kg strapped 38 cm" in said[0]
    assert "Tobias" in said[1] and "an ankle weight of 4.0 kg strapped 38 cm" in said[1]
    assert "an ankle weight of 4.0 kg strapped 19 cm" in said[2]
    assert said[3].endswith(
        "Here the direction of the shank and foot is 30° below the horizontal, to the right, not horizontally to the "
        "right. How hard does it pull?"
    )
    assert said[4] == ""  # composed: the story asks something else
    assert said[5:] == ["Now a boot of 3.0 kg. How hard does it pull?", "Now a boot of 3.5 kg. How hard does it pull?"]


def test_a_story_without_slots_is_not_told_of_other_numbers() -> None:
    worked = work_series(TIN)
    assert worked.steps[0].problem.statement
    assert [""] * 10 == [each.problem.statement for each in worked.steps[1:]]


def test_steps_run_on_on_paper(tmp_path: Path) -> None:
    """No step begins a sheet of its own: fewer sheets than the pages would have one by one, one caution at the end."""
    worked = work_series(CASES / "follow.toml")
    path = worked.save(tmp_path / "s.pdf")
    with pikepdf.open(path) as one, pikepdf.open(BytesIO(pdf_pages(worked.pages, worked.title))) as apart:
        assert len(one.pages) < len(apart.pages)
    cautions = [each for each in joined(worked.pages, "S").passages if isinstance(each, Caution)]
    assert len(cautions) == 1


@pytest.mark.parametrize(("name", "most"), [("back", 10), ("oil-can", 11), ("knee", 8)])
def test_a_series_takes_little_paper(name: str, most: int) -> None:
    """Eight steps, nine and seven behind a start of two sheets, with their sweeps and what they tell together."""
    with pikepdf.open(BytesIO(work_series(CASES / f"{name}.toml").pdf())) as document:
        assert len(document.pages) <= most


@pytest.mark.parametrize("name", ["back", "oil-can", "knee"])
def test_no_reason_is_given_twice_in_a_series(name: str) -> None:
    told = " ".join(work_series(CASES / f"{name}.toml").text(400).split())
    reasons = (
        "A weight is a force, the mass times g.",
        "carried on unrounded, so the last figure may seem off by one.",
        "a term that crosses the equals sign changes its sign",
        "Arrows are not to scale.",
    )
    assert [told.count(each) for each in reasons] == [1, 1, 1, 1]


@pytest.mark.parametrize("name", ["back", "oil-can", "knee"])
def test_an_equation_solved_as_before_keeps_its_letters_its_numbers_and_its_end(name: str) -> None:
    worked, short = work_series(CASES / f"{name}.toml").steps, 0
    for each in worked[1:]:
        shown = written(worked, each).shown
        for key, moves in lines_of(each.outcome).items():
            kept = [move for move in moves if id(move) in shown]
            if key[0] == "at rest" or not kept:
                continue
            put = [move for move in moves if move.rule.__name__.endswith(".put")]
            assert kept[0] is moves[0] and kept[-1] is moves[-1] and {*map(id, put)} <= {*map(id, kept)}
            if len(kept) < len(moves):
                short += 1
                way = [move.rule for move in moves]
                before = [lines_of(old.outcome).get(key, ()) for old in worked[: each.step.number]]
                assert way in [[move.rule for move in old] for old in before]
    assert short >= 3


def test_what_changes_is_told_in_a_sentence_that_names_what_it_was() -> None:
    said = [" ".join(text(page, 400).split()) for page in work_series(CASES / "oil-can.toml").pages]
    assert "Changed: the mass of the can, 3.6 kg (2.4 kg at the start)." in said[2]
    assert (
        "no longer left out: the weight of forearm and hand; new: the mass of the forearm and hand, 1.5 kg" in said[3]
    )
    assert "Changed: g, 3.7 m/s² (9.81 m/s² in step 5)." in said[10]
    knee = " ".join(text(work_series(CASES / "knee.toml").pages[6], 400).split())
    assert "Changed: the cuff is taken away; new: the distance of the band, 38 cm" in knee


def test_a_diagram_that_is_the_same_but_for_its_measures_is_not_drawn_again() -> None:
    pictures = [
        sum(isinstance(each, Picture) for each in page.passages) for page in work_series(CASES / "follow.toml").pages
    ]
    assert pictures[1:5] == [1, 0, 1, 1]  # the start; a heavier load; the trunk turned twice
