"""Slips that show in how a line is written: numbers that are not equal, a unit that is not of its quantity. Knows no
world.
"""

from __future__ import annotations

from ...equation.terms import Unit
from ...exact.prime_field import UNITS, dimension
from ..reading import Chain, Measured, Name, within
from .arithmetic import Exact, bare, equal, runs_on, slip_of
from .piece_verdict import Found
from .unit_frames import FORCE, LENGTH, MOMENT, Dimension, kind_of
from .piece_test import alone


def miscounted(chain: Chain, exact: Exact) -> Found | None:
    """Bare numbers that are not equal."""
    for a, b in zip(chain.sides, chain.sides[1:], strict=False):
        if bare(a, b) and not equal(a, b, exact=exact) and not runs_on(a, b, exact):
            return Found("slips", (slip_of(a, b),), chain=chain, why="numbers")
    return None


def wrong_unit(chain: Chain) -> tuple[str, ...]:
    """The slips of a line whose numbers are right and whose last unit is not."""
    name = alone(chain.sides[0])
    kinds = {kind_of(key) for key in name.keys} if isinstance(name, Name) else set()
    units = [each.unit for side in chain.sides for each in within(side) if isinstance(each, Measured)]
    last = units[-1] if units else ()
    if last in ((("kg", 1),), (("g", 1),)) and FORCE in kinds:
        return ("kilogram-answer",)
    if len(last) == 2 and (MOMENT in kinds or name is None and kind_of_unit(last) == MOMENT):
        return (
            "torque-in-newton-centimetre-mislabelled",
            "mixed-length-units",
            *(("unit-label-wrong",) if FORCE in kinds else ()),
        )
    if LENGTH in kinds and len(last) == 1 and kind_of_unit(last) == LENGTH:
        return "mixed-length-units", "unit-label-wrong"
    return ("unit-label-wrong",)


def kind_of_unit(unit: Unit) -> Dimension | None:
    """The kind of a unit; None for one that is no unit of the trade's table."""
    return dimension(unit) if all(name in UNITS for name, _ in unit) else None
