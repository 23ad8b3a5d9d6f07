"""Judges numbers that stand alone, "D = 1026 N": what they are by their letter, their words, or work done in the
head; and conversions in a row.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

import numpy as np

from .arithmetic import False_, transposed
from .case import Case
from .formula import Expr
from .judge import Judge
from .kinds import FACTORS, kind_of
from .quantities import Row
from .state import State
from .suspicion import slip_value
from .tokens import Token
from .values import Claim, Meaning, Suspect, Value

_SCALES = (0.01, 100.0, 4.4482216, 1 / 4.4482216, 2.2046, 1 / 2.2046)
_CONVERSIONS = (
    0.01,
    100.0,
    0.001,
    1000.0,
    4.4482216,
    1 / 4.4482216,
    2.2046226,
    0.45359237,
    2.54,
    0.0254,
    1 / 12,
    12.0,
    0.3048,
    30.48,
)
_JOINT = re.compile(r"^(?:[RJNAESHKCDOBVPQ]|F_?[jR])")


class Lone:
    """The lone numbers of one pass."""

    def __init__(self, state: State, judge: Judge) -> None:
        self.state, self.judge, self.trace = state, judge, state.trace

    def number(self, numbers: Sequence[Expr], words: str, names: list[str], unit: str, wrong: False_ | None) -> None:
        """A number, or several that are said to be equal."""
        first, name = numbers[0], names[0] if names else ""
        if not first.number:
            self._nothing(words, name)
            return
        meaning = self.state.hints.of(
            f"{words} {self.state.alias.get(name, '')}".strip(), name, numbers[-1].unit or first.unit
        )
        value = self._by_letter(first, words, names, meaning) or self._by_figures(first, words, name, meaning)
        self.trace.note(value, name)
        self.trace.before = value
        for each in names:
            self.trace.names[each] = value
        if len(numbers) > 1:
            self._converted(value, first, numbers[-1], words, names, meaning, wrong)

    def _nothing(self, words: str, name: str) -> None:
        """A joint force, or a part of it, that is said to be nothing."""
        state = self.state
        meaning = state.hints.of(words, name, "")
        axis = (
            "reaction.right"
            if name[-1:] in "xhXH" and len(name) > 1
            else "reaction.up"
            if name[-1:] in "yvYV" and len(name) > 1
            else "reaction"
        )
        row = state.known.truth.get(axis)
        if meaning.role == "joint" and name and _JOINT.match(name) and row is not None and np.all(np.abs(row) > 1e-6):
            value = Value(np.zeros(state.known.n), np.zeros(state.known.n), 0.0, line=state.line)
            names = ["reaction-missing", "reaction-along-bone", "reaction-equals-muscle", "horizontal-part-forgotten"]
            state.suspect(Suspect(state.line, names, axis, True, "a joint force of nothing"), value)
            state.claims.append(Claim(state.line, value, meaning, "", words, name, state.text, "suspect"))
        else:
            state.words_only.add(state.line)

    def _by_letter(self, expr: Expr, words: str, names: list[str], meaning: Meaning) -> Value | None:
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
            other = self._best(token, meaning)
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
        for each in (g, 9.8, 9.81):
            if abs(ratio / each - 1) < near and token.unit == "N":
                return self.state.known.g
            if abs(ratio * each - 1) < near and token.unit in ("kg", ""):
                return 1 / self.state.known.g
        return next((each for each in _SCALES if abs(ratio / each - 1) < near and (token.unit or known.unit)), None)

    def _not_that(self, expr: Expr, known: Value, words: str, names: list[str], meaning: Meaning) -> Value | None:
        """Another number than the letter has: a new meaning of the letter, or a step in the head that went wrong."""
        token = expr.leaves[0]
        best = self._best(token, meaning)
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

    def _by_figures(self, expr: Expr, words: str, name: str, meaning: Meaning) -> Value:
        """The number by its figures, its unit and its words."""
        token, sign = expr.leaves[0], 1.0 if expr.number >= 0 else -1.0
        best = self._best(token, meaning)
        assert best is not None
        if best.free and token.unit and name:
            best = self._in_another_unit(token, words, name) or best
        value = Value(
            best.f * sign,
            best.r * sign if best.apart else best.f * sign,
            expr.number,
            token.step,
            token.unit or best.unit,
            self.state.line,
            best.deps | {self.state.line},
            best.blames,
            best.source,
            best.free,
            best.exact,
        )
        if (
            best.free
            and token.figures >= 2
            and (token.unit or name)
            and self._slip_in_head(value, token, meaning, words, name)
        ):
            return value
        if best.free:
            self.state.claims.append(
                Claim(self.state.line, value, meaning, token.unit, words, name, self.state.text, "none")
            )
        else:
            self.judge.judge(Case(value, meaning, words, name, token.unit))
        return value

    def _in_another_unit(self, token: Token, words: str, name: str) -> Value | None:
        """The pull or the joint force by its figures, where the unit behind it is another's; or a moment that is
        called so.
        """
        meaning = self.state.hints.of(words, name, "")
        if meaning.role != "pull":
            return None
        for source in self.trace.sources.near(token.share, token.step * 1.25 + 1e-9):
            answer = self.state.hints.is_answer(source.key, meaning) and source.unit != token.unit
            moment = (
                source.kind == "moment"
                and token.unit in ("N", "lb")
                and (
                    source.key == "total"
                    or self.state.hints.item_of(source.key) & self.state.hints.unknown_items
                    and source.key.startswith("*moment")
                )
            )
            if token.figures >= 3 and (answer or moment):
                return Value(
                    source.row,
                    source.row,
                    token.share,
                    token.step,
                    source=source.key,
                    deps=frozenset({self.state.line}),
                )
        return None

    def _best(self, token: Token, meaning: Meaning) -> Value | None:
        found = self.trace.candidates(token, "angle" in meaning.kinds or token.unit == "deg", True)
        if found[0].free and (meaning.role or meaning.items) and meaning.kinds:
            for source in self.trace.sources.near(token.share, 0.004 * token.share):
                if (
                    source.kind in meaning.kinds
                    and not (token.unit and source.unit and source.unit != token.unit)
                    and self._fits(source.key, meaning)
                ):
                    sign = 1.0 if source.number >= 0 else -1.0
                    return Value(
                        source.row * sign,
                        source.row * sign,
                        token.share,
                        token.step,
                        source=source.key,
                        deps=frozenset({self.state.line}),
                    )
        rates = [self._rate(each, token, meaning) - 0.1 * place for place, each in enumerate(found)]
        best = int(np.argmax(rates))
        if rates[best] <= -8:
            row = np.full(self.state.known.n, token.share)
            return Value(row, row, token.share, source="number", free=True)
        return found[best]

    def _fits(self, key: str, meaning: Meaning) -> bool:
        return (
            self.state.hints.is_answer(key, meaning)
            if meaning.role
            else bool(self.state.hints.item_of(key) & meaning.items)
        )

    def _rate(self, value: Value, token: Token, meaning: Meaning) -> float:
        keys = [each.key for each in self.state.known.true_of(value.f, token.unit)]
        rate = 1.5 * (value.source == "earlier") + 2 * bool(value.source == "earlier" and value.blames)
        if not keys:
            return rate
        speaks = any(self.state.hints.speaks(key, meaning) for key in keys)
        if (
            meaning.role
            and not speaks
            and value.source not in ("earlier", "in the head")
            and value.source not in self.state.known.data
        ):
            return -9.0
        if meaning.role:
            rate += 2 if speaks else -1
        if meaning.kinds:
            rate += 1 if any(kind_of(key) in meaning.kinds for key in keys) else -1
        if meaning.items:
            rate += 2 if any(self.state.hints.item_of(key) & meaning.items for key in keys) else -1
        return rate

    def _slip_in_head(self, value: Value, token: Token, meaning: Meaning, words: str, name: str) -> bool:
        """A value that was worked out in the head and is a slip's: by its figures, its unit and its words."""
        if token.figures < 3 or not (meaning.items or meaning.role) or not meaning.kinds:
            return False
        found: list[tuple[int, str, str, Row, int]] = []
        near = token.step * 1.3 + 0.0006 * token.share
        sizes, figures = self.state.known.wrong_figures
        low, high = np.searchsorted(sizes, (token.share - near, token.share + near))
        for place, key, unit, factor in figures[low:high]:
            slip = self.state.known.slips[place]
            answer = bool(meaning.role) and self.state.hints.is_answer(key, meaning)
            own = key == slip.touched and (not meaning.items or self.state.hints.item_of(key) & meaning.items)
            if kind_of(key) in meaning.kinds and (answer or own) and (not token.unit or unit == token.unit):
                found.append((slip.common, slip.name, key, slip.rows[key] * factor, place))
        if not found:
            return False
        found.sort(key=lambda each: (-each[0], each[4]))
        _, _, key, row, _ = found[0]
        self.state.claims.append(
            Claim(self.state.line, value, meaning, token.unit, words, name, self.state.text, "suspect")
        )
        value.f, value.r, value.free = (
            row,
            self.state.known.truth[key] * abs(row[0] / found[0][3][0]) * FACTORS[kind_of(key)].get(token.unit, 1.0),
            False,
        )
        names = list(dict.fromkeys(each[1] for each in found))
        self.state.suspect(
            Suspect(
                self.state.line,
                names,
                key,
                False,
                "a value worked out in the head",
                frozenset(each[4] for each in found),
                deps=value.deps,
            ),
            value,
        )
        return True

    @staticmethod
    def _shifted(first: Expr, last: Expr, ratio: float) -> bool:
        """Two lengths, or two masses, in two units whose points do not agree."""
        for kind in ("length", "mass"):
            if first.unit in FACTORS[kind] and last.unit in FACTORS[kind] and first.unit != last.unit:
                return _is_shift(ratio * FACTORS[kind][first.unit] / FACTORS[kind][last.unit])
        return False

    def _converted(
        self,
        value: Value,
        first: Expr,
        last: Expr,
        words: str,
        names: list[str],
        meaning: Meaning,
        wrong: False_ | None,
    ) -> None:
        """The same in another unit: 13.5 in = 34.3 cm."""
        ratio = abs(last.number / first.number)
        near = 0.004 + last.leaves[0].step / max(abs(last.number), 1e-9)
        g = self.state.known.g_written
        factor: float | Row = ratio
        if any(abs(ratio / each - 1) < near for each in (g, 9.8, 10.0)):
            factor = self.state.known.g
        factor = next((each for each in _CONVERSIONS if abs(ratio / each - 1) < near), factor)
        if self._shifted(first, last, ratio):
            self.state.suspect(
                Suspect(
                    self.state.line, ["decimal-shift", "mixed-length-units"], "", True, "conversion", deps=value.deps
                ),
                value,
            )
            if self.state.claims and self.state.claims[-1].value is value:
                self.state.claims[-1].status = "suspect"
        out = Value(
            value.f * factor,
            value.r * factor,
            last.number,
            last.leaves[0].step,
            last.unit,
            self.state.line,
            value.deps,
            value.blames,
        )
        if wrong is not None and not value.free:
            other = self._best(last.leaves[0], meaning)
            if other is not None and not other.free:
                out = Value(
                    other.f,
                    other.r,
                    last.number,
                    last.leaves[0].step,
                    last.unit,
                    self.state.line,
                    other.deps,
                    other.blames,
                )
            elif first.unit and last.unit:
                slips = [*_unit_slips({first.unit, last.unit}), *self.state.arithmetic.explained(wrong)]
                self.state.suspect(Suspect(self.state.line, slips, "", False, "conversion", deps=value.deps), out)
        self.trace.note(out)
        for name in names:
            self.trace.names[name] = out
        self.trace.before = out
        if self.state.claims and self.state.claims[-1].value is value:
            self.state.claims[-1].value = out if out.blames != value.blames else self.state.claims[-1].value


def _is_shift(ratio: float) -> bool:
    return any(abs(ratio / each - 1) < 0.01 for each in (10.0, 100.0, 0.1, 0.01))


def _unit_slips(units: set[str]) -> list[str]:
    if units == {"gram", "kg"}:
        return ["gram-kilogram-slip"]
    if units <= {"cm", "m", "mm"}:
        return ["mixed-length-units"]
    if units <= {"in", "ft"}:
        return ["inch-foot-mix"]
    return ["pound-kilogram-slip", "pound-as-mass"] if "lb" in units and units & {"kg", "N"} else []


__all__ = ("Lone", "slip_value")
