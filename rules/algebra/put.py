"""Put the known values in place of their letters."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from explain.solve.board import Board
from explain.check.claim import Put
from explain.equation.terms import Equation, Letter, Quantity, Term, Terms, lone, term
from explain.equation.substitution import in_brackets, put
from explain.mechanics.signed_letters import of_force_down
from explain.solve.rule import Say, Shows, Step


on = frozenset({Letter})


class Sight(NamedTuple):
    names: tuple[str, ...]
    bracketed: tuple[str, ...]
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
    return Sight(tuple(found), _bracketed(board, line, found), tuple((term(each),) for each in found.values()))


def _bracketed(board: Board, line: Equation, names: Iterable[str]) -> tuple[str, ...]:
    """The forces whose number brings its sign with it: in brackets, but where it stands alone on its side."""
    if board.body is None:
        return ()
    alone = {each.name for side in (line.left, line.right) if isinstance(each := lone(side), Letter)}
    own = of_force_down(board.body) - alone
    return tuple(name for name in names if name in own and [each.sign for each in board.values[name]] == [-1])


def do(board: Board, sight: Sight) -> Step:
    values = in_brackets({name: board.values[name] for name in sight.names}, sight.bracketed)
    after = Equation(put(board.eq.left, values), put(board.eq.right, values))
    return Step(after, Put(sight.names, sight.bracketed))


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
