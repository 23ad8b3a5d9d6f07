"""Multiply the numbers of a term together, and their units."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board, both_sides, is_number, is_plain
from explain.equation.terms import (
    Equation,
    Factor,
    Group,
    Letter,
    Power,
    Quantity,
    Quotient,
    Shown,
    Term,
    Terms,
    Trig,
    term,
)
from explain.solve.rule import Say, Shows, Step, same

ONE = Quantity.of("1")


on = frozenset({Quantity, Shown})


class Sight(NamedTuple):
    first: Term
    what: str


def _ready(factor: Factor) -> bool:
    match factor:
        case Trig(angle=inner) | Power(base=inner):
            return is_number(inner) or (isinstance(inner, Group) and len(inner.terms) == 1 and is_plain(inner.terms[0]))
        case Group(terms):
            return len(terms) == 1 and is_plain(terms[0])
        case Quotient(top, bottom):
            return all(len(side) == 1 and is_plain(side[0]) for side in (top, bottom))
    return is_number(factor)


def _work(each: Term) -> tuple[Factor, ...]:
    """The factors of a term that can be multiplied now, or () where there is nothing to multiply."""
    known = tuple(factor for factor in each.factors if _ready(factor))
    if len(known) == 1 and (is_number(known[0]) or (isinstance(known[0], Quotient) and len(each.factors) == 1)):
        return ()
    if any(not factor.letters and not _ready(factor) for factor in each.factors):
        return ()
    return known


def when(board: Board, line: Equation) -> Sight | None:
    """A term with several numbers, or a sine, cosine or square of one."""
    found = next((each for terms in board.sums for each in terms if _work(each)), None)
    if found is None:
        return None
    brackets = len(found.factors) == 1 and isinstance(found.factors[0], Group)
    return Sight(found, "open the brackets" if brackets else "multiply out")


def do(board: Board, sight: Sight) -> Step:
    after = both_sides(board.eq, lambda terms: tuple(_multiplied(board, each) for each in terms))
    return same(Equation(_without_nothing(board.eq.left, after.left), _without_nothing(board.eq.right, after.right)))


def _without_nothing(before: Terms, after: Terms) -> Terms:
    """A sum without the terms that came to nothing, such as a pull times the cosine of a right angle."""
    return tuple(now for now in after if not any(_is_nothing(factor) for factor in now.factors) or now in before)


def _is_nothing(factor: Factor) -> bool:
    return isinstance(factor, Quantity) and not factor.number


def _multiplied(board: Board, each: Term) -> Term:
    known = _work(each)
    if not known:
        return each
    number = board.number(Term(each.sign, known, each.source))
    rest = tuple(factor for factor in each.factors if not _ready(factor))
    value = number.factors[0]
    if rest and value == ONE:  # 1.0000 that stands for the cosine of a small angle stays
        return Term(number.sign, rest, each.source)
    plain = value.value if isinstance(value, Shown) else value
    first = (
        tuple(factor for factor in rest if isinstance(factor, Letter))
        if isinstance(plain, Quantity) and plain.unit
        else ()
    )
    return Term(number.sign, (*first, value, *(factor for factor in rest if factor not in first)), each.source)


say = Say(what="{what}", why="each sign stays with its term")

_F = Letter("F", "F")
_line = Equation(
    (
        term(_F, Quantity.of("0.045", "m"), Trig("sin", Quantity.of("70", "deg"))),
        term(Quantity.of("58.86", "N"), Quantity.of("0.35", "m"), sign=-1),
    ),
    (),
)
_right_angle = Equation((term(_F), term(Quantity.of("300", "N"), Trig("cos", Quantity.of("90", "deg")))), ())
shows = (Shows(Board(_line, "F"), "F (0.042286 m) − 20.601 N·m = 0"), Shows(Board(_right_angle, "F"), "F = 0"))
_sum = Quotient((term(Quantity.of("12", "N cm")), term(Quantity.of("3", "N cm"))), (term(Quantity.of("4", "cm")),))
leaves = (
    Board(Equation((term(_F),), (term(Quantity.of("2"), _sum),)), "F"),
    Board(Equation((term(_F, Quantity.of("0.04", "m")),), (term(Quantity.of("2", "N m")),)), "F"),
)
