"""Add terms of one kind: numbers with numbers, and terms that hold the sought letter with each other."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board, both_sides, is_number, merged
from explain.equation.terms import Equation, Factor, Group, Letter, Quantity, Shown, Term, Terms, term
from explain.exact.interval import sign
from explain.solve.rule import Say, Shows, Step, same


DEGREE = {"deg": 1}


on = frozenset({Letter, Quantity, Shown})


class Sight(NamedTuple):
    terms: Terms


def _key(each: Term) -> tuple[Factor, ...] | None:
    """What terms must share to be added: their letters; None where the term is not worked out yet."""
    numbers = [factor for factor in each.factors if not factor.letters]
    if len(numbers) > 1 or not all(is_number(factor) for factor in numbers):
        return None
    return tuple(factor for factor in each.factors if factor.letters)


def _like(terms: Terms) -> Terms:
    """The first two terms or more that can be added."""
    kinds: dict[tuple[Factor, ...], list[Term]] = {}
    for each in terms:
        key = _key(each)
        if key is not None:
            kinds.setdefault(key, []).append(each)
    return next((tuple(found) for found in kinds.values() if len(found) > 1), ())


def when(board: Board, line: Equation) -> Sight | None:
    """A sum with two numbers, or with two multiples of one letter."""
    found = next((like for terms in board.sums if len(terms) > 1 and (like := _like(terms))), ())
    return Sight(found) if found else None


def do(board: Board, sight: Sight) -> Step:
    def add(terms: Terms) -> Terms:
        like = _like(terms)
        if not like:
            return terms
        at = terms.index(like[0])
        rest = [each for each in terms if not any(each is one for one in like)]
        return (*rest[:at], *_added(board, like), *rest[at:])

    return same(both_sides(board.eq, add))


def _added(board: Board, like: Terms) -> Terms:
    key = _key(like[0]) or ()
    coefficients = tuple(
        Term(each.sign, tuple(f for f in each.factors if not f.letters) or (Quantity.of("1"),)) for each in like
    )
    number = board.number(Term(1, (Group(coefficients),)))
    if sign(board.sizes.sum((number,))) == 0:
        return (term(Quantity.of("0", "deg")),) if not key and merged(like[0].factors) == DEGREE else ()
    if not key:
        return (number,)
    value = number.factors[0]
    has_unit = bool(merged(number.factors))
    first = tuple(f for f in key if isinstance(f, Letter)) if has_unit else ()
    return (Term(number.sign, (*first, value, *(f for f in key if f not in first))),)


say = Say(what="add like terms", why="")

_F, _t = Letter("F", "F"), Letter("*angle t", "theta")
_line = Equation(
    (term(_F, Quantity.of("4", "cm")), term(Quantity.of("3", "N m"), sign=-1), term(Quantity.of("9", "N m"), sign=-1)),
    (),
)
shows = (
    Shows(Board(_line, "F"), "F (4 cm) − 12 N·m = 0"),
    Shows(
        Board(Equation((term(_F, Quantity.of("4", "cm")), term(_F, Quantity.of("3", "cm"))), ()), "F"), "F (7 cm) = 0"
    ),
    Shows(
        Board(
            Equation((term(_t),), (term(Quantity.of("30", "deg")), term(Quantity.of("30", "deg"), sign=-1))), "*angle t"
        ),
        "θ = 0°",
    ),
)
leaves = (Board(Equation((term(_F, Quantity.of("4", "cm")), term(Quantity.of("3", "N m"), sign=-1)), ()), "F"),)
