"""Exact arithmetic for the checker: decimals, units, letters, sines and cosines of degrees, and roots, in a prime
field.

In a field of p elements with p = 1 modulo 360 000 000 some element z has just that order and plays e^(i * 0.000001
deg), so every sine and
cosine of a millionth of a degree is an exact element. A letter is a random element, a letter of an angle a random unit.
Two expressions that are equal over the reals are always equal here; different ones are so by a chance of about 1e-37.
"""

from __future__ import annotations

import random
from collections.abc import Sequence
from copy import copy
from decimal import Decimal
from fractions import Fraction
from functools import lru_cache

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

STEP = 10**6  # steps in a degree
ORDER = 360 * STEP
# The checker's own table of units in kg, m, s (NIST SP 811, Appendix B.8; the pound-force by the standard 9.80665
# m/s^2).
POUND, STANDARD_G = Fraction(45359237, 10**8), Fraction(980665, 10**5)
UNITS: dict[str, tuple[Fraction, tuple[int, int, int]]] = {
    "kg": (Fraction(1), (1, 0, 0)),
    "g": (Fraction(1, 1000), (1, 0, 0)),
    "lb": (POUND, (1, 0, 0)),
    "m": (Fraction(1), (0, 1, 0)),
    "cm": (Fraction(1, 100), (0, 1, 0)),
    "mm": (Fraction(1, 1000), (0, 1, 0)),
    "in": (Fraction(254, 10**4), (0, 1, 0)),
    "ft": (Fraction(3048, 10**4), (0, 1, 0)),
    "s": (Fraction(1), (0, 0, 1)),
    "N": (Fraction(1), (1, 1, -2)),
    "kN": (Fraction(1000), (1, 1, -2)),
    "lbf": (POUND * STANDARD_G, (1, 1, -2)),
    "%": (Fraction(1, 100), (0, 0, 0)),
}


class Inexact(ValueError):
    """What has no place in the field: an unknown unit, an angle finer than a millionth of a degree."""


class Redraw(ArithmeticError):
    """By chance this prime does not do: a denominator vanished, or a root that exists over the reals does not here."""


@lru_cache(maxsize=1024)
def scale(unit: Unit) -> Fraction:
    """How many kg^a m^b s^c one of this unit is."""
    out = Fraction(1)
    for name, power in unit:
        if name not in UNITS:
            raise Inexact(f"no unit {name!r} here")
        out *= UNITS[name][0] ** power
    return out


@lru_cache(maxsize=1024)
def dimension(unit: Unit) -> tuple[int, int, int]:
    """The powers of kg, m and s."""
    kg, m, s = (sum(UNITS[name][1][axis] * power for name, power in unit) for axis in range(3))
    return kg, m, s


