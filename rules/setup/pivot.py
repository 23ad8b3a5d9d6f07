"""Choose the pivot: the joint force acts there and has no arm."""

from __future__ import annotations

from typing import NamedTuple

from explain.equation import key as keys
from explain.solve import goal as goals
from explain.solve.board import Board
from explain.check.claim import AtRest
from explain.document.english import the
from explain.equation.terms import Equation, term
from explain.solve.rule import Say, Shows, Step
from explain.wording.pivot_words import pivot_force

from ..example_boards import level_elbow


on = frozenset({goals.Pivot})


class Sight(NamedTuple):
    pivot: str
    word: str
    force: str


def when(board: Board, goal: goals.Pivot) -> Sight | None:
    """The pivot is to be chosen, and an unknown joint force acts there."""
    return Sight(the(board.free.problem.pivot.name), board.course.word, pivot_force(board.free.problem))


def do(board: Board, sight: Sight) -> Step:
    return Step(Equation((term(board.letter(keys.JOINT_MOMENT)),), ()), AtRest(keys.JOINT_MOMENT))


say = Say(what="take {word}s about {pivot}", why="the unknown {force} acts there, has no lever arm, and drops out")
shows = (Shows(level_elbow(goals.Pivot), "M_joint = 0"),)
leaves = (level_elbow(goals.AtRest, "total"),)
