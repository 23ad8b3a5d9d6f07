"""Put the known values in place of their letters."""

from __future__ import annotations

from typing import NamedTuple

from explain.solve.board import Board
from explain.check.claim import Put
from explain.equation.terms import Equation, Letter, Quantity, Term, Terms, term
from explain.equation.substitution import put
from explain.solve.rule import Say, Shows, Step


on = frozenset({Letter})


class Sight(NamedTuple):
    names: tuple[str, ...]
    letters: tuple[Terms, ...]


def when(board: Board, line: Equation) -> Sight | None:
    """Letters other than the one sought whose values are known."""
    if not any(name in board.values for name in line.letters if name != board.sought):
        return None
    found: dict[str, Letter] = {}
    for leaf in line.leaves:
        if isinstance(leaf, Letter) and leaf.name in board.values and leaf.name != board.sought:
            found.setdefault(leaf.name, leaf)
    if not found:
        return None
    return Sight(tuple(found), tuple((term(each),) for each in found.values()))


def do(board: Board, sight: Sight) -> Step:
    values = {name: board.values[name] for name in sight.names}
    return Step(Equation(put(board.eq.left, values), put(board.eq.right, values)), Put(sight.names))


say = Say(what="substitute the numbers", why="each with its unit")

_F, _W, _d = Letter("F", "F"), Letter("W", "W"), Letter("d", "d")
_line = Equation((term(_F, _d), term(_W, Quantity.of("0.35", "m"), sign=-1)), ())
shows = (
    Shows(
        Board(_line, "F", {"W": (term(Quantity.of("58.9", "N")),), "d": (term(Quantity.of("0.04", "m")),)}),
        "F (0.04 m) − (58.9 N)(0.35 m) = 0",
    ),
)
leaves = (
    Board(_line, "F", {}),
    Board(Equation((term(_F),), (term(Quantity.of("9", "N")),)), "F", {"F": (Term(1, ()),)}),
)
