"""Variants: ranges are read or refused, draws are steady, sheets tell no answer, every variant is worked and marked
by its own file.
"""

from __future__ import annotations

import re
from itertools import product
from pathlib import Path

import pytest
from varying import BARROW, CREEL, JUG, contents, explain, made, problem, rows

from explain.errors import Fault
from explain.problem.reader import read_problem, tables_of
from explain.api import work
from explain.vary.shuffle import TRIES, drawn, shuffled, tries
from explain.vary.settle_only import accounted, settled
from explain.vary.ranges import read_ranges
from explain.vary.class_list import Student
from explain.vary.source import with_values
from explain.vary.reuse_account import Swift

SAMPLE = Path(__file__).parents[1] / "samples" / "class-variants"


# ---------------------------------------------------------------------- ranges
def _ranges(tmp_path: Path, text: str) -> dict[str, tuple[object, ...]]:
    return {each.name: each.values for each in read_ranges(tables_of(problem(tmp_path, text)))}


def test_values_are_written_as_a_class_would_read_them(tmp_path: Path) -> None:
    found = _ranges(tmp_path, CREEL)
    assert (found["creel.mass"][0], found["creel.mass"][-1], len(found["creel.mass"])) == ("3.0 kg", "8.0 kg", 51)
    assert found["creel.at"][:3] == ("30.0 cm", "30.5 cm", "31.0 cm")
    assert found["biceps.direction"][1] == "63 deg from back toward up"
    assert found["forearm and hand.com"] == ("15 cm", "15.5 cm", "16 cm", "16.5 cm", "17 cm")


def test_a_share_of_another_force_keeps_what_it_is_a_share_of(tmp_path: Path) -> None:
    text = (
        CREEL.split("[vary]")[0].split("statement")[0]
        + CREEL.partition('"""\n')[2].partition('"""\n')[2].split("[vary]")[0]
    )
    text += '[[muscle]]\nname = "brachialis"\nat = "2.6 cm"\ndirection = "up"\nforce = "0.80 * biceps"\n'
    found = _ranges(tmp_path, text + '[vary]\n"brachialis.force" = { from = "0.60", to = "0.80", step = "0.10" }\n')
    assert found == {"brachialis.force": ("0.60 * biceps", "0.70 * biceps", "0.80 * biceps")}


@pytest.mark.parametrize(
    ("entry", "said"),
    (
        ('"creel.mas" = ["3.0 kg"]', r'vary.creel.mas: found "creel.mas".*mass'),
        ('"crel.mass" = ["3.0 kg"]', r'found "crel", which is not in this problem.*\n.*"creel.mass"'),
        ('"mass" = ["3.0 kg"]', "which is not in this problem"),
        ('"biceps.force" = ["3.0 N"]', "does not have"),
        ('"creel.name" = ["a", "b"]', "does not have"),
        ('"creel.mass" = []', "a list of no|a list of 0"),
        ('"creel.mass" = "3.0 kg"', "a list of one to"),
        ('"creel.mass" = { from = "5.0 kg", to = "3.0 kg", step = "0.1 kg" }', "a value not below from, 5.0 kg"),
        ('"creel.mass" = { from = "3.0 kg", to = "5.0 kg", step = "0 kg" }', "a step above zero"),
        ('"creel.mass" = { from = "3.0 kg", to = "5.0 kg", step = "-1 kg" }', "a step above zero"),
        ('"creel.mass" = { from = "3.0 kg", to = "5.0 kg" }', "the key is missing"),
        ('"creel.mass" = { from = "3.0 kg", to = "5.0 lb", step = "1 kg" }', "the unit that from has, kg"),
        ('"creel.mass" = { from = "3.0 kg", to = "5.0 kg", stop = "1 kg" }', 'the key "stop".*step'),
        (
            '"creel.mass" = { from = "3.000 kg", to = "3.100 kg", step = "0.001 kg" }',
            "round data, of at most 3 figures",
        ),
        ('"creel.mass" = { from = "3 kg", to = "99999999 kg", step = "0.1 kg" }', "at most 10,000"),
        ('"creel.mass" = { from = "three", to = "5", step = "1" }', "a number and its unit"),
    ),
)
def test_a_range_that_cannot_be_is_refused_where_it_stands(tmp_path: Path, entry: str, said: str) -> None:
    with pytest.raises(Fault) as caught:
        _ranges(tmp_path, CREEL.split("[vary]")[0] + "[vary]\n" + entry)
    assert re.search(said.replace("a list of no|a list of 0", "a list of 0"), str(caught.value), re.DOTALL), str(
        caught.value
    )
    assert caught.value.line is not None


