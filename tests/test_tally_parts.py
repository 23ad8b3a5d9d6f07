"""The parts of a tally, each by itself: cells as typed, slips seen in one number, columns of a table, what is asked,
and the step at which a quantity is found. Figures of the samples are those of their pages.
"""

from __future__ import annotations

from math import log
from pathlib import Path

import pytest
from test_tally import TIN, worked

from explain.equation.terms import Unit
from explain.errors import Fault
from explain.tally.answer_table import Sheet, read_sheet
from explain.tally.api import asked_of
from explain.tally.asked import Wanted, in_unit_of
from explain.tally.cells import Cell, cell, unit_of_header
from explain.tally.chance import covered
from explain.tally.first_step import Steps
from explain.tally.last_step_slips import rate, slips_of

N, CM, LB, KG = (("N", 1),), (("cm", 1),), (("lbf", 1),), (("kg", 1),)
PULL = Wanted("biceps", "biceps.force", N, 1.0, 239.0, False, ("F_B", "pull"))
UP = Wanted("reaction.up", "reaction.up", N, 1.0, -180.0, True)
SIZE = Wanted("reaction", "reaction", N, 1.0, 180.0)
AT = Wanted("jug.at", "jug.at", CM, 100.0, 30.0)


# ---------------------------------------------------------------------- cells
@pytest.mark.parametrize(
    ("typed", "value", "half", "open_", "unit", "way"),
    [
        ("239", 239, 0.5, 0.5, (), 0),
        ("360", 360, 0.5, 5, (), 0),
        ("300", 300, 0.5, 5, (), 0),
        ("1000", 1000, 0.5, 50, (), 0),
        ("30", 30, 0.5, 0.5, (), 0),
        ("300.0", 300, 0.05, 0.05, (), 0),
        ("7", 7, 0.35, 0.35, (), 0),
        ("0", 0, 0.5, 0.5, (), 0),
        ("0.0", 0, 0.05, 0.05, (), 0),
        ("+5.0 N", 5, 0.05, 0.05, N, 0),
        ("-5.0N", -5, 0.05, 0.05, N, 0),
        ("−5.0 N", -5, 0.05, 0.05, N, 0),
        ("5.0 N downward", 5, 0.05, 0.05, N, -1),
        ("5.0 N (to the left)", 5, 0.05, 0.05, N, -1),
        ("5.0, Right.", 5, 0.05, 0.05, (), 1),
        ("5.0 Upwards", 5, 0.05, 0.05, (), 1),
        ("5.0 N m", 5, 0.05, 0.05, (("N", 1), ("m", 1)), 0),
        ("5.0 N·cm", 5, 0.05, 0.05, (("N", 1), ("cm", 1)), 0),
        ("5.0 kg.", 5, 0.05, 0.05, KG, 0),
        ("5.0 apples", 5, 0.05, 0.05, (), 0),
        ("1.2 × 10^3 N", 1200, 50, 50, N, 0),
        ("1.2 x 10 ^ -1", 0.12, 0.005, 0.005, (), 0),
        ("2.4e2", 240, 5, 5, (), 0),
        ("F_B = 239", 239, 0.5, 0.5, (), 0),
        ("ca. 239", 239, 0.5, 0.5, (), 0),
        ("About 239", 239, 0.5, 0.5, (), 0),
        ("approx 239", 239, 0.5, 0.5, (), 0),
        ("~239", 239, 0.5, 0.5, (), 0),
        ("1 234 567", 1234567, 0.5, 0.5, (), 0),
    ],
)
def test_a_cell_is_a_number_with_what_is_known_of_it(
    typed: str, value: float, half: float, open_: float, unit: Unit, way: int
) -> None:
    found = cell(typed)
    assert isinstance(found, Cell)
    assert (pytest.approx(value), pytest.approx(half), pytest.approx(open_)) == (found.value, found.half, found.open)
    assert (unit, way, typed) == (found.unit, found.way, found.text)


def test_a_cell_keeps_its_digits_and_the_other_number_that_it_may_be() -> None:
    both = cell("1,234")
    assert isinstance(both, Cell) and (1.234, 1234.0) in ((both.value, both.other), (both.other, both.value))
    minus = cell("-1,234")
    assert isinstance(minus, Cell) and {minus.value, minus.other} == {-1.234, -1234.0}
    plain = cell(" 23.50 N ")
    assert isinstance(plain, Cell) and (None, "23.50", "23.50 N") == (plain.other, plain.digits, plain.text)


