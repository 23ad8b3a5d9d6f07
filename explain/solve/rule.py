"""What a rule is: a module that makes one move. Its docstring is its manual, its examples are its tests."""

from __future__ import annotations

from collections.abc import Sequence
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
    """A module in `rules`: `when` looks and returns what it saw or None; `do` makes the line."""

    __name__: str

    @property
    def say(self) -> Say: ...
    @property
    def shows(self) -> Sequence[Shows]: ...
    @property
    def leaves(self) -> Sequence[Board]: ...
    def when(self, board: Board, /) -> Any | None: ...
    def do(self, board: Board, sight: Any, /) -> Step: ...


def same(after: Equation) -> Step:
    """A step that only writes the same thing differently."""
    return Step(after, Scaled())
