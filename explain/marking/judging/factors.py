"""What stands before a letter that has no value yet: judged as the arm of a pull."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from .formula import Expr, value
from .kinds import kind_of
from .patterns import pattern, same
from .solving import factor_of
from .state import State
from .suspicion import slip_value
from .values import Claim, Meaning, Value, all_deps
from .ways import choices, letters_of


class Factors:
    """The factors of one pass."""

    def __init__(self, state: State) -> None:
        self.state, self.trace = state, state.trace

    def alone(self, exprs: Sequence[Expr], letter: str, words: str, name: str = "") -> bool:
        """ "F x 0.40 sin 18", or sides that all have the letter as a factor: what stands before it is judged as an
        arm.
        """
        factors = [self._factor(expr, letter) for expr in exprs]
        if any(each is None for each in factors):
            return False
        for each in factors:
            assert each is not None
            if abs(each.f[0] - 1) > 1e-9:
                self._arm(each, letter, self.state.hints.of(words, name, ""))
                self.trace.note(each, result=False)
        return True

    def _factor(self, expr: Expr, letter: str) -> Value | None:
        """What stands before a letter on a side that has it as a factor, traced."""
        letters = letters_of(self.trace, expr, [letter])
        if letters is None or letter not in expr.names:
            return None
        best: Value | None = None
        for some in choices(self.trace, [expr], 60):
            rows = [
                factor_of(
                    expr,
                    [getattr(each, which) for each in some],
                    {key: getattr(each, which) for key, each in letters.items()},
                    letter,
                    self.state.known.n,
                )
                for which in ("f", "r", "number")
            ]
            nothing = value(
                expr.node,
                [each.number for each in some],
                {**{key: each.number for key, each in letters.items()}, letter: 0.0},
            )
            if any(each is None for each in rows) or abs(float(nothing)) > 1e-9:
                return None
            f, r, number = rows
            assert f is not None and r is not None and number is not None
            deps, blames = all_deps((*some, *letters.values()))
            size = float(np.ravel(number)[0])
            made = Value(
                f,
                r if np.any(f != r) else f,
                size,
                abs(size) * 2e-3,
                line=self.state.line,
                deps=deps | {self.state.line},
                blames=blames,
                free=any(each.free for each in some),
                spread=abs(size) * 2e-4,
            )
            if any(kind_of(each.key) == "length" for each in self.state.known.true_of(f)):
                return made
            best = best or made
        return best

    def note(self, expr: Expr, own: tuple[Value, ...], known: Mapping[str, Value], letter: str) -> None:
        rows = [
            factor_of(
                expr,
                [getattr(each, which) for each in own],
                {key: getattr(each, which) for key, each in known.items()},
                letter,
                self.state.known.n,
            )
            for which in ("f", "r")
        ]
        f, r = rows
        if f is None or r is None or pattern(f) is None or any(each.free or same(f, each.f) for each in own):
            return
        deps, blames = all_deps((*own, *known.values()))
        self.trace.note(
            Value(
                f,
                r if np.any(f != r) else f,
                float(f[0]),
                abs(float(f[0])) * 2e-3,
                line=self.state.line,
                deps=deps | {self.state.line},
                blames=blames,
                spread=abs(float(f[0])) * 2e-4,
            ),
            result=False,
        )

    def _arm(self, made: Value, letter: str, called: Meaning) -> None:
        """A factor that is no arm, but a slip's arm of the pull."""
        lengths = [each for each in self.state.known.true_of(made.f) if kind_of(each.key) == "length"]
        hits = [each for each in self.state.known.wrong_of(made.r) if each.key.startswith("*arm") and not each.form]
        items = called.items or self.state.hints.of("", letter, "").items & self.state.hints.pulls
        arms = [each for each in lengths if each.key.startswith(("*arm", "*leg"))]
        claim = Claim(
            self.state.line,
            made,
            Meaning(frozenset({"length"}), items),
            "",
            "",
            "",
            self.state.text,
            "true" if lengths else "factor",
            lengths,
            shown=False,
        )
        self.state.claims.append(claim)
        moment = "moment" in called.kinds and bool(called.items) and called.items <= self.state.hints.pulls
        if (
            not arms
            and not made.free
            and hits
            and slip_value(self.state, made, hits, claim.meaning, "", force=moment, soft=bool(lengths) and not moment)
        ):
            claim.status = "suspect" if moment or not lengths else claim.status
