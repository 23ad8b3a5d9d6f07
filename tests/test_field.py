"""The prime field against exact algebra (sympy, in letters) and against fifty digits (mpmath)."""

from __future__ import annotations

import random
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
import sympy
from fifty_digits import NEAR, worth
from hypothesis import given
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
from explain.exact.dimensions import Unlike, kind_of, well_formed
from explain.exact.prime_field import Field, Inexact, Redraw, dimension, scale

Q = Quantity.of
LETTERS = tuple(Letter(name, name) for name in "abcde")
A, B = LETTERS[:2]
FIELD = Field(random.Random(20))


def same(one: Terms, other: Terms, field: Field = FIELD) -> bool:
    return field.sum(one) == field.sum(other)


def one(*factors: Factor, sign: int = 1) -> Terms:
    return (term(*factors, sign=sign),)


def less(one_side: Terms, other: Terms) -> Terms:
    return (*one_side, *(each.flipped() for each in other))


# ---------------------------------------------------------------------- in letters, against sympy
def numbers() -> st.SearchStrategy[Quantity]:
    return st.integers(1, 9999).flatmap(lambda n: st.integers(0, 3).map(lambda k: Quantity(Decimal(n).scaleb(-k))))


def polynomials() -> st.SearchStrategy[Terms]:
    """Sums of products of numbers, letters, powers, brackets and quotients."""
    atoms: st.SearchStrategy[Factor] = st.one_of(
        numbers(), st.sampled_from(LETTERS), st.sampled_from(LETTERS).map(lambda each: Power(each, 2))
    )

    def sums(factors: st.SearchStrategy[Factor]) -> st.SearchStrategy[Terms]:
        return st.lists(
            st.tuples(st.sampled_from((1, -1)), st.lists(factors, min_size=1, max_size=3)).map(
                lambda both: Term(both[0], tuple(both[1]))
            ),
            min_size=1,
            max_size=3,
        ).map(tuple)

    return sums(
        st.recursive(
            atoms,
            lambda inner: st.one_of(
                sums(inner).map(Group),
                st.tuples(sums(inner), st.sampled_from(LETTERS)).map(
                    lambda both: Quotient(both[0], one(both[1], Q("3")))
                ),
            ),
            max_leaves=6,
        )
    )


def algebra(terms: Terms) -> Any:
    """The same in sympy, exact."""
    return sympy.Add(*(each.sign * sympy.Mul(*(_algebra(factor) for factor in each.factors)) for each in terms))


def _algebra(factor: Factor) -> Any:
    match factor:
        case Letter(name=name):
            return sympy.Symbol(name)
        case Quantity(number=number):
            return sympy.Rational(*number.as_integer_ratio())
        case Group(terms):
            return algebra(terms)
        case Power(base, exponent):
            return _algebra(base) ** exponent
        case Quotient(top, bottom):
            return algebra(top) / algebra(bottom)
    raise AssertionError(factor)


def written(expression: Any) -> Terms:
    """A sympy polynomial over a monomial, written down again."""
    top, bottom = sympy.fraction(sympy.together(sympy.expand(expression)))
    return one(Quotient(_sum(top), _sum(bottom)))


def _sum(expression: Any) -> Terms:
    return tuple(_term(each) for each in sympy.Add.make_args(sympy.expand(expression)))


def _term(expression: Any) -> Term:
    number, rest = expression.as_coeff_Mul()
    factors: list[Factor] = [Quotient(one(Q(str(abs(number.p)))), one(Q(str(number.q))))]
    for base, exponent in rest.as_powers_dict().items():
        if base.is_Symbol:
            factors.append(Power(Letter(base.name, base.name), int(exponent)))
    return Term(-1 if number < 0 else 1, tuple(factors))


@given(polynomials())
def test_what_is_multiplied_out_by_exact_algebra_is_the_same_in_the_field(terms: Terms) -> None:
    assert same(terms, written(algebra(terms)))


@given(polynomials(), polynomials())
def test_two_expressions_are_the_same_in_the_field_just_where_they_are_in_exact_algebra(
    first: Terms, second: Terms
) -> None:
    assert same(first, second) == (sympy.expand(algebra(first) - algebra(second)) == 0)


@given(polynomials(), st.sampled_from(LETTERS), st.integers(1, 10**12))
def test_the_least_difference_is_seen(terms: Terms, letter: Letter, size: int) -> None:
    assert not same(terms, (*terms, Term(1, (letter, Quantity(Decimal(1) / size)))))


