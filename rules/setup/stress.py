"""Spread a pull over the cross-section of the muscle."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board
from explain.check.claim import Stress
from explain.document.english import the
from explain.equation.terms import Equation, Letter, Quotient, term
from explain.solve.rule import Say, Shows, Step

from ..example_boards import level_elbow


class Sight(NamedTuple):
    letter: Letter
    force: Letter
    area: Letter
    name: str
    owner: str


def when(board: Board) -> Sight | None:
    """The stress in a muscle of known cross-section was asked for."""
    if board.equation is not None or board.goal.kind != "stress":
        return None
    name = board.goal.key
    return Sight(
        board.letter(f"{name}.stress"), board.letter(f"{name}.force"), board.letter(f"{name}.area"), the(name), name
    )


def do(board: Board, sight: Sight) -> Step:
    return Step(
        Equation((term(sight.letter),), (term(Quotient((term(sight.force),), (term(sight.area),))),)),
        Stress(sight.owner),
    )


say = Say(what="stress in {name}", why="force over area: how hard each square centimetre pulls")
shows = (Shows(level_elbow("stress", "biceps"), "σ_B = F_B / A_B"),)
leaves = (level_elbow("moments"),)