def test_a_problem_without_ranges_says_how_to_write_them(tmp_path: Path) -> None:
    with pytest.raises(Fault, match="vary: found nothing"):
        read_ranges(tables_of(problem(tmp_path, CREEL.split("[vary]")[0])))


def test_what_is_sought_cannot_be_varied(tmp_path: Path) -> None:
    with pytest.raises(Fault, match="which is sought"):
        _ranges(tmp_path, BARROW.split("[vary]")[0] + '[vary]\n"hands.force" = ["3.0 lb"]')


# ---------------------------------------------------------------------- statements
def test_a_statement_that_would_be_the_same_for_everyone_is_refused(tmp_path: Path) -> None:
    with pytest.raises(Fault, match=r"without a place for \{creel.mass\}"):
        _ranges(tmp_path, CREEL.replace("{creel.mass}", "5.2 kg"))
    with pytest.raises(Fault, match=r"the slot \{creel.mas\}.*\n.*\{creel.mass\}"):
        _ranges(tmp_path, CREEL.replace("{creel.mass}", "{creel.mas}"))


def test_slots_are_filled_wherever_the_problem_is_worked(tmp_path: Path) -> None:
    said = read_problem(problem(tmp_path)).statement
    assert "{" not in said
    assert ["**1.5 kg**", "**16 cm**", "**5.2 kg**", "**33 cm**", "**4.2 cm**", "**72°**"] == re.findall(
        r"\*\*.*?\*\*", said
    )


def test_braces_that_name_nothing_stay(tmp_path: Path) -> None:
    assert (
        r"$\frac{a.b}{c}$"
        in read_problem(problem(tmp_path, CREEL.replace('"""\nThe', '"""\n$\\\\frac{a.b}{c}$ The'))).statement
    )


def test_the_varied_angle_stands_in_what_is_given(tmp_path: Path) -> None:
    """In a statement of the author's own and in a composed one, for a pull and for a segment."""
    made(problem(tmp_path), tmp_path / "out", 2)
    for row in rows(tmp_path / "out"):
        sheet = (tmp_path / "out" / "sheets" / f"{Path(row['file']).stem}.md").read_text("utf-8")
        degrees = row["biceps.direction"].partition(" ")[0]
        assert f"| – | Direction of the biceps | {degrees}° to the bone, back and up |" in sheet
    text = JUG.replace('length = "36 cm"', 'length = "36 cm"\ndirection = "20 deg below right"')
    text += '"forearm and hand".direction = { from = "10 deg", to = "30 deg", step = "1 deg" }\n'
    made(problem(tmp_path, text), tmp_path / "slope", 1)
    (row,) = rows(tmp_path / "slope")
    degrees = row["forearm and hand.direction"].partition(" ")[0]
    sheet = (tmp_path / "slope" / "sheets" / "student-001.md").read_text("utf-8")
    assert f"| – | Direction of the forearm and hand | {degrees}° below the horizontal, to the right |" in sheet


# ---------------------------------------------------------------------- draws
def test_the_order_is_a_shuffle_of_all_sets() -> None:
    for count in (1, 2, 3, 7, 60, 1000):
        assert sorted(shuffled(7, index, count) for index in range(count)) == list(range(count))
    assert [shuffled(7, index, 1000) for index in range(20)] != [shuffled(8, index, 1000) for index in range(20)]


def test_few_sets_are_all_tried() -> None:
    sizes = (2, 3, 2)
    found = {drawn(7, 4, attempt, sizes) for attempt in tries(sizes)}
    assert found == set(product(range(2), range(3), range(2)))


def test_no_two_students_begin_with_the_same_set() -> None:
    sizes = (51, 13, 9, 5, 13, 19)
    first = [drawn(7, student, 0, sizes) for student in range(2000)]
    assert len(set(first)) == 2000
    assert len(tries(sizes)) == TRIES
    for place, size in enumerate(sizes):
        assert {each[place] for each in first} == set(range(size))


