"""Divide the part of a force with the sine of its angle by the one with the cosine: the force cancels, and the
tangent is left.
"""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board, is_plain
from explain.check.claim import Divided
from explain.equation.terms import Equation, Factor, Letter, Quantity, Quotient, Term, Terms, Trig, term
from explain.solve.rule import Say, Shows, Step


on = frozenset({Trig})


class Sight(NamedTuple):
    line: Terms
    by: Terms
    force: Terms
    angle: Factor


def the_ratio(line: Equation) -> Trig | None:
    """The one sine or cosine in the one term on the left of a line."""
    found = [factor for each in line.left for factor in each.factors if isinstance(factor, Trig)]
    return found[0] if len(line.left) == len(found) == 1 else None


def without(each: Term, ratio: Factor | None) -> tuple[Factor, ...]:
    return tuple(factor for factor in each.factors if factor != ratio)


def when(board: Board, line: Equation) -> Sight | None:
    """A line with one sine of the sought angle, a line with the cosine beside it, and on both the same force and a
    number on the right.
    """
    if board.beside is None:
        return None
    sine, cosine = the_ratio(line), the_ratio(board.beside)
    if sine is None or cosine is None or (sine.name, cosine.name) != ("sin", "cos") or sine.angle != cosine.angle:
        return None
    rest = without(line.left[0], sine)
    numbers = all(len(line.right) == 1 and is_plain(line.right[0]) for line in (line, board.beside))
    if rest != without(board.beside.left[0], cosine) or not numbers:
        return None
    force = tuple(term(factor) for factor in rest if isinstance(factor, Letter))
    return Sight((Term(1, line.left[0].factors),), (Term(1, board.beside.left[0].factors),), force, sine.angle)


def do(board: Board, sight: Sight) -> Step:
    assert board.beside is not None
    top, bottom = board.eq, board.beside
    turn = top.left[0].sign * bottom.left[0].sign
    sign = top.right[0].sign * bottom.right[0].sign
    ratio = Quotient((Term(1, top.right[0].factors),), (Term(1, bottom.right[0].factors),))
    return Step(Equation((Term(turn, (Trig("tan", sight.angle),)),), (Term(sign, (ratio,)),)), Divided(bottom))


say = Say(what="divide the line for {line} by the one for {by}: {force} cancels, and sine over cosine is the tangent")

_F, _t = Letter("F", "F"), Letter("*angle t", "theta")
_sine = Equation((term(_F, Trig("sin", _t)),), (term(Quantity.of("3", "N")),))
_cosine = Equation((term(_F, Trig("cos", _t)),), (term(Quantity.of("4", "N"), sign=-1),))
shows = (Shows(Board(_sine, "*angle t", beside=_cosine), "tan θ = −3 N / 4 N"),)
leaves = (
    Board(_sine, "*angle t"),
    Board(_cosine, "*angle t", beside=_sine),
    Board(_sine, "*angle t", beside=Equation(_cosine.left, ())),
)
