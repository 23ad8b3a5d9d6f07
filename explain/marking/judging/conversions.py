"""One quantity in two units in a row: 13.5 in = 34.3 cm."""

from __future__ import annotations

from ...reference.gravity import IN_CLASSES
from .arithmetic import False_
from .figures import Figures
from .formula import Expr
from .kinds import FACTORS
from .quantities import Row
from .state import State
from .values import Meaning, Suspect, Value

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


class Conversions:
    """The conversions of one pass."""

    def __init__(self, state: State, figures: Figures) -> None:
        self.state, self.trace, self.figures = state, state.trace, figures

    def note(
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
        if any(abs(ratio / each - 1) < near for each in (g, *IN_CLASSES)):
            factor = self.state.known.g
        factor = next((each for each in _CONVERSIONS if abs(ratio / each - 1) < near), factor)
        slips = _false_conversion(first, last, ratio)
        if slips:
            self.state.suspect(Suspect(self.state.line, slips, "", True, "conversion", deps=value.deps), value)
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
            other = self.figures.best(last.leaves[0], meaning)
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


def _false_conversion(first: Expr, last: Expr, ratio: float) -> list[str]:
    """The slips by which one size in two units has two numbers that do not agree; none where they may."""
    if _shifted(first, last, ratio):
        return ["decimal-shift", "mixed-length-units"]
    if _wrong_way(first, last, ratio):
        return _unit_slips({first.unit, last.unit})
    same = {first.unit, last.unit} == {"kg", "N"} and abs(ratio - 1) < 1e-9
    return ["mass-for-weight"] if same else []


def _shifted(first: Expr, last: Expr, ratio: float) -> bool:
    """Two lengths, masses, forces or moments in two units whose points do not agree."""
    for kind in ("length", "mass", "force", "moment"):
        if first.unit in FACTORS[kind] and last.unit in FACTORS[kind] and first.unit != last.unit:
            return _is_shift(ratio * FACTORS[kind][first.unit] / FACTORS[kind][last.unit])
    return False


def _wrong_way(first: Expr, last: Expr, ratio: float) -> bool:
    """Whether a conversion multiplies where it has to divide: 14 in = 5.51 cm."""
    for factors in FACTORS.values():
        if first.unit in factors and last.unit in factors:
            true = factors[last.unit] / factors[first.unit]
            return abs(ratio * true - 1) < 0.01 and abs(true - 1) > 0.05
    return False


def _is_shift(ratio: float) -> bool:
    return any(abs(ratio / each - 1) < 0.01 for each in (10.0, 100.0, 0.1, 0.01))


def _unit_slips(units: set[str]) -> list[str]:
    if units == {"gram", "kg"}:
        return ["gram-kilogram-slip"]
    if units <= {"in", "ft"}:
        return ["inch-foot-mix"]
    if units <= FACTORS["length"].keys():
        return ["mixed-length-units"]
    return ["pound-kilogram-slip", "pound-as-mass"] if "lb" in units and units & {"kg", "N"} else []
