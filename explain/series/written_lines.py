"""Which lines of a step are written: those that have changed, and of an equation that is solved as in an earlier step
no more than its beginning and its end. Knows moves, and no words.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from ..formula.plain import plain
from ..solve.engine import Move
from ..walkthrough.sections import SHORT
from .comparison import GoalKey, lines_of
from .worked_steps import Worked

Way = tuple[GoalKey, tuple[object, ...]]  # a goal, and the rules that its lines were made by


class Written(NamedTuple):
    """The moves of a step by identity: those that are written, and of these the ones whose reasons are known."""

    shown: frozenset[int]
    known: frozenset[int]

    def shows(self, move: Move) -> bool:
        return id(move) in self.shown

    def knows(self, move: Move) -> bool:
        return id(move) in self.known


def written(worked: Sequence[Worked], each: Worked) -> Written:
    """What a step writes, seeing what was written in the steps before it."""
    seen = {way for earlier in worked[: each.step.number] for way in _ways(earlier)}
    shown, known = set[int](), set[int]()
    for key, moves in lines_of(each.outcome).items():
        if each.homes[key] != each.step.number:
            continue
        again = key[0] not in SHORT and (key, _rules(moves)) in seen
        kept = tuple(_short(moves)) if again else moves
        shown.update(map(id, kept))
        known.update(map(id, kept) if again else ())
    return Written(frozenset(shown), frozenset(known))


def _ways(each: Worked) -> Iterator[Way]:
    return ((key, _rules(moves)) for key, moves in lines_of(each.outcome).items())


def _rules(moves: Sequence[Move]) -> tuple[object, ...]:
    return tuple(move.rule for move in moves)


def _short(moves: Sequence[Move]) -> Iterator[Move]:
    """The equation in letters, the same with numbers, and the lines that have what is sought alone at the left."""
    if moves[0].goal.kind == "at rest":
        return
    left = plain(moves[-1].line.equation.left)
    end = len(moves)
    while end > 1 and plain(moves[end - 1].line.equation.left) == left:
        end -= 1
    for place, move in enumerate(moves):
        if place == 0 or place >= end or move.rule.__name__.endswith(".put"):
            yield move
