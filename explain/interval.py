"""How large a written expression is: exactly where it is rational, else between two bounds 55 digits wide. Decides signs and roundings.

Values are in kg, m, s; angles in degrees. Letters are looked up in a mapping of their values.
"""
from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache
from math import isqrt
from typing import Any, Union

from mpmath import iv

from .equation import Factor, Group, Inverse, Letter, Power, Quantity, Quotient, Root, Shown, Term, Terms, Trig, Unit
from .field import scale

iv.prec = 200
Value = Union[Fraction, Any]                      # mpmath's intervals carry no types
EXACT_SINES = {0: Fraction(0), 30: Fraction(1, 2), 90: Fraction(1), 150: Fraction(1, 2), 180: Fraction(0)}   # Niven's theorem: no others


class Undefined(ArithmeticError):
    """A division by zero, a root of a negative number, a sine beyond one, or a letter that has no value yet."""


def wide(value: Value) -> Any:
    """A value as an interval."""
    return iv.mpf(value.numerator) / value.denominator if isinstance(value, Fraction) else value


def bounds(value: Value) -> tuple[Any, Any]:
    """Its lower and upper bound, for comparisons."""
    return (value, value) if isinstance(value, Fraction) else (value.a, value.b)


def sign(value: Value) -> int:
    """+1, -1, or 0 where it is zero or nearer to zero than can be told."""
    low, high = bounds(value)
    return 1 if low > 0 else -1 if high < 0 else 0


def middle(value: Value) -> float:
    return float(value) if isinstance(value, Fraction) else float(value.mid)


def fraction(value: Value) -> Fraction:
    """The exact value, or the middle of the bounds to some 50 digits."""
    if isinstance(value, Fraction):
        return value
    sign_, mantissa, power, _ = value.mid._mpi_[0]
    return (-1 if sign_ else 1) * Fraction(int(mantissa)) * Fraction(2) ** power


@lru_cache(maxsize=4096)
def sine(degrees: Fraction) -> Value:
    folded = degrees % 360
    up, folded = (1, folded) if folded <= 180 else (-1, folded - 180)
    if folded in EXACT_SINES:
        return up * EXACT_SINES[int(folded)]
    return up * iv.sin(iv.pi * iv.mpf(folded.numerator) / (180 * folded.denominator))


def _ratio(name: str, degrees: Value) -> Value:
    if isinstance(degrees, Fraction):
        if name == "tan":
            return over(sine(degrees), sine(degrees + 90))
        return sine(degrees) if name == "sin" else sine(degrees + 90)
    angle = degrees * iv.pi / 180
    return iv.sin(angle) if name == "sin" else iv.cos(angle) if name == "cos" else iv.tan(angle)


def over(top: Value, bottom: Value) -> Value:
    if sign(bottom) == 0:
        raise Undefined("a division by zero")
    both = isinstance(top, Fraction) and isinstance(bottom, Fraction)
    return top / bottom if both else wide(top) / wide(bottom)


def times(a: Value, b: Value) -> Value:
    if isinstance(a, Fraction) and isinstance(b, Fraction):
        return a * b
    return Fraction(0) if a == 0 or b == 0 else wide(a) * wide(b)


def plus(a: Value, b: Value) -> Value:
    return a + b if isinstance(a, Fraction) and isinstance(b, Fraction) else wide(a) + wide(b)


def root(value: Value) -> Value:
    if bounds(value)[0] < 0:
        if sign(value) < 0:
            raise Undefined("the square root of a negative number")
        return Fraction(0)
    if isinstance(value, Fraction):
        top, bottom = isqrt(value.numerator), isqrt(value.denominator)
        if top * top == value.numerator and bottom * bottom == value.denominator:
            return Fraction(top, bottom)
    return iv.sqrt(wide(value))