# ---------------------------------------------------------------------- sines and cosines, against fifty digits
def angles() -> st.SearchStrategy[Quantity]:
    return st.one_of(
        st.integers(0, 360).map(Decimal),
        st.integers(0, 360 * 10**6).map(lambda n: Decimal(n).scaleb(-6)),
        st.sampled_from(("18", "36", "72", "22.5", "15", "45", "30", "60", "90", "180")).map(Decimal),
    ).map(lambda n: Quantity(n, (("deg", 1),)))


def turned() -> st.SearchStrategy[Terms]:
    """Sums of numbers times sines, cosines and tangents."""
    ratios = st.one_of(
        st.builds(Trig, st.sampled_from(("sin", "cos")), angles()),
        st.builds(Trig, st.just("tan"), st.sampled_from((Q("20", "deg"), Q("71", "deg")))),
    )
    return st.lists(
        st.builds(Term, st.sampled_from((1, -1)), st.tuples(numbers(), ratios)), min_size=1, max_size=4
    ).map(tuple)


def near(first: Terms, second: Terms) -> bool:
    return bool(abs(worth(less(first, second), {})) < NEAR * (1 + abs(worth(first, {}))))


@given(turned(), turned())
def test_two_numbers_are_the_same_in_the_field_just_where_fifty_digits_agree(first: Terms, second: Terms) -> None:
    assert same(first, second) == near(first, second)


@given(angles(), angles(), numbers())
def test_products_of_sines_are_sums_of_cosines(x: Quantity, y: Quantity, number: Quantity) -> None:
    """2 sin x sin y = cos(x − y) − cos(x + y), and the field sees it in the angle written as a sum."""
    product = one(number, Q("2"), Trig("sin", x), Trig("sin", y))
    difference, total = Group((term(x), Term(-1, (y,)))), Group((term(x), term(y)))
    split = (term(number, Trig("cos", difference)), Term(-1, (number, Trig("cos", total))))
    assert near(product, split)
    assert same(product, split)
    assert not same(product, (split[0], split[1].flipped())) or near(product, (split[0], split[1].flipped()))


@given(angles())
def test_squares_of_sine_and_cosine_make_one(x: Quantity) -> None:
    assert same((term(Power(Trig("sin", x), 2)), term(Power(Trig("cos", x), 2))), one(Q("1")))


@pytest.mark.parametrize(
    ("left", "right"),
    (
        (one(Trig("sin", Q("30", "deg"))), one(Q("0.5"))),
        (one(Trig("cos", Q("60", "deg"))), one(Q("0.5"))),
        (one(Trig("tan", Q("45", "deg"))), one(Q("1"))),
        (one(Trig("sin", Q("180", "deg"))), ()),
        (one(Trig("cos", Q("180", "deg"))), one(Q("1"), sign=-1)),
        (one(Power(Trig("cos", Q("30", "deg")), 2)), one(Q("0.75"))),
        ((term(Q("4"), Power(Trig("sin", Q("18", "deg")), 2)), term(Q("2"), Trig("sin", Q("18", "deg")))), one(Q("1"))),
    ),
)
def test_sines_that_are_known_exactly_are_exact(left: Terms, right: Terms) -> None:
    assert same(left, right)


def test_a_sine_that_only_nearly_is_a_decimal_is_not_one() -> None:
    """sin 20° to forty digits is still not sin 20°."""
    assert not same(one(Trig("sin", Q("20", "deg"))), one(Q("0.3420201433256687330440996146822595807630")))


def test_a_letter_for_an_angle_obeys_the_same_laws() -> None:
    theta = Letter("*angle shank", "theta")
    shifted = Trig("sin", Group((term(theta), term(Q("40", "deg")))))
    spread = (
        term(Trig("sin", theta), Trig("cos", Q("40", "deg"))),
        term(Trig("cos", theta), Trig("sin", Q("40", "deg"))),
    )
    assert same(one(shifted), spread)
    assert not same(one(Trig("sin", theta)), one(Trig("cos", theta)))


# ---------------------------------------------------------------------- units, roots, what has no place
def test_a_length_is_no_mass_though_both_are_one() -> None:
    assert not same(one(Q("1", "m")), one(Q("1", "kg")))
    assert same(one(Q("1", "N")), one(Q("1", "kg m s^-2")))
    assert same(one(Q("100", "cm")), one(Q("1", "m")))
    assert same(one(Q("1", "lbf")), one(Q("4.4482216152605", "N")))


