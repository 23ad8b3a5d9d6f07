"""Turn a balance of a sine against a cosine of one angle into its tangent."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board, is_number
from explain.check.claim import Tangent
from explain.equation.terms import Equation, Factor, Letter, Quantity, Quotient, Term, Terms, Trig, term
from explain.solve.rule import Say, Shows, Step


on = frozenset({Trig})


class Sight(NamedTuple):
    sine: Term
    cosine: Term
    angle: Factor
    cosine_alone: Terms


def split(each: Term) -> tuple[Trig, tuple[Factor, ...]] | None:
    """A multiple of a sine or cosine: the ratio, and the number beside it (or nothing)."""
    ratios = [factor for factor in each.factors if isinstance(factor, Trig) and not is_number(factor.angle)]
    rest = tuple(factor for factor in each.factors if factor not in ratios)
    if len(ratios) != 1 or len(rest) > 1 or not all(is_number(factor) for factor in rest):
        return None
    return ratios[0], rest


def when(board: Board, line: Equation) -> Sight | None:
    """Just two terms, known multiples of the sine and of the cosine of the sought angle, that add to zero."""
    if line.right or len(line.left) != 2:
        return None
    found = {parts[0].name: (each, parts[0]) for each in line.left if (parts := split(each))}
    if set(found) != {"sin", "cos"} or found["sin"][1].angle != found["cos"][1].angle:
        return None
    angle = found["sin"][1].angle
    if not isinstance(angle, Letter) or angle.name != board.sought:
        return None
    return Sight(found["sin"][0], found["cos"][0], angle, (term(Trig("cos", angle)),))


def beside(each: Term) -> tuple[Factor, ...]:
    """What stands beside the ratio, 1 where nothing does."""
    return tuple(factor for factor in each.factors if not isinstance(factor, Trig)) or (Quantity.of("1"),)


def do(board: Board, sight: Sight) -> Step:
    sense = -sight.sine.sign * sight.cosine.sign
    ratio = Term(sense, (Quotient((Term(1, beside(sight.cosine)),), (Term(1, beside(sight.sine)),)),))
    return Step(
        Equation((term(Trig("tan", sight.angle)),), (ratio,)), Tangent(Term(sight.sine.sign, beside(sight.sine)))
    )


say = Say(
    what="divide by {cosine_alone} and by what stands beside the sine: sine over cosine is the tangent",
    why="the cosine cannot be zero here, or the sine term would stand alone and not balance",
)

_t = Letter("*angle t", "theta")
_line = Equation(
    (term(Quantity.of("3", "N m"), Trig("sin", _t)), term(Quantity.of("4", "N m"), Trig("cos", _t), sign=-1)), ()
)
shows = (Shows(Board(_line, "*angle t"), "tan θ = 4 N·m / 3 N·m"),)
leaves = (Board(_line, "F"), Board(Equation(_line.left[:1], ()), "*angle t"))
