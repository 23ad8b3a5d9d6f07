"""Numbers that stand side by side, units of what is worked out, roundings on the way, and subscripts of letters."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from decimal import Decimal
from fractions import Fraction

import pytest

from explain.equation.terms import Factor, Group, Inverse, Number, Power, Quantity, Quotient, Root, Term, Trig, term
from explain.exact.interval import Sizes, middle
from explain.mechanics.letters import subscripts
from explain.problem.course import Course
from explain.solve.answers import spelled as unit_name
from explain.solve.board import Board, Units, sums, unit_of
from explain.solve.comparable_numbers import (
    Beside,
    equal,
    growing,
    in_one_place,
    nothing_over,
    signed,
    spelled,
    to_like_figures,
)
from explain.solve.float_sizes import FloatSizes
from explain.solve.outcome import number

NARROW = "\u202f"


def yes(_: Sequence[Decimal]) -> bool:
    return True


def no(_: Sequence[Decimal]) -> bool:
    return False


def texts(of: Beside) -> tuple[bool, str]:
    return of.true, " ".join(of.texts)


# ---------------------------------------------------------------------- numbers side by side
@pytest.mark.parametrize(
    ("value", "plain", "with_sign"),
    [
        ("1234", "1234", "+1234"),
        ("12345", f"12{NARROW}345", f"+12{NARROW}345"),
        ("-1234567.5", f"−1{NARROW}234{NARROW}567.5", f"−1{NARROW}234{NARROW}567.5"),
        ("0.001", "0.001", "+0.001"),
        ("1.2E+4", f"12{NARROW}000", f"+12{NARROW}000"),
        ("-3", "−3", "−3"),
        ("0", "0", "+0"),
    ],
)
def test_a_number_has_a_true_minus_and_its_thousands_apart(value: str, plain: str, with_sign: str) -> None:
    assert (plain, with_sign) == (spelled(Decimal(value)), signed(Decimal(value)))


@pytest.mark.parametrize(
    ("values", "figures", "most", "ties", "said", "true", "written"),
    [
        ([123.456, -10.0456], 3, 5, "up", yes, True, "123 −10"),
        ([123.456, -10.0456], 3, 5, "up", no, False, "123 −10"),
        ([123.456, -0.0456], 3, 5, "up", yes, True, "123.46 −0.05"),  # the smallest still shows a figure
        ([1e9, 1.0], 3, 4, "up", yes, True, f"1{NARROW}000{NARROW}000{NARROW}000 0"),  # but not what is negligible
        ([100.4, -60.3, -40.4], 3, 5, "up", nothing_over, True, "100 −60 −40"),
        ([100.4, -60.6, -39.8], 3, 5, "up", nothing_over, True, "100.4 −60.6 −39.8"),
        ([100.46, -60.63, -39.83], 3, 5, "up", nothing_over, True, "100.46 −60.63 −39.83"),
        ([100.46, -60.63, -39.83], 3, 4, "up", nothing_over, False, "100 −61 −40"),
        ([12345.0, -12345.0], 2, 5, "even", yes, True, f"12{NARROW}000 −12{NARROW}000"),
        ([2.5, 100.0], 3, 4, "even", yes, True, "2 100"),
        ([2.5, 100.0], 3, 4, "up", yes, True, "3 100"),
        ([0.0, 0.0], 2, 5, "even", no, False, "0 0"),
        ([0.0, 3.21], 2, 5, "up", yes, True, "0.0 3.2"),
    ],
)
def test_numbers_in_one_place_are_as_fine_as_what_is_said_of_them_needs(
    values: list[float],
    figures: int,
    most: int,
    ties: str,
    said: Callable[[Sequence[Decimal]], bool],
    true: bool,
    written: str,
) -> None:
    assert (true, written) == texts(in_one_place(values, figures, most, ties, said))


@pytest.mark.parametrize(
    ("values", "figures", "said", "true", "written"),
    [
        ([1.2345, 1.2355], 3, growing, True, "1.23 1.24"),
        ([1.2345, 1.2365], 2, growing, True, "1.23 1.24"),
        ([1.23451, 1.23459], 2, growing, False, "1.2 1.2"),
        ([1.2345, 1.2349], 3, growing, True, "1.2345 1.2349"),
        ([12345.0, 1.25], 2, yes, True, f"12{NARROW}000 1.3"),
        ([-2.0, 2.0], 2, equal, False, "−2.0 2.0"),
    ],
)
def test_numbers_of_like_figures_get_two_more_at_most(
    values: list[float], figures: int, said: Callable[[Sequence[Decimal]], bool], true: bool, written: str
) -> None:
    assert (true, written) == texts(to_like_figures(values, figures, "up", said))


def test_the_total_is_that_of_the_numbers_as_written() -> None:
    assert Decimal("113") == in_one_place([123.456, -10.0456], 3, 5, "up", yes).total


def test_what_may_be_said_of_numbers() -> None:
    one, two, three, none = map(Decimal, (1, 2, 3, 0))
    assert [True, False, False] == [nothing_over(each) for each in ([one, -one], [none, none], [two, -one])]
    assert [True, False, False] == [growing(each) for each in ([one, two, three], [one, two, two], [two, one])]
    assert [True, False] == [equal(each) for each in ([one, one], [one, two])]


@pytest.mark.parametrize(
    ("value", "figures", "ties", "written"),
    [
        (1e-10, 3, "up", "0"),
        (1.1e-9, 3, "up", "0.00000000110"),
        (-12345.67, 3, "up", f"−12{NARROW}300"),
        (0.125, 2, "even", "0.12"),
        (0.125, 2, "up", "0.13"),
        (-0.0005, 3, "up", "−0.000500"),
        (1 / 3, 4, "up", "0.3333"),
        (0.1 + 0.2, 3, "up", "0.300"),
    ],
)
def test_a_number_is_written_to_its_figures(value: float, figures: int, ties: str, written: str) -> None:
    assert written == number(value, figures, ties)


# ---------------------------------------------------------------------- units
def q(value: str, unit: str = "") -> Quantity:
    return Quantity.of(value, unit)


def over(top: Factor | None, bottom: Factor) -> Quotient:
    return Quotient((term(top),) if top else (), (term(bottom),))


G = q("9.81", "m s^-2")


@pytest.mark.parametrize(
    ("factors", "unit"),
    [
        ((q("3", "kg"), G), "N"),
        ((q("3", "%"), q("9", "cm")), "cm"),
        ((q("3", "N"), q("9", "cm")), "N cm"),
        ((q("3", "N"), q("9", "cm"), q("2", "m")), "N cm^2"),
        ((q("4", "N"), over(q("3", "cm"), q("3", "cm"))), "N"),
        ((q("4", "N"), over(q("3", "cm"), q("3", "m"))), "N"),
        ((over(q("3", "N"), q("9.81", "m s^-2")),), "kg"),
        ((over(q("3", "N"), q("2", "cm^2")),), "N/cm^2"),
        ((q("15", "N m^-1"), q("3", "cm")), "N"),
        ((q("3", "kg"), G, q("2", "cm")), "N m"),
        ((q("3", "cm"), q("2", "m")), "cm^2"),
        ((over(q("3", "cm"), q("2", "cm")),), ""),
        ((Inverse("sin", (term(q("0.5")),)),), "deg"),
        ((Root((term(q("4", "N"), q("4", "N")),)),), "N"),
        ((Root(()), q("4", "N")), "N"),
        ((Power(q("3", "N"), 2),), "N^2"),
        ((Group((term(q("3", "cm")),)), Group(())), "cm"),
        ((Trig("sin", q("30", "deg")), q("2", "m")), "m"),
        ((q("3", "N"), over(None, q("2", "cm"))), "N/cm"),
    ],
)
def test_the_unit_of_a_product(factors: tuple[Factor, ...], unit: str) -> None:
    assert unit == unit_name(unit_of(factors, Units()))


def test_units_that_a_product_has_none_of_are_those_of_the_answers() -> None:
    pounds = Units(length="ft", force="lbf", mass="lb")
    assert "lb" == unit_name(unit_of((q("3", "lb"), q("32", "ft s^-2")), pounds))
    assert "lb" == unit_name(unit_of((over(q("3", "lbf"), q("32", "ft s^-2")),), pounds))
    assert "m lb" == unit_name(unit_of((q("3", "kg"), G, q("2", "m")), pounds))


@pytest.mark.parametrize(
    ("unit", "written"),
    [
        ("N", "N"),
        ("lbf", "lb"),
        ("N cm", "N cm"),
        ("lbf in", "in lb"),
        ("N cm^-2", "N/cm^2"),
        ("lbf in^-1", "lb/in"),
        ("m s^-2", "m/s^2"),
        ("cm^2", "cm^2"),
        ("", ""),
    ],
)
def test_a_unit_is_spelled_as_people_write_it(unit: str, written: str) -> None:
    assert written == unit_name(q("1", unit).unit)


# ---------------------------------------------------------------------- numbers on the way
def worked_out(of: Factor, course: Course | None = None, least: int = 1) -> tuple[int, str, bool]:
    """The sign, the number with its unit, and whether it is exact."""
    found = Board(None, "", course=course or Course()).number(term(of), least=least)
    (written,) = found.factors
    assert isinstance(written, Number)
    exact = isinstance(written, Quantity)
    return found.sign, f"{written.written.number:f} {unit_name(written.written.unit)}".strip(), exact


def test_a_number_that_comes_out_exactly_is_written_whole_and_others_to_the_working_figures() -> None:
    third, minus = over(q("2", "N"), q("3")), over(q("-2", "N"), q("3"))
    assert [
        (1, "0.66667 N", False),
        (-1, "0.66667 N", False),
        (1, "0.5 N", True),
        (-1, "0.5 N", True),
        (1, "0 N", True),
        (1, "1200 N", True),
    ] == [
        worked_out(each)
        for each in (
            third,
            minus,
            over(q("1", "N"), q("2")),
            over(q("-1", "N"), q("2")),
            over(q("0", "N"), q("2")),
            over(q("2400", "N"), q("2")),
        )
    ]
    assert (1, "0.67 N", False) == worked_out(third, Course(working_figures=2))
    assert (1, "0.666667 N", False) == worked_out(third, Course(working_figures=2), least=6)
    assert (1, "123460 N", False) == worked_out(over(q("370370", "N"), q("3")))


def test_an_angle_that_is_gone_on_with_is_no_finer_than_a_millionth_of_a_degree() -> None:
    angle = Inverse("sin", (term(over(q("1"), q("3"))),))
    assert ["19.471221 deg", "19.47122063 deg", "19.471 deg"] == [
        worked_out(angle, course)[1]
        for course in (
            Course(carry="as shown", working_figures=10),
            Course(working_figures=10),
            Course(carry="as shown", working_figures=5),
        )
    ]


@pytest.mark.parametrize(
    ("size", "carried", "shown"),
    [
        ("969.496", "969.496", "969.50"),  # not 969.50, which anyone would round to 970
        ("969.4996", "969.4996", "969.50"),
        ("969.504", "969.50", "969.50"),
        ("969.5", "969.50", "969.50"),
        ("969.51", "969.51", "969.51"),
        ("968.996", "969.00", "969.00"),
        ("123.4499", "123.45", "123.45"),
    ],
)
def test_a_number_is_rounded_so_that_the_answer_does_not_seem_wrong(size: str, carried: str, shown: str) -> None:
    boards = [Board(None, "", course=Course(carry=each)) for each in ("unrounded", "as shown")]
    assert [carried, shown] == [str(board.rounded(Fraction(size))) for board in boards]


def test_sums_are_found_inner_ones_first() -> None:
    inner = [term(q(str(each))) for each in range(1, 9)]
    one, two, three, four, five, six, seven, eight = inner
    whole = (
        term(
            Group((one,)),
            Quotient((two,), (three,)),
            Root((four,)),
            Inverse("sin", (five,)),
            Power(Group((six,)), 2),
            Trig("sin", Group((seven,))),
            Power(q("2"), 2),
        ),
        eight,
    )
    assert [*((each,) for each in inner[:7]), whole] == list(sums(whole))


# ---------------------------------------------------------------------- a second reading in floats
def test_a_line_is_read_in_floats_as_in_intervals() -> None:
    """Every kind of factor, by two readings that share no arithmetic."""
    sine, root = Trig("sin", q("30", "deg")), Root((term(q("9", "m^2")),))
    terms = (
        Term(1, (q("6.0", "cm"), sine)),
        Term(-1, (Group((term(q("1", "m")), term(q("20", "cm"), sign=-1))),)),
        Term(1, (root,)),
        Term(1, (over(q("8", "m^2"), q("20", "cm")),)),
        Term(1, (Trig("tan", q("45", "deg")), Trig("cos", q("60", "deg")), q("1", "ft"))),
        Term(1, (Power(q("2"), 3), q("1", "in"))),
    )
    exact = middle(Sizes({}).sum(terms))
    assert pytest.approx(float(exact), rel=1e-12) == FloatSizes({}, unrounded=True).sum(terms)
    angles = (Inverse("sin", (term(q("0.5")),)), Inverse("cos", (term(q("0.25")),)), Inverse("tan", (term(q("3")),)))
    for each in angles:
        assert pytest.approx(float(middle(Sizes({}).sum((term(each),)))), rel=1e-12) == FloatSizes(
            {}, unrounded=True
        ).sum((term(each),))


# ---------------------------------------------------------------------- subscripts
@pytest.mark.parametrize(
    ("names", "letters"),
    [
        ("biceps", "B"),
        ("biceps, brachialis", "Bi Br"),
        ("left rope, right rope, lamp", "LR R La"),
        ("forearm and hand, flexors", "FH Fl"),
        ("the hand, a hook", "Ha Ho"),
        ("B, biceps", "B Bi"),
        ("jug, Jug", "Ju Jug"),
        ("jug, jug 2", "Ju J2"),
        ("x_1, y", "X Y"),
        ("a, b, a b", "A B B1"),
        ("left hand, left heel", "LH Le"),
        ("5 kg, water", "5 W"),
        ("–, water", "X W"),
    ],
)
def test_a_subscript_is_short_and_of_one_name_alone(names: str, letters: str) -> None:
    assert letters.split() == list(subscripts(names.split(", ")).values())
