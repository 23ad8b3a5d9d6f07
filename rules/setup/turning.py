"""Find the part of a force that turns: the one across the bone."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board
from explain.check.claim import Turning
from explain.document.english import the
from explain.equation.terms import Equation, Letter, Term, term
from explain.mechanics.geometry import Lever
from explain.exact.interval import sign
from explain.solve.rule import Say, Shows, Step

from ..example_boards import steep_shank


class Sight(NamedTuple):
    letter: Letter
    lever: Lever
    name: str
    against: str


def when(board: Board) -> Sight | None:
    """The turning component of a force is to be found."""
    if board.equation is not None or board.goal.kind != "turning":
        return None
    size = board.free.force(board.goal.key).size
    negative = size.name in board.values and sign(board.sizes.factor(size)) < 0
    against = (
        f"the turning part of {the(board.goal.key)} comes out negative: it points against its stated direction"
        if negative
        else ""
    )
    return Sight(board.letter(board.goal.sought), board.goal.extra, the(board.goal.key), against)


def do(board: Board, sight: Sight) -> Step:
    force = board.free.force(board.goal.key)
    rest = tuple(factor for factor in sight.lever.terms[0].factors if factor != force.steps[0].distance)
    return Step(
        Equation((term(sight.letter),), (Term(1, (force.size, *rest)),)), Turning(force.name, sight.lever.sense)
    )


say = Say(
    what="turning part of {name}",
    why="only the part across the bone turns it; the part along the bone points at the pivot",
    watch="{against}",
)
shows = (Shows(steep_shank("turning", "quadriceps"), "F_Q⊥ = F_Q sin 40°"),)
leaves = (steep_shank("arm", "quadriceps"),)
