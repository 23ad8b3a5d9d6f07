"""Write the balance of forces along one axis: the part of each force along it, with its sign."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve import goal as goals
from explain.solve.board import Board
from explain.check.claim import Balance
from explain.document.english import the
from explain.equation.terms import Trig
from explain.equation.terms import leaves as leaves_of
from explain.solve.rule import Say, Shows, Step

from ..example_boards import level_elbow
from .moments import two_sides


on = frozenset({goals.Forces})
SIDES = {
    "level": "at rest what pushes to the right equals what pushes to the left",
    "upright": "at rest what pushes up equals what pushes down",
    "along": "at rest what pushes one way along {} equals what pushes the other way",
    "across": "at rest what pushes one way across {} equals what pushes the other way",
}


class Sight(NamedTuple):
    goal: goals.Forces
    way: str
    reason: str


def when(board: Board, goal: goals.Forces) -> Sight | None:
    """A balance of forces is to be written."""
    way = SIDES[goal.key].format(the(board.course.axes)) if board.course.balance == "two sides" else goal.way
    if len(goal.terms) == 1:
        return Sight(goal, way, "nothing else has a part this way")
    oblique = any(isinstance(leaf, Trig) for leaf in leaves_of(goal.terms))
    return Sight(goal, way, f"of an oblique force only {_part(board, goal)} counts" if oblique else "")


def _part(board: Board, goal: goals.Forces) -> str:
    """The part of an oblique force that this balance is of."""
    words = {"level": "the horizontal part", "upright": "the vertical part"}
    return words.get(goal.key) or f"the part {goal.key} {the(board.course.axes)}"


def do(board: Board, sight: Sight) -> Step:
    line, side = two_sides(board, sight.goal)
    return Step(line, Balance(sight.goal.axis, sense=side))


say = Say(what="{way}", why="{reason}")
shows = (Shows(level_elbow(goals.Forces), "J_y + F_B − W_J = 0"),)
leaves = (level_elbow(goals.Moments),)
