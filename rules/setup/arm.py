"""Find the perpendicular distance from the pivot to the line of a force."""
from __future__ import annotations

from typing import NamedTuple

from explain.board import Board
from explain.claim import Arm
from explain.equation import Equation, Letter, term
from explain.geometry import Lever
from explain.rule import Say, Shows, Step

from ..example import steep_shank


class Sight(NamedTuple):
    letter: Letter
    lever: Lever
    name: str
    reason: str


def when(board: Board) -> Sight | None:
    """The lever arm of a force is to be found."""
    if board.equation is not None or board.goal.kind != "arm":
        return None
    force = board.free.force(board.goal.key)
    upright = force.bearing is not None and force.bearing.degrees in (90, 270) and not force.bearing.unknown
    reason = "an upright force is as far from the pivot as it stands to the side of it" if upright else \
        "what turns is the distance at right angles to the line of pull: all of it at 90°, nothing at 0°, which is what the sine says"
    return Sight(board.letter(board.goal.sought), board.goal.extra, force.name, reason)


def do(board: Board, sight: Sight) -> Step:
    return Step(Equation((term(sight.letter),), sight.lever.terms), Arm(board.goal.key, sight.lever.sense, board.goal.about))


say = Say(what="perpendicular distance of the {name}", why="{reason}")
shows = (Shows(steep_shank("arm", "quadriceps"), "d_Q⊥ = d_Q sin 40°"),)
leaves = (steep_shank("fold", "quadriceps"),)
