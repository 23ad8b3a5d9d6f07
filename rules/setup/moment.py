"""Write the moment of one force."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board
from explain.check.claim import Moment
from explain.document.english import the
from explain.equation.terms import Equation, Letter, Terms, term
from explain.solve.rule import Say, Shows, Step

from ..example_boards import level_elbow


class Sight(NamedTuple):
    letter: Letter
    terms: Terms
    name: str
    word: str


def when(board: Board) -> Sight | None:
    """The moment of one force was asked for."""
    if board.equation is not None or board.goal.kind != "moment":
        return None
    return Sight(board.letter(board.goal.sought), board.goal.extra[1], the(board.goal.key), board.course.word)


def do(board: Board, sight: Sight) -> Step:
    return Step(Equation((term(sight.letter),), sight.terms), Moment(board.goal.key, board.goal.extra[0]))


say = Say(
    what="{word} of {name}",
    why="the force times its perpendicular distance from the pivot, with the sign of its turning",
)
shows = (Shows(level_elbow("moment", "jug"), "M_J = −W_J d_J"),)
leaves = (level_elbow("moments"),)
