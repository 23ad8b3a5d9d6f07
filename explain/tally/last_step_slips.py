"""Slips of the last moment, seen in one answer alone: its unit, its decimal point, two digits exchanged, a step too
few, a sense. Knows no account's inside.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..equation.terms import DEGREE, Unit
from ..errors import Fault
from ..problem.quantity import factor
from ..reference.gravity import IN_CLASSES
from .asked import Wanted
from .cells import Cell

_EARLY = 0.03  # rounding on the way seldom moves an answer further (measured on 3,000 data sets of an oblique elbow)
_PULLS = (("N", 1),), (("lbf", 1),), (("kN", 1),), (("kgf", 1),)
_LENGTHS = (("m", 1),), (("cm", 1),), (("mm", 1),), (("in", 1),)
_SAME: tuple[tuple[Unit, ...], ...] = (
    _PULLS,
    _LENGTHS,
    ((("kg", 1),), (("g", 1),), (("lb", 1),)),
    (DEGREE, (("rad", 1),)),
    tuple((*force, *length) for force in _PULLS[:2] for length in _LENGTHS),
)
KILOGRAM = (("kg", 1),), (("g", 1),), (("kgf", 1),)


def rate(unit: Unit, to: Unit) -> float | None:
    """How many of one unit another is, None where the kinds differ; a pound is what is asked for."""
    if unit == to:
        return 1.0
    if unit == (("lb", 1),) and to in _PULLS:
        unit = (("lbf", 1),)
    try:
        return float(factor(unit, to))
    except Fault:
        return None


def slips_of(cell: Cell, number: float, asked: Wanted, moments: Sequence[float] = ()) -> Iterator[str]:
    """The slips that one wrong answer may show by itself. `moments` is the total moment in several units, where a
    step too few would give it.
    """
    true, half = abs(asked.value), cell.half
    size = abs(number)

    def is_(value: float) -> bool:
        return bool(value and size) and abs(size - abs(value)) <= max(0.005 * abs(value), half)

    mislabelled = bool(cell.unit) and rate(cell.unit, asked.unit) is None
    if asked.is_force and cell.unit in KILOGRAM and (is_(true) or is_(true / IN_CLASSES[0])):
        yield "kilogram-answer"
    elif mislabelled and is_(true):
        yield "unit-label-wrong"
    if not cell.unit and any(is_(true * by) for by in _rates(asked.unit)):
        yield "unit-missing"
    if is_(true * 10) or is_(true / 10):
        yield "decimal-shift"
    if any(is_(each) for each in moments):
        yield "stopped-at-moment"
    if _exchanged(cell.digits, number / (float(cell.value) or 1.0), true):
        yield "digit-transposed"
    yield from _sense(cell, number, asked, is_(true))
    if 0.005 < abs(size / true - 1 if true else 1) <= _EARLY:
        yield "rounded-too-early"


def _sense(cell: Cell, number: float, asked: Wanted, same: bool) -> Iterator[str]:
    if same and asked.signed and number * asked.value < 0:
        if not cell.told:
            yield "direction-missing"
        if asked.key.startswith("reaction"):
            yield "reaction-on-other-body"
    if same and not asked.signed and number < 0 < asked.value:
        yield "negative-muscle"


def _rates(unit: Unit) -> Iterator[float]:
    """What a right value is multiplied by when it is given in another unit of its kind."""
    for units in _SAME:
        if unit in units:
            yield from (
                by
                for other in units
                if other != unit and other not in KILOGRAM and (by := rate(unit, other)) is not None
            )


def _exchanged(digits: str, scale: float, true: float) -> bool:
    """Whether two neighbouring digits, exchanged, make an answer right to its last place."""
    figures = [place for place, sign in enumerate(digits) if sign.isdigit()]
    if len(figures) < 3 or "," in digits:
        return False
    least = 0.5 * 10.0 ** -len(digits.partition(".")[2].partition("e")[0])
    for one, two in zip(figures, figures[1:], strict=False):
        signs = list(digits)
        signs[one], signs[two] = signs[two], signs[one]
        try:
            if digits[one] != digits[two] and abs(float("".join(signs)) * abs(scale) - true) <= least * abs(scale):
                return True
        except ValueError:
            continue
    return False