@pytest.mark.parametrize("text", (CREEL, JUG, BARROW), ids=("creel", "jug", "barrow"))
def test_an_account_taken_over_is_the_one_worked_out(tmp_path: Path, text: str) -> None:
    """To the last bit, whatever set it is taken over from: so no draw depends on what was drawn before it."""
    top = tables_of(problem(tmp_path, text))
    ranges = read_ranges(top)
    sizes, swift, taken = tuple(len(each.values) for each in ranges), Swift(ranges), 0
    for student in range(80):
        places = drawn(3, student, 0, sizes)
        account, values = accounted(settled(with_values(dict(top.values), ranges, places), "problem.toml"))
        if found := swift.account(places):
            taken += 1
            own, worked = (
                {key: value for key, value in each.items() if key[:3] not in ("*x ", "*y ")}
                for each in (found.values(), values)
            )
            assert (own, found.written, found.items) == (worked, account.written, account.items)
        swift.keep(places, account)
    assert taken > 40


def test_nothing_is_taken_over_where_a_pull_goes_toward_a_point(tmp_path: Path) -> None:
    text = CREEL.split("statement")[0] + CREEL.split('"""\n')[-1].split("[vary]")[0]
    text = text.replace('direction = "72 deg from back toward up"', 'toward = ["0 cm", "28 cm"]')
    top = tables_of(problem(tmp_path, text + '[vary]\n"creel.mass" = ["5.2 kg", "5.3 kg"]\n'))
    ranges = read_ranges(top)
    swift = Swift(ranges)
    swift.keep((0,), accounted(settled(with_values(dict(top.values), ranges, (0,)), "problem.toml"))[0])
    assert swift.account((1,)) is None


# ---------------------------------------------------------------------- what comes out
@pytest.mark.parametrize("text", (CREEL, JUG, BARROW), ids=("creel", "jug", "barrow"))
def test_no_sheet_has_an_answer_in_it(tmp_path: Path, text: str) -> None:
    """Every number of a sheet is a datum; none is near the size of an answer."""
    made(problem(tmp_path, text), tmp_path / "out", 12, form="html")
    for row in rows(tmp_path / "out"):
        data = {
            float(number)
            for value in row.values()
            for number in re.findall(r"\d+\.?\d*", value.partition(" deg")[0])[:1]
            if re.match(r"[\d.]+ \D", value)
        }
        answers = [abs(float(value)) for key, value in row.items() if " in " in key and value]
        page = (tmp_path / "out" / "sheets" / f"{Path(row['file']).stem}.html").read_text("utf-8")
        body = re.sub(r"<style.*?</style>", "", page, flags=re.DOTALL)
        told = {
            float(each)
            for each in re.findall(
                r"(?<![\w.#&-])\d+\.?\d*", re.sub(r"&#\d+;|\b(?:width|height|style|class|id)=\"[^\"]*\"", "", body)
            )
        }
        for answer in answers:
            assert not [each for each in told if answer and abs(each - answer) <= 0.004 * answer], (row, answer)
        assert data <= told


def test_metadata_of_a_pdf_has_no_answer(tmp_path: Path) -> None:
    import pikepdf

    made(problem(tmp_path), tmp_path / "out", 1, form="pdf")
    (row,) = rows(tmp_path / "out")
    with pikepdf.open(tmp_path / "out" / "sheets" / "student-001.pdf") as pdf:
        said = str(dict(pdf.docinfo)) + (pdf.Root.Metadata.read_bytes().decode() if "/Metadata" in pdf.Root else "")
        alternatives = [
            str(each.Alt) for each in pdf.objects if isinstance(each, pikepdf.Dictionary) and "/Alt" in each
        ]
    assert alternatives
    for shown in (f"{abs(float(each)):.3g}" for key, each in row.items() if " in " in key):
        assert not [each for each in (said, *alternatives) if shown in each]


@pytest.mark.parametrize("text", (CREEL, JUG, BARROW), ids=("creel", "jug", "barrow"))
def test_a_variant_is_worked_by_its_own_file_to_the_answers_of_the_key(tmp_path: Path, text: str) -> None:
    made(problem(tmp_path, text), tmp_path / "out", 4)
    for row in rows(tmp_path / "out"):
        walkthrough = work(tmp_path / "out" / row["file"])
        for name, answer in walkthrough.answers.items():
            assert answer.value == pytest.approx(float(row[f"{name} in {answer.unit}"]), rel=1e-9, abs=1e-7)
        assert "[vary]" not in (tmp_path / "out" / row["file"]).read_text("utf-8")