def inverse(name: str, value: Value) -> Value:
    """The principal angle in degrees."""
    degree = 180 / iv.pi
    if name == "tan":
        return iv.atan2(wide(value), iv.mpf(1)) * degree
    for degrees, exact in ((0, 0), (30, Fraction(1, 2)), (90, 1), (-30, Fraction(-1, 2)), (-90, -1)):
        if value == exact:
            return Fraction(degrees if name == "sin" else 90 - degrees)
    low, high = bounds(value)
    if low < -1 or high > 1:
        raise Undefined("a sine or cosine beyond one")
    x = wide(value)
    other = iv.sqrt(1 - x * x)
    return (iv.atan2(x, other) if name == "sin" else iv.atan2(other, x)) * degree


@lru_cache(maxsize=1024)
def _scale(unit: Unit) -> Fraction:
    return Fraction(1) if unit == (("deg", 1),) else scale(unit)


class Sizes:
    """Values of expressions; `values` gives those of letters. What a rounded number stands for is worked out once."""

    def __init__(self, values: Mapping[str, Terms]) -> None:
        self.values = values
        self._shown: dict[int, tuple[Shown, Value]] = {}
        self._letters: dict[str, tuple[Terms, Value]] = {}

    def sum(self, terms: Terms) -> Value:
        out: Value = Fraction(0)
        for each in terms:
            value = self.product(each.factors)
            out = plus(out, value if each.sign > 0 else -value)
        return out

    def product(self, factors: tuple[Factor, ...]) -> Value:
        out: Value = Fraction(1)
        for factor in factors:
            out = times(out, self.factor(factor))
        return out

    def factor(self, factor: Factor) -> Value:
        match factor:
            case Quantity(number, unit):
                return Fraction(number) * _scale(unit)
            case Shown(of=term):
                return self._stands_for(factor, term)
            case Letter(name=name):
                return self._letter(name)
            case Trig(name, angle):
                return _ratio(name, self.factor(angle))
            case Quotient(top, bottom):
                return over(self.sum(top), self.sum(bottom))
            case Group(terms):
                return self.sum(terms)
            case Power(base, exponent):
                value = self.factor(base)
                return value**exponent if isinstance(value, Fraction) or exponent > 0 else 1 / value**-exponent
            case Root(terms):
                return root(self.sum(terms))
            case Inverse(name, terms):
                return inverse(name, self.sum(terms))

    def _stands_for(self, shown: Shown, of: Term) -> Value:
        known = self._shown.get(id(shown))
        if known is None or known[0] is not shown:
            value = self.sum((of,))
            known = self._shown[id(shown)] = (shown, value)
        return known[1]

    def _letter(self, name: str) -> Value:
        terms = self.values.get(name)
        if terms is None:
            raise Undefined(f"{name} has no value yet")
        known = self._letters.get(name)
        if known is None or known[0] is not terms:
            known = self._letters[name] = (terms, self.sum(terms))
        return known[1]


def in_unit(value: Value, unit: Unit) -> Value:
    """A value in kg, m, s as a number of this unit."""
    return over(value, _scale(unit))


def place(value: Value, figures: int) -> int:
    """The power of ten of the last of so many figures."""
    size = abs(fraction(value))
    if size == 0:
        return 0
    power = len(str(size.numerator)) - len(str(size.denominator))
    power = power if size >= Fraction(10) ** power else power - 1
    return power - figures + 1


def rounded(value: Value, power: int, ties: str) -> Decimal:
    """The value to the nearest 10**power as the class does it: exact halves away from zero ("up") or to the even digit."""
    scaled = fraction(value) / Fraction(10) ** power
    whole, rest = divmod(abs(scaled), 1)
    near = abs(rest - Fraction(1, 2)) < Fraction(1, 10**40)      # a half that is not told from a half is one
    up = (ties == "up" or whole % 2 == 1) if near else rest > Fraction(1, 2)
    return Decimal((int(scaled < 0), tuple(map(int, str(int(whole) + up))), power))


def to_figures(value: Value, figures: int, ties: str) -> Decimal:
    """Rounded to so many figures; 99.96 to three is 100., not 99.9 or 100.0."""
    power = place(value, figures)
    out = rounded(value, power, ties)
    if len(out.as_tuple().digits) > figures:
        out = rounded(value, power + 1, ties)
    return out