def test_a_sign_or_a_way_tells_a_sense() -> None:
    found = {text: cell(text) for text in ("5", "+5", "-5", "−5", "5 up", "= -5")}
    assert [False, True, True, True, True] == [each.told for each in list(found.values())[:5] if isinstance(each, Cell)]


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("3 or 4", "more than one number"),
        ("3; 4.5", "more than one number"),
        ("abc", "no number"),
        ("x 5", "no number"),
        ("5" + " " * 80, "a text too long for an answer"),
    ],
)
def test_why_a_cell_is_no_answer(typed: str, why: str) -> None:
    assert why == cell(typed)


def test_eighty_characters_are_the_most_of_a_cell() -> None:
    assert isinstance(cell("5" + " " * 79), Cell)


def test_only_a_unit_in_brackets_is_taken_off_a_heading() -> None:
    assert [("a", N), ("a b", CM), ("a (x)", ()), ("N", ()), ("a (N) b", ())] == [
        unit_of_header(each) for each in (" a (N) ", "a b [cm]", "a (x)", " N", "a (N) b")
    ]


# ---------------------------------------------------------------------- slips in one number
def slips(typed: str, asked: Wanted = PULL, moments: tuple[float, ...] = (), number: float | None = None) -> list[str]:
    found = cell(typed)
    assert isinstance(found, Cell)
    return list(slips_of(found, found.value if number is None else number, asked, moments))


@pytest.mark.parametrize(
    ("typed", "asked", "found"),
    [
        ("239 N", PULL, []),
        ("239 kg", PULL, ["kilogram-answer"]),
        ("24.4 kg", PULL, ["kilogram-answer"]),
        ("239 cm", PULL, ["unit-label-wrong"]),
        ("239 cm", SIZE._replace(value=150.0), []),
        ("53.7", PULL, ["unit-missing"]),
        ("53.7 lb", PULL, []),
        ("0.239", PULL, ["unit-missing"]),
        ("2390", PULL, ["decimal-shift"]),
        ("23.9", PULL, ["decimal-shift"]),
        ("293", PULL, ["digit-transposed"]),
        ("329", PULL, ["digit-transposed"]),
        ("932", PULL, []),
        ("29.3", PULL, []),
        ("22", PULL._replace(value=22.4), ["rounded-too-early"]),
        ("-239", PULL, ["negative-muscle"]),
        ("-240", PULL, ["negative-muscle"]),
        ("180", UP, ["direction-missing", "reaction-on-other-body"]),
        ("+180", UP, ["reaction-on-other-body"]),
        ("180 up", UP, ["reaction-on-other-body"]),
        ("-180", UP, []),
        ("180", UP._replace(key="*moment jug"), ["direction-missing"]),
        ("232.5", PULL, ["rounded-too-early"]),
        ("245.9", PULL, ["rounded-too-early"]),
        ("238.0", PULL, []),
        ("231.7", PULL, []),
        ("0.300", AT, ["unit-missing"]),
        ("11.8", AT, ["unit-missing"]),
        ("30 kg", AT, ["unit-label-wrong"]),
    ],
)
def test_the_slips_that_one_number_shows(typed: str, asked: Wanted, found: list[str]) -> None:
    """A right pull of 239 N, a joint force of 180 N down, a distance of 30 cm."""
    assert found == slips(typed, asked)


def test_a_moment_in_the_place_of_a_force_is_a_step_too_few() -> None:
    assert ["stopped-at-moment"] == slips("1050", PULL, (10.5, 1050.0))
    assert [] == slips("1090", PULL, (10.5, 1050.0))


def test_a_nought_is_explained_by_nothing() -> None:
    """Half a unit of its place would hold 0.239 kN."""
    assert [] == slips("0", PULL, (0.0, 0.3))


def test_how_many_of_one_unit_another_is() -> None:
    """1 lbf = 4.4482216 N: NIST SP 811, appendix B.8."""
    assert (1.0, None) == (rate(N, N), rate(N, CM))
    assert (pytest.approx(4.4482216), pytest.approx(1.0)) == (rate(LB, N), rate((("lb", 1),), LB))
    assert rate((("lb", 1),), KG) == pytest.approx(0.45359237)