def test_each_field_draws_its_own_prime_and_letters() -> None:
    fields = [Field() for _ in range(3)]
    assert len({field.p for field in fields}) == 3
    assert len({field.letter("a") for field in fields}) == 3
    assert all(sympy.isprime(field.p) and field.p.bit_length() in (126, 127) for field in fields)


def test_a_fresh_field_keeps_the_prime_and_forgets_the_letters() -> None:
    field = Field(random.Random(3))
    fresh = field.fresh()
    assert fresh.p == field.p
    assert fresh.letter("a") != field.letter("a")


def rooted(square: Quantity) -> tuple[Field, int]:
    """A field in which a number has a root, and the root."""
    for seed in range(200):
        field = Field(random.Random(seed))
        try:
            return field, field.factor(Root(one(square)))
        except Redraw:
            continue
    raise AssertionError("no prime with a root")


@pytest.mark.parametrize("number", ("2", "25", "0.5", "1947.3"))
def test_the_square_of_a_root_is_what_it_is_the_root_of(number: str) -> None:
    field, found = rooted(Q(number))
    assert found * found % field.p == field.factor(Q(number))
    assert field.factor(Root(one(Q(number)))) == found


@pytest.mark.parametrize("name", ("sin", "cos", "tan"))
def test_an_inverse_function_is_undone_by_its_function(name: str) -> None:
    for seed in range(200):
        field = Field(random.Random(seed))
        try:
            angle = Group(one(Inverse(name, one(Q("0.83")))))
            assert field.factor(Trig(name, angle)) == field.factor(Q("0.83"))
            return
        except Redraw:
            continue
    raise AssertionError("no prime with a root")


def test_a_rounded_number_is_what_it_stands_for() -> None:
    assert same(
        one(Shown(Q("0.33", "m"), term(Quotient(one(Q("1", "m")), one(Q("3")))))),
        one(Quotient(one(Q("1", "m")), one(Q("3")))),
    )


@pytest.mark.parametrize(
    "terms",
    (
        one(Q("3", "furlong")),
        one(Trig("sin", Q("3"))),
        one(Trig("sin", Q("0.0000001", "deg"))),
        one(Inverse("sin", one(Q("0.5")))),
    ),
)
def test_what_has_no_place_in_the_field_is_said_so(terms: Terms) -> None:
    with pytest.raises(Inexact):
        FIELD.sum(terms)


def test_a_denominator_that_vanishes_asks_for_another_prime() -> None:
    with pytest.raises(Redraw):
        FIELD.sum(one(Quotient(one(A), (term(B), Term(-1, (B,))))))


@given(st.integers(-(10**30), 10**30), st.integers(1, 10**12))
def test_fractions_keep_their_arithmetic(top: int, bottom: int) -> None:
    assert FIELD.fraction(Fraction(top, bottom)) * bottom % FIELD.p == top % FIELD.p


def test_units_multiply() -> None:
    assert scale((("N", 1), ("cm", 1))) == Fraction(1, 100)
    assert dimension((("N", 1), ("cm", -2))) == (1, -1, -2)


# The SI Brochure, and for inch, foot, pound and pound-force NIST Special Publication 811, appendix B.8: a factor, and
# powers of kg, m and s.
UNIT_TABLE = {
    "kg": ("1", (1, 0, 0)),
    "g": ("0.001", (1, 0, 0)),
    "lb": ("0.45359237", (1, 0, 0)),
    "m": ("1", (0, 1, 0)),
    "cm": ("0.01", (0, 1, 0)),
    "mm": ("0.001", (0, 1, 0)),
    "in": ("0.0254", (0, 1, 0)),
    "ft": ("0.3048", (0, 1, 0)),
    "s": ("1", (0, 0, 1)),
    "N": ("1", (1, 1, -2)),
    "kN": ("1000", (1, 1, -2)),
    "lbf": ("4.4482216152605", (1, 1, -2)),
    "%": ("0.01", (0, 0, 0)),
}


def test_the_checkers_own_units_are_those_of_the_tables() -> None:
    from fractions import Fraction

    from explain.exact.prime_field import UNITS

    assert {name: (Fraction(factor), powers) for name, (factor, powers) in UNIT_TABLE.items()} == UNITS


