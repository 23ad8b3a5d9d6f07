"""Write the principle: at rest, what turns one way balances what turns the other, and pushes balance pushes."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve import goal as goals
from explain.solve.board import Board
from explain.check.claim import AtRest
from explain.document.english import the
from explain.equation.terms import Equation, term
from explain.solve.rule import Say, Shows, Step

from ..example_boards import level_elbow

STILL = {
    "total": "nothing starts to turn",
    "level": "nothing starts to move sideways",
    "upright": "nothing starts to move up or down",
    "along": "nothing starts to move along it",
    "across": "nothing starts to move across it",
}


on = frozenset({goals.AtRest})


class Sight(NamedTuple):
    total: str
    what: str
    still: str


def when(board: Board, goal: goals.AtRest) -> Sight | None:
    """The balance of moments, of level or of upright forces has just been taken up."""
    words = {
        "total": f"{board.course.word}s about {the(goal.about or board.free.problem.pivot.name)}",
        "level": "horizontal forces",
        "upright": "vertical forces",
        "along": f"forces along the {board.course.axes}",
        "across": f"forces across the {board.course.axes}",
    }
    return Sight(goal.key, words[goal.key], STILL[goal.key])


def do(board: Board, sight: Sight) -> Step:
    return Step(Equation((term(board.letter(sight.total)),), ()), AtRest(sight.total))


say = Say(what="at rest the {what} add to zero", why="{still}")
shows = (Shows(level_elbow(goals.AtRest, "total"), "ΣM = 0"),)
leaves = (level_elbow(goals.Pivot),)
