"""Find the perpendicular distance from the pivot to the line of a force."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve import goal as goals
from explain.solve.board import Board
from explain.check.claim import Arm
from explain.document.english import the, verb
from explain.equation.terms import Equation, Terms, Trig, term
from explain.equation.terms import leaves as leaves_of
from explain.solve.rule import Say, Shows, Step

from ..example_boards import steep_shank


on = frozenset({goals.Arm})


class Sight(NamedTuple):
    goal: goals.Arm
    name: str
    reason: str
    whence: str


def when(board: Board, goal: goals.Arm) -> Sight | None:
    """The lever arm of a force is to be found."""
    force = board.free.force(goal.key)
    upright = force.bearing is not None and force.bearing.degrees in (90, 270) and not force.bearing.unknown
    return Sight(goal, the(force.name), arm_reason(goal.lever.terms, upright), whence(goal.about))


def whence(about: str) -> str:
    """From where an arm is measured that is not measured from the pivot."""
    return (
        f"these arms are measured from the point where {the(about)} {verb(about, 'act')}, and a second letter below "
        "says so"
        if about
        else ""
    )


def arm_reason(terms: Terms, upright: bool) -> str:
    """Why the sine, or why the cosine, by what happens at its ends."""
    functions = list(dict.fromkeys(leaf.name for leaf in leaves_of(terms) if isinstance(leaf, Trig)))
    if not functions:
        return ""
    if len(functions) > 1:
        return (
            "the lever arm of a vertical force is horizontal: of each distance only the horizontal part counts"
            if upright
            else "the lever arm is the perpendicular distance to the line of the force: only what is square to that "
            "line counts"
        )
    name, ends = {
        "sin": ("sine", "nothing at 0°, the whole distance at 90°"),
        "cos": ("cosine", "the whole distance at 0°, nothing at 90°"),
    }[functions[0]]
    if not upright:
        return f"the lever arm is the perpendicular distance to the line of the force, here with the {name}: {ends}"
    line = {"sin": "vertical", "cos": "horizontal"}[functions[0]]
    return f"the lever arm of a vertical force is horizontal, here with the {name} of the angle from the {line}: {ends}"


def do(board: Board, sight: Sight) -> Step:
    goal = sight.goal
    ground = Arm(goal.key, goal.lever.sense * board.free.force(goal.key).sign, goal.about)
    return Step(Equation((term(board.letter(goal.sought)),), goal.lever.terms), ground)


say = Say(what="perpendicular distance of {name}", why="{reason}", watch="{whence}")
shows = (Shows(steep_shank(goals.Arm, "quadriceps"), "d_Q⊥ = d_Q sin 40°"),)
leaves = (steep_shank(goals.Fold, "quadriceps"),)
