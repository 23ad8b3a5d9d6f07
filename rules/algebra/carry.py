"""Carry terms across the equals sign, so that what is sought stands alone on the left."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board
from explain.check.claim import Scaled
from explain.equation.terms import Equation, Letter, Quantity, Term, Terms, flipped, parted, term
from explain.solve.rule import Say, Shows, Step


on = frozenset({Letter})


class Sight(NamedTuple):
    crossed: Terms
    swapped: bool
    what: str
    gained: Terms | str  # no term where the sides are exchanged
    to: str


def when(board: Board, line: Equation) -> Sight | None:
    """Terms without the sought letter on the left, or with it on the right, and the letter somewhere."""
    if board.sought not in line.letters:
        return None
    (sought_left, known_left), (sought_right, known_right) = _sorted(line, board.sought)
    if not (known_left or sought_right):
        return None
    if not (sought_left or known_right):
        return Sight(sought_right, True, "swap the two sides", "", "")
    swapped = not sought_right and all(each.sign < 0 for each in sought_left)
    crossed = sought_left if swapped else (*known_left, *sought_right)
    gained = flipped(crossed)
    if all(each.sign < 0 for each in gained):
        return Sight(crossed, swapped, "subtract ", crossed, " from both sides")
    if all(each.sign > 0 for each in gained):
        return Sight(crossed, swapped, "add ", gained, " to both sides")
    return Sight(crossed, swapped, "move ", crossed, " to the other side")


def do(board: Board, sight: Sight) -> Step:
    (sought_left, known_left), (sought_right, known_right) = _sorted(board.eq, board.sought)
    if not sight.gained:
        return Step(Equation(sought_right, known_left), Scaled(Term(-1, ())))
    if sight.swapped:
        return Step(Equation(flipped(sought_left), (*known_left, *flipped(known_right))), Scaled(Term(-1, ())))
    return Step(Equation((*sought_left, *flipped(sought_right)), (*known_right, *flipped(known_left))), Scaled())


def _sorted(line: Equation, sought: str) -> tuple[tuple[Terms, Terms], tuple[Terms, Terms]]:
    """The terms of each side with the sought letter, and those without."""
    return parted(line.left, sought), parted(line.right, sought)


say = Say(what="{what}{gained}{to}", watch="a term that crosses the equals sign changes its sign")

_F = Letter("F", "F")
_left, _known = term(_F, Quantity.of("4", "cm")), term(Quantity.of("12", "N cm"), sign=-1)
shows = (
    Shows(Board(Equation((_left, _known), ()), "F"), "F (4 cm) = 12 N·cm"),
    Shows(Board(Equation((_known.flipped(), _left.flipped()), ()), "F"), "F (4 cm) = 12 N·cm"),
    Shows(Board(Equation((_known.flipped(),), (_left,)), "F"), "F (4 cm) = 12 N·cm"),
)
leaves = (Board(Equation((_left,), (_known.flipped(),)), "F"), Board(Equation((_known,), ()), "F"))
