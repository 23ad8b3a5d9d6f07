"""Traces each number of a working: to an earlier result, to a datum, to g, to a quantity by its figures, to work
done in the head, or to nothing.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

import numpy as np

from ...reference.gravity import IN_CLASSES, IN_FEET, WRITTEN
from .effort import Effort
from .head import MOST, parts, products, squares, sums
from .kinds import UNIT_KIND
from .known import Known
from .patterns import same
from .sources import CONVERSIONS, Source, Sources
from .tokens import Token
from .values import Value, all_deps

_CONSTANTS = frozenset((0.0, 1.0, 2.0, 3.0, 4.0, 0.5, 90.0, 180.0, 100.0, 1000.0, 360.0, 10.0, 0.01))
_PLAIN = frozenset((2.0, 90.0, 180.0, 0.0, 1.0, 100.0))
_SCALES = (1.0, 0.01, 100.0, 0.001, 1000.0)
_A_NUMBER, _IN_HEAD = 150, 600  # steps
LAST = 80  # results that a number is looked for among
Ranked = tuple[float, Value]


class TraceMark(NamedTuple):
    """How far a trace had come."""

    seen: int
    results: int
    names: dict[str, Value]
    before: Value | None
    g_shown: float
    spent: int


class Trace:
    """What the numbers of one working stand for, line by line."""

    def __init__(self, known: Known, sources: Sources, effort: Effort) -> None:
        self.known, self.sources, self.effort = known, sources, effort
        self.started = effort.spent
        self.seen: list[Value] = []  # every value and every part of one
        self.results: list[Value] = []  # what lines came to
        self.names: dict[str, Value] = {}
        self.before: Value | None = None  # what the line above came to
        self.line = 0
        self.g_shown = known.g_written
        self._data: list[Value] | None = None
        self._kept: dict[tuple[str, str, bool, bool], list[Value]] = {}

    def mark(self) -> TraceMark:
        """How far this trace has come."""
        spent = self.effort.spent - self.started
        return TraceMark(len(self.seen), len(self.results), dict(self.names), self.before, self.g_shown, spent)

    def go_on_from(self, other: Trace, mark: TraceMark) -> None:
        """Take over what another trace knew by then. Raises EnoughError where that alone is too much."""
        self.seen, self.results = other.seen[: mark.seen], other.results[: mark.results]
        self.names, self.before, self.g_shown = dict(mark.names), mark.before, mark.g_shown
        self.effort.spend(mark.spent)

    def next_line(self, number: int) -> None:
        self.line = number
        self._kept.clear()

    def note(self, value: Value, name: str = "", result: bool = True) -> Value:
        """Remember a value; a name stands for it from now on."""
        self.seen.append(value)
        self._kept.clear()
        if result:
            self.results.append(value)
        if name:
            self.names[name] = value
        return value

    def gravity(self) -> Value:
        return Value(self.known.g, self.known.g, self.g_shown, source="g")

    def candidates(self, token: Token, turned: bool = False, lone: bool = False) -> list[Value]:
        """What a number may be, the likeliest first; never empty."""
        key = (token.text, token.unit, turned, lone)
        if key not in self._kept:
            self.effort.spend(_A_NUMBER)
            self._kept[key] = self._candidates(token, turned, lone)
        return self._kept[key]

    def _candidates(self, token: Token, turned: bool, lone: bool) -> list[Value]:
        number, step = token.share, token.step
        found = list(self._earlier(token, number, step, turned))
        if turned or token.unit == "deg":
            found += self._angle(number, step)
            if lone and token.unit == "deg" and not any(each.source == "earlier" for _, each in found):
                found += [(1.5, each) for rank, each in self.in_head(number, step, True, "") if rank == 0.75]
            return _best(found) or [self._free(number, 0.0)]
        doubted = token.figures >= 3 and any(
            each.blames and each.half and abs(abs(each.number) - number) < 1e-9 for each in self.results
        )
        found += [each for each in self._figures(token, number, step) if each[1].exact or not doubted]
        found += self._constants(token, number, step)
        if not found and token.figures == 2:
            found += [
                (4.5, Value(each.row, each.row, number, source="in the head"))
                for each in self.sources.pairs_near(number, 1e-7)
            ]
        if token.figures >= 3 and (not found or lone and not any(each.source == "earlier" for _, each in found)):
            found += [(4 + rank, each) for rank, each in self.in_head(number, step, lone, token.unit)]
        return _best(found) or [self._free(number, step if "." in token.text else 0.0)]

    def _free(self, number: float, half: float) -> Value:
        row = np.full(self.known.n, number)
        return Value(row, row, number, half, source="number", free=True)

    def _earlier(self, token: Token, number: float, step: float, turned: bool) -> Iterator[Ranked]:
        """The results and parts of lines before that a number may be, in these or in other units."""
        last = self.seen[-LAST:][::-1]
        if not last or not number:
            return
        scales = np.array(_SCALES if token.figures >= 3 and not turned else (1.0,))[:, None]
        numbers, halves, spreads = np.array([(each.number, each.half, each.spread) for each in last]).T
        sizes = numbers * scales
        within = np.maximum(step, halves * scales) * 1.02 + spreads * scales
        gap = np.abs(np.abs(sizes) - number)
        near = (gap <= within + 1e-12) & ((within < 0.03 * number + 1e-9) | (gap <= 1e-6 * number)) & (numbers != 0)
        met: set[tuple[bytes, bytes, frozenset[int], float]] = set()
        for place, at in np.argwhere(near.T):
            value, scale = last[place], float(scales[at, 0])
            mark = (value.f.tobytes(), value.r.tobytes(), value.blames, scale)
            if mark in met and value.number == number:
                continue
            met.add(mark)
            if (
                scale != 1.0
                and value.unit
                and token.unit
                and UNIT_KIND.get(value.unit) != "length"
                and scale not in (0.01, 100.0)
            ):
                continue
            by = scale if sizes[at, place] >= 0 else -scale
            yield (
                2.5 * (scale != 1) + 0.001 * place,
                Value(
                    value.f * by,
                    value.r * by if value.apart else value.f * by,
                    number,
                    step,
                    value.unit,
                    value.line,
                    value.deps,
                    value.blames,
                    "earlier",
                    value.free,
                    spread=0.0,
                ),
            )

    def _angle(self, number: float, step: float) -> Iterator[Ranked]:
        for row, rank in self.sources.angles:
            if abs(row[0] - number) <= max(step, 0.05 if step < 0.5 else step) * 1.01:
                exact = abs(row[0] - number) < 1e-9
                yield 1 + rank, Value(row, row, number, 0.0 if exact else step, source="angle", exact=exact)

    def _figures(self, token: Token, number: float, step: float) -> Iterator[Ranked]:
        near = self.sources.near(number, max(step * 1.25, 4e-4 * number if token.figures >= 4 else 0.0) + 1e-9)
        exactly = any(each.rank == 0 and abs(abs(each.number) - number) < 1e-7 * max(1.0, number) for each in near)
        for each in near:
            exact = abs(abs(each.number) - number) < 1e-7 * max(1.0, number)
            if not self._may_be(token, each, exact, exactly):
                continue
            sign = 1.0 if each.number >= 0 else -1.0
            given = exact and each.rank == 0
            yield (
                1 if given else 2 + each.rank + (0 if token.figures >= 3 else 2) + 0.4 * (not exact),
                Value(each.row * sign, each.row * sign, number, 0.0 if given else step, source=each.key, exact=given),
            )

    @staticmethod
    def _may_be(token: Token, source: Source, exact: bool, exactly: bool) -> bool:
        if (
            token.unit
            and source.unit
            and token.unit != source.unit
            and not (token.unit == "kgf" and source.unit == "kg")
        ):
            return False
        if source.unit in ("mm", "ft") and token.unit != source.unit:
            return False
        if exact:
            return not (source.rank and token.figures < 2)
        return token.figures >= 3 or token.figures == 2 and not exactly

    def _constants(self, token: Token, number: float, step: float) -> Iterator[Ranked]:
        written = number in WRITTEN or self.known.pounds and number == IN_FEET
        if written and token.unit in ("", "acc", "N"):
            yield 0.5 if token.unit != "N" else 3.5, Value(self.known.g, self.known.g, number, source="g")
        if self.known.pounds and not token.unit:
            for figure, factor in CONVERSIONS.items():
                if abs(number - figure) < 1e-9:
                    row = np.full(self.known.n, factor)
                    yield 1.5, Value(row, row, number, step, source="conversion")
        if number in _CONSTANTS:
            row = np.full(self.known.n, number)
            yield 1.2 if number in _PLAIN else 3.0, Value(row, row, number, source="constant")

    def in_head(self, number: float, step: float, lone: bool, unit: str) -> list[Ranked]:
        """What results and data put together in the head come to this number, the likeliest first."""
        self.effort.spend(_IN_HEAD)
        own = self._own()
        found = [
            *sums(self._own(unit) if unit else own, number, step),
            *squares(own, number, step, lone),
            *products(own, self._given(), number, step),
            *(parts(own, self.sources.shares, number, step) if lone else ()),
        ]
        found += [
            (0.6, each.row, each.row, ())
            for each in self.sources.pairs_near(number, step * 1.1 + 1e-9)
            if abs(each.number - number) < 1e-7 or step < 0.01 * number
        ]
        found.sort(key=lambda each: each[0])
        out = []
        for rank, f, r, some in found[:6]:
            deps, blames = all_deps(some)
            out.append((rank, Value(f, r, number, step, "", self.line, deps, blames, "in the head")))
        return out

    def _own(self, unit: str = "") -> list[Value]:
        """The last results; with a unit, those that may be terms of a sum in it."""
        out: list[Value] = []
        kept: set[tuple[float, str]] = set()
        kind = UNIT_KIND.get(unit)
        for value in reversed(self.results):
            key = (round(value.number, 9), value.unit)
            if unit and UNIT_KIND.get(value.unit, kind) != kind:
                continue
            if value.number and not value.free and key not in kept:
                kept.add(key)
                out.append(value)
            if len(out) >= MOST:
                break
        return out

    def _given(self) -> list[Value]:
        if self._data is None:
            units = ("cm", "m", "in", "kg") if self.known.pounds else ("cm", "m", "kg")
            data = [each for each in self.sources.all if each.rank == 0 and each.unit in units and each.number][:40]
            self._data = [Value(self.known.g, self.known.g, g, source="g", exact=True) for g in IN_CLASSES[:2]]
            self._data += [Value(each.row, each.row, abs(each.number), source=each.key, exact=True) for each in data]
            weights = [
                each for each in self.sources.all if each.unit == "N" and each.key.endswith(".weight") and each.rank < 2
            ][:20]
            self._data += [
                Value(each.row, each.row, abs(each.number), 1.2e-4 * abs(each.number), source=each.key)
                for each in weights
            ]
        return self._data


def _best(found: list[Ranked]) -> list[Value]:
    """Different values, the likeliest first."""
    out: list[Value] = []
    for _, value in sorted(found, key=lambda each: each[0]):
        if not any(
            each.blames == value.blames and same(each.f, value.f, 1e-12) and same(each.r, value.r, 1e-12)
            for each in out
        ):
            out.append(value)
    return out
