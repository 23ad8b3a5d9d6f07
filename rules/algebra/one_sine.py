"""Draw a sine and a cosine of one angle together into one sine of a shifted angle."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board, is_plain
from explain.equation.terms import (
    Equation,
    Group,
    Inverse,
    Letter,
    Power,
    Quantity,
    Quotient,
    Root,
    Term,
    Terms,
    Trig,
    term,
)
from explain.solve.rule import Say, Shows, Step, same

from .tangent import beside, split


on = frozenset({Trig})


class Sight(NamedTuple):
    sine: Term
    cosine: Term
    angle: Letter
    size: Terms
    shift: Terms


def when(board: Board, line: Equation) -> Sight | None:
    """Known multiples of the sine and of the cosine of the sought angle on the left, and one number on the right."""
    if len(line.left) != 2 or len(line.right) != 1 or not is_plain(line.right[0]):
        return None
    found = {each_split[0].name: (each, each_split[0].angle) for each in line.left if (each_split := split(each))}
    if set(found) != {"sin", "cos"} or found["sin"][1] != found["cos"][1]:
        return None
    angle = found["sin"][1]
    if not isinstance(angle, Letter) or angle.name != board.sought:
        return None
    a, b = (Group((Term(1, beside(found[name][0])),)) for name in ("sin", "cos"))
    size = board.number(term(Root((term(Power(a.terms[0].factors[0], 2)), term(Power(b.terms[0].factors[0], 2))))))
    shift = board.number(term(Inverse("tan", (term(Quotient(b.terms, a.terms)),))))
    return Sight(found["sin"][0], found["cos"][0], angle, (size,), (shift,))


def do(board: Board, sight: Sight) -> Step:
    shift = Term(sight.sine.sign * sight.cosine.sign, sight.shift[0].factors)
    shifted = Trig("sin", Group((term(sight.angle), shift)))
    return same(Equation((Term(sight.sine.sign, (*sight.size[0].factors, shifted)),), board.eq.right))


say = Say(
    what="write both as one sine: {size} is the hypotenuse over what stands beside sine and cosine, {shift} the "
    "angle between them",
    why="the sine of a sum is a sine and a cosine of each",
    watch="the shift is taken off again at the end",
)

_t = Letter("*angle t", "theta")
_line = Equation(
    (term(Quantity.of("4", "N m"), Trig("sin", _t)), term(Quantity.of("3", "N m"), Trig("cos", _t), sign=-1)),
    (term(Quantity.of("2", "N m")),),
)
shows = (Shows(Board(_line, "*angle t"), "(5 N·m) sin(θ − 36.870°) = 2 N·m"),)
leaves = (Board(_line, "F"), Board(Equation(_line.left, ()), "*angle t"))
