"""Work out the angle between two lines from the angles that were stated."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve import goal as goals
from explain.solve.board import Board
from explain.check.claim import Between
from explain.equation.terms import Equation, Quantity, Terms, term
from explain.mechanics.geometry import bookkeeping, stated_angles
from explain.solve.rule import Say, Shows, Step

from ..example_boards import steep_shank


on = frozenset({goals.Fold})
RIGHT_ANGLE = Quantity.of("90", "deg")


class Sight(NamedTuple):
    goal: goals.Fold
    sum: Terms
    which: str
    right_angle: str


def when(board: Board, goal: goals.Fold) -> Sight | None:
    """An acute angle is needed that was not stated itself."""
    force = board.free.force(goal.key)
    terms = bookkeeping(goal.acute, stated_angles(board.free, force))
    if not terms:
        return None
    square = any(factor == RIGHT_ANGLE for each in terms for factor in each.factors)
    return Sight(goal, terms, goal.which, "; the horizontal and the vertical are 90° apart" if square else "")


def do(board: Board, sight: Sight) -> Step:
    goal = sight.goal
    return Step(Equation((term(board.letter(goal.sought)),), sight.sum), Between(goal.key, goal.first, goal.second))


say = Say(
    what="angle between {which}",
    why="the angle between {which} follows from the stated ones{right_angle}",
)
shows = (Shows(steep_shank(goals.Fold, "quadriceps"), "α_Q = 70° − 30°"),)
leaves = (steep_shank(goals.Arm, "quadriceps"),)
