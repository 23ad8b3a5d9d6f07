"""Work out the angle between two lines from the angles that were stated."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board
from explain.check.claim import Between
from explain.equation.terms import Equation, Letter, Terms, term
from explain.mechanics.geometry import bookkeeping, stated_angles
from explain.solve.rule import Say, Shows, Step

from ..example_boards import steep_shank


class Sight(NamedTuple):
    letter: Letter
    sum: Terms
    which: str


def when(board: Board) -> Sight | None:
    """An acute angle is needed that was not stated itself."""
    if board.equation is not None or board.goal.kind != "fold":
        return None
    force = board.free.force(board.goal.key)
    terms = bookkeeping(board.goal.extra[2], stated_angles(board.free, force))
    return Sight(board.letter(board.goal.sought), terms, board.goal.about) if terms else None


def do(board: Board, sight: Sight) -> Step:
    return Step(
        Equation((term(sight.letter),), sight.sum), Between(board.goal.key, board.goal.extra[0], board.goal.extra[1])
    )


say = Say(
    what="angle between {which}", why="the stated angles are measured from other lines; level and upright are 90° apart"
)
shows = (Shows(steep_shank("fold", "quadriceps"), "α_Q = 70° − 30°"),)
leaves = (steep_shank("arm", "quadriceps"),)
