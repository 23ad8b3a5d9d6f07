"""Sides of bare numbers that ought to be equal: whether they are, and which known slip of the calculator or the
pencil makes them so. Knows no mechanics.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from decimal import Decimal
from math import pi

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
    Undefined,
    UnknownName,
    evaluate,
    within,
)
from .sides import terms
from .compare_sides import MOST

_COUNTS = frozenset(map(Decimal, ("0", "0.5", "1", "2", "3", "4", "90", "180", "270", "360", "100", "1000")))
_LEAST = 0.003  # of the larger side: less is a last figure


def bare(*sides: Expr) -> bool:
    """Whether sides have no letter."""
    return not any(isinstance(each, Name | UnknownName | Sigma) for side in sides for each in within(side))


def counts(number: Number) -> bool:
    """Whether a number leaves nothing open by itself: a count, a right angle."""
    return number.value in _COUNTS


Exact = Callable[[Number], bool]


def value(side: Expr, turn: float = pi / 180, exact: Exact = counts) -> tuple[float, float] | None:
    """The value of a side of numbers as typed and what its figures leave open."""
    try:
        found = evaluate(side, {}, units=False, turn=turn, exact=exact)
    except Undefined:
        return None
    return found.value, found.widest


def equal(left: Expr, right: Expr, turn: float = pi / 180, exact: Exact = counts) -> bool:
    """Whether two sides come to the same to the figures shown; the right one as a result (cut or rounded)."""
    a, b = value(left, turn, exact), value(right, turn)
    if a is None or b is None:
        return False
    open_ = a[1] + b[1] * (2 if isinstance(_inner(right), Number) else 1)
    return abs(a[0] - b[0]) <= max(min(open_, MOST * max(abs(a[0]), abs(b[0]))), _LEAST * max(abs(a[0]), abs(b[0])))


def _inner(side: Expr) -> Expr:
    while isinstance(side, Measured | Negative):
        side = side.of
    return side


def runs_on(left: Expr, right: Expr, exact: Exact = counts) -> bool:
    """Whether the right side goes on from the left side's value: 3 x 9.81 = 29.43 x 33."""
    first = _first(right)
    return first is not None and first is not right and equal(left, first, exact=exact)


def _first(side: Expr) -> Expr | None:
    match side:
        case Measured(of) | Negative(of):
            return _first(of)
        case Sum(inner) | Product(inner):
            return _first(inner[0]) or inner[0]
        case Quotient(top, _):
            return _first(top) or top
        case Number():
            return side
    return None


def slip_of(left: Expr, right: Expr) -> str:
    """The slip that makes the right side follow from the left one; "arithmetic-slip" where none does."""
    trig = any(
        isinstance(each, Call) and each.function in ("sin", "cos", "tan", "asin", "acos", "atan")
        for each in within(left)
    )
    for slip, turn in (("radian-mode", 1.0), ("grad-mode", pi / 200)):
        if trig and (equal(left, right, turn) or equal(Negative(left), right, turn)):
            return slip
    for slip, other in _others(left):
        if equal(other, right):
            return slip
    if _transposed(left, right):
        return "digit-transposed"
    return "arithmetic-slip"


def _others(side: Expr) -> Iterator[tuple[str, Expr]]:
    """What a side may have been worked out as."""
    match side:
        case Measured(of) | Negative(of):
            yield from _others(of)
        case Quotient(top, Product(factors)):
            yield "calculator-order", Product((Quotient(top, factors[0]), *factors[1:]))
            yield from _divided(top, side.bottom)
        case Quotient(top, bottom):
            yield from _divided(top, bottom)
        case Product(factors) if any(isinstance(each, Sum) for each in factors):
            yield from _half_multiplied(factors)
        case Call("sqrt", Sum((Power(a, 2), Power(b, 2)))):
            yield "resultant-by-adding", Sum((a, b))
            yield "pythagoras-broken", Sum((Power(a, 2), Power(b, 2)))
            yield "pythagoras-broken", Call("sqrt", Sum((Power(a, 2), Negative(Power(b, 2)))))
            yield "pythagoras-broken", Call("sqrt", Sum((Power(b, 2), Negative(Power(a, 2)))))
        case Call("sqrt", Sum((Power(a, 2), Negative(Power(b, 2))))):
            yield "pythagoras-broken", Call("sqrt", Sum((Power(b, 2), Negative(Power(a, 2)))))
        case Call("atan", Quotient(top, bottom)):
            yield "arctan-upside-down", Call("atan", Quotient(bottom, top))
        case Sum(inner):
            yield from _regrouped(inner)


def _divided(top: Expr, bottom: Expr) -> Iterator[tuple[str, Expr]]:
    yield "divide-wrong-way", Quotient(bottom, top)
    yield "multiply-for-divide", Product((top, bottom))
    parts = terms(top)
    if len(parts) > 1:
        for place in range(len(parts)):
            yield (
                "divide-one-term",
                Sum(tuple(Quotient(each, bottom) if at == place else each for at, each in enumerate(parts))),
            )


def _half_multiplied(factors: tuple[Expr, ...]) -> Iterator[tuple[str, Expr]]:
    place = next(at for at, each in enumerate(factors) if isinstance(each, Sum))
    inner, others = factors[place], (*factors[:place], *factors[place + 1 :])
    assert isinstance(inner, Sum)
    for kept in range(len(inner.terms)):
        yield (
            "bracket-slip",
            Sum(tuple(Product((*others, each)) if at == kept else each for at, each in enumerate(inner.terms))),
        )


def _regrouped(inner: tuple[Expr, ...]) -> Iterator[tuple[str, Expr]]:
    """a + b x c worked out as (a + b) x c, a term taken the other way."""
    for place, each in enumerate(inner):
        turned = each.of if isinstance(each, Negative) else Negative(each)
        yield "sign-of-a-term", Sum((*inner[:place], turned, *inner[place + 1 :]))
    if len(inner) == 2 and isinstance(inner[1], Product):
        yield "bracket-slip", Product((Sum((inner[0], inner[1].factors[0])), *inner[1].factors[1:]))


def _transposed(left: Expr, right: Expr) -> bool:
    """Whether the result's digits are those of the true value with two neighbours changed over."""
    found, result = value(left), _inner(right)
    if found is None or not isinstance(result, Number):
        return False
    true = f"{abs(found[0]):.{max(result.places, 0)}f}"
    shown = f"{abs(result.value):f}"
    if len(true) != len(shown) or true == shown:
        return False
    apart = [place for place, (a, b) in enumerate(zip(true, shown, strict=True)) if a != b]
    return len(apart) == 2 and true[apart[0]] == shown[apart[1]] and true[apart[1]] == shown[apart[0]]