# ---------------------------------------------------------------------- tables
def sheet(tmp_path: Path, content: str, *columns: str, by: str = "", asked: tuple[Wanted, ...] = (PULL, SIZE)) -> Sheet:
    path = tmp_path / "answers.csv"
    path.write_text(content, "utf-8")
    return read_sheet(path, asked, columns, by)


@pytest.mark.parametrize(
    ("head", "columns", "found"),
    [
        ("student,biceps,reaction", (), {"biceps": "biceps", "reaction": "reaction"}),
        ("student,Biceps (N),REACTION", (), {"biceps": "Biceps (N)", "reaction": "REACTION"}),
        ("student,f_b,x", (), {"biceps": "f_b"}),
        ("student,F B,x", (), {"biceps": "F B"}),
        ("student,pull,F_B", (), {"biceps": "F_B"}),
        ("student,Q1,Q2", ("biceps=Q1", " reaction = Q2 "), {"biceps": "Q1", "reaction": "Q2"}),
        ("student,Q1,biceps", ("biceps=Q1",), {"biceps": "Q1"}),
        ("student,biceps,reaction", ("reaction=biceps",), {"reaction": "biceps"}),
        ("student,biceps,reaction", ("biceps",), {"biceps": "biceps", "reaction": "reaction"}),
    ],
)
def test_which_column_holds_which_answer(
    head: str, columns: tuple[str, ...], found: dict[str, str], tmp_path: Path
) -> None:
    assert found == sheet(tmp_path, f"{head}\nAda,239,180\n", *columns).columns


def test_rows_keep_what_was_typed_and_tell_what_is_blank(tmp_path: Path) -> None:
    found = sheet(tmp_path, "email,number,biceps (kN),reaction\n a@x , 7,0.24 , \n\n,8,x,180 N,9\n,,,\n")
    one, two = found.rows[:2]
    assert (2, "7", {"biceps": "0.24 "}, ("reaction",)) == (one.line, one.student, one.typed, one.blank)
    assert (4, "8", "no number", ()) == (two.line, two.student, two.cells["biceps"], two.blank)
    assert {"biceps": (("kN", 1),), "reaction": ()} == found.units
    (remark,) = found.remarks
    assert remark.startswith("More cells than columns in line 4: where a comma stands for the decimal point, the cell")
    assert remark.endswith(" needs quotes or the table semicolons.")


def test_the_column_of_names_is_a_usual_one_or_the_one_asked_for(tmp_path: Path) -> None:
    for head, by, name in (
        ("id,name,biceps", "", "Bo"),
        ("id,Learner,biceps", "", "Bo"),
        ("id,x,biceps", "", "A"),
        ("y,x,biceps", "", ""),
        ("id,name,biceps", "id", "A"),
        ("No.,x,biceps", "", "A"),
    ):
        assert name == sheet(tmp_path, f"{head}\nA,Bo,239\n", by=by).rows[0].student


def test_nine_lines_with_a_cell_too_many_are_told_as_eight_and_one_more(tmp_path: Path) -> None:
    for count, tail in ((8, "8, 9:"), (9, "8, 9 and 1 more:")):
        found = sheet(tmp_path, "student,biceps\n" + "A,239,5\n" * count)
        assert f"in line 2, 3, 4, 5, 6, 7, {tail}" in found.remarks[0]
    assert () == sheet(tmp_path, "student,biceps\nA,239, \n").remarks


@pytest.mark.parametrize(
    ("content", "columns", "by", "found", "example"),
    [
        ("a,b\n1,2\n", ("biceps=c",), "", 'no column "c"', '--column "b"'),
        ("a,bb\n1,2\n", ("biceps=b",), "", 'no column "b"', '--column "bb"'),
        ("a,b\n1,2\n", ("b",), "", 'the column "b"', '--column "biceps=b"'),
        ("a,b\n1,2\n", ("jug=b",), "", 'the column "jug=b"', '--column "biceps=jug=b"'),
        ("a,biceps\n1,2\n", (), "c", 'no column "c"', '--by "a"'),
        ("a,b\n1,2\n", (), "", 'the columns "a", "b", and none named like an answer', '--column "biceps=b"'),
        ("biceps\n\n", (), "", "a table without rows", ""),
        ("biceps,x\n,5\n", (), "", "no answer in any row", ""),
    ],
)
def test_a_table_at_fault(
    content: str, columns: tuple[str, ...], by: str, found: str, example: str, tmp_path: Path
) -> None:
    with pytest.raises(Fault) as caught:
        sheet(tmp_path, content, *columns, by=by)
    assert found == caught.value.found and example in caught.value.example


