"""Take the square root of both sides."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board
from explain.check.claim import Rooted
from explain.equation.terms import Equation, Letter, Power, Quantity, Root, Terms, lone, term
from explain.solve.rule import Say, Shows, Step


on = frozenset({Power})


class Sight(NamedTuple):
    letter: Terms


def when(board: Board, line: Equation) -> Sight | None:
    """The square of the sought letter, alone on the left."""
    match lone(line.left):
        case Power(Letter(name=name) as letter, 2) if name == board.sought:
            return Sight((term(letter),))
    return None


def do(board: Board, sight: Sight) -> Step:
    return Step(Equation(sight.letter, (term(Root(board.eq.right)),)), Rooted())


say = Say(what="take the square root", why="{letter} is a size, so it is not negative")

_J = Letter("reaction", "J")
_line = Equation((term(Power(_J, 2)),), (term(Power(Letter("x", "J_x"), 2)), term(Power(Letter("y", "J_y"), 2))))
shows = (Shows(Board(_line, "reaction"), "J = √(J_x² + J_y²)"),)
leaves = (Board(_line, "x"), Board(Equation((term(_J),), (term(Quantity.of("3", "N")),)), "reaction"))
