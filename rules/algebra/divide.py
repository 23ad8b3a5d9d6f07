"""Divide both sides by what stands beside the sought letter."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board
from explain.check.claim import Scaled
from explain.equation.terms import (
    Equation,
    Factor,
    Group,
    Letter,
    Power,
    Quantity,
    Quotient,
    Term,
    Terms,
    Trig,
    letters,
    term,
)
from explain.solve.rule import Say, Shows, Step


on = frozenset({Letter})


class Sight(NamedTuple):
    atom: Factor
    beside: Term
    divisor: Terms
    allowed: str


def when(board: Board, line: Equation) -> Sight | None:
    """One term on the left, the sought letter (or its sine, cosine, tangent, square) times known factors; it is not
    on the right.
    """
    if board.sought not in line.letters or len(line.left) != 1 or board.sought in letters(line.right):
        return None
    only = line.left[0]
    atoms = [factor for factor in only.factors if board.sought in factor.letters]
    if len(atoms) != 1 or not isinstance(atoms[0], Letter | Trig | Power):
        return None
    beside = Term(only.sign, tuple(factor for factor in only.factors if factor is not atoms[0]))
    known = all(name in board.values for name in letters((beside,)))
    if not known or (not beside.factors and beside.sign > 0):
        return None
    divisor = (beside,) if beside.factors else (Term(beside.sign, (Quantity.of("1"),)),)
    return Sight(atoms[0], beside, divisor, "it is not zero" if letters(divisor) else "")


def do(board: Board, sight: Sight) -> Step:
    by = term(Quotient((Term(1, (Quantity.of("1"),)),), sight.divisor))
    right = board.eq.right
    if not sight.beside.factors:
        over: Terms = tuple(each.flipped() for each in right)
    elif not right:
        over = ()
    else:
        sign = right[0].sign * sight.beside.sign if len(right) == 1 else sight.beside.sign
        top = (Term(1, right[0].factors, right[0].source),) if len(right) == 1 else right
        only = sight.beside.factors[0]
        bottom = (
            only.terms
            if isinstance(only, Group) and len(sight.beside.factors) == 1
            else (Term(1, sight.beside.factors),)
        )
        over = (Term(sign, (Quotient(top, bottom),)),)
    return Step(Equation((Term(1, (sight.atom,), board.eq.left[0].source),), over), Scaled(by))


say = Say(what="divide by {divisor}", why="{allowed}")

_F, _d = Letter("F", "F"), Quantity.of("4", "cm")
shows = (
    Shows(Board(Equation((term(_F, _d),), (term(Quantity.of("12", "N cm")),)), "F"), "F = 12 N·cm / 4 cm"),
    Shows(Board(Equation((term(_F, sign=-1),), (term(Quantity.of("12", "N")),)), "F"), "F = −12 N"),
)
leaves = (
    Board(Equation((term(_F),), (term(Quantity.of("12", "N")),)), "F"),
    Board(Equation((term(_F, _d), term(_d)), ()), "F"),
)
