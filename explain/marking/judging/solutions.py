"""Solves an equation for its letter in every way that its numbers can be traced, and takes the way that is true, else
the one that follows, else a slip's.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from .formula import Expr, value
from .judge import Judge
from .patterns import same
from .quantities import Row
from .solving import NoAngle, solved
from .state import State
from .trace import Trace
from .values import Meaning, Value
from .ways import choices, letters_of

_A_SOLUTION = 120  # steps


@dataclass(slots=True, eq=False)
class Solution:
    """One way to solve an equation: the values taken on both sides, and what comes out."""

    left: tuple[Value, ...]
    right: tuple[Value, ...]
    f: Row
    r: Row
    number: float
    rank: float = 9.0

    @property
    def free(self) -> bool:
        return any(each.free for each in (*self.left, *self.right))


class Solver:
    """The solutions of one pass. `no_angle`: what a sine or cosine of the last equation would have to be, where it is
    above one.
    """

    def __init__(self, state: State, judge: Judge) -> None:
        self.state, self.judge, self.trace = state, judge, state.trace
        self.no_angle: Row | None = None

    def best(
        self, left: Expr, right: Expr, letters: Mapping[str, Value], letter: str, meaning: Meaning
    ) -> Solution | None:
        self.no_angle = None
        best: Solution | None = None
        for way in self._solutions(left, right, letters, letter):
            status, keys = self.judge.status(way.f, way.r, meaning, "")
            way.rank = {"true": 0.0, "carried": 1.0, "none": 2.0}[status]
            if status == "none" and (best is None or best.rank > 1.5) and self.state.known.wrong_of(way.r):
                way.rank = 1.5
            if best is None or way.rank < best.rank:
                best = way
            if way.rank == 0:
                break
        return best

    def _solutions(self, left: Expr, right: Expr, letters: Mapping[str, Value], letter: str) -> Iterator[Solution]:
        n, count = self.state.known.n, len(left.leaves)
        for some in choices(self.trace, [left, right]):
            rows: list[Row] = []
            for which in ("f", "r", "number"):
                if which == "r" and not any(each.apart for each in (*some, *letters.values())):
                    rows.append(rows[0])
                    continue
                numbers = [getattr(each, which) for each in some]
                self.trace.effort.spend(_A_SOLUTION)
                try:
                    row = solved(
                        left.node,
                        right.node,
                        (numbers[:count], numbers[count:]),
                        {key: getattr(each, which) for key, each in letters.items()},
                        letter,
                        n,
                    )
                except NoAngle as fault:
                    self.no_angle = fault.ratio if self.no_angle is None else self.no_angle
                    row = None
                except KeyError:
                    row = None
                if row is None or not np.all(np.isfinite(row)):
                    break
                rows.append(row)
            if len(rows) == 3:
                yield Solution(some[:count], some[count:], rows[0], rows[1], float(np.ravel(rows[2])[0]))


def same_formula(trace: Trace, one: Expr, other: Expr) -> bool:
    """Whether two sides are one formula."""
    letters = {**(letters_of(trace, one) or {}), **(letters_of(trace, other) or {})}
    for some in choices(trace, [one, other], 60):
        a, b = some[: len(one.leaves)], some[len(one.leaves) :]
        left, right = (
            np.asarray(value(e.node, [each.f for each in own], {key: each.f for key, each in letters.items()}), float)
            * np.ones(trace.known.n)
            for e, own in ((one, a), (other, b))
        )
        if same(left, right, 1e-8):
            return True
    return False


def solvable(exprs: Sequence[Expr], letter: str) -> bool:
    """Whether the sides are an equation for a letter."""
    return (
        len(exprs) > 1
        and any(letter not in each.names for each in exprs)
        or len(exprs) > 1
        and exprs[0].names != exprs[-1].names
    )
