"""What a rule is: a module that makes one move. Its docstring is its manual, its examples are its tests."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import Any, NamedTuple, Protocol

from .board import Board
from ..check.claim import Claim, Scaled
from ..equation.terms import Equation


class Say(NamedTuple):
    """The wording of a move. Slots in braces are fields of what the rule saw. `watch` warns of what often goes wrong
    here;
    a line that `runs_on` may stand in the row of the line before."""

    what: str
    why: str = ""
    watch: str = ""
    runs_on: bool = False


class Step(NamedTuple):
    """A new line and the ground it stands on. `opens` where it does not continue the line in hand."""

    after: Equation
    claim: Claim


class Shows(NamedTuple):
    """An example of a move: the board before and the line after, in plain text."""

    before: Board
    after: str


class Rule(Protocol):
    """A module in `rules`: `on` is the kind of goal that it begins, or are the kinds of factors of which a line that it
    changes has one.

    `when` looks at that goal or line, on its board, and returns what it saw or None; `do` makes the new line.
    """

    __name__: str

    @property
    def on(self) -> frozenset[type]: ...
    @property
    def say(self) -> Say: ...
    @property
    def shows(self) -> Sequence[Shows]: ...
    @property
    def leaves(self) -> Sequence[Board]: ...
    def when(self, board: Board, stands: Any, /) -> Any | None: ...
    def do(self, board: Board, sight: Any, /) -> Step: ...


@lru_cache(maxsize=4096)
def acting(rules: tuple[Rule, ...], kinds: frozenset[type]) -> tuple[Rule, ...]:
    """The rules that can act on a goal or line of these kinds, in their order."""
    return tuple(rule for rule in rules if not rule.on.isdisjoint(kinds))


def seen(rule: Rule, board: Board) -> Any | None:
    """What a rule sees on a board, None where it has nothing to do there."""
    return rule.when(board, board.stands) if acting((rule,), board.kinds) else None


def same(after: Equation) -> Step:
    """A step that only writes the same thing differently."""
    return Step(after, Scaled())
