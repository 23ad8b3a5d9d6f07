"""Write the moment of one force."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve import goal as goals
from explain.solve.board import Board
from explain.check.claim import Moment
from explain.document.english import the
from explain.equation.terms import Equation, term
from explain.solve.rule import Say, Shows, Step

from ..example_boards import level_elbow


on = frozenset({goals.Moment})


class Sight(NamedTuple):
    goal: goals.Moment
    name: str
    word: str


def when(board: Board, goal: goals.Moment) -> Sight | None:
    """The moment of one force was asked for."""
    return Sight(goal, the(goal.key), board.course.word)


def do(board: Board, sight: Sight) -> Step:
    goal = sight.goal
    return Step(Equation((term(board.letter(goal.sought)),), goal.terms), Moment(goal.key, goal.sense))


say = Say(
    what="{word} of {name}",
    why="the force times its perpendicular distance from the pivot, with the sign of its turning",
)
shows = (Shows(level_elbow(goals.Moment, "jug"), "M_J = −W_J d_J"),)
leaves = (level_elbow(goals.Moments),)
