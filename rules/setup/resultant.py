"""Put the two parts of the joint force together: its size, or the tangent of its angle."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve import goal as goals
from explain.solve.board import Board
from explain.check.claim import Pythagoras
from explain.equation.terms import Equation, Power, Quotient, Term, Trig, term
from explain.exact.interval import sign
from explain.solve.rule import Say, Shows, Step
from explain.wording.pivot_words import pivot_force

from ..example_boards import level_elbow


on = frozenset({goals.Resultant, goals.ResultantAngle})


class Sight(NamedTuple):
    goal: goals.Resultant
    signs: tuple[int, int]
    what: str
    reason: str


def when(board: Board, goal: goals.Resultant) -> Sight | None:
    """Both parts are known, and the size or the direction of the joint force is wanted."""
    first, second = (sign(board.sizes.factor(each)) for each in goal.parts)
    force = pivot_force(board.free.problem)
    what, reason = f"size of the {force}", "the two parts are at right angles: Pythagoras"
    if isinstance(goal, goals.ResultantAngle):
        if not first:  # nothing is left of it by rounding: the angle has no tangent
            return None
        second = second or 1
        what, reason = (
            f"angle of the {force}",
            "the sizes of the parts, without signs, are the short sides of a right triangle: opposite over adjacent is "
            "the tangent",
        )
    elif not (first and second):
        reason = "it has one part only, so its size is that part without its sign"
    return Sight(goal, (first, second), what, reason)


def do(board: Board, sight: Sight) -> Step:
    (first, second), (x, y) = sight.goal.parts, sight.signs
    ground, found = Pythagoras((first.name, second.name)), board.letter(sight.goal.sought)
    if isinstance(sight.goal, goals.ResultantAngle):
        ratio = Quotient((Term(y, (second,)),), (Term(x, (first,)),))
        return Step(Equation((term(Trig("tan", found)),), (term(ratio),)), ground)
    if 0 in sight.signs:
        other, k = (first, x) if y == 0 else (second, y)
        return Step(Equation((term(found),), (Term(k, (other,)),) if k else ()), ground)
    squares = term(Power(first, 2)), term(Power(second, 2))
    return Step(Equation((term(Power(found, 2)),), squares), ground)


say = Say(what="{what}", why="{reason}")
shows = (Shows(level_elbow(goals.Resultant), "J² = J_x² + J_y²"),)
leaves = (level_elbow(goals.Moments),)