def test_a_student_is_marked_with_the_students_own_file(tmp_path: Path) -> None:
    made(problem(tmp_path), tmp_path / "out", 2)
    first, second = rows(tmp_path / "out")
    working = f"F = {float(first['biceps in N']):.0f} N"
    assert work(tmp_path / "out" / first["file"]).mark(working).lines[0].verdict == "holds"
    assert work(tmp_path / "out" / second["file"]).mark(working).lines[0].verdict != "holds"


def test_pages_for_the_teacher_are_walkthroughs_of_the_variants(tmp_path: Path) -> None:
    made(problem(tmp_path), tmp_path / "out", 2, pages=True)
    for row in rows(tmp_path / "out"):
        page = (tmp_path / "out" / "keys" / f"{Path(row['file']).stem}.md").read_text("utf-8")
        assert page == work(tmp_path / "out" / row["file"]).markdown()


def test_the_class_and_the_table_of_a_problem_go_with_its_variants(tmp_path: Path) -> None:
    (tmp_path / "class.toml").write_text('word = "torque"\ng = "10 m/s^2"\nsymbols = { biceps = "B" }\n')
    (tmp_path / "own.csv").write_text("segment,mass_percent,com_percent,source\nforearm and hand,2.2,44,made up\n")
    text = CREEL.replace("ask =", 'course = "class.toml"\nask =').replace(
        'mass = "1.5 kg"\ncom = "16 cm"', 'mass = "table"\ncom = "table"'
    )
    text = text.replace("[[segment]]", '[person]\nmass = "70 kg"\ntable = "own.csv"\n\n[[segment]]', 1)
    text = re.sub(r'"forearm and hand\.\w+" = .*\n', "", text)
    made(problem(tmp_path, re.sub(r"\*\*\{forearm and hand\.\w+\}\*\*", "given", text)), tmp_path / "out", 1)
    moved = tmp_path / "elsewhere"
    (tmp_path / "out" / "variants").rename(moved)
    (tmp_path / "own.csv").unlink()
    walkthrough = work(moved / "student-001.toml")
    assert walkthrough.problem.course.word == "torque"
    (row,) = rows(tmp_path / "out")
    assert walkthrough.answers["biceps"].value == pytest.approx(float(row["biceps in N"]), rel=1e-9)


def test_names_stand_on_sheets_as_text_and_in_tables_as_no_formula(tmp_path: Path) -> None:
    names = ("=SUM(A1:A9)", "+4", "@home", "-x", "<b>Bo</b>", "a|b*c*", "../../etc/passwd", "# Ina")
    students = tuple(Student(place, name, f"s{place}") for place, name in enumerate(names))
    made(problem(tmp_path), tmp_path / "out", students)
    assert [row["student"] for row in rows(tmp_path / "out")] == [
        "'=SUM(A1:A9)",
        "+4",
        "'@home",
        "'-x",
        "<b>Bo</b>",
        "a|b*c*",
        "../../etc/passwd",
        "# Ina",
    ]
    assert r"**Name** \<b>Bo\</b>" in (tmp_path / "out" / "sheets" / "s4.md").read_text("utf-8")
    assert [read_problem(tmp_path / "out" / "variants" / f"s{place}.toml").title for place in range(8)] == [
        "A creel of crabs"
    ] * 8


def test_the_sample_class_has_twelve_sheets(tmp_path: Path) -> None:
    done = explain(
        SAMPLE / "bucket-of-mussels.toml",
        "--names",
        SAMPLE / "class-5b.csv",
        "--seed",
        7,
        "-o",
        tmp_path / "out",
        "--jobs",
        1,
    )
    assert (done.returncode, done.stdout) == (0, "")
    assert "12 variants" in done.stderr
    found = contents(tmp_path / "out")
    assert 12 == len([name for name in found if name.startswith("sheets/")]) == len(rows(tmp_path / "out"))
    assert "sheets/zephyrine-odell.md" in found
    assert "no two alike" in found["key.md"].decode()
