"""A number alone as the value of a letter that has one already: the same, the same in another unit, or not that."""

from __future__ import annotations

import numpy as np

from ...reference.gravity import IN_CLASSES
from .arithmetic import transposed
from .case import Case
from .figures import Figures
from .formula import Expr
from .judge import Judge
from .kinds import kind_of
from .quantities import Row
from .state import State
from .tokens import Token
from .values import Claim, Meaning, Suspect, Value

_SCALES = (0.01, 100.0, 4.4482216, 1 / 4.4482216, 2.2046, 1 / 2.2046)


class ByLetter:
    """The numbers of letters in one pass."""

    def __init__(self, state: State, judge: Judge, figures: Figures) -> None:
        self.state, self.judge, self.trace, self.figures = state, judge, state.trace, figures

    def value(self, expr: Expr, words: str, names: list[str], meaning: Meaning) -> Value | None:
        """The number as the value of a letter that has one already."""
        known = next((self.trace.names[name] for name in names if name in self.trace.names), None)
        if known is None or not known.number:
            return None
        token, size = expr.leaves[0], abs(known.number)
        near = max(token.step, known.half) * 1.05 + known.spread + 0.004 * size
        factor: float | Row | None = (
            1.0 if abs(size - abs(expr.number)) <= near else self._scale(abs(expr.number) / size, token, known)
        )
        if factor is None:
            return self._not_that(expr, known, words, names, meaning)
        if not isinstance(factor, float) or factor != 1.0:
            other = self.figures.best(token, meaning)
            if other is not None and other.exact and self.state.known.true_of(other.f, token.unit):
                return None  # the letter stands for another datum now
        value = known.times(factor)
        value.f, value.r = known.f * factor, known.r * factor if known.apart else known.f * factor
        value.number, value.half, value.spread, value.unit, value.line = (
            expr.number,
            token.step,
            0.0,
            token.unit or (known.unit if factor == 1.0 else ""),
            self.state.line,
        )
        value.deps = known.deps | {self.state.line}
        if isinstance(factor, float) and factor in (100.0, 0.01) and meaning.role and token.unit in ("N", "lb"):
            self.state.claims.append(
                Claim(self.state.line, value, meaning, token.unit, words, names[0], self.state.text, "suspect")
            )
            self.state.suspect(
                Suspect(
                    self.state.line,
                    ["mixed-length-units", "decimal-shift", "arithmetic-slip"],
                    "",
                    True,
                    "scale",
                    deps=value.deps,
                ),
                value,
            )
            return value
        if (
            self.state.trace.names.get(names[0]) is known
            and not meaning.role
            and any(each.key in self.state.known.unknowns for each in self.state.known.true_of(known.r))
            and not meaning.kinds & {"length", "mass"}
        ):
            meaning = (
                Meaning(meaning.kinds, meaning.items, "pull")
                if any(kind_of(each) == "force" for each in self.state.known.unknowns)
                else meaning
            )
        self.judge.judge(Case(value, meaning, words, names[0], token.unit))
        return value

    def _scale(self, ratio: float, token: Token, known: Value) -> float | Row | None:
        near = 0.004 + token.step / token.share if token.share else 0.004
        g = self.state.known.g_written
        for each in (g, *IN_CLASSES[:2]):
            if abs(ratio / each - 1) < near and token.unit == "N":
                return self.state.known.g
            if abs(ratio * each - 1) < near and token.unit in ("kg", ""):
                return 1 / self.state.known.g
        return next((each for each in _SCALES if abs(ratio / each - 1) < near and (token.unit or known.unit)), None)

    def _not_that(self, expr: Expr, known: Value, words: str, names: list[str], meaning: Meaning) -> Value | None:
        """Another number than the letter has: a new meaning of the letter, or a step in the head that went wrong."""
        token = expr.leaves[0]
        best = self.figures.best(token, meaning)
        if best is not None and not best.free:
            return None
        ratio = abs(expr.number / known.number)
        power = np.log10(ratio)
        slips = ["decimal-shift"] if abs(power - round(power)) < 0.003 else []
        if transposed(f"{abs(known.number):.{len(token.text.partition('.')[2])}f}", token.text):
            slips = ["digit-transposed"]
        slips += [
            "arithmetic-slip",
            "divide-wrong-way",
            "multiply-for-divide",
            "term-moved-sign-kept",
            "divide-one-term",
        ]
        value = Value(
            known.f,
            known.r,
            expr.number,
            token.step,
            token.unit,
            self.state.line,
            known.deps | {self.state.line},
            known.blames,
        )
        self.state.claims.append(
            Claim(self.state.line, value, meaning, token.unit, words, names[0], self.state.text, "suspect")
        )
        self.state.suspect(
            Suspect(
                self.state.line,
                slips,
                "",
                bool(meaning.role) or abs(ratio - 1) > 0.01,
                "not what the equation gives",
                deps=value.deps,
            ),
            value,
        )
        return value