# ---------------------------------------------------------------------- kinds
# Twice the powers of kilogram, metre, second and degree; a newton is a kilogram metre per second squared.
KINDS = (
    (one(Q("3")), (0, 0, 0, 0)),
    ((), (0, 0, 0, 0)),
    (one(Q("3", "kg")), (2, 0, 0, 0)),
    (one(Q("3", "cm")), (0, 2, 0, 0)),
    (one(Q("3", "N")), (2, 2, -4, 0)),
    (one(Q("3", "lbf")), (2, 2, -4, 0)),
    (one(Q("3", "%")), (0, 0, 0, 0)),
    (one(Q("30", "deg")), (0, 0, 0, 2)),
    (one(Q("3", "N"), Q("4", "cm")), (2, 4, -4, 0)),
    ((*one(Q("3", "N")), *one(Q("2", "lbf"), sign=-1)), (2, 2, -4, 0)),
    (one(Quotient(one(Q("3", "N m")), one(Q("4", "cm")))), (2, 2, -4, 0)),
    (one(Group((*one(Q("1", "m")), *one(Q("2", "cm")))), Q("3", "kg")), (2, 2, 0, 0)),
    (one(Power(Q("3", "N"), 2)), (4, 4, -8, 0)),
    (one(Power(Q("3", "m"), -1)), (0, -2, 0, 0)),
    (one(Root(one(Q("3", "N^2")))), (2, 2, -4, 0)),
    (one(Root(one(Q("3", "m")))), (0, 1, 0, 0)),
    *((one(Root(one(Power(Q("3", unit), 2)))), kind_of(one(Q("3", unit)))) for unit in ("kg", "m", "s", "deg")),
    (one(Trig("sin", Q("30", "deg"))), (0, 0, 0, 0)),
    (one(Inverse("sin", one(Q("0.3")))), (0, 0, 0, 2)),
    (one(Shown(Q("3.0", "N"), term(Q("3", "m")))), (2, 2, -4, 0)),  # by the unit that is written
)


@pytest.mark.parametrize(("terms", "kind"), KINDS)
def test_a_kind_is_told_by_the_powers_of_its_units(terms: Terms, kind: tuple[int, ...]) -> None:
    assert kind_of(terms) == kind


@pytest.mark.parametrize(
    "terms",
    (
        (*one(Q("3", "N")), *one(Q("4", "m"))),
        (*one(Q("3", "deg")), *one(Q("4"))),
        one(Group((*one(Q("3", "N")), *one(Q("4", "kg"))))),
        one(Quotient(one(Q("3", "N")), (*one(Q("4", "m")), *one(Q("4"))))),
        *(one(Root(one(Root(one(Q("3", unit)))))) for unit in ("kg", "m", "s", "deg")),
    ),
)
def test_unlike_kinds_are_not_added_and_no_root_is_taken_of_what_is_no_square(terms: Terms) -> None:
    with pytest.raises(Unlike):
        kind_of(terms)


WELL = (Letter("a", "a"), Q("3", "N"), Shown(Q("3", "N"), Term(2, ())))
ILL: tuple[Any, ...] = (
    Trig("sec", Q("30", "deg")),
    Power(Q("3"), 0.5),  # type: ignore[arg-type]
    Inverse("exp", one(Q("1"))),
    Group((Term(2, ()),)),
    "3 N",
)


@pytest.mark.parametrize("factor", WELL)
def test_what_is_made_of_what_is_well_formed_is_so_too(factor: Factor) -> None:
    assert all(well_formed(one(each)) for each in (factor, *_made_of(factor)))


@pytest.mark.parametrize("factor", ILL)
def test_what_is_made_of_what_is_ill_formed_is_so_too(factor: Factor) -> None:
    assert not any(well_formed(one(each)) for each in (factor, *_made_of(factor)))


def _made_of(factor: Factor) -> tuple[Factor, ...]:
    return (
        *(Trig(name, factor) for name in ("sin", "cos", "tan")),
        *(Inverse(name, one(factor)) for name in ("sin", "cos", "tan")),
        Quotient(one(factor), one(Q("1"))),
        Quotient(one(Q("1")), one(factor)),
        Group((*one(Q("1")), *one(factor, sign=-1))),
        Group(one(Q("1"), factor)),
        Root(one(factor)),
        Power(factor, 2),
        Power(factor, -1),
    )