class Field:
    """One random prime with its letters. `number`, `letter`, `angle` and `sum` give elements."""

    def __init__(self, draw: random.Random | None = None) -> None:
        from sympy.ntheory import isprime

        self.draw = draw or random.Random(random.SystemRandom().getrandbits(256))
        while not isprime(p := self.draw.randrange(2**126 // ORDER, 2**127 // ORDER) * ORDER + 1):
            pass
        self.p = p
        while True:
            self.z = pow(self.draw.randrange(2, p), (p - 1) // ORDER, p)
            if all(pow(self.z, ORDER // prime, p) != 1 for prime in (2, 3, 5)):
                break
        self.i = pow(self.z, ORDER // 4, p)
        self.half, self.half_i = pow(2, -1, p), pow(2 * self.i, -1, p)
        self.letters: dict[str, int] = {}
        self.units: dict[Unit, int] = {}
        self.turns: dict[Fraction, int] = {}
        self.roots: dict[int, int] = {}
        self.known: dict[int, tuple[Term, int]] = {}  # terms that were worked out, without their signs
        self.opaque: tuple[
            Shown, ...
        ] = ()  # rounded numbers that are taken as letters: what holds for any number holds for them
        self.inverses: dict[int, int] = {1: 1}
        self.ratios: dict[tuple[str, int], int] = {}

    def fresh(self) -> Field:
        """The same prime with new letters and units: drawing a prime is the dear part."""
        other = copy(self)
        other.letters, other.units, other.roots, other.known = {}, {}, {}, {}
        return other

    def over(self, a: int, b: int) -> int:
        if b % self.p == 0:
            raise Redraw("a denominator vanished")
        return a * pow(b, -1, self.p) % self.p

    def letter(self, name: str) -> int:
        if name not in self.letters:
            self.letters[name] = self.draw.randrange(1, self.p)
        return self.letters[name]

    def define(self, name: str, terms: Terms) -> None:
        """A letter that stands for a sum."""
        self.letters[name] = self.sum(terms)
        self.known.clear()

    def decimal(self, number: Decimal) -> int:
        top, bottom = number.as_integer_ratio()
        return top * self.inverse(bottom) % self.p

    def fraction(self, value: Fraction) -> int:
        return value.numerator * self.inverse(value.denominator) % self.p

    def inverse(self, whole: int) -> int:
        """One over a whole number that is written on the board: the same few come again and again."""
        if whole not in self.inverses:
            self.inverses[whole] = pow(whole, -1, self.p)
        return self.inverses[whole]

    def unit(self, unit: Unit) -> int:
        if unit not in self.units:
            out = self.fraction(scale(unit))
            for base, power in zip(("unit kg", "unit m", "unit s"), dimension(unit), strict=True):
                out = out * pow(self.letter(base), power, self.p) % self.p
            self.units[unit] = out
        return self.units[unit]

    def root(self, square: int) -> int:
        """One of the two roots, always the same one."""
        from sympy.ntheory.residue_ntheory import sqrt_mod

        if square not in self.roots:
            if pow(square, (self.p - 1) // 2, self.p) == self.p - 1:
                raise Redraw("no root here")
            self.roots[square] = int(sqrt_mod(square, self.p))
        return self.roots[square]

    def flip(self, squares: Sequence[int], flips: Sequence[bool]) -> None:
        """Take the lesser or the greater root of each square: neither is the positive one more than the other."""
        for square, greater in zip(squares, flips, strict=True):
            low, high = sorted((self.roots[square], self.p - self.roots[square]))
            self.roots[square] = high if greater else low
        self.known.clear()

    def turn(self, degrees: Fraction) -> int:
        """The unit e^(i * degrees)."""
        if degrees not in self.turns:
            steps = degrees * STEP
            if steps.denominator != 1:
                raise Inexact(f"an angle of {degrees} degrees is finer than a millionth of a degree")
            self.turns[degrees] = pow(self.z, steps.numerator % ORDER, self.p)
        return self.turns[degrees]

    def ratio(self, name: str, unit: int) -> int:
        """The "sin" or "cos" of the angle of a unit."""
        if (name, unit) not in self.ratios:
            back = pow(unit, -1, self.p)
            self.ratios["cos", unit], self.ratios["sin", unit] = (
                (unit + back) * self.half % self.p,
                (unit - back) * self.half_i % self.p,
            )
        return self.ratios[name, unit]

    # ------------------------------------------------------------------ what is written
    def angle(self, terms: Terms) -> int:
        """The unit of a sum of angles: degrees, letters of angles, inverse functions."""
        out = 1
        for term in terms:
            one = self._angle(term.factors)
            out = out * (one if term.sign > 0 else pow(one, -1, self.p)) % self.p
        return out

    def _angle(self, factors: tuple[Factor, ...]) -> int:
        match factors:
            case (Quantity(number, (("deg", 1),)),):
                return self.turn(Fraction(number))
            case (Letter(name=name),):
                return self.letter(name)
            case (Group(terms),):
                return self.angle(terms)
            case (Shown(of=term) as shown,):
                return (
                    self.letter(f"shown {id(shown)}")
                    if any(each is shown for each in self.opaque)
                    else self.angle((term,))
                )
            case (Inverse(name, terms),):
                x = self.sum(terms)
                if name == "tan":
                    return self.over(1 + self.i * x, self.root((1 + x * x) % self.p))
                other = self.root((1 - x * x) % self.p)
                return (x + self.i * other if name == "cos" else other + self.i * x) % self.p
        raise Inexact("this is not an angle")

    def _stands_for(self, shown: Shown, term: Term) -> int:
        if any(each is shown for each in self.opaque):
            return self.letter(f"shown {id(shown)}") * self.unit(shown.value.unit) % self.p
        return term.sign * self.product(term) % self.p

    def sum(self, terms: Terms) -> int:
        return sum(term.sign * self.product(term) for term in terms) % self.p

    def product(self, term: Term) -> int:
        """A term without its sign."""
        known = self.known.get(id(term))
        if known is None or known[0] is not term:
            out = 1
            for factor in term.factors:
                out = out * self.factor(factor) % self.p
            known = self.known[id(term)] = (term, out)
        return known[1]

    def factor(self, factor: Factor) -> int:
        match factor:
            case Letter(name=name):
                return self.letter(name)
            case Quantity(number, unit):
                return self.decimal(number) * self.unit(unit) % self.p
            case Shown(of=term):
                return self._stands_for(factor, term)
            case Trig(name, angle):
                turned = self._angle((angle,))
                return (
                    self.over(self.ratio("sin", turned), self.ratio("cos", turned))
                    if name == "tan"
                    else self.ratio(name, turned)
                )
            case Quotient(top, bottom):
                return self.over(self.sum(top), self.sum(bottom))
            case Group(terms):
                return self.sum(terms)
            case Power(base, exponent):
                return pow(self.factor(base), exponent, self.p)
            case Root(terms):
                return self.root(self.sum(terms))
        raise Inexact("an angle stands where a number should")


@lru_cache(maxsize=1)
def drawn() -> Field:
    """The prime of this run of the program, drawn afresh in each; take `fresh()` of it for each working."""
    return Field()