def test_where_one_answer_is_asked_for_a_column_needs_no_name(tmp_path: Path) -> None:
    assert {"biceps": "Q9"} == sheet(tmp_path, "a,Q9\n1,2\n", "Q9", asked=(PULL,)).columns


# ---------------------------------------------------------------------- what is asked, and where it is found
def test_what_is_asked_stands_in_the_order_in_which_it_is_found() -> None:
    found = asked_of(worked(TIN.parent / "10-regatta-flag.toml"))
    assert [
        ("deltoid", "deltoid.force", N, 1.0, 324.0, False, ("D",)),
        ("deltoid.stress", "deltoid.force", (("N", 1), ("cm", -2)), 0.05464, 17.7, False, ()),
        ("reaction.right", "reaction.right", N, 1.0, 309.8, True, ("J_x",)),
        ("reaction.up", "reaction.up", N, 1.0, -57.0, True, ("J_y",)),
        ("reaction", "reaction", N, 1.0, 315.0, False, ("J",)),
    ] == [each._replace(factor=round(each.factor, 5), value=round(each.value, 1)) for each in found]
    assert 1 / 18.3 == pytest.approx(found[1].factor, rel=1e-6)  # the cross-section in the statement
    assert [True, True, True] == [each.is_force for each in (found[0], found[2], found[4])]
    (arm,) = asked_of(worked(TIN.parent / "35-measuring-chair.toml"))
    assert (False, "m", None, 0.05) == (arm.is_force, arm.spelled, arm.of({}), arm.of({arm.key: 0.05}))


def test_an_answer_in_the_unit_of_another_variant() -> None:
    pound = PULL._replace(unit=LB, factor=1 / 4.4482216, value=239.0 / 4.4482216)
    found = in_unit_of(pound, PULL)
    assert (N, pytest.approx(239.0), pytest.approx(1.0)) == (found.unit, found.value, found.factor)
    assert pound == in_unit_of(pound, pound) == in_unit_of(pound, AT)


@pytest.mark.parametrize(
    ("sample", "key", "step"),
    [
        ("25-lantern", "hand.mass%", "step 1, Weights"),
        ("25-lantern", "lantern.mass", "step 1, Weights"),
        ("25-lantern", "hand.length", "step 3, Lengths and arms"),
        ("25-lantern", "upper arm.com%", "step 3, Lengths and arms"),
        ("25-lantern", "deltoid.at", "step 3, Lengths and arms"),
        ("25-lantern", "*arm deltoid", "step 3, Lengths and arms"),
        ("25-lantern", "*x deltoid", "step 4, The moments"),
        ("25-lantern", "total", "step 4, The moments"),
        ("25-lantern", "reaction.right", "step 5, The joint force"),
        ("25-lantern", "*angle reaction", "step 5, The joint force"),
        ("35-measuring-chair", "*turning shank and foot", "step 3, Turning parts and arms"),
        ("35-measuring-chair", "shank and foot.com", "step 3, Turning parts and arms"),
        ("35-measuring-chair", "shank and foot.weight", "step 1, Weights"),
        ("12-one-leg-on-the-gangway", "*line hip abductors", "step 3, Lengths and arms"),
        ("12-one-leg-on-the-gangway", "*reach hip abductors", "step 3, Lengths and arms"),
    ],
)
def test_a_quantity_is_found_in_a_step(sample: str, key: str, step: str) -> None:
    assert step == Steps(worked(TIN.parent / f"{sample}.toml").outcome).of(key)


# ---------------------------------------------------------------------- chance
def test_the_share_of_two_decades_that_sizes_cover() -> None:
    wide, whole = log(1.005 / 0.995), log(100.0)
    assert pytest.approx(wide / whole) == covered([50.0], 50.0) == covered([50.0], -20.0)
    assert pytest.approx(2 * wide / whole) == covered([1.0, 2.0], 1.0)
    assert pytest.approx((wide + log(1.001)) / whole) == covered([1.0, 1.001], 1.0)
    assert pytest.approx(log(1.005) / whole) == covered([0.1], 1.0)
    assert pytest.approx(-log(0.995) / whole) == covered([10.0], 1.0)
    assert 0.0 == covered([0.0, 0.05, 20.0], 1.0) == covered([1.0], 0.0) == covered([], 1.0)
