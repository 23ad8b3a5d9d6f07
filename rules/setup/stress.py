"""Spread a pull over the cross-section of the muscle."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve import goal as goals
from explain.solve.board import Board
from explain.check.claim import Stress
from explain.document.english import the
from explain.equation.terms import Equation, Quotient, term
from explain.solve.rule import Say, Shows, Step
from explain.wording.phrases import square_of

from ..example_boards import level_elbow


on = frozenset({goals.Stress})


class Sight(NamedTuple):
    goal: goals.Stress
    name: str
    square: str


def when(board: Board, goal: goals.Stress) -> Sight | None:
    """The stress in a muscle of known cross-section was asked for."""
    area = next(pull.area for pull in board.free.problem.pulls if pull.name == goal.key)
    return Sight(goal, the(goal.key), square_of(area))


def do(board: Board, sight: Sight) -> Step:
    name = sight.goal.key
    force, area = term(board.letter(f"{name}.force")), term(board.letter(f"{name}.area"))
    stress = term(Quotient((force,), (area,)), sign=board.free.force(name).sign)
    return Step(Equation((term(board.letter(sight.goal.sought)),), (stress,)), Stress(name))


say = Say(what="stress in {name}", why="force over area: how hard each {square} pulls")
shows = (Shows(level_elbow(goals.Stress, "biceps"), "σ_B = F_B / A_B"),)
leaves = (level_elbow(goals.Moments),)
