"""Write the sine of a sum of two angles as sines and cosines of each, where several sines stand in one balance."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board, both_sides, is_plain
from explain.equation.terms import Equation, Factor, Group, Letter, Quantity, Term, Terms, Trig, term
from explain.solve.rule import Say, Shows, Step, same

from .tangent import split


on = frozenset({Trig})


class Sight(NamedTuple):
    sine: Terms


def _sum(factor: Factor, sought: str) -> tuple[Term, Term] | None:
    """The two angles of the sine of a sum: the sought one and a number, in written order."""
    if (
        not isinstance(factor, Trig)
        or factor.name != "sin"
        or not isinstance(factor.angle, Group)
        or len(factor.angle.terms) != 2
    ):
        return None
    first, second = factor.angle.terms
    angle, number = (first, second) if sought in factor.angle.terms[0].factors[0].letters else (second, first)
    return (
        (first, second)
        if len(angle.factors) == 1 and isinstance(angle.factors[0], Letter) and is_plain(number)
        else None
    )


def when(board: Board, line: Equation) -> Sight | None:
    """Several terms on the left with a sine or cosine of the sought angle, one of them of a sum; all beside a number
    at most.
    """
    if len(line.left) < 2:
        return None
    ratios = [found[0] for each in line.left if (found := split(each)) and board.sought in found[0].letters]
    sums = [ratio for ratio in ratios if _sum(ratio, board.sought)]
    return Sight((term(sums[0]),)) if sums and len(ratios) > 1 else None


def do(board: Board, sight: Sight) -> Step:
    def unfold(terms: Terms) -> Terms:
        return tuple(part for each in terms for part in _unfolded(each, board.sought))

    return same(both_sides(board.eq, unfold))


def _unfolded(each: Term, sought: str) -> Terms:
    at = next((index for index, factor in enumerate(each.factors) if _sum(factor, sought)), None)
    found = _sum(each.factors[at], sought) if at is not None else None
    if at is None or found is None:
        return (each,)
    (a, b), before, after = found, each.factors[:at], each.factors[at + 1 :]
    parts = (("sin", "cos", a.sign), ("cos", "sin", b.sign))
    return tuple(
        Term(each.sign * sign, (*before, Trig(one, a.factors[0]), Trig(other, b.factors[0]), *after), each.source)
        for one, other, sign in parts
    )


say = Say(
    what="write {sine} with the sine and cosine of each angle",
    why="the sine of a sum is the sine of the one times the cosine of the other, and the other way round",
)

_t = Letter("*angle t", "theta")
_line = Equation(
    (
        term(Quantity.of("4", "N m"), Trig("sin", Group((term(_t), term(Quantity.of("60", "deg")))))),
        term(Quantity.of("3", "N m"), Trig("sin", _t), sign=-1),
    ),
    (),
)
shows = (Shows(Board(_line, "*angle t"), "(4 N·m) sin θ cos 60° + (4 N·m) cos θ sin 60° − (3 N·m) sin θ = 0"),)
leaves = (Board(_line, "F"), Board(Equation(_line.left[:1], ()), "*angle t"))
