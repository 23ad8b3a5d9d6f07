"""Carry terms across the equals sign, so that what is sought stands alone on the left."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board
from explain.check.claim import Scaled
from explain.equation.terms import Equation, Letter, Quantity, Term, Terms, term, with_letter
from explain.solve.rule import Say, Shows, Step


on = frozenset({Letter})


class Sight(NamedTuple):
    crossed: Terms
    swapped: bool
    what: str
    gained: Terms


def when(board: Board, line: Equation) -> Sight | None:
    """Terms without the sought letter on the left, or with it on the right, and the letter somewhere."""
    if board.sought not in line.letters:
        return None
    left, right = line.left, line.right
    wanted = (*with_letter(left, board.sought), *with_letter(right, board.sought))
    known_left, sought_right = with_letter(left, board.sought, False), with_letter(right, board.sought)
    if not wanted or not (known_left or sought_right):
        return None
    swapped = not sought_right and all(each.sign < 0 for each in wanted)
    if sought_right and not with_letter(left, board.sought) and not with_letter(right, board.sought, False):
        return Sight(right, True, "exchange the sides", ())
    crossed = wanted if swapped else (*known_left, *sought_right)
    gained = tuple(each.flipped() for each in crossed)
    if all(each.sign < 0 for each in gained):
        return Sight(crossed, swapped, "both sides lose ", crossed)
    return Sight(
        crossed,
        swapped,
        "both sides gain " if all(each.sign > 0 for each in gained) else "both sides change by ",
        gained,
    )


def do(board: Board, sight: Sight) -> Step:
    left, right = board.eq.left, board.eq.right
    if sight.crossed is right:
        return Step(Equation(right, left), Scaled(Term(-1, ())))
    flip = tuple(each.flipped() for each in (with_letter(left, board.sought, False)))
    if sight.swapped:
        new_left = tuple(each.flipped() for each in with_letter(left, board.sought))
        return Step(
            Equation(new_left, (*with_letter(left, board.sought, False), *(each.flipped() for each in right))),
            Scaled(Term(-1, ())),
        )
    back = tuple(each.flipped() for each in with_letter(right, board.sought))
    return Step(
        Equation((*with_letter(left, board.sought), *back), (*with_letter(right, board.sought, False), *flip)), Scaled()
    )


say = Say(what="{what}{gained}", watch="what crosses the equals sign changes its sign")

_F = Letter("F", "F")
_left, _known = term(_F, Quantity.of("4", "cm")), term(Quantity.of("12", "N cm"), sign=-1)
shows = (
    Shows(Board(Equation((_left, _known), ()), "F"), "F (4 cm) = 12 N·cm"),
    Shows(Board(Equation((_known.flipped(), _left.flipped()), ()), "F"), "F (4 cm) = 12 N·cm"),
    Shows(Board(Equation((_known.flipped(),), (_left,)), "F"), "F (4 cm) = 12 N·cm"),
)
leaves = (Board(Equation((_left,), (_known.flipped(),)), "F"), Board(Equation((_known,), ()), "F"))
