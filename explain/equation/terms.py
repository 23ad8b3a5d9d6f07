"""What is written on the board: terms in the order they were written. Knows no algebra."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal
from functools import cached_property
from typing import ClassVar, Union

Unit = tuple[tuple[str, int], ...]
DEGREE: Unit = (("deg", 1),)
NOBODY: frozenset[str] = frozenset()


class Whole:
    """What is made of factors. It never changes, so it is looked through once. A rounded number is not looked into."""

    @cached_property
    def leaves(self) -> tuple[Factor, ...]:
        """Every factor in it, the inner ones too, in written order."""
        return tuple([leaf for part in _parts(self) for leaf in (part, *part.leaves)])

    @cached_property
    def letters(self) -> frozenset[str]:
        """The names of all letters in it."""
        return NOBODY.union(*[part.letters for part in _parts(self)])


class Number:
    """What is written as one number and holds nothing."""

    letters: ClassVar[frozenset[str]] = NOBODY
    leaves: ClassVar[tuple[Factor, ...]] = ()


@dataclass(frozen=True)
class Letter:
    """A letter and what it stands for: `name` is unique in a problem ("biceps.force"), `text` is written ("F_B").

    In `text` what follows the first underscore is a subscript. A Greek name ("tau", "theta") is the Greek letter.
    """

    name: str
    text: str
    leaves: ClassVar[tuple[Factor, ...]] = ()

    @cached_property
    def letters(self) -> frozenset[str]:
        return frozenset((self.name,))


@dataclass(frozen=True)
class Quantity(Number):
    """A number as written (trailing zeros kept, never negative on the board) with its unit as written.

    A unit is a tuple of (name, power): (("N", 1), ("cm", 1)). `lbf` is the pound as a force, `lb` as a mass.
    Degrees are DEGREE, per cent (("%", 1),).
    """

    number: Decimal
    unit: Unit = ()

    @property
    def written(self) -> Quantity:
        return self

    @classmethod
    def of(cls, number: str, unit: str = "") -> Quantity:
        """Quantity.of("9.81", "m s^-2"): for writing examples."""
        powers = (piece.partition("^") for piece in unit.split())
        return cls(Decimal(number), tuple((base, int(power or 1)) for base, _, power in powers))


@dataclass(frozen=True)
class Shown(Number):
    """A rounded number, and the expression it stands for."""

    value: Quantity
    of: Term

    @property
    def written(self) -> Quantity:
        return self.value


@dataclass(frozen=True)
class Trig(Whole):
    """The sine, cosine or tangent of an angle."""

    name: str
    angle: Factor


@dataclass(frozen=True)
class Inverse(Whole):
    """The angle whose sine, cosine or tangent is `of`: between -90 and 90 degrees, for a cosine 0 and 180."""

    name: str
    of: Terms


@dataclass(frozen=True)
class Quotient(Whole):
    top: Terms
    bottom: Terms


@dataclass(frozen=True)
class Group(Whole):
    """A sum in brackets."""

    terms: Terms


@dataclass(frozen=True)
class Power(Whole):
    base: Factor
    exponent: int


@dataclass(frozen=True)
class Root(Whole):
    """The square root, not negative."""

    terms: Terms


Factor = Union[Letter, Quantity, Shown, Trig, Inverse, Quotient, Group, Power, Root]


@dataclass(frozen=True)
class Term(Whole):
    """A sign (+1 or -1), factors in written order, and the name of the force it came from."""

    sign: int
    factors: tuple[Factor, ...]
    source: str = ""

    def flipped(self) -> Term:
        return Term(-self.sign, self.factors, self.source)


Terms = tuple[Term, ...]


@dataclass(frozen=True)
class Equation(Whole):
    """Left and right side in written order; an empty side is written 0. `rounded` is written with a wavy sign."""

    left: Terms
    right: Terms
    rounded: bool = False

    @cached_property
    def as_shown(self) -> Equation:
        """The line as a class goes on with it that carries what is shown."""
        return Equation(settled(self.left), settled(self.right), self.rounded)


def term(*factors: Factor, sign: int = 1, source: str = "") -> Term:
    """A term from its factors."""
    return Term(sign, factors, source)


def _parts(whole: object) -> tuple[Factor, ...]:
    """The factors one level down, in written order."""
    match whole:
        case Term(factors=factors):
            return factors
        case Trig(angle=inner) | Power(base=inner):
            return (inner,)
        case Quotient(one, other) | Equation(one, other):
            side = one + other
        case Group(side) | Root(side) | Inverse(of=side):
            pass
        case _:
            return ()
    return tuple([factor for each in side for factor in each.factors])


def changed(factor: Factor, sum_: Callable[[Terms], Terms], one: Callable[[Factor], Factor]) -> Factor:
    """A factor with every sum right in it changed by `sum_`, and by `one` the factor that a function or power is of."""
    match factor:
        case Trig(name, angle):
            return Trig(name, one(angle))
        case Power(base, exponent):
            return Power(one(base), exponent)
        case Quotient(top, bottom):
            return Quotient(sum_(top), sum_(bottom))
        case Group(terms):
            return Group(sum_(terms))
        case Root(terms):
            return Root(sum_(terms))
        case Inverse(name, terms):
            return Inverse(name, sum_(terms))
    return factor


def settled(terms: Terms) -> Terms:
    """A sum in which each rounded number stands for itself: how a class that carries what is shown goes on."""
    return tuple([_as_shown(each) if Shown in map(type, each.leaves) else each for each in terms])


def _as_shown(each: Term) -> Term:
    return Term(each.sign, tuple(map(_settled, each.factors)), each.source)


def _settled(factor: Factor) -> Factor:
    return factor.value if isinstance(factor, Shown) else changed(factor, settled, _settled)


def leaves(side: Terms) -> list[Factor]:
    """Every factor of a sum, the inner ones too, as far as the written number: not what a rounded number stands for."""
    return [leaf for each in side for leaf in each.leaves]


def letters(side: Terms) -> frozenset[str]:
    """The names of all letters of a sum."""
    return NOBODY.union(*[each.letters for each in side])


def parted(side: Terms, name: str) -> tuple[Terms, Terms]:
    """The terms that hold the letter, and those that do not."""
    found = tuple([each for each in side if name in each.letters])
    return found, tuple([each for each in side if name not in each.letters]) if len(found) < len(side) else ()


def flipped(side: Terms) -> Terms:
    """The sum with every sign changed."""
    return tuple([each.flipped() for each in side])


def lone(side: Terms) -> Factor | None:
    """The factor of a side that is one positive factor and nothing else."""
    if len(side) == 1 and side[0].sign > 0 and len(side[0].factors) == 1:
        return side[0].factors[0]
    return None


def number(side: Terms) -> tuple[int, Quantity] | None:
    """Sign and written quantity of a side that is one number and nothing else."""
    if len(side) != 1 or len(side[0].factors) != 1:
        return None
    only = side[0].factors[0]
    return (side[0].sign, only.written) if isinstance(only, Number) else None
