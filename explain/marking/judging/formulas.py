"""A formula with its value: traced in the way that is true, else that follows, else that a slip explains."""

from __future__ import annotations

import numpy as np

from .case import Case
from .formula import Expr, left_to_right, product_first, readings, within
from .judge import Judge
from .kinds import FACTORS, kind_of
from .parts import note_parts
from .state import State
from .values import Meaning, Value, all_deps
from .ways import Way, letters_of, ways

_FACTORS = (
    0.01,
    100.0,
    0.001,
    1000.0,
    4.4482216,
    1 / 4.4482216,
    2.2046226,
    1 / 2.2046226,
    0.45359237,
    2.54,
    1 / 2.54,
    12.0,
    1 / 12.0,
    0.0254,
    39.37,
)


class Formulas:
    """The formulas of one pass."""

    def __init__(self, state: State, judge: Judge) -> None:
        self.state, self.judge, self.trace = state, judge, state.trace

    def claim(self, forms: list[Expr], shown: Expr | None, words: str, name: str, unit: str) -> Value | None:
        """A formula with what it comes to."""
        expr = forms[0]
        letters = letters_of(self.trace, expr)
        if letters is None:
            return None
        meaning = self.meaning(words, name, unit)
        best = self._best(expr, letters, meaning, unit, shown)
        if best is None:
            self.state.unread.add(self.state.line)
            return None
        way, node = best
        value = self._value(Expr(node, expr.leaves, expr.names), way, shown, unit)
        note_parts(self.trace, expr, way)
        for other in forms[1:]:
            known = letters_of(self.trace, other)
            if known is not None and len(other.leaves) > 1:
                for another in ways(self.trace, other, known):
                    note_parts(self.trace, other, another)
                    break
        self.judge.judge(
            Case(value, meaning, words, name, unit, Expr(node, expr.leaves, expr.names), way, shown is not None)
        )
        return self.trace.note(value, name)

    def meaning(self, words: str, name: str, unit: str) -> Meaning:
        """What a value is called; a letter that stood for the pull still does."""
        said = self.state.alias.get(name, "")
        meaning = self.state.hints.of(f"{words} {said}".strip(), name, unit)
        was = self.trace.names.get(name)
        if (
            not meaning.role
            and was is not None
            and not meaning.items
            and any(
                each.key in self.state.known.unknowns and not each.form
                for row in (was.f, was.r)
                for each in self.state.known.true_of(row)
            )
        ):
            return (
                Meaning(meaning.kinds, meaning.items, "pull")
                if "length" not in meaning.kinds and "mass" not in meaning.kinds
                else meaning
            )
        return meaning

    def _best(
        self, expr: Expr, letters: dict[str, Value], meaning: Meaning, unit: str, shown: Expr | None
    ) -> tuple[Way, tuple] | None:  # type: ignore[type-arg]
        """The way to trace a formula that is true, else that follows, else that a slip explains."""
        best: tuple[float, Way, tuple] | None = None  # type: ignore[type-arg]
        for node in self._readings(expr, shown):
            for way in ways(self.trace, expr, letters, node):
                status, keys = self.judge.status(way.f, way.r, meaning, unit)
                rank = {"true": 0.0, "carried": 1.0, "none": 2.0}[status]
                if (
                    status == "none"
                    and (best is None or best[0] > 1.5)
                    and (
                        self.state.known.wrong_of(way.r, unit)
                        or way.r is not way.f
                        and self.state.known.wrong_of(way.f, unit)
                    )
                ):
                    rank = 1.5
                elif status != "none":
                    rank += (1.1 if status == "true" else 0.3) * (
                        bool(meaning.role) and not any(self.state.hints.speaks(each.key, meaning) for each in keys)
                    )
                    rank += 0.4 * (bool(meaning.kinds) and not any(self._of_kind(each.key, meaning) for each in keys))
                rank += 0.01 * way.free
                if best is None or rank < best[0]:
                    best = (rank, way, node)
                if rank == 0:
                    return way, node
        return best[1:] if best else None

    def _of_kind(self, key: str, meaning: Meaning) -> bool:
        return kind_of(key) in meaning.kinds

    def _readings(self, expr: Expr, shown: Expr | None) -> list[tuple]:  # type: ignore[type-arg]
        """The readings of a fraction that give what is shown; as written where none does."""
        all_ = readings(expr.node)
        if len(all_) == 1 or shown is None:
            return all_[:1]
        said = self.state.arithmetic.number(shown)
        fitting = [
            node
            for node in all_
            if node == expr.node
            or node == product_first(expr.node)
            or not (node == left_to_right(expr.node) and any(each[0] == "f" for each in within(node)))
        ]
        good = [
            node
            for node in fitting
            if self.state.arithmetic.equal(self.state.arithmetic.number(expr, node), said, expr, shown)
        ]
        return good[:1] or all_[:1]

    def _value(self, expr: Expr, way: Way, shown: Expr | None, unit: str) -> Value:
        """The value of a formula with the number that is shown for it, in the unit that it is shown in."""
        deps, blames = all_deps(way.used(expr.node))
        made = self.state.arithmetic.number(expr, letters=way.letters) or (0.0, 0.0)
        value = Value(
            way.f,
            way.r,
            made[0],
            0.0,
            unit,
            self.state.line,
            deps | {self.state.line},
            blames,
            "",
            way.free,
            spread=max(made[1], abs(made[0]) * 5e-4),
        )
        if expr.node[0] == "f" and expr.node[1] in ("sin", "cos", "tan"):
            value.source = "trig"
        if shown is None:
            return value
        value.number, value.half, value.spread = shown.number, shown.leaves[0].step, 0.0
        weight = self.state.known.truth.get("*person.weight")
        if unit == "BW" and weight is not None and value.number:
            times = made[0] / value.number / float(weight[0])
            if any(abs(times / each - 1) < 0.01 for each in (1.0, FACTORS["force"]["lb"])):
                value.f, value.r = value.f / weight, value.r / weight if value.apart else value.f / weight
                return value
        if unit and unit != "%" and made[0] and value.number:
            ratio, near = abs(value.number / made[0]), 0.003 + value.half / abs(value.number)
            factor: float | np.ndarray = 1.0
            for each in _FACTORS:
                factor = each if abs(ratio / each - 1) < near else factor
            g = self.state.known.g_written
            factor = (
                self.state.known.g
                if abs(ratio / g - 1) < near + 0.001
                else 1 / self.state.known.g
                if abs(ratio * g - 1) < near + 0.001
                else factor
            )
            if isinstance(factor, np.ndarray) or factor != 1.0:
                value.f, value.r = value.f * factor, value.r * factor if value.apart else value.f * factor
        return value
