"""Find the part of a force that turns: the one across the bone."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve import goal as goals
from explain.solve.board import Board
from explain.check.claim import Turning
from explain.document.english import the
from explain.equation.terms import Equation, term
from explain.exact.interval import sign
from explain.solve.rule import Say, Shows, Step

from ..example_boards import steep_shank


on = frozenset({goals.Turning})


class Sight(NamedTuple):
    goal: goals.Turning
    name: str
    bone: str
    against: str


def when(board: Board, goal: goals.Turning) -> Sight | None:
    """The turning component of a force is to be found."""
    size = board.free.force(goal.key).size
    negative = size.name in board.values and sign(board.sizes.factor(size)) < 0
    against = (
        f"the turning part of {the(goal.key)} comes out negative: it points against its stated direction"
        if negative
        else ""
    )
    return Sight(goal, the(goal.key), the(board.free.force(goal.key).segment or "body"), against)


def do(board: Board, sight: Sight) -> Step:
    goal, force = sight.goal, board.free.force(sight.goal.key)
    rest = tuple(factor for factor in goal.lever.terms[0].factors if factor != force.steps[0].distance)
    part = term(force.size, *rest)
    return Step(
        Equation((term(board.letter(goal.sought)),), (part,)), Turning(force.name, goal.lever.sense * force.sign)
    )


say = Say(
    what="turning part of {name}",
    why="only the part across {bone} has a moment; the line of the part along it passes through the pivot",
    watch="{against}",
)
shows = (Shows(steep_shank(goals.Turning, "quadriceps"), "F_Q⊥ = F_Q sin 40°"),)
leaves = (steep_shank(goals.Arm, "quadriceps"),)
