"""Write the principle: at rest, what turns one way balances what turns the other, and pushes balance pushes."""
from __future__ import annotations

from typing import NamedTuple

from explain.board import Board
from explain.claim import AtRest
from explain.equation import Equation, term
from explain.rule import Say, Shows, Step

from ..example import level_elbow


class Sight(NamedTuple):
    total: str
    what: str


def when(board: Board) -> Sight | None:
    """The balance of moments, of level or of upright forces has just been taken up."""
    if board.equation is not None or board.goal.kind != "at rest":
        return None
    words = {"total": f"{board.course.word}s about the {board.free.problem.pivot.name}", "level": "level forces", "upright": "upright forces",
             "along": f"forces along the {board.course.axes}", "across": f"forces across the {board.course.axes}"}
    return Sight(board.goal.key, words[board.goal.key])


def do(board: Board, sight: Sight) -> Step:
    return Step(Equation((term(board.letter(sight.total)),), ()), AtRest(sight.total))


say = Say(what="at rest the {what} add to zero", why="nothing starts to turn or to move")
shows = (Shows(level_elbow("at rest", "total"), "ΣM = 0"),)
leaves = (level_elbow("pivot"),)
