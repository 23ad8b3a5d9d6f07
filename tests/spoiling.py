"""Every way to spoil a written line by one small slip. Knows the equation types and no mechanics."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from itertools import combinations
from typing import NamedTuple

from explain.equation.terms import (
    Equation,
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
    Unit,
    leaves,
)

INSTEAD = {
    "N": ("kN", "kg", "lbf"),
    "kN": ("N",),
    "lbf": ("N", "lb"),
    "lb": ("kg", "lbf"),
    "kg": ("g", "N", "lb"),
    "g": ("kg",),
    "m": ("cm", "ft"),
    "cm": ("m", "in", "mm"),
    "mm": ("cm",),
    "in": ("ft", "cm"),
    "ft": ("in",),
    "s": ("m",),
    "deg": ("%",),
    "%": ("deg",),
}
OTHER = {"sin": ("cos", "tan"), "cos": ("sin",), "tan": ("sin", "cos")}


class Spoilt(NamedTuple):
    """What was done to the line, and the line."""

    slip: str
    line: Equation


def spoil(line: Equation) -> Iterator[Spoilt]:
    """Each line that differs by one slip."""
    for slip, left in _sums(line.left):
        yield Spoilt(slip, replace(line, left=left))
    for slip, right in _sums(line.right):
        yield Spoilt(slip, replace(line, right=right))
    found = list(
        {leaf.name: leaf for leaf in (*leaves(line.left), *leaves(line.right)) if isinstance(leaf, Letter)}.values()
    )
    for one, two in combinations(found, 2):
        yield Spoilt(
            "two letters swapped", Equation(_swap(line.left, one, two), _swap(line.right, one, two), line.rounded)
        )


def _sums(terms: Terms) -> Iterator[tuple[str, Terms]]:
    for place, each in enumerate(terms):
        before, after = terms[:place], terms[place + 1 :]
        yield "a sign flipped", (*before, each.flipped(), *after)
        yield "a term dropped", (*before, *after)
        yield "a term doubled", (*before, each, each, *after)
        for slip, factors in _products(each.factors):
            yield slip, (*before, Term(each.sign, factors, each.source), *after)


def _products(factors: tuple[Factor, ...]) -> Iterator[tuple[str, tuple[Factor, ...]]]:
    for place, each in enumerate(factors):
        for slip, other in _factors(each):
            yield slip, (*factors[:place], other, *factors[place + 1 :])


def _factors(factor: Factor) -> Iterator[tuple[str, Factor]]:
    match factor:
        case Quantity():
            yield from _quantities(factor)
        case Shown(value, of):
            yield from ((slip, Shown(other, of)) for slip, other in _quantities(value))
        case Trig(name, angle):
            yield from (("another function", Trig(other, angle)) for other in OTHER[name])
            yield from ((slip, Trig(name, other)) for slip, other in _factors(angle))
        case Inverse(name, terms):
            yield from (("another function", Inverse(other, terms)) for other in OTHER[name])
            yield from ((slip, Inverse(name, other)) for slip, other in _sums(terms))
        case Quotient(top, bottom):
            yield "top and bottom swapped", Quotient(bottom, top)
            yield from ((slip, Quotient(other, bottom)) for slip, other in _sums(top))
            yield from ((slip, Quotient(top, other)) for slip, other in _sums(bottom))
        case Power(base, exponent):
            yield from (("another power", Power(base, other)) for other in (exponent - 1, exponent + 1))
            yield from ((slip, Power(other, exponent)) for slip, other in _factors(base))
        case Group(terms):
            yield from ((slip, Group(other)) for slip, other in _sums(terms))
        case Root(terms):
            yield "a root left out", Group(terms)
            yield from ((slip, Root(other)) for slip, other in _sums(terms))


def _quantities(quantity: Quantity) -> Iterator[tuple[str, Quantity]]:
    number = quantity.number
    digits, last = number.as_tuple().digits, int(number.as_tuple().exponent)
    for place in range(last, last + len(digits)):
        step = Decimal((0, (1,), place))
        for other in (number + step, number - step):
            if other >= 0:
                yield "a digit changed", Quantity(other, quantity.unit)
    for unit in _units(quantity.unit):
        yield "a unit changed", Quantity(number, unit)


def _units(unit: Unit) -> Iterator[Unit]:
    for place, (name, power) in enumerate(unit):
        before, after = unit[:place], unit[place + 1 :]
        yield (*before, *after)
        yield (*before, (name, power + 1), *after)
        for other in INSTEAD[name]:
            yield (*before, (other, power), *after)


def _swap(terms: Terms, one: Letter, two: Letter) -> Terms:
    return tuple(
        Term(each.sign, tuple(_swapped(factor, one, two) for factor in each.factors), each.source) for each in terms
    )


def _swapped(factor: Factor, one: Letter, two: Letter) -> Factor:
    match factor:
        case Letter():
            return two if factor == one else one if factor == two else factor
        case Trig(name, angle):
            return Trig(name, _swapped(angle, one, two))
        case Power(base, exponent):
            return Power(_swapped(base, one, two), exponent)
        case Quotient(top, bottom):
            return Quotient(_swap(top, one, two), _swap(bottom, one, two))
        case Group(terms):
            return Group(_swap(terms, one, two))
        case Root(terms):
            return Root(_swap(terms, one, two))
        case Inverse(name, terms):
            return Inverse(name, _swap(terms, one, two))
    return factor
