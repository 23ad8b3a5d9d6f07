"""Where a force has no part along one axis and is not zero, the cosine (or sine) of its angle is."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board
from explain.check.claim import Divided
from explain.equation.terms import Equation, Letter, Quantity, Terms, Trig, term
from explain.solve.rule import Say, Shows, Step

from .ratio import the_ratio, without


on = frozenset({Trig})


class Sight(NamedTuple):
    ratio: Terms
    force: Terms
    other: Terms


def when(board: Board, line: Equation) -> Sight | None:
    """A line in which a force times one sine or cosine is nothing, and beside it a line with the same force that is
    not.
    """
    if board.beside is None or line.right or not board.beside.right:
        return None
    here, there = the_ratio(line), the_ratio(board.beside)
    if here is None or there is None or without(line.left[0], here) != without(board.beside.left[0], there):
        return None
    force = tuple(term(factor) for factor in without(line.left[0], here) if isinstance(factor, Letter))
    return Sight((term(here),), force, board.beside.left) if force else None


def do(board: Board, sight: Sight) -> Step:
    assert board.beside is not None
    return Step(Equation(sight.ratio, ()), Divided(board.beside))


say = Say(what="{force} is not zero, or {other} would be zero too; so {ratio} is zero")

_F, _t = Letter("F", "F"), Letter("*angle t", "theta")
_none = Equation((term(_F, Trig("cos", _t)),), ())
_some = Equation((term(_F, Trig("sin", _t)),), (term(Quantity.of("3", "N")),))
shows = (Shows(Board(_none, "*angle t", beside=_some), "cos θ = 0"),)
leaves = (Board(_none, "*angle t"), Board(_some, "*angle t", beside=_none))
