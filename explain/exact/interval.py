"""How large a written expression is: exactly where it is rational, else between two bounds some 60 digits deep. Decides
signs and roundings.

Values are in kg, m, s; angles in degrees. Letters are looked up in a mapping of their values.
"""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache

from .bounds import (
    DEPTH,
    Bounds,
    Undefined,
    Value,
    fraction,
    middle,
    negative,
    over,
    plus,
    power,
    root,
    sign,
    times,
    wide,
)
from ..equation.terms import (
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
)
from .prime_field import scale

__all__ = (
    "DEPTH",
    "Bounds",
    "Sizes",
    "Undefined",
    "Value",
    "fraction",
    "in_si",
    "in_unit",
    "inverse",
    "middle",
    "negative",
    "over",
    "place",
    "plus",
    "power",
    "root",
    "rounded",
    "sign",
    "sine",
    "times",
    "to_figures",
    "wide",
)
EXACT_SINES = {
    0: Fraction(0),
    30: Fraction(1, 2),
    90: Fraction(1),
    150: Fraction(1, 2),
    180: Fraction(0),
}  # Niven's theorem: no others


@lru_cache(maxsize=4096)
def sine(degrees: Fraction) -> Value:
    folded = degrees % 360
    up, folded = (1, folded) if folded <= 180 else (-1, folded - 180)
    if folded in EXACT_SINES:
        return up * EXACT_SINES[int(folded)]
    found = _transcendental("sin", folded)
    return found if up > 0 else negative(found)


@lru_cache(maxsize=1024)
def _transcendental(name: str, *values: Value) -> Bounds:
    """A sine, cosine or tangent of degrees, or the angle of (up, right) in degrees, through mpmath's interval
    arithmetic.
    """
    from mpmath import iv

    iv.prec = DEPTH + 40
    unit = iv.mpf(2) ** -DEPTH
    x = [iv.mpf([wide(each).low, wide(each).high]) * unit for each in values]
    degree = iv.pi / 180
    out = iv.atan2(*x) / degree if name == "atan2" else getattr(iv, name)(x[0] * degree)
    low, high = (
        Fraction(int(m)) * Fraction(2) ** e * (-1 if s else 1) for s, m, e, _ in (out.a._mpi_[0], out.b._mpi_[1])
    )
    return Bounds((low.numerator << DEPTH) // low.denominator - 1, (high.numerator << DEPTH) // high.denominator + 1)


def _ratio(name: str, degrees: Value) -> Value:
    if not isinstance(degrees, Fraction):
        return _transcendental(name, degrees)
    if name == "tan":
        return over(sine(degrees), sine(degrees + 90))
    return sine(degrees) if name == "sin" else sine(degrees + 90)


def inverse(name: str, value: Value) -> Value:
    """The principal angle in degrees."""
    one: Value = Fraction(1)
    if name == "tan":
        return _transcendental("atan2", value, one)
    for degrees, exact in ((0, 0), (30, Fraction(1, 2)), (90, 1), (-30, Fraction(-1, 2)), (-90, -1)):
        if value == exact:
            return Fraction(degrees if name == "sin" else 90 - degrees)
    rest = plus(one, negative(times(value, value)))
    if sign(rest) < 0:
        raise Undefined("a sine or cosine beyond one")
    return _transcendental("atan2", value, root(rest)) if name == "sin" else _transcendental("atan2", root(rest), value)


@lru_cache(maxsize=1024)
def _scale(unit: Unit) -> Fraction:
    return Fraction(1) if unit == (("deg", 1),) else scale(unit)


@lru_cache(maxsize=4096)
def in_si(quantity: Quantity) -> Fraction:
    """A written quantity in kg, m, s; degrees stay degrees."""
    return Fraction(quantity.number) * _scale(quantity.unit)


class Sizes:
    """Values of expressions; `values` gives those of letters. What has no letters is worked out once."""

    def __init__(self, values: Mapping[str, Terms]) -> None:
        self.values = values
        self._numbers: dict[int, tuple[Term, Value]] = {}
        self._letters: dict[str, tuple[Terms, Value]] = {}

    def adopt(self, other: Sizes) -> None:
        """What has no letters has been worked out there already."""
        self._numbers = other._numbers

    def sum(self, terms: Terms) -> Value:
        out: Value | None = None
        for each in terms:
            value = self.term(each)
            out = value if out is None else plus(out, value)
        return Fraction(0) if out is None else out

    def term(self, term: Term) -> Value:
        known = self._numbers.get(id(term))
        if known is None or known[0] is not term:
            value = self.product(term.factors)
            known = (term, value if term.sign > 0 else negative(value))
            if not term.letters:
                self._numbers[id(term)] = known
        return known[1]

    def product(self, factors: tuple[Factor, ...]) -> Value:
        out: Value | None = None
        for factor in factors:
            out = self.factor(factor) if out is None else times(out, self.factor(factor))
        return Fraction(1) if out is None else out

    def factor(self, factor: Factor) -> Value:
        match factor:
            case Quantity():
                return in_si(factor)
            case Shown(of=term):
                return self.term(term)
            case Letter(name=name):
                return self._letter(name)
            case Trig(name, angle):
                return _ratio(name, self.factor(angle))
            case Quotient(top, bottom):
                return over(self.sum(top), self.sum(bottom))
            case Group(terms):
                return self.sum(terms)
            case Power(base, exponent):
                return power(self.factor(base), exponent)
            case Root(terms):
                return root(self.sum(terms))
            case Inverse(name, terms):
                return inverse(name, self.sum(terms))

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
    top, bottom = _over(value)
    top = abs(top)
    if top == 0:
        return 0
    tens = len(str(top)) - len(str(bottom))
    enough = top >= bottom * 10**tens if tens >= 0 else top * 10**-tens >= bottom
    return (tens if enough else tens - 1) - figures + 1


def _over(value: Value) -> tuple[int, int]:
    """A value as a numerator over a denominator, not in lowest terms."""
    return (value.numerator, value.denominator) if isinstance(value, Fraction) else (value.low + value.high, 2 << DEPTH)


def rounded(value: Value, last: int, ties: str) -> Decimal:
    """The value to the nearest 10**last as the class does it: exact halves away from zero ("up") or to the even
    digit.
    """
    numerator, bottom = _over(value)
    top = abs(numerator)
    top, bottom = (top, bottom * 10**last) if last >= 0 else (top * 10**-last, bottom)
    whole, rest = divmod(top, bottom)
    apart = 2 * rest - bottom
    half = (
        apart == 0 if isinstance(value, Fraction) else abs(apart) * 10**40 < bottom
    )  # a half that cannot be told from one is one
    up = (ties == "up" or whole % 2 == 1) if half else apart > 0
    return Decimal(whole + up if numerator >= 0 else -whole - up).scaleb(last)


def to_figures(value: Value, figures: int, ties: str) -> Decimal:
    """Rounded to so many figures; 99.96 to three is 100., not 99.9 or 100.0."""
    last = place(value, figures)
    out = rounded(value, last, ties)
    return rounded(value, last + 1, ties) if len(out.as_tuple().digits) > figures else out
