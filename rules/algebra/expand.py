"""Multiply a bracket out that holds what is sought."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board, both_sides
from explain.equation.terms import Equation, Factor, Group, Letter, Quantity, Term, Terms, term
from explain.solve.rule import Say, Shows, Step, same


on = frozenset({Group})


class Sight(NamedTuple):
    bracket: Terms


def _bracket(each: Term, sought: str) -> Factor | None:
    if len(each.factors) < 2:
        return None
    return next((factor for factor in each.factors if isinstance(factor, Group) and sought in factor.letters), None)


def when(board: Board, line: Equation) -> Sight | None:
    """A product with a bracket in which the sought letter stands."""
    found = [bracket for each in (*line.left, *line.right) if (bracket := _bracket(each, board.sought))]
    return Sight((term(found[0]),)) if found else None


def do(board: Board, sight: Sight) -> Step:
    def out(terms: Terms) -> Terms:
        return tuple(inner for each in terms for inner in _multiplied(each, board.sought))

    return same(both_sides(board.eq, out))


def _multiplied(each: Term, sought: str) -> Terms:
    bracket = _bracket(each, sought)
    if not isinstance(bracket, Group):
        return (each,)
    rest = tuple(factor for factor in each.factors if factor is not bracket)
    return tuple(Term(each.sign * inner.sign, (*rest, *inner.factors), each.source) for inner in bracket.terms)


say = Say(what="multiply the bracket out", why="what stands before it multiplies every term inside")

_W, _d = Quantity.of("20", "N"), Letter("d", "d")
_line = Equation((term(_W, Group((term(Quantity.of("0.3", "m")), term(_d)))),), ())
shows = (Shows(Board(_line, "d"), "(20 N)(0.3 m) + (20 N) d = 0"),)
leaves = (Board(Equation((term(_W, _d),), ()), "d"), Board(_line, "F"))
