"""How a written sum is set out: where its signs, brackets, crosses and fraction bars stand. Knows no notation's own
spelling.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal

from ..equation.terms import (
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
    leaves,
    lone,
)
from ..document.passage import Row
from .notation import Notation, Side, symbol

_NONE_STRUCK: frozenset[str] = frozenset()
_ZERO = Quantity(Decimal(0))
_ONE = Quantity(Decimal(1))


def written(of: Terms | Equation, notation: Notation) -> str:
    """A sum, or an equation, in a notation."""
    if isinstance(of, Equation):
        sign = "≈" if of.rounded else "="
        return side(of.left, notation) + notation.relation(sign) + side(of.right, notation)
    return side(of, notation)


def row_sides(rows: Iterable[Row], notation: Notation) -> tuple[tuple[str, str], ...]:
    """What stands before, and from the first relation on, for every row.

    An empty left continues the row above; in the first row, which has none above, it is 0.
    """
    return tuple(
        (side(row.left, notation) if row.left or not place else "", chain(row, notation))
        for place, row in enumerate(rows)
    )


def chain(row: Row, notation: Notation) -> str:
    """What stands from the first relation of a row on."""
    return "".join(notation.relation(sign) + side(terms, notation) for sign, terms in row.right)


def side(terms: Terms, notation: Notation, struck: frozenset[str] = _NONE_STRUCK) -> str:
    """A sum in a notation; an empty one is 0."""
    if not terms:
        return notation.quantity(_ZERO, _NONE_STRUCK)
    alone = len(terms) == 1 and terms[0].sign > 0
    return notation.total([(each.sign, _term(each, notation, alone, struck)) for each in terms])


def _struck_units(top: Terms, bottom: Terms) -> frozenset[str]:
    """The units that cancel in a fraction of two products: each stands once above and once below, to the same power."""
    if len(top) != 1 or len(bottom) != 1:
        return _NONE_STRUCK
    above, below = _powers(top[0].factors), _powers(bottom[0].factors)
    return frozenset(
        name for name, powers in above.items() if len(powers) == 1 and powers[0] > 0 and powers == below.get(name)
    )


def _powers(factors: Sequence[Factor]) -> Mapping[str, list[int]]:
    found: dict[str, list[int]] = defaultdict(list)
    for factor in factors:
        for name, power in _value(factor).unit:
            found[name].append(power)
    return found


def _value(factor: Factor) -> Quantity:
    match factor:
        case Quantity():
            return factor
        case Shown(value=value):
            return value
    return _ONE


def _is_number(factor: Factor) -> bool:
    return isinstance(factor, Quantity | Shown)


def _term(term: Term, notation: Notation, alone: bool, struck: frozenset[str]) -> str:
    factors = term.factors or (_ONE,)
    if len(factors) == 1:
        text = _factor(factors[0], notation, struck)
        return text if alone or _value(factors[0]).number >= 0 else notation.aside(text, False)
    if alone and all(_is_number(each) and _value(each).number >= 0 for each in factors):
        return notation.product([_factor(each, notation, struck) for each in factors], crossed=True)
    return notation.product([_beside(factors, place, notation, struck) for place in range(len(factors))], crossed=False)


def _beside(factors: Sequence[Factor], place: int, notation: Notation, struck: frozenset[str]) -> str:
    """A factor that has neighbours: set off from them where it would run into them."""
    factor, behind = factors[place], factors[place + 1 : place + 2]
    text = _factor(factor, notation, struck)
    match factor:
        case Quantity() | Shown():
            value = _value(factor)
            bare = place == 0 and not value.unit and value.number >= 0
            return text if bare else notation.aside(text, False)
        case Power(base=Quantity(unit=()) | Shown(value=Quantity(unit=()))) if place:
            return notation.aside(text, False)
        case Quotient() if not notation.stacked:
            return notation.aside(text, True)
        case Trig() if behind and not isinstance(behind[0], Trig):
            return _trig(factor, notation, close=True)
    return text


def _factor(factor: Factor, notation: Notation, struck: frozenset[str] = _NONE_STRUCK) -> str:
    match factor:
        case Letter(text=text):
            return notation.letter(symbol(text), None)
        case Quantity() | Shown():
            return notation.quantity(_value(factor), struck)
        case Trig():
            return _trig(factor, notation, close=False)
        case Inverse(name, of):
            inner = _inner(of)
            wrap = notation.aside if len(inner) == 1 else notation.bracket
            return notation.function(name, wrap(side(inner, notation), _tall(inner)), inverse=True, bracketed=True)
        case Quotient(top, bottom):
            units = _struck_units(top, bottom)
            return notation.fraction(_fraction_side(top, notation, units), _fraction_side(bottom, notation, units))
        case Group(terms):
            return notation.bracket(side(terms, notation), _tall(terms))
        case Power():
            return _power(factor, notation)
        case Root(terms):
            return notation.root(side(_inner(terms), notation))


def _trig(factor: Trig, notation: Notation, close: bool) -> str:
    match factor.angle:
        case Group(terms):
            argument, close = notation.bracket(side(terms, notation), _tall(terms)), True
        case Letter() | Quantity() | Shown() as angle if not close and _value(angle).number >= 0:
            argument = _factor(angle, notation)
        case angle:
            argument, close = notation.aside(_factor(angle, notation), _tall((Term(1, (angle,)),))), True
    return notation.function(factor.name, argument, inverse=False, bracketed=close)


def _power(factor: Power, notation: Notation) -> str:
    match factor.base:
        case Letter(text=text):
            return notation.letter(symbol(text), factor.exponent)
        case Group() as group:
            return notation.power(_factor(group, notation), factor.exponent)
        case Quantity() | Shown() as base if not _value(base).unit and _value(base).number >= 0:
            return notation.power(_factor(base, notation), factor.exponent)
        case base:
            inner = notation.bracket(_factor(base, notation), _tall((Term(1, (base,)),)))
            return notation.power(inner, factor.exponent)


def _fraction_side(terms: Terms, notation: Notation, struck: frozenset[str]) -> Side:
    inner = _inner(terms)
    only = lone(inner)
    bare = only is not None and not isinstance(only, Trig | Quotient) and _value(only).number >= 0
    return Side(side(inner, notation, struck), bare)


def _inner(terms: Terms) -> Terms:
    """The sum inside a pair of brackets that would stand inside another, or under a bar."""
    match lone(terms):
        case Group(inner):
            return inner
    return terms


def _tall(terms: Terms) -> bool:
    return any(isinstance(leaf, Quotient | Root) for leaf in leaves(terms))
