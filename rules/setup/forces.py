"""Write the balance of forces along one axis: the part of each force along it, with its sign."""
from __future__ import annotations

from typing import NamedTuple

from explain.board import Board
from explain.body import Bearing
from explain.claim import Balance
from explain.equation import Equation, Terms
from explain.rule import Say, Shows, Step

from ..example import level_elbow


class Sight(NamedTuple):
    terms: Terms
    axis: Bearing
    way: str


def when(board: Board) -> Sight | None:
    """A balance of forces is to be written."""
    if board.equation is not None or board.goal.kind != "forces":
        return None
    axis, terms, way = board.goal.extra
    return Sight(terms, axis, way)


def do(board: Board, sight: Sight) -> Step:
    return Step(Equation(sight.terms, ()), Balance(sight.axis))


say = Say(what="{way}", why="of an oblique force only the part along the axis counts: beside the angle, the cosine; across from it, the sine")
shows = (Shows(level_elbow("forces"), "J_y + F_B − W_J = 0"),)
leaves = (level_elbow("moments"),)
