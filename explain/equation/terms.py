"""What is written on the board: terms in the order they were written. Knows no algebra."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Union

Unit = tuple[tuple[str, int], ...]
DEGREE: Unit = (("deg", 1),)


@dataclass(frozen=True, slots=True)
class Letter:
    """A letter and what it stands for: `name` is unique in a problem ("biceps.force"), `text` is written ("F_B").

    In `text` what follows the first underscore is a subscript. A Greek name ("tau", "theta") is the Greek letter.
    """

    name: str
    text: str


ABOUT = " *about "  # no name of a force has a star in it


def arm_key(name: str, about: str = "") -> str:
    """The name of a perpendicular distance: of a force from the pivot, or from the point where another acts."""
    return f"*arm {name}{ABOUT}{about}" if about else f"*arm {name}"


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number as written (trailing zeros kept, never negative on the board) with its unit as written.

    A unit is a tuple of (name, power): (("N", 1), ("cm", 1)). `lbf` is the pound as a force, `lb` as a mass.
    Degrees are DEGREE, per cent (("%", 1),).
    """

    number: Decimal
    unit: Unit = ()

    @classmethod
    def of(cls, number: str, unit: str = "") -> Quantity:
        """Quantity.of("9.81", "m s^-2"): for writing examples."""
        powers = (piece.partition("^") for piece in unit.split())
        return cls(Decimal(number), tuple((base, int(power or 1)) for base, _, power in powers))


@dataclass(frozen=True, slots=True)
class Shown:
    """A rounded number, and the expression it stands for."""

    value: Quantity
    of: Term


@dataclass(frozen=True, slots=True)
class Trig:
    """The sine, cosine or tangent of an angle."""

    name: str
    angle: Factor


@dataclass(frozen=True, slots=True)
class Inverse:
    """The angle whose sine, cosine or tangent is `of`: between -90 and 90 degrees, for a cosine 0 and 180."""

    name: str
    of: Terms


@dataclass(frozen=True, slots=True)
class Quotient:
    top: Terms
    bottom: Terms


@dataclass(frozen=True, slots=True)
class Group:
    """A sum in brackets."""

    terms: Terms


@dataclass(frozen=True, slots=True)
class Power:
    base: Factor
    exponent: int


@dataclass(frozen=True, slots=True)
class Root:
    """The square root, not negative."""

    terms: Terms


Factor = Union[Letter, Quantity, Shown, Trig, Inverse, Quotient, Group, Power, Root]


@dataclass(frozen=True, slots=True)
class Term:
    """A sign (+1 or -1), factors in written order, and the name of the force it came from."""

    sign: int
    factors: tuple[Factor, ...]
    source: str = ""

    def flipped(self) -> Term:
        return replace(self, sign=-self.sign)


Terms = tuple[Term, ...]


@dataclass(frozen=True, slots=True)
class Equation:
    """Left and right side in written order; an empty side is written 0. `rounded` is written with a wavy sign."""

    left: Terms
    right: Terms
    rounded: bool = False


def term(*factors: Factor, sign: int = 1, source: str = "") -> Term:
    """A term from its factors."""
    return Term(sign, factors, source)


_ATOMS = frozenset((Letter, Quantity, Shown))


def leaves(side: Terms) -> list[Factor]:
    """Every factor of a sum, the inner ones too, as far as the written number: not what a rounded number stands for."""
    found: list[Factor] = []
    _gather(side, found)
    return found


def _gather(side: Terms, found: list[Factor]) -> None:
    for each in side:
        for factor in each.factors:
            found.append(factor)
            if type(factor) not in _ATOMS:
                _inside(factor, found)


def _inside(factor: Factor, found: list[Factor]) -> None:
    """The factors within one."""
    match factor:
        case Trig(angle=inner) | Power(base=inner):
            found.append(inner)
            _inside(inner, found)
        case Quotient(top, bottom):
            _gather(top, found)
            _gather(bottom, found)
        case Group(terms) | Root(terms) | Inverse(of=terms):
            _gather(terms, found)


def letters(side: Terms) -> frozenset[str]:
    """The names of all letters of a sum."""
    found: set[str] = set()
    for each in side:
        for factor in each.factors:
            if type(factor) is Letter:
                found.add(factor.name)
            elif type(factor) is not Quantity and type(factor) is not Shown:
                found.update([leaf.name for leaf in leaves((Term(1, (factor,)),)) if isinstance(leaf, Letter)])
    return frozenset(found)


def holds(factor: Factor, name: str) -> bool:
    """Whether a letter stands in a factor."""
    if isinstance(factor, Letter):
        return factor.name == name
    return not isinstance(factor, Quantity | Shown) and name in letters((Term(1, (factor,)),))


def numeric(factor: Factor) -> bool:
    """Free of letters."""
    if isinstance(factor, Quantity | Shown):
        return True
    return not isinstance(factor, Letter) and not letters((Term(1, (factor,)),))


def with_letter(side: Terms, name: str, yes: bool = True) -> Terms:
    """The terms that hold the letter, or with `yes=False` those that do not."""
    return tuple(each for each in side if any(holds(factor, name) for factor in each.factors) is yes)


def lone(side: Terms) -> Factor | None:
    """The factor of a side that is one positive factor and nothing else."""
    if len(side) == 1 and side[0].sign > 0 and len(side[0].factors) == 1:
        return side[0].factors[0]
    return None


def number(side: Terms) -> tuple[int, Quantity] | None:
    """Sign and written quantity of a side that is one number and nothing else."""
    if len(side) != 1 or len(side[0].factors) != 1:
        return None
    match side[0].factors[0]:
        case Quantity() as quantity:
            return side[0].sign, quantity
        case Shown(value=quantity):
            return side[0].sign, quantity
    return None
