"""Take the sought letter out of several terms, in front of one bracket."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board
from explain.problem.course import Course
from explain.equation.terms import Equation, Group, Letter, Quantity, Term, Terms, term, parted
from explain.solve.rule import Say, Shows, Step, same


on = frozenset({Letter})


class Sight(NamedTuple):
    sought: Terms


def when(board: Board, line: Equation) -> Sight | None:
    """Several terms of the left side with the sought letter as a factor, in a class that does not multiply first."""
    if board.sought not in line.letters or board.course.order == "multiply first":
        return None
    terms, _ = parted(line.left, board.sought)
    found = [
        factor
        for each in terms
        for factor in each.factors
        if isinstance(factor, Letter) and factor.name == board.sought
    ]
    return Sight((term(found[0]),)) if len(terms) > 1 and len(found) == len(terms) else None


def do(board: Board, sight: Sight) -> Step:
    letter = sight.sought[0].factors[0]
    terms, known = parted(board.eq.left, board.sought)
    rests = tuple(Term(each.sign, tuple(factor for factor in each.factors if factor != letter)) for each in terms)
    gathered = term(
        letter, Group(tuple(rest if rest.factors else Term(rest.sign, (Quantity.of("1"),)) for rest in rests))
    )
    return same(Equation((gathered, *known), board.eq.right))


say = Say(what="take {sought} out in front of a bracket", why="it stands in more than one term, and is sought once")

_F, _d, _e = Letter("F", "F"), Letter("d", "d"), Letter("e", "e")
_line = Equation((term(_F, _d), term(Quantity.of("0.70"), _F, _e)), ())
shows = (Shows(Board(_line, "F", course=Course(order="letters first")), "F (d + 0.70 e) = 0"),)
leaves = (Board(_line, "F"), Board(Equation((term(_F, _d),), ()), "F", course=Course(order="letters first")))
