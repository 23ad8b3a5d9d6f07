"""Equations with two letters that have no value: a joint force among moments, two true quantities together."""

from __future__ import annotations

from itertools import permutations

import numpy as np

from .formula import Expr, value
from .kinds import kind_of
from .patterns import same
from .solutions import Solver
from .state import State
from .values import Claim, Meaning, Suspect, Value
from .ways import choices, letters_of


class TwoLetters:
    """The equations with two letters of one pass."""

    def __init__(self, state: State, solver: Solver) -> None:
        self.state, self.trace, self.solver = state, state.trace, solver

    def joint_among_moments(self, left: Expr, right: Expr, unknown: list[str]) -> bool:
        """A letter of the joint force in a balance that is right without it: at the pivot it has no arm."""
        for joint, pull in permutations(unknown):
            if self.state.hints.of("", joint, "").role != "joint" or self.state.hints.of("", pull, "").role == "joint":
                continue
            nothing = {joint: Value(np.zeros(self.state.known.n), np.zeros(self.state.known.n), 0.0)}
            base = {
                key: each
                for expr in (left, right)
                for key, each in (letters_of(self.trace, expr, unknown) or {}).items()
            }
            best = self.solver.best(left, right, {**base, **nothing}, pull, Meaning())
            if (
                best is not None
                and best.rank == 0
                and any(each.key in self.state.known.unknowns for each in self.state.known.true_of(best.f))
            ):
                value = Value(best.f, best.f, best.number, line=self.state.line, deps=frozenset({self.state.line}))
                self.state.claims.append(
                    Claim(self.state.line, value, Meaning(), "", "", pull, self.state.text, "suspect")
                )
                self.state.suspect(
                    Suspect(
                        self.state.line,
                        ["reaction-in-moment-equation"],
                        "",
                        True,
                        "the joint force among moments",
                        sticky=True,
                    ),
                    value,
                )
                return True
        return False

    def solve(self, left: Expr, right: Expr, unknown: tuple[str, str]) -> None:
        """Two letters: true quantities that satisfy the equation together."""
        known = self.state.known
        rows = [
            (key, row * sign)
            for key, row in known.truth.items()
            for sign in (1, -1)
            if kind_of(key) == "force"
            and (
                key in known.unknowns
                or key.startswith(("reaction", "*level", "*upright", "*sumpull"))
                or key.endswith(".force")
            )
        ][:26]
        base = {
            key: each for expr in (left, right) for key, each in (letters_of(self.trace, expr, unknown) or {}).items()
        }
        for some in choices(self.trace, [left, right], 12):
            a, b = [each.f for each in some[: len(left.leaves)]], [each.f for each in some[len(left.leaves) :]]
            for (one_key, one), (_, other) in permutations(rows, 2):
                named = {**{key: each.f for key, each in base.items()}, unknown[0]: one, unknown[1]: other}
                try:
                    gap = (
                        np.asarray(value(left.node, a, named), float) * np.ones(known.n),
                        np.asarray(value(right.node, b, named), float) * np.ones(known.n),
                    )
                except KeyError:
                    return
                if same(gap[0], gap[1], 1e-8):
                    for letter, row in zip(unknown, (one, other), strict=True):
                        self.trace.names[letter] = Value(
                            row, row, float(row[0]), abs(float(row[0])) * 0.01, line=self.state.line
                        )
                    self.state.made.add(one_key)
                    return
