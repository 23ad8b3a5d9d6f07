"""How large a written line is, in floats: a second reading of what is on the board, apart from the exact one that
the checker trusts.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import lru_cache
from math import acos, asin, atan, cos, degrees, prod, radians, sin, sqrt, tan

from ..equation.terms import (
    DEGREE,
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
    Terms,
    Trig,
    Unit,
)
from ..exact.prime_field import scale

RATIOS: Mapping[str, Callable[[float], float]] = {"sin": sin, "cos": cos, "tan": tan}
ANGLES: Mapping[str, Callable[[float], float]] = {
    "sin": lambda x: asin(clipped(x)),
    "cos": lambda x: acos(clipped(x)),
    "tan": atan,
}


def clipped(ratio: float) -> float:
    """A sine or cosine; floats may take one a little beyond one."""
    return max(-1.0, min(1.0, ratio))


def in_si(quantity: Quantity) -> float:
    """Kg, m, s; degrees stay degrees."""
    return float(quantity.number) * _one(quantity.unit)


@lru_cache(maxsize=1024)
def _one(unit: Unit) -> float:
    return 1.0 if unit == DEGREE else float(scale(unit))


class FloatSizes:
    """Values of sums; `letters` gives those of letters. A rounded number counts as it is written, or with `unrounded`
    as what it stands for;
    `instead` gives some of them, by identity, another value."""

    def __init__(
        self, letters: Mapping[str, float], unrounded: bool, instead: Mapping[int, float] | None = None
    ) -> None:
        self.letters, self.unrounded, self.instead = letters, unrounded, instead or {}
        self.known: dict[int, tuple[Shown, float]] = {}

    def having(self, letters: Mapping[str, float], instead: Mapping[int, float] | None = None) -> FloatSizes:
        """The same with other letters: what a rounded number stands for has none, and is worked out once for all."""
        other = FloatSizes(letters, self.unrounded, instead)
        other.known = self.known
        return other

    def gap(self, line: Equation) -> float:
        """Left less right."""
        return self.sum(line.left) - self.sum(line.right)

    def largest(self, line: Equation, wholes: Mapping[str, float]) -> float:
        """The sum of the sizes of all terms: what the losses of floats are measured against.

        Sines and cosines count as one, a tangent as steep as it is, and a letter as much as `wholes` says where it is
        less.
        """
        return self._whole(line.left, wholes) + self._whole(line.right, wholes)

    def _whole(self, terms: Terms, wholes: Mapping[str, float]) -> float:
        return sum(prod(self._size(factor, wholes) for factor in each.factors) for each in terms)

    def _size(self, factor: Factor, wholes: Mapping[str, float]) -> float:
        match factor:
            case Letter(name=name):
                return max(abs(self.letters[name]), wholes.get(name, 0.0))
            case Trig(name="sin" | "cos"):
                return 1.0
            case Trig(name="tan"):
                return 1.0 + self.factor(factor) ** 2  # its slope, near the upright
            case Group(terms):
                return self._whole(terms, wholes)
            case Quotient(top, bottom):
                return self._whole(top, wholes) / abs(self.sum(bottom))
        return abs(self.factor(factor))

    def sum(self, terms: Terms) -> float:
        return sum(each.sign * prod(map(self.factor, each.factors)) for each in terms)

    def factor(self, factor: Factor) -> float:
        match factor:
            case Letter():
                return self.letters[factor.name]
            case Quantity():
                return in_si(factor)
            case Shown():
                return self._shown(factor)
            case Trig(name, angle):
                return RATIOS[name](radians(self.factor(angle)))
            case Quotient(top, bottom):
                return self.sum(top) / self.sum(bottom)
            case Group(terms):
                return self.sum(terms)
            case Power(base, exponent):
                return float(self.factor(base) ** exponent)
            case Root(terms):
                return sqrt(max(0.0, self.sum(terms)))
            case Inverse(name, terms):
                return degrees(ANGLES[name](self.sum(terms)))

    def _shown(self, shown: Shown) -> float:
        if id(shown) in self.instead:
            return self.instead[id(shown)]
        if not self.unrounded:
            return in_si(shown.value)
        known = self.known.get(id(shown))
        if known is None or known[0] is not shown:
            known = self.known[id(shown)] = (shown, self.sum((shown.of,)))
        return known[1]
