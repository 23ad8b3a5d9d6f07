"""Write the balance of forces along one axis: the part of each force along it, with its sign."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve import goal as goals
from explain.solve.board import Board
from explain.check.claim import Balance
from explain.equation.terms import Equation, Trig
from explain.equation.terms import leaves as leaves_of
from explain.solve.rule import Say, Shows, Step

from ..example_boards import level_elbow


on = frozenset({goals.Forces})


class Sight(NamedTuple):
    goal: goals.Forces
    way: str
    reason: str


def when(board: Board, goal: goals.Forces) -> Sight | None:
    """A balance of forces is to be written."""
    if len(goal.terms) == 1:
        return Sight(goal, goal.way, "nothing else has a part this way")
    oblique = any(isinstance(leaf, Trig) for leaf in leaves_of(goal.terms))
    return Sight(goal, goal.way, "of an oblique force only its part this way counts" if oblique else "")


def do(board: Board, sight: Sight) -> Step:
    return Step(Equation(sight.goal.terms, ()), Balance(sight.goal.axis))


say = Say(what="{way}", why="{reason}")
shows = (Shows(level_elbow(goals.Forces), "J_y + F_B − W_J = 0"),)
leaves = (level_elbow(goals.Moments),)
