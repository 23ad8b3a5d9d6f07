"""Every number that a student may write for a quantity of the problem: the figure in each unit, with the values that
it stands for.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from typing import NamedTuple

import numpy as np

from .kinds import CUSTOMARY, FACTORS, KILOGRAMS, UNIT_KIND, kind_of
from .known import Known, is_side
from .patterns import same
from .quantities import Row


class Source(NamedTuple):
    """A figure and what it stands for; `rank` 0 a datum, 1 a quantity, 2 one seldom written."""

    number: float
    row: Row
    kind: str
    unit: str
    rank: int
    key: str


class Angle(NamedTuple):
    row: Row
    rank: int


OTHER_TABLE = " of another table"
_SELDOM = ("*away", "*turn ", "*ratio", "*sum")
CONVERSIONS = {
    4.448: 4.4482216,
    4.45: 4.4482216,
    4.4482: 4.4482216,
    0.225: 1 / 4.4482216,
    0.2248: 1 / 4.4482216,
    2.2: 2.204622622,
    2.205: 2.204622622,
    2.2046: 2.204622622,
    0.4536: 0.45359237,
    0.454: 0.45359237,
    2.54: 2.54,
    0.0254: 0.0254,
    12.0: 12.0,
    0.3048: 0.3048,
    39.37: 39.37007874,
    3.281: 3.28084,
    3.28: 3.28084,
}


class Sources:
    """All figures of one problem, for a working with g as the class has it, or with g = 10."""

    def __init__(self, known: Known, tens: bool = False) -> None:
        self.known, self.tens = known, tens
        self.others = [
            *(each for g, each in known.by_g.items() if g != 10.0 or tens),
            *(each for _, each in known.tables),
        ]
        found = [
            each
            for each in (*self._other_data(), *self._truths(), *self._data(), *self._lengths())
            if np.any(np.abs(each.row - each.row[0]) > 1e-9 * abs(each.row[0]))
        ]
        found.sort(key=lambda each: abs(each.number))
        self.all = found
        self.meant = list(self._meant())
        self.sizes = np.array([abs(each.number) for each in found])
        self.angles = list(self._angles())
        given = [np.radians(each.row) for each in self.angles if not each.rank]
        self.shares = [share for angle in given for share in (np.cos(angle), np.sin(angle))]
        self.pairs = sorted(self._pairs(), key=lambda each: abs(each.number))
        self.pair_sizes = np.array([abs(each.number) for each in self.pairs])

    def _meant(self) -> Iterator[Source]:
        """What a number that was copied wrongly may have been meant for: each figure once for each kind of unit."""
        tried: set[tuple[object, ...]] = set()
        for each in self.all:
            mark = (UNIT_KIND.get(each.unit), round(each.number, 6), *np.round(each.row, 9).tolist())
            if each.rank < 2 and not each.key.startswith("*trig") and mark not in tried:
                tried.add(mark)
                yield each

    def near(self, number: float, within: float) -> list[Source]:
        """The figures within some distance of a number."""
        low, high = np.searchsorted(self.sizes, (number - within, number + within))
        return self.all[low:high]

    def pairs_near(self, number: float, within: float) -> list[Source]:
        low, high = np.searchsorted(self.pair_sizes, (number - within, number + within))
        return self.pairs[low:high]

    def exact(self, number: float) -> list[Source]:
        """The data that have this very figure."""
        return [each for each in self.near(number, 1e-7 * max(1.0, number)) if each.rank == 0]

    def _units(self, kind: str) -> Iterator[tuple[str, float]]:
        for unit, factor in FACTORS.get(kind, {"": 1.0}).items():
            if unit in ("kN", "kNm") and not self.known.kilonewtons or unit == "Nmm":
                continue
            if self.known.pounds or unit not in CUSTOMARY:
                yield unit, factor

    def _other_data(self) -> Iterator[Source]:
        """The same quantities with another g or another published table: other figures, the same formula."""
        for changed, _ in self.known.tables:
            for key, share in changed.items():
                yield Source(share, self.known.data[key], "ratio", "", 0, key + OTHER_TABLE)
        for found in self.others:
            for key, number in found.items():
                kind = kind_of(key)
                if kind not in ("angle", "g"):
                    for unit, factor in self._units(kind):
                        yield Source(number * factor, self.known.truth[key] * factor, kind, unit, _rank(key), key)

    def _truths(self) -> Iterator[Source]:
        known = self.known
        for key, row in known.truth.items():
            kind = kind_of(key)
            if kind in ("angle", "g"):
                continue
            rank = 0 if key in known.data or kind == "mass" and not key.startswith("*sum") else _rank(key)
            for unit, factor in self._units(kind):
                yield Source(row[0] * factor, row * factor, kind, unit, rank, key)
            if kind in ("force", "moment") and rank and not known.pounds:
                for unit in ("kg",) if kind == "force" else ("kgm", "kgcm"):
                    yield Source(
                        row[0] * KILOGRAMS[unit] / known.g[0],
                        row * KILOGRAMS[unit] / known.g,
                        kind,
                        unit,
                        rank + 1,
                        key,
                    )

    def _data(self) -> Iterator[Source]:
        for key, row in self.known.data.items():
            if key.startswith("*area"):
                yield Source(row[0] * 1e4, row * 1e4, "area", "", 0, key)
            elif key not in self.known.truth:
                for unit, factor in self._units(kind_of(key)):
                    yield Source(row[0] * factor, row * factor, kind_of(key), unit, 0, key)
            if key.endswith("%"):
                yield Source(1 - row[0], 1 - row, "ratio", "", 0, key + " rest")
            if key.endswith(".factor"):
                yield Source(1 + row[0], 1 + row, "ratio", "", 1, key + " and one")
            if key.endswith((".factor", ".force%")) and np.all(row):
                yield Source(1 / row[0], 1 / row, "ratio", "", 1, key + " turned")

    def _lengths(self) -> Iterator[Source]:
        """Half a segment, and what is left of it beyond its centre of mass."""
        for key, row in self.known.data.items():
            if not key.endswith(".length"):
                continue
            centre = self.known.truth.get(key.removesuffix(".length") + ".com")
            for unit, factor in self._units("length"):
                yield Source(row[0] * factor / 2, row * factor / 2, "length", unit, 1, key + " half")
                if centre is not None:
                    yield Source((row - centre)[0] * factor, (row - centre) * factor, "length", unit, 1, key + " rest")

    def _angles(self) -> Iterator[Angle]:
        """The angles that are given, what completes them, the angles that come out, sums of two."""
        out: list[Row] = []

        def fresh(row: Row, rank: int) -> Iterator[Angle]:
            if not np.all(np.abs(row - row[0]) < 1e-9) and not any(same(row, each) for each in out):
                out.append(row)
                yield Angle(row, rank)

        given = self.known.angles
        for row in given:
            yield from fresh(row, 0)
        for row in given:
            for other in (90 - row, 180 - row, row - 90, row + 90):
                yield from fresh(np.abs(other), 1)
        for key, row in self.known.truth.items():
            if kind_of(key) == "angle":
                yield from fresh(np.abs(row), 1)
                yield from fresh(90 - np.abs(row), 1)
        for one, other in combinations(given[:6], 2):
            for row in (one + other, one - other):
                for turned in (row, 90 - row, 180 - row):
                    yield from fresh(np.abs(turned), 2)

    def _pairs(self) -> Iterator[Source]:
        """Sums and differences of two lengths of the problem."""
        rows = {
            key: np.abs(row)
            for key, row in self.known.truth.items()
            if key.endswith((".length", ".com", ".at", ".moment_arm", ".arm")) or key.startswith(("*x ", "*y "))
        }
        for (one, row), (_, other) in combinations(rows.items(), 2):
            for unit, factor in self._units("length"):
                if unit in ("mm", "ft"):
                    continue
                for made in (row + other, row - other):
                    if abs(made[0]) > 1e-9 and np.any(np.abs(made / made[0] - 1) > 1e-9):
                        yield Source(abs(made[0]) * factor, made * factor * np.sign(made[0]), "length", unit, 1, one)


def _rank(key: str) -> int:
    return 2 if key.startswith(_SELDOM) else 1


__all__ = ("CONVERSIONS", "Angle", "Source", "Sources", "is_side")
