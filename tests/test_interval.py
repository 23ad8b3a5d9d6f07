"""Sizes between bounds against seventy digits, and rounding as a class does it."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from fifty_digits import Worthless, mp, worth
from hypothesis import assume, given
from hypothesis import strategies as st

from explain.equation.terms import (
    Factor,
    Group,
    Inverse,
    Letter,
    Power,
    Quantity,
    Quotient,
    Root,
    Shown,
    Term,
    Terms,
    Trig,
    term,
)
from explain.exact.interval import (
    DEPTH,
    Bounds,
    Sizes,
    Undefined,
    Value,
    fraction,
    in_unit,
    place,
    rounded,
    sign,
    to_figures,
)

Q = Quantity.of
ANGLE = Letter("*angle shank", "theta")
KNOWN: dict[str, Terms] = {
    "length": (term(Q("0.35", "m")),),
    "*angle shank": (term(Q("56.3", "deg")),),
    "back": (Term(-1, (Q("2.5", "N"),)),),
    "none": (),
}


def size(*factors: Factor, sign_: int = 1) -> Value:
    return Sizes(KNOWN).sum((Term(sign_, factors),))


# ---------------------------------------------------------------------- bounds
def numbers() -> st.SearchStrategy[Quantity]:
    return st.integers(1, 9999).flatmap(lambda n: st.integers(-1, 3).map(lambda k: Quantity(Decimal(n).scaleb(-k))))


def expressions() -> st.SearchStrategy[Terms]:
    """Numbers under every function there is."""

    def sums(factors: st.SearchStrategy[Factor]) -> st.SearchStrategy[Terms]:
        return st.lists(
            st.builds(Term, st.sampled_from((1, -1)), st.lists(factors, min_size=1, max_size=2).map(tuple)),
            min_size=1,
            max_size=3,
        ).map(tuple)

    degrees = st.integers(0, 36000).map(lambda n: Quantity(Decimal(n).scaleb(-2), (("deg", 1),)))
    atoms: st.SearchStrategy[Factor] = st.one_of(
        numbers(), st.builds(Trig, st.sampled_from(("sin", "cos", "tan")), degrees)
    )
    return sums(
        st.recursive(
            atoms,
            lambda inner: st.one_of(
                sums(inner).map(Group),
                sums(inner).map(Root),
                st.builds(Quotient, sums(inner), sums(inner)),
                st.builds(Power, inner, st.sampled_from((-2, -1, 2, 3))),
                st.builds(
                    lambda name, terms, ratio: Trig(ratio, Group((term(Inverse(name, terms)),))),
                    st.sampled_from(("sin", "cos", "tan")),
                    sums(inner),
                    st.sampled_from(("sin", "cos")),
                ),
            ),
            max_leaves=6,
        )
    )


def _exactly(terms: Terms) -> Any:
    try:
        return worth(terms, {})
    except Worthless:
        assume(False)


def test_one_over_nothing_has_no_value() -> None:
    for nothing in (Quantity.of("0"), Trig("sin", Quantity.of("0", "deg"))):
        with pytest.raises(Undefined):
            Sizes({}).sum((Term(1, (Power(nothing, -2),)),))


@given(expressions())
def test_the_value_lies_between_its_bounds_and_they_are_close(terms: Terms) -> None:
    exact = _exactly(terms)
    assume(abs(exact) < 10**8)
    try:
        found = Sizes({}).sum(terms)
    except Undefined:
        assume(False)
    middle = fraction(found)
    assert abs(mp.mpf(middle.numerator) / middle.denominator - exact) < mp.mpf(10) ** -30
    if isinstance(found, Bounds):
        unit = mp.mpf(2) ** -DEPTH
        assert found.low * unit - mp.mpf(10) ** -60 <= exact <= found.high * unit + mp.mpf(10) ** -60


@given(expressions())
def test_a_sign_is_told_rightly_or_not_at_all(terms: Terms) -> None:
    exact = _exactly(terms)
    try:
        found = sign(Sizes({}).sum(terms))
    except Undefined:
        assume(False)
    assert found in (0, 1 if exact > 0 else -1)
    assert found != 0 or abs(exact) < mp.mpf(10) ** -25


@pytest.mark.parametrize(
    ("found", "exact"),
    (
        (size(Trig("sin", Q("30", "deg"))), Fraction(1, 2)),
        (size(Trig("cos", Q("60", "deg"))), Fraction(1, 2)),
        (size(Trig("sin", Q("270", "deg"))), Fraction(-1)),
        (size(Trig("cos", Q("90", "deg"))), Fraction(0)),
        (size(Root((term(Q("2.25")),))), Fraction(3, 2)),
        (size(Inverse("sin", (term(Q("0.5")),))), Fraction(30)),
        (size(Inverse("cos", (term(Q("0.5")),))), Fraction(60)),
        (size(Inverse("cos", (term(Q("1"), sign=-1),))), Fraction(180)),
        (size(Quotient((term(Q("1", "m")),), (term(Q("3", "cm")),))), Fraction(100, 3)),
        (size(Power(Q("2"), -2)), Fraction(1, 4)),
        (size(Power(Q("3"), 0)), Fraction(1)),
        (size(Power(Q("0"), 0)), Fraction(1)),
        (size(Power(Root((term(Q("2")),)), 0)), Fraction(1)),
        (size(Root((term(Q("0")),))), Fraction(0)),
        (size(Root(())), Fraction(0)),
        (size(Q("12.5", "in")), Fraction(127, 400)),
        (size(Q("7.5", "lbf")), Fraction("7.5") * Fraction("4.4482216152605")),
    ),
)
def test_what_is_rational_stays_exact(found: Value, exact: Fraction) -> None:
    assert found == exact


@pytest.mark.parametrize(
    "factor",
    (
        Power(Q("0"), -1),
        Quotient((term(Q("1")),), ()),
        Quotient((term(Q("1")),), (term(Q("1")), Term(-1, (Q("1"),)))),
        Root((Term(-1, (Q("1"),)),)),
        Inverse("sin", (term(Q("1.01")),)),
        Inverse("cos", (Term(-1, (Q("2"),)),)),
        Trig("tan", Q("90", "deg")),
        Letter("nobody", "n"),
    ),
)
def test_what_has_no_value_is_said_so(factor: Factor) -> None:
    with pytest.raises(Undefined):
        size(factor)


@pytest.mark.parametrize(
    ("name", "ratio", "degrees"),
    [
        ("sin", "0", 0),
        ("sin", "1", 90),
        ("sin", "-1", -90),
        ("sin", "-0.5", -30),
        ("cos", "0", 90),
        ("cos", "1", 0),
        ("cos", "-0.5", 120),
    ],
)
def test_the_angles_of_whole_and_half_ratios_are_exact(name: str, ratio: str, degrees: int) -> None:
    assert size(Inverse(name, (term(Q(ratio)),))) == degrees


@pytest.mark.parametrize(
    ("top", "bottom", "expected"), [(2, 3, 1), (1, 3, 0), (-2, 3, -1), (5, 3, 2), (4, 7, 1), (3, 7, 0)]
)
def test_what_is_a_little_more_than_a_half_is_rounded_up(top: int, bottom: int, expected: int) -> None:
    assert [Decimal(expected)] * 2 == [rounded(Fraction(top, bottom), 0, ties) for ties in ("up", "even")]


def test_letters_are_looked_up_with_their_signs() -> None:
    assert [size(Letter(name, name)) for name in ("length", "back", "none")] == [
        Fraction(35, 100),
        Fraction(-5, 2),
        Fraction(0),
    ]


def test_a_rounded_number_is_as_large_as_what_it_stands_for() -> None:
    assert size(Shown(Q("0.33"), term(Quotient((term(Q("1")),), (term(Q("3")),))))) == Fraction(1, 3)


def test_what_has_no_letters_is_worked_out_once_for_all_who_adopt_it() -> None:
    """Bounds are made anew each time they are worked out; a letter has a value of its own in each."""
    first, second = Sizes({"a": (term(Q("3")),)}), Sizes({"a": (term(Q("5")),)})
    second.adopt(first)
    number, letter = term(Root((term(Q("2")),))), term(Letter("a", "a"))
    assert isinstance(first.term(number), Bounds) and second.term(number) is first.term(number)
    assert [each.term(letter) for each in (first, second)] == [3, 5]


def test_a_value_is_read_in_a_unit() -> None:
    assert in_unit(Fraction(35, 100), (("cm", 1),)) == 35
    assert in_unit(Fraction(30), (("deg", 1),)) == 30


# ---------------------------------------------------------------------- rounding
# Half even after NIST SP 811 (2008), B.7.1, whose examples the first three are; half up as most classes do it; each
# decimal by
# hand, never the binary float (for which 2.675 is less than it is written).
ROUNDED = (
    ("6.9749515", -6, "6.974952", "6.974952"),
    ("6.974950515", -6, "6.974951", "6.974951"),
    ("6.9749505", -6, "6.974951", "6.974950"),
    ("2.675", -2, "2.68", "2.68"),
    ("0.125", -2, "0.13", "0.12"),
    ("24.5", 0, "25", "24"),
    ("25.5", 0, "26", "26"),
    ("1.005", -2, "1.01", "1.00"),
    ("2.5", 0, "3", "2"),
    ("0.285", -2, "0.29", "0.28"),
    ("0.5", 0, "1", "0"),
    ("1.5", 0, "2", "2"),
    ("9.5", 0, "10", "10"),
    ("0.05", -1, "0.1", "0.0"),
    ("1250", 2, "1.3E+3", "1.2E+3"),
    ("99.95", -1, "100.0", "100.0"),
    ("0.0449999999", -2, "0.04", "0.04"),
    ("24.50000001", 0, "25", "25"),
)


@pytest.mark.parametrize(("number", "last", "up", "even"), ROUNDED)
def test_halves_are_rounded_as_the_class_does_it(number: str, last: int, up: str, even: str) -> None:
    found = [str(rounded(Fraction(number), last, ties)) for ties in ("up", "even")]
    assert found == [up, even]


@pytest.mark.parametrize(
    ("number", "last", "up", "even"), [each for each in ROUNDED if float(each[2]) and float(each[3])]
)
def test_a_negative_number_is_rounded_like_its_opposite(number: str, last: int, up: str, even: str) -> None:
    found = [rounded(-Fraction(number), last, ties) for ties in ("up", "even")]
    assert found == [-Decimal(up), -Decimal(even)]


@given(st.decimals(-(10**6), 10**6, places=7), st.integers(-6, 3), st.sampled_from(("up", "even")))
def test_rounding_is_what_decimal_arithmetic_makes_of_it(number: Decimal, last: int, ties: str) -> None:
    way = {"up": "ROUND_HALF_UP", "even": "ROUND_HALF_EVEN"}[ties]
    assert rounded(Fraction(number), last, ties) == number.quantize(Decimal((0, (1,), last)), way)


@pytest.mark.parametrize(
    ("number", "figures", "shown"),
    (
        ("301.6575", 3, "302"),
        ("301.6575", 5, "301.66"),
        ("99.96", 3, "100"),
        ("0.0999996", 3, "0.100"),
        ("999.5", 3, "1.00E+3"),
        ("0.00012345", 2, "0.00012"),
        ("5.3", 3, "5.30"),
        ("1050.14", 3, "1.05E+3"),
        ("7", 1, "7"),
        ("123456", 2, "1.2E+5"),
    ),
)
def test_a_number_is_shown_to_so_many_figures(number: str, figures: int, shown: str) -> None:
    assert str(to_figures(Fraction(number), figures, "up")) == shown


@given(st.fractions(Fraction(1, 10**6), 10**9), st.integers(1, 8))
def test_the_last_place_belongs_to_the_first_figure(value: Fraction, figures: int) -> None:
    first = place(value, figures) + figures - 1
    assert Fraction(10) ** first <= value < Fraction(10) ** (first + 1)


def test_a_half_between_bounds_is_a_half() -> None:
    """1 + √2 · √2 / 4 is a half to sixty digits, and counts as one: up, or to the even digit."""
    value = size(Root((term(Q("2")),)), Root((term(Q("2")),)), Q("1.25"))
    assert isinstance(value, Bounds)
    assert [rounded(value, 0, ties) for ties in ("up", "even")] == [Decimal(3), Decimal(2)]
