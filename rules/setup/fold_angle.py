"""Work out the angle between two lines from the angles that were stated."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve import goal as goals
from explain.solve.board import Board
from explain.check.claim import Between
from explain.equation.terms import Equation, Terms, term
from explain.mechanics.geometry import bookkeeping, stated_angles
from explain.solve.rule import Say, Shows, Step

from ..example_boards import steep_shank


on = frozenset({goals.Fold})


class Sight(NamedTuple):
    goal: goals.Fold
    sum: Terms
    which: str


def when(board: Board, goal: goals.Fold) -> Sight | None:
    """An acute angle is needed that was not stated itself."""
    force = board.free.force(goal.key)
    terms = bookkeeping(goal.acute, stated_angles(board.free, force))
    return Sight(goal, terms, goal.which) if terms else None


def do(board: Board, sight: Sight) -> Step:
    goal = sight.goal
    return Step(Equation((term(board.letter(goal.sought)),), sight.sum), Between(goal.key, goal.first, goal.second))


say = Say(
    what="angle between {which}", why="the stated angles are measured from other lines; level and upright are 90° apart"
)
shows = (Shows(steep_shank(goals.Fold, "quadriceps"), "α_Q = 70° − 30°"),)
leaves = (steep_shank(goals.Arm, "quadriceps"),)
