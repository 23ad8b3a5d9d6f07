"""Whether a working shows where its numbers come from: data, what follows from data in one step, and what lines before
came to. Blames nobody.

What rests on the unknowns, and sums of moments, explain nothing by being stated: a number that is right by chance, or
by trying, would else be told from one that is wrong.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations, product
from typing import Literal

from ...reference.gravity import IN_FEET, WRITTEN
from .clauses import PREVIOUS, Clause
from .formula import Expr, within
from .kinds import kind_of
from .reading import Line
from .sources import CONVERSIONS
from .state import State
from .tokens import Token

Known = Literal["plain", "problem", "before", "sought", "nothing"]
ENOUGH = 2  # quantities of the problem in a line, beside which a number may have been worked out in the head
LAST = 7  # results that are added up in the head
_OF_UNKNOWNS = (
    "reaction",
    "*reaction",
    "*angle reaction",
    "*direction reaction",
    "total",
    "*stress",
    "*times",
    "*alone",
)
_SUMS = ("*sum", "*away", "*turn ", "*ratio")
_SUMS_OF_DATA = ("*sumweight", "*summass")
_PLACES = ("*arm ", "*x ", "*y ", "*line ", "*leg")
_CONSTANTS = frozenset((0.0, 1.0, 2.0, 3.0, 4.0, 0.5, 90.0, 180.0, 100.0, 1000.0, 360.0, 10.0, 0.01, 0.001, 12.0))
_CLOSE = 0.002  # what three figures leave


class Explained:
    """What is explained so far, line by line."""

    def __init__(self, state: State) -> None:
        self._state, self._sources = state, state.trace.sources
        self._unknown_things = {key.rpartition(".")[0]: key for key in state.known.unknowns}
        self._results: list[float] = []
        self._letters: set[str] = set()

    def line(self, line: Line, made: bool) -> bool:
        """Whether a line shows where its numbers come from. If so, or if it holds and was `made` from numbers that were
        traced, what it comes to explains those of the lines below.
        """
        shown, summed = bool(line.clauses), False
        for clause in line.clauses:
            alone = all(each.lone or each.letter for each in _exprs(clause))
            shown = shown and (alone and summed or self._clause(clause))  # what a sum before it comes to
            summed |= not alone
        for expr in (each for clause in line.clauses for each in _exprs(clause) if shown or made):
            self._results += [abs(expr.number)] if expr.lone else []
            self._letters |= {expr.letter} - {""}
        return shown

    def _clause(self, clause: Clause) -> bool:
        exprs = _exprs(clause)
        sums = [each for each in exprs if not each.lone and not each.letter]
        worked = [each for each in sums if all(letter in self._letters for letter in _letters(each))]
        others = [each for each in exprs if not each.letter and not any(each is sum_ for sum_ in worked)]
        # of a sum that is worked out, what it comes to follows; the sum itself has to be shown
        shown = [*worked[:1], *(each for each in sums if any(each is other for other in others))] if worked else others
        met = {(each.text, each.unit): self._how(each) for expr in shown for each in expr.leaves}
        kinds = list(met.values())
        letters = {letter for expr in sums for letter in _letters(expr)}
        from_before = len(letters & self._letters)
        quantities = kinds.count("problem") + kinds.count("before") + from_before
        return "sought" not in kinds and ("nothing" not in kinds or quantities >= ENOUGH)

    def _how(self, token: Token) -> Known:
        """How a number is known."""
        number = abs(token.share)
        if number in _CONSTANTS or number in WRITTEN or number in CONVERSIONS or number == IN_FEET:
            return "plain"
        close = max(token.step, _CLOSE * number) * 1.02 + 1e-12
        near = self._sources.near(number, close)
        angles = [abs(float(each.row[0])) for each in self._sources.angles if not each.rank]
        shares = [abs(float(each[0])) for each in self._sources.shares]
        if any(abs(number - each) <= close for each in (*self._results, *self._in_the_head())):
            return "before"
        if any(self._explains(each.key) for each in near) or self._sources.pairs_near(number, close):
            return "problem"
        if any(abs(number - each) <= close for each in (*angles, *(90 - each for each in angles), *shares)):
            return "plain"
        return "sought" if near else "nothing"

    def _in_the_head(self) -> Iterator[float]:
        """Sums and differences of what the last lines came to."""
        last = list(dict.fromkeys(self._results[-LAST:]))
        for count in (2, 3, 4):
            for some in combinations(last, count):
                for signs in product((1, -1), repeat=count - 1):
                    yield abs(some[0] + sum(sign * each for sign, each in zip(signs, some[1:], strict=True)))

    def _explains(self, key: str) -> bool:
        """Whether a quantity may be stated without being shown: a datum, or what follows from data in one step."""
        if key in self._state.known.data and key not in self._state.known.unknowns:
            return True
        if key.startswith(_SUMS_OF_DATA):
            return not any(thing and thing in key for thing in self._unknown_things)
        if key.startswith((*_OF_UNKNOWNS, *_SUMS)):
            return False
        thing = next((each for each in self._unknown_things if each and each in key), "")
        if not thing:
            return True
        placed = kind_of(self._unknown_things[thing]) not in ("length", "angle")
        return placed and key.startswith(_PLACES)


def _exprs(clause: Clause) -> list[Expr]:
    return [side.expr for side in clause.sides if side.expr is not None]


def _letters(expr: Expr) -> Iterator[str]:
    """The letters of a formula; one that goes on from the line above has what that came to."""
    return (str(node[1]) for node in within(expr.node) if node[0] == "v" and node[1] != PREVIOUS)
