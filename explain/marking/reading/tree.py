"""What one side of a student's line says, as a tree in written order. Knows no vocabulary and works nothing out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal, Union

from ...equation.terms import Unit

Function = Literal["sin", "cos", "tan", "asin", "acos", "atan", "sqrt"]


@dataclass(frozen=True, slots=True)
class Number:
    """A number as typed, never negative. `places` are the digits behind the point (-2 for 3e2), `figures` the
    significant ones.

    Zeros in front do not count as significant; zeros behind do. A whole number written without a point has no `point`.
    """

    value: Decimal
    places: int
    figures: int
    text: str
    point: bool = False


@dataclass(frozen=True, slots=True)
class Name:
    """A letter or word of the vocabulary, with the keys it can stand for (a T may be a tension or a torque)."""

    keys: tuple[str, ...]
    text: str


@dataclass(frozen=True, slots=True)
class UnknownName:
    """A letter that the vocabulary does not have: the student brings it in."""

    text: str


@dataclass(frozen=True, slots=True)
class Sigma:
    """The sum of all moments (letter "M", "T", "τ") or of all forces ("F", "F_y"), as in ΣM = 0."""

    letter: str
    text: str


@dataclass(frozen=True, slots=True)
class Measured:
    """A number or an expression with its unit."""

    of: Expr
    unit: Unit


@dataclass(frozen=True, slots=True)
class Call:
    """A sine, cosine or tangent of an angle in degrees, the angle in degrees that has one, or a square root."""

    function: Function
    argument: Expr


@dataclass(frozen=True, slots=True)
class Sum:
    """Two terms or more; one that is taken away is Negative."""

    terms: tuple[Expr, ...]


@dataclass(frozen=True, slots=True)
class Product:
    """Two factors or more."""

    factors: tuple[Expr, ...]


@dataclass(frozen=True, slots=True)
class Quotient:
    top: Expr
    bottom: Expr


@dataclass(frozen=True, slots=True)
class Power:
    """A whole power; the power 1/2 is a Call of sqrt."""

    base: Expr
    exponent: int


@dataclass(frozen=True, slots=True)
class Negative:
    of: Expr


Expr = Union[Number, Name, UnknownName, Sigma, Measured, Call, Sum, Product, Quotient, Power, Negative]


def parts(expr: Expr) -> tuple[Expr, ...]:
    """What an expression is made of, one level down, in written order."""
    match expr:
        case Measured(of=of) | Negative(of=of) | Power(base=of) | Call(argument=of):
            return (of,)
        case Sum(terms=inner) | Product(factors=inner):
            return inner
        case Quotient(top, bottom):
            return top, bottom
    return ()


def within(expr: Expr) -> Iterator[Expr]:
    """The expression and everything in it, in written order."""
    waiting = [expr]
    while waiting:
        each = waiting.pop()
        yield each
        waiting += reversed(parts(each))


def times(left: Expr, right: Expr) -> Product:
    """A product as one row of factors, as written."""
    first = left.factors if isinstance(left, Product) else (left,)
    return Product((*first, *(right.factors if isinstance(right, Product) else (right,))))
