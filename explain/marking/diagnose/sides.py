"""The sides of a student's line as they are weighed: their letters, their terms, what is worked out once. Knows no
value of a letter.
"""

from __future__ import annotations

from collections.abc import Callable, Set
from dataclasses import dataclass, field

from ..reading import (
    Call,
    Expr,
    Measured,
    Name,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Sigma,
    Sum,
    UnknownName,
    within,
)
from .unit_frames import Dimension, Frame

TRIES = 20_000  # weighings for one piece of a line, in all worlds: a second's work


class TooMany(Exception):
    """A line that could mean too many things to try them all."""


Worth = tuple[float, float, Dimension | None]  # a value, what its figures leave open, its kind


@dataclass(slots=True)
class Side:
    """A side with what is found of it once: its letters, itself with each letter by its text, its terms, whether it
    has numbers, its values.
    """

    of: Expr
    letters: tuple[Name | UnknownName | Sigma, ...]
    lettered: Expr
    terms: tuple[Expr, ...]
    numbers: bool
    values: dict[tuple[Frame, bool, float], Worth | None] = field(default_factory=dict)


class Kept:
    """The sides of one working."""

    def __init__(self) -> None:
        self.sides: dict[int, Side] = {}
        self.left = TRIES
        self.unlike: set[tuple[int, int, bool, tuple[Dimension, ...]]] = set()  # sides of kinds that cannot be equal

    def spend(self) -> None:
        """One more way of reading is tried. Raises TooMany."""
        self.left -= 1
        if self.left < 0:
            raise TooMany

    def side(self, side: Expr) -> Side:
        found = self.sides.get(id(side))
        if found is None or found.of is not side:
            found = self.sides[id(side)] = Side(
                side,
                letters_of(side),
                lettered(side),
                terms(side),
                any(isinstance(each, Number) for each in within(side)),
            )
        return found


def letters_of(*sides: Expr) -> tuple[Name | UnknownName | Sigma, ...]:
    """The letters of some sides, each once."""
    return tuple(
        {
            each.text: each for side in sides for each in within(side) if isinstance(each, Name | UnknownName | Sigma)
        }.values()
    )


def lettered(expr: Expr) -> Expr:
    """An expression whose letters stand by their own texts."""
    return mapped(expr, lambda each: UnknownName(each.text))


def named(expr: Expr, texts: Set[str], name: Name) -> Expr:
    """An expression with a name in the place of some letters."""
    return mapped(expr, lambda each: name if each.text in texts else each)


def mapped(expr: Expr, letter: Callable[[Name | UnknownName | Sigma], Expr]) -> Expr:
    """An expression with every letter changed."""
    match expr:
        case Name() | UnknownName() | Sigma():
            return letter(expr)
        case Measured(of, unit):
            return Measured(mapped(of, letter), unit)
        case Negative(of):
            return Negative(mapped(of, letter))
        case Sum(inner):
            return Sum(tuple(mapped(each, letter) for each in inner))
        case Product(factors):
            return Product(tuple(mapped(each, letter) for each in factors))
        case Quotient(top, bottom):
            return Quotient(mapped(top, letter), mapped(bottom, letter))
        case Power(base, exponent):
            return Power(mapped(base, letter), exponent)
        case Call(function, argument):
            return Call(function, mapped(argument, letter))
    return expr


def has_units(*sides: Expr) -> bool:
    return any(isinstance(each, Measured) for side in sides for each in within(side))


def states_units(*sides: Expr) -> bool:
    """Whether a unit is written that makes a difference of kinds a statement: an angle's or a share's is not."""
    return any(
        isinstance(each, Measured) and each.unit not in ((("deg", 1),), (("%", 1),))
        for side in sides
        for each in within(side)
    )


def terms(side: Expr) -> tuple[Expr, ...]:
    """The terms of a side, products of sums multiplied out once, quotients of sums divided."""
    match side:
        case Sum(inner):
            return tuple(each for term in inner for each in terms(term))
        case Negative(of):
            return tuple(Negative(each) for each in terms(of))
        case Measured(of, unit) if isinstance(of, Sum):
            return tuple(Measured(each, unit) for each in terms(of))
        case Quotient(top, bottom) if len(terms(top)) > 1:
            return tuple(Quotient(each, bottom) for each in terms(top))
        case Product(factors):
            for place, each in enumerate(factors):
                if isinstance(each, Sum):
                    return tuple(Product((*factors[:place], term, *factors[place + 1 :])) for term in terms(each))
    return (side,)
