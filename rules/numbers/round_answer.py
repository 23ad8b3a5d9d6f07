"""Round an answer, once and at the end."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board
from explain.solve.goal import Goal
from explain.check.claim import Rounded
from explain.equation.terms import Equation, Letter, Number, Quantity, Shown, Term, letters, lone, number, term
from explain.exact.interval import in_unit, sign, to_figures
from explain.solve.rule import Say, Shows, Step

COUNTS = {1: "one figure", 2: "two figures", 3: "three figures", 4: "four figures", 5: "five figures", 6: "six figures"}


on = frozenset({Quantity, Shown})


class Sight(NamedTuple):
    letter: Letter
    value: Term
    figures: str


def when(board: Board, line: Equation) -> Sight | None:
    """The sought letter equal to one number, an answer that was asked for, with more figures than an answer gets."""
    if not board.goal.asked or line.rounded:
        return None
    letter, found = lone(line.left), number(line.right)
    if not isinstance(letter, Letter) or letter.name != board.sought or found is None or letters(line.right):
        return None
    value = line.right[0]
    new = _rounded(board, value)
    if new is None:
        return None
    return Sight(letter, new, COUNTS.get(board.course.figures, f"{board.course.figures} figures"))


def _rounded(board: Board, value: Term) -> Term | None:
    factor = value.factors[0]
    if not isinstance(factor, Number):
        return None
    of = factor.of if isinstance(factor, Shown) and board.course.carry == "unrounded" else Term(1, (factor,))
    size = in_unit(board.sizes.sum((of,)), factor.written.unit)
    if sign(size) == 0:
        return None
    digits = to_figures(size, board.course.figures, board.course.ties)
    written = factor.written.number
    if len(written.as_tuple().digits) <= board.course.figures or (isinstance(factor, Quantity) and digits == written):
        return None
    return Term(value.sign, (Shown(Quantity(digits, factor.written.unit), of),))


def do(board: Board, sight: Sight) -> Step:
    return Step(Equation((term(sight.letter),), (sight.value,), rounded=True), Rounded())


say = Say(what="rounded to {figures}", why="only at the end")

_F = Letter("F", "F")
_line = Equation((term(_F),), (term(Quantity.of("550.28", "N")),))
shows = (Shows(Board(_line, "F", goal=Goal("", "F", asked=True)), "F ≈ 550 N"),)
_written = (
    (_F, Quantity.of("550", "N")),
    (_F, Quantity.of("550.00", "N")),
    (_F, Shown(Quantity.of("550", "N"), _line.right[0])),
    (_F, _F),
    (Letter("G", "G"), Quantity.of("550.28", "N")),
)
leaves = (
    Board(_line, "F"),
    *(Board(Equation((term(left),), (term(right),)), "F", goal=Goal("", "F", asked=True)) for left, right in _written),
)
