"""Convert a given value, with the factor shown."""

from __future__ import annotations

from decimal import Decimal
from typing import NamedTuple

from explain.solve import goal as goals
from explain.solve.board import Board
from explain.check.claim import Converted
from explain.equation.terms import Equation, Letter, Number, Quantity, Quotient, Shown, Term, Unit, term
from explain.exact.prime_field import scale
from explain.solve.rule import Say, Shows, Step

from ..example_boards import level_elbow

ONE = Decimal(1)
FIGURES = 3  # of a factor at least: an inch is 2.54 cm in every class


on = frozenset({goals.Convert})


class Sight(NamedTuple):
    letter: Letter
    value: Quantity | Shown
    sign: int
    unit: Unit
    reason: str


def when(board: Board, goal: goals.Convert) -> Sight | None:
    """A given value is to be written in another unit."""
    (given,) = board.values[goal.key]
    value = given.factors[0]
    if not isinstance(value, Number):
        return None
    return Sight(
        board.letter(goal.key),
        value,
        given.sign,
        goal.unit,
        "the factor is one, written in two units: it changes the number and not the quantity",
    )


def do(board: Board, sight: Sight) -> Step:
    unit = sight.value.written.unit
    new, old = term(Quantity(ONE, sight.unit)), term(Quantity(ONE, unit))
    if scale(sight.unit) >= scale(unit):
        old = board.number(new, unit, FIGURES)
    else:
        new = board.number(old, sight.unit, FIGURES)
    factor = Quotient((new,), (old,))
    return Step(Equation((term(sight.letter),), (Term(sight.sign, (sight.value, factor)),)), Converted(board.goal.key))


say = Say(what="convert", why="{reason}")
shows = (Shows(level_elbow(goals.Convert, "jug.at"), "d_J = (33 cm)(1 m / 100 cm)"),)
leaves = (level_elbow(goals.Moments),)
