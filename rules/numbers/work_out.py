"""Work out a lone quotient, square root or inverse function of numbers."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board, both_sides, is_plain, merged
from explain.equation.terms import Equation, Factor, Inverse, Letter, Quantity, Quotient, Root, Term, Terms, term
from explain.solve.rule import Say, Shows, Step, same


on = frozenset({Quotient, Root, Inverse})


class Sight(NamedTuple):
    what: str


def _plain(side: Terms) -> bool:
    return len(side) == 1 and is_plain(side[0])


def _ready(factor: Factor) -> bool:
    match factor:
        case Quotient(top, bottom):
            return (not top or _plain(top)) and _plain(bottom)
        case Root(terms) | Inverse(of=terms):
            return _plain(terms)
    return False


def when(board: Board, line: Equation) -> Sight | None:
    """A term that is one quotient, root or inverse function of a number."""
    for terms in board.sums:
        for each in terms:
            if len(each.factors) == 1 and _ready(each.factors[0]):
                return _seen(each)
    return None


def _seen(each: Term) -> Sight:
    factor = each.factors[0]
    if not isinstance(factor, Quotient):
        return Sight("work out the root" if isinstance(factor, Root) else "read off the angle")
    top, bottom = merged(factor.top[0].factors) if factor.top else {}, merged(factor.bottom[0].factors)
    shared = [name for name in top if name in bottom]
    if not shared:
        return Sight("work out the quotient")
    words = {
        "m": "metres",
        "cm": "centimetres",
        "mm": "millimetres",
        "in": "inches",
        "ft": "feet",
        "N": "newtons",
        "lbf": "pounds",
        "kg": "kilograms",
    }
    gone = " and ".join(words.get(name, name) for name in shared)
    stay = " and ".join(words.get(name, name) for name in top if name not in shared)
    return Sight(f"the {gone} cancel" + (f" and {stay} remain" if stay else ": a number without a unit remains"))


def do(board: Board, sight: Sight) -> Step:
    def work(terms: Terms) -> Terms:
        ready = [(each, len(each.factors) == 1 and _ready(each.factors[0])) for each in terms]
        return tuple(
            board.number(each) if now else each
            for each, now in ready
            if not (now and getattr(each.factors[0], "top", True) == ())
        )

    return same(both_sides(board.eq, work))


say = Say(what="{what}", runs_on=True)

_F = Letter("F", "F")
shows = (
    Shows(
        Board(
            Equation(
                (term(_F),), (term(Quotient((term(Quantity.of("12", "N cm")),), (term(Quantity.of("4", "cm")),))),)
            ),
            "F",
        ),
        "F = 3 N",
    ),
    Shows(Board(Equation((term(_F),), (term(Root((term(Quantity.of("9", "N^2")),))),)), "F"), "F = 3 N"),
    Shows(Board(Equation((term(_F),), (term(Quotient((), (term(Quantity.of("4", "cm")),))),)), "F"), "F = 0"),
)
_sum = (term(Quantity.of("12", "N cm")), term(Quantity.of("3", "N cm")))
leaves = (
    Board(Equation((term(_F),), (term(Quantity.of("3", "N")),)), "F"),
    *(
        Board(Equation((term(_F),), (term(Quotient(top, (term(Quantity.of("4", "cm")),))),)), "F")
        for top in (_sum, (term(_F),))
    ),
)
