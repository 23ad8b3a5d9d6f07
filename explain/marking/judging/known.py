"""What is known of one problem: its true quantities and every slip's, in the problem and its twins, found again by
their pattern.

A pattern is what does not change with sign and unit: the values in the twins over the value in the problem.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cached_property
from typing import NamedTuple, TypeVar

import numpy as np

from ...reference.gravity import IN_CLASSES, STANDARD
from ...solve.engine import Working
from ..slips.account import Impossible
from ..slips.slip import SlipRule
from .given_data import areas, given_angles
from .kinds import BY_WEIGHT, CUSTOMARY, FACTORS, KILOGRAMS, POUND, UNIT_KIND, kind_of
from .patterns import Pattern, pattern, patterns
from .published import other_tables
from .quantities import Row, quantities
from .slip_rows import SlipMaker, SlipRows
from .twins import in_kilonewtons, in_pounds, twins_of

Entry = TypeVar("Entry")
Index = dict[Pattern, list[Entry]]
_SIDE = (
    "*alone",
    "*turning",
    "*level",
    "*upright",
    "*along",
    "*across",
    "*sum",
    "*turn ",
    "*leg",
    "*away",
    "*trig",
    "*ratio",
    "*y ",
    "*x ",
    "*all ",
    "*reach",
    "*reaction",
)
_BARE = (".com", ".at", ".length", ".from", "%", ".moment_arm", ".arm", ".factor")


class True_(NamedTuple):
    """A true quantity that fits: its key, and "kg" where it is counted without its g."""

    key: str
    form: str


class Wrong(NamedTuple):
    """A slip's quantity that fits: its key, its form, the slip's place, its values."""

    key: str
    form: str
    slip: int
    row: Row


def is_side(key: str) -> bool:
    """A part, a partial sum, a coordinate: true, but nothing that clears or excuses."""
    return key.startswith(_SIDE)


def is_bare(key: str) -> bool:
    """A datum as given."""
    return key.endswith(_BARE)


class Known:
    """One problem, prepared once."""

    def __init__(self, working: Working, rules: Sequence[SlipRule]) -> None:
        self.accounts = twins_of(working)
        self.first = self.accounts[0]
        self.n = len(self.accounts)
        self.pounds, self.kilonewtons = in_pounds(self.first), in_kilonewtons(self.first)
        values = [each.values() for each in self.accounts]
        self.g: Row = np.array([each.data["g"] for each in self.accounts])
        self.g_written = float(self.first.data["g"])
        self.unknowns = frozenset(self.first.unknowns)
        self.data = {
            key: np.array([each.data[key] for each in self.accounts])
            for key in self.first.data
            if all(key in each.data for each in self.accounts)
        }
        self.truth = quantities(self.accounts, values)
        self._person()
        self._by_weight()
        problem = working.body.problem
        ways = [
            *((each.name, each.direction) for each in problem.segments),
            *((each.name, each.direction) for each in problem.pulls),
        ]
        self.from_upright = frozenset(
            f"*angle {name}" for name, way in ways if way is not None and way.start in ("up", "down")
        )
        for name, row in areas(working, self.n):
            self.data[f"*area {name}"] = row
            key = next((each.key for each in self.first.items if each.name == name), "")
            if key in self.truth:
                self.truth[f"*stress {name}"] = self.truth[key] / row
        self.angles = given_angles(self.accounts)
        self.by_g = {
            g: self._with(self._gravity(g))
            for g in sorted({*IN_CLASSES} - {STANDARD})
            if abs(g - self.g_written) > 1e-9
        }
        self.tables = [
            (changed_, self._with(changed_))
            for _, changed_ in other_tables(working.body.problem, dict(self.first.data))
        ]
        self._rules, self._values = rules, values
        self._true: Index[tuple[str, str, Row]] = {}
        self._index_truth()

    @cached_property
    def slips(self) -> list[SlipRows]:
        """Every slip in every place; made when the first line is not true."""
        return SlipMaker(self.accounts, self._values, self.truth, self.data).slips(self._rules)

    @cached_property
    def wrong_figures(self) -> tuple[Row, list[tuple[int, str, str, float]]]:
        """The figures that slips give, in each unit, by size: the slip's place, the key, the unit and its factor."""
        found = [
            (abs(float(row[0])) * factor, (place, key, unit, factor))
            for place, slip in enumerate(self.slips)
            for key, row in slip.rows.items()
            for unit, factor in FACTORS.get(kind_of(key), {}).items()
        ]
        found.sort(key=lambda each: each[0])
        return np.array([size for size, _ in found]), [each for _, each in found]

    @cached_property
    def _wrong(self) -> Index[tuple[str, str, int, Row]]:
        out: Index[tuple[str, str, int, Row]] = {}
        for form in ("", "kg"):
            entries = [
                (key, place, row)
                for place, slip in enumerate(self.slips)
                for key, row in slip.rows.items()
                if not key.startswith("*trig") and self._counts(key, form)
            ]
            rows = np.array([row for _, _, row in entries]) * (1 if not form else 1 / self.g)
            for (key, place, _), row, found in zip(entries, rows, patterns(rows), strict=True):
                if found is not None:
                    out.setdefault(found, []).append((key, form, place, row))
        return out

    def _person(self) -> None:
        if "*person.mass" in self.truth:
            self.truth["*person.weight"] = self.truth["*person.mass"] * self.g
        elif "*person.weight" in self.truth:
            self.truth["*person.mass"] = self.data["*person.mass"] = self.truth["*person.weight"] / self.g

    def _by_weight(self) -> None:
        """Each weight, pull and joint force as so many times the body's weight."""
        weight = self.truth.get("*person.weight")
        if weight is None:
            return
        keys = {each.key for each in self.first.items if kind_of(each.key) == "force"} | self.unknowns
        for key in sorted(keys & self.truth.keys()) + [each for each in self.truth if each.startswith("reaction")]:
            if kind_of(key) == "force":
                self.truth[f"{BY_WEIGHT}{key}"] = self.truth[key] / weight

    def _gravity(self, g: float) -> dict[str, float]:
        return {
            key: self.first.data[key] * g / self.g_written for key in ("g", "*person.weight") if key in self.first.data
        }

    def with_datum(self, key: str, value: float) -> dict[str, float]:
        """The quantities that come to something else with another value (SI) for one datum."""
        return self._with({key: value})

    def _with(self, moved: Mapping[str, float]) -> dict[str, float]:
        """What the quantities come to with other data: another g, another published table."""
        account = replace(self.first, data={**self.first.data, **moved})
        try:
            found = quantities([account], [account.values()])
        except Impossible:
            return {}
        return {
            key: float(row[0])
            for key, row in found.items()
            if key in self.truth and abs(row[0] / self.truth[key][0] - 1) > 1e-6
        }

    def _index_truth(self) -> None:
        for form in ("", "kg", "complement"):
            keys = [key for key in self.truth if not key.startswith("*y ") and self._counts(key, form)]
            if not keys:
                continue
            rows = np.array([self.truth[key] for key in keys])
            rows = 90 - np.abs(rows) if form == "complement" else rows / self.g if form else rows
            for key, row, found in zip(keys, rows, patterns(rows), strict=True):
                if found is not None:
                    self._true.setdefault(found, []).append((key, form, row))

    def _counts(self, key: str, form: str) -> bool:
        """Whether a quantity can be counted in this form."""
        return not form or kind_of(key) in {"kg": ("force", "moment"), "complement": ("angle",)}[form]

    def fits(self, row: Row, ref: Row, kind: str, form: str, unit: str) -> bool:
        """Whether the numbers of a row are a quantity in a unit; without a unit, in any of its kind."""
        size = abs(row[0] / ref[0])
        if form == "kg":
            allowed = (
                [KILOGRAMS[unit]]
                if unit in KILOGRAMS
                else []
                if unit
                else [1.0, 1000.0, 100.0]
                if kind == "moment"
                else [1.0]
            )
        elif kind == "stress" and unit in FACTORS[kind]:
            allowed = [*FACTORS[kind].values()]  # a quotient whose unit is changed on the way: the answer's size tells
        elif unit and unit in FACTORS[kind]:
            allowed = [FACTORS[kind][unit]]
        elif unit and unit != "BW" and kind not in ("ratio", "other", "g"):
            return False
        else:
            allowed = self._any_unit(kind)
        return any(abs(size / each - 1) < (4e-3 if self.pounds else 1e-6) for each in allowed)

    def _any_unit(self, kind: str) -> list[float]:
        allowed = [factor for unit, factor in FACTORS[kind].items() if self.pounds or unit not in CUSTOMARY]
        if self.pounds and kind in ("force", "moment"):
            allowed += [POUND * 39.37, 100 / POUND, 3.28084 / POUND] if kind == "moment" else []
        return allowed

    def true_of(self, row: Row, unit: str = "") -> list[True_]:
        """The true quantities that a row is, in this unit."""
        found = pattern(row)
        near = self._true.get(found, ()) if found is not None else ()
        return [True_(key, form) for key, form, ref in near if self.fits(row, ref, kind_of(key), form, unit)]

    def wrong_of(self, row: Row, unit: str = "") -> list[Wrong]:
        """The slips' quantities that a row is, in this unit."""
        found = pattern(row)
        near = self._wrong.get(found, ()) if found is not None else ()
        return [
            Wrong(key, form, place, ref)
            for key, form, place, ref in near
            if self.fits(row, ref, kind_of(key), form, unit)
        ]

    def scaled_of(self, row: Row, unit: str = "") -> list[tuple[str, str, float, Row]]:
        """True quantities that a row is but for a factor: the key, the form, the factor."""
        found, out = pattern(row), []
        for key, form, ref in self._true.get(found, ()) if found is not None else ():
            kind = kind_of(key)
            if (
                self.fits(row, ref, kind, form, unit)
                or kind == "other"
                or unit
                and form != "kg"
                and UNIT_KIND.get(unit) not in (kind, None)
            ):
                continue
            if form == "kg" and (not unit or unit in KILOGRAMS):
                continue
            base = (
                1.0
                if form == "kg"
                else FACTORS[kind].get(unit)
                or min(FACTORS[kind].values(), key=lambda each: abs(np.log(abs(row[0] / ref[0]) / each)))
            )
            out.append((key, form, float(abs(row[0] / ref[0]) / base), ref))
        return out
