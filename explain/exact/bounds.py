"""A real number between two bounds some 60 digits deep, or exact where it is rational: arithmetic, signs and square
roots.
"""

from __future__ import annotations

from fractions import Fraction
from math import isqrt
from typing import NamedTuple, Union

DEPTH = 240  # bits behind the point


class Bounds(NamedTuple):
    """A real number between low / 2**DEPTH and high / 2**DEPTH, rounded outwards."""

    low: int
    high: int


Value = Union[Fraction, Bounds]


class Undefined(ArithmeticError):
    """A division by zero, a root of a negative number, a sine beyond one, or a letter that has no value yet."""


def wide(value: Value) -> Bounds:
    """A value between its bounds."""
    if isinstance(value, Bounds):
        return value
    top = value.numerator << DEPTH
    return Bounds(top // value.denominator, -(-top // value.denominator))


def sign(value: Value) -> int:
    """+1, -1, or 0 where it is zero, or too near to zero for the intervals to settle."""
    if isinstance(value, Fraction):
        return (value.numerator > 0) - (value.numerator < 0)
    return 1 if value.low > 0 else -1 if value.high < 0 else 0


def fraction(value: Value) -> Fraction:
    """The exact value, or the middle of the bounds."""
    return value if isinstance(value, Fraction) else Fraction(value.low + value.high, 2 << DEPTH)


def middle(value: Value) -> float:
    return float(fraction(value))


def negative(value: Value) -> Value:
    return -value if isinstance(value, Fraction) else Bounds(-value.high, -value.low)


def plus(a: Value, b: Value) -> Value:
    if isinstance(a, Fraction) and isinstance(b, Fraction):
        return a + b
    x, y = wide(a), wide(b)
    return Bounds(x.low + y.low, x.high + y.high)


def times(a: Value, b: Value) -> Value:
    if isinstance(a, Fraction) and isinstance(b, Fraction):
        return a * b
    x, y = wide(a), wide(b)
    products = (x.low * y.low, x.low * y.high, x.high * y.low, x.high * y.high)
    return Bounds(min(products) >> DEPTH, -(-max(products) >> DEPTH))


def over(top: Value, bottom: Value) -> Value:
    if sign(bottom) == 0:
        raise Undefined("a division by zero")
    if isinstance(top, Fraction) and isinstance(bottom, Fraction):
        return top / bottom
    x, y = wide(top), wide(bottom)
    pairs = [(a << DEPTH, b) for a in x for b in y]
    return Bounds(min(a // b for a, b in pairs), max(-(-a // b) for a, b in pairs))


def power(value: Value, exponent: int) -> Value:
    if exponent < 0:
        return over(Fraction(1), power(value, -exponent))
    if isinstance(value, Fraction):
        return value**exponent
    out: Value = Fraction(1)
    for _ in range(exponent):
        out = times(out, value)
    return out


def root(value: Value) -> Value:
    """The square root, exact where the number is a square."""
    if sign(value) < 0:
        raise Undefined("the square root of a negative number")
    if isinstance(value, Fraction):
        top, bottom = isqrt(value.numerator), isqrt(value.denominator)
        if top * top == value.numerator and bottom * bottom == value.denominator:
            return Fraction(top, bottom)
    x = wide(value)
    return Bounds(isqrt(max(x.low, 0) << DEPTH), isqrt(x.high << DEPTH) + 1)
