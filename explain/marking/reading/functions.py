"""Sines, cosines, tangents, their inverses and square roots, with brackets and without. Knows no units but those of
angles.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import NamedTuple

from ...equation.terms import Unit
from .cursor import SIGNS, Cursor, Unreadable
from .tree import Call, Expr, Measured, Name, Negative, Number, Power, Sum, UnknownName, times, within
from .units import read_unit
from .words import FUNCTIONS, INVERSE

DEGREES: Unit = (("deg", 1),)
ANGLES: tuple[Unit, ...] = (DEGREES, (("rad", 1),))


class Inner(NamedTuple):
    """How what stands inside is read: a sum, a product, an operand without unit, the power behind a sign (None: one
    half).
    """

    sum: Callable[[Cursor], Expr]
    term: Callable[[Cursor], Expr]
    operand: Callable[[Cursor], Expr]
    exponent: Callable[[Cursor], int | None]


def call(cursor: Cursor, inner: Inner) -> Expr:
    """sin 40, sin(40°), sin²40, tan⁻¹(a/b), tan-1(a/b), sqrt(…); the angle of a sine is in degrees. Raises
    Unreadable.
    """
    token = cursor.take()
    function = FUNCTIONS[token.text.casefold().replace(" ", "")]
    if function == "sqrt":
        return root(cursor, inner)
    power: int | None = 1
    if _is_tight_inverse(cursor):
        cursor.at += 2
        power = -1
    elif cursor.here.kind == "power":
        power = inner.exponent(cursor)
    if power == -1 and function in INVERSE:
        return Call(INVERSE[function], _argument(cursor, inner, True))
    if power is None or not 1 <= power <= 4:
        raise Unreadable(token, "a function to a power that is not small and whole", "Which power is meant?")
    inverse = function not in INVERSE
    argument = _argument(cursor, inner, inverse)
    found = Call(function, argument if inverse else _in_degrees(argument))
    return found if power == 1 else Power(found, power)


def _is_tight_inverse(cursor: Cursor) -> bool:
    """tan-1(…): the inverse, since the tangent of minus one is nobody's."""
    minus, one, opened = (cursor.ahead(by) for by in range(3))
    return (
        (minus.kind, one.kind, opened.kind) == ("minus", "number", "open")
        and one.text == "1"
        and not minus.spaced
        and not opened.spaced
    )


def _argument(cursor: Cursor, inner: Inner, inverse: bool) -> Expr:
    """What a function is of: a bracket, or the next operand; without brackets an inverse takes a whole product or
    quotient.
    """
    cursor.deeper()
    bare = inner.term if inverse else partial(_angle, inner=inner)
    found = _bracketed(cursor, inner) if cursor.here.kind == "open" else bare(cursor)
    cursor.depth -= 1
    return found


def _bracketed(cursor: Cursor, inner: Inner) -> Expr:
    """What stands in the bracket here; a power behind it is that of the function's value."""
    opened = cursor.take()
    found = inner.sum(cursor)
    if cursor.here.kind != "close":
        raise Unreadable(opened, "a bracket that is never closed", "Where does the bracket end?")
    cursor.take()
    cursor.long = False
    return found


def _angle(cursor: Cursor, inner: Inner) -> Expr:
    """An angle without brackets: -30, 40°, θ, 2θ; "sin 90-30" may be of the difference."""
    minus = cursor.here.kind in SIGNS and cursor.take().kind == "minus"
    first = _one_angle(cursor, inner)
    if minus:
        return Negative(first)
    sign, number = cursor.here, cursor.ahead()
    if (
        sign.kind in SIGNS
        and number.kind == "number"
        and not sign.spaced
        and not number.spaced
        and cursor.choose("angle")
    ):
        cursor.take()
        second = _one_angle(cursor, inner)
        return Sum((first, Negative(second) if sign.kind == "minus" else second))
    return first


def _one_angle(cursor: Cursor, inner: Inner) -> Expr:
    first = inner.operand(cursor)
    unit = read_unit(cursor.tokens, cursor.at, cursor.known)
    if unit is not None and unit[0] in ANGLES:
        cursor.at = unit[1]
        return Measured(first, unit[0])
    word = cursor.here
    if (
        isinstance(first, Number)
        and word.kind == "word"
        and not word.spaced
        and not cursor.is_word(word)
        and word.text[0] in "αβγδθφψ"
    ):
        return times(first, inner.operand(cursor))
    return first


def _in_degrees(argument: Expr) -> Expr:
    """A bare angle is in degrees; one with a letter or with units of its own stays as it is."""
    bare = not any(isinstance(each, Name | UnknownName | Measured) for each in within(argument))
    return Measured(argument, DEGREES) if bare else argument


def root(cursor: Cursor, inner: Inner) -> Expr:
    """A square root: of a bracket, or of the next operand; "√a² + b²" may be of the whole sum."""
    cursor.deeper()
    if cursor.here.kind == "open":
        found = _bracketed(cursor, inner)
    else:
        found = inner.operand(cursor)
        if cursor.here.kind in SIGNS and cursor.starts(1) and cursor.choose("root"):
            found = _whole_sum(cursor, inner, found)
    cursor.depth -= 1
    return Call("sqrt", found)


def _whole_sum(cursor: Cursor, inner: Inner, first: Expr) -> Expr:
    terms = [first]
    while cursor.here.kind in SIGNS and cursor.starts(1):
        minus = cursor.take().kind == "minus"
        term = inner.term(cursor)
        terms.append(Negative(term) if minus else term)
    return Sum(tuple(terms))
