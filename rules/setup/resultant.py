"""Put the two parts of the joint force together: its size, or the tangent of its angle."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board
from explain.check.claim import Pythagoras
from explain.equation.terms import Equation, Letter, Power, Quotient, Term, Trig, term
from explain.exact.interval import sign
from explain.solve.rule import Say, Shows, Step

from ..example_boards import level_elbow


class Sight(NamedTuple):
    parts: tuple[Letter, Letter]
    signs: tuple[int, int]
    what: str
    reason: str


def when(board: Board) -> Sight | None:
    """Both parts are known, and the size or the direction of the joint force is wanted."""
    if board.equation is not None or board.goal.kind not in ("resultant", "resultant angle"):
        return None
    first, second = board.goal.extra
    signs = tuple(sign(board.sizes.factor(each)) for each in (first, second))
    if board.goal.kind == "resultant angle":
        if not signs[0]:  # as it was rounded
            return None
        return Sight(
            (first, second),
            (signs[0], signs[1] or 1),
            "angle of the joint force",
            "the sizes of the parts, without signs, are the short sides of a right triangle: opposite over adjacent is "
            "the tangent",
        )
    if 0 in signs:
        return Sight(
            (first, second),
            (signs[0], signs[1]),
            "size of the joint force",
            "it has one part only, so its size is that part without its sign",
        )
    return Sight(
        (first, second),
        (signs[0], signs[1]),
        "size of the joint force",
        "the two parts are at right angles: Pythagoras",
    )


def do(board: Board, sight: Sight) -> Step:
    (first, second), (x, y) = sight.parts, sight.signs
    if board.goal.kind == "resultant angle":
        ratio = Quotient((Term(y, (second,)),), (Term(x, (first,)),))
        return Step(
            Equation((term(Trig("tan", board.letter("*angle reaction"))),), (term(ratio),)),
            Pythagoras((first.name, second.name)),
        )
    size = board.letter("reaction")
    if 0 in sight.signs:
        other, k = (first, x) if y == 0 else (second, y)
        return Step(Equation((term(size),), (Term(k, (other,)),) if k else ()), Pythagoras((first.name, second.name)))
    return Step(
        Equation((term(Power(size, 2)),), (term(Power(first, 2)), term(Power(second, 2)))),
        Pythagoras((first.name, second.name)),
    )


say = Say(what="{what}", why="{reason}")
shows = (Shows(level_elbow("resultant"), "J² = J_x² + J_y²"),)
leaves = (level_elbow("moments"),)
