"""Divide a sum term by term, where an unknown that is still open stands in it."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board, is_plain
from explain.equation.terms import Equation, Letter, Quantity, Quotient, Term, Terms, letters, term
from explain.solve.rule import Say, Shows, Step, same


on = frozenset({Quotient})


class Sight(NamedTuple):
    divisor: Terms


def _open(board: Board, each: Term) -> Quotient | None:
    """A quotient of a sum with unknowns by a number."""
    if len(each.factors) != 1 or not isinstance(each.factors[0], Quotient):
        return None
    quotient = each.factors[0]
    unknown = letters(quotient.top) - board.values.keys()
    worked = all(sum(not factor.letters for factor in inner.factors) < 2 for inner in quotient.top)
    return quotient if unknown and worked and len(quotient.bottom) == 1 and is_plain(quotient.bottom[0]) else None


def when(board: Board, line: Equation) -> Sight | None:
    """A right side that is such a quotient."""
    found = [quotient for each in line.right if (quotient := _open(board, each))]
    return Sight(found[0].bottom) if found else None


def do(board: Board, sight: Sight) -> Step:
    return same(Equation(board.eq.left, tuple(part for each in board.eq.right for part in _parts(board, each))))


def _parts(board: Board, each: Term) -> Terms:
    quotient = _open(board, each)
    if quotient is None:
        return (each,)
    out = []
    for inner in quotient.top:
        number = tuple(factor for factor in inner.factors if not factor.letters) or (Quantity.of("1"),)
        rest = tuple(factor for factor in inner.factors if factor.letters)
        out.append(Term(each.sign * inner.sign, (*rest, Quotient((Term(1, number),), quotient.bottom))))
    return tuple(out)


say = Say(what="divide each term by {divisor}", why="another unknown is still open, so the terms stay apart")

_F, _G = Letter("F", "F"), Letter("G", "G")
_two = Quantity.of("2", "m")
_line = Equation(
    (term(_F),),
    (term(Quotient((term(Quantity.of("8", "N m")), term(_G, Quantity.of("3", "m"), sign=-1)), (term(_two),))),),
)
shows = (Shows(Board(_line, "F"), "F = 8 N·m / 2 m − G (3 m / 2 m)"),)
leaves = (
    Board(_line, "F", {"G": (term(Quantity.of("1", "N")),)}),
    Board(Equation((term(_F),), (term(Quantity.of("8", "N")),)), "F"),
)
