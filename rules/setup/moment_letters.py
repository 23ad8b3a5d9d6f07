"""Write the balance of moments in the moments' own letters; the products come after it."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve import goal as goals
from explain.solve.board import Board
from explain.check.claim import Balance
from explain.solve.rule import Say, Shows, Step

from ..example_boards import level_elbow
from .moments import two_sides

on = frozenset({goals.MomentLetters})


class Sight(NamedTuple):
    goal: goals.MomentLetters
    word: str
    reason: str


def when(board: Board, goal: goals.MomentLetters) -> Sight | None:
    """A class that writes the moments first begins with a balance of moments."""
    sized = board.course.balance == "two sides"
    return Sight(goal, board.course.word, "a size" if sized else "with its sign in it")


def do(board: Board, sight: Sight) -> Step:
    line, side = two_sides(board, sight.goal)
    return Step(line, Balance(None, sense=sight.goal.sense * side))


say = Say(what="each {word} by its own letter, {reason}")
shows = (Shows(level_elbow(goals.MomentLetters), "M_B + M_J = 0"),)
leaves = (level_elbow(goals.Moments),)
