"""Write the balance of forces along one axis: the part of each force along it, with its sign."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board
from explain.mechanics.body import Bearing
from explain.check.claim import Balance
from explain.equation.terms import Equation, Terms, Trig
from explain.equation.terms import leaves as leaves_of
from explain.solve.rule import Say, Shows, Step

from ..example_boards import level_elbow


class Sight(NamedTuple):
    terms: Terms
    axis: Bearing
    way: str
    reason: str


def when(board: Board) -> Sight | None:
    """A balance of forces is to be written."""
    if board.equation is not None or board.goal.kind != "forces":
        return None
    axis, terms, way = board.goal.extra
    if len(terms) == 1:
        return Sight(terms, axis, way, "nothing else has a part this way")
    oblique = any(isinstance(leaf, Trig) for leaf in leaves_of(terms))
    return Sight(terms, axis, way, "of an oblique force only its part this way counts" if oblique else "")


def do(board: Board, sight: Sight) -> Step:
    return Step(Equation(sight.terms, ()), Balance(sight.axis))


say = Say(what="{way}", why="{reason}")
shows = (Shows(level_elbow("forces"), "J_y + F_B − W_J = 0"),)
leaves = (level_elbow("moments"),)
