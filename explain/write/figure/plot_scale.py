"""The scale of an axis: round steps, where they stand in pixels, and numbers as they are written beside them. Knows
no shapes.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import ceil, floor, isfinite, log10
from typing import NamedTuple

_ROUND = (1.0, 2.0, 5.0, 10.0)
_DEGREES = (1.0, 2.0, 5.0, 10.0, 15.0, 30.0, 45.0, 90.0)


class Scale(NamedTuple):
    """From `low` to `high` in steps, set between two pixels."""

    low: float
    high: float
    step: float
    first: float
    last: float

    def at(self, value: float) -> float:
        """Where a value stands, in pixels."""
        return self.first + (value - self.low) / (self.high - self.low) * (self.last - self.first)

    def ticks(self, comma: bool = False) -> Iterator[tuple[float, str]]:
        """Where each step stands, and its number."""
        places = max(0, -floor(log10(self.step) + 1e-9))
        for count in range(round((self.high - self.low) / self.step) + 1):
            value = self.low + count * self.step
            yield self.at(value), marked(_printed(f"{value:.{places}f}"), comma)


def scale(
    values: Iterable[float],
    first: float,
    last: float,
    most: int = 6,
    degrees: bool = False,
    from_zero: bool = False,
    whole: bool = False,
) -> Scale:
    """A scale in at most `most` steps that holds all values; `degrees` steps as angles do, `from_zero` holds zero
    too, and `whole` has no step between two whole numbers.
    """
    known = [each for each in values if isfinite(each)] or [0.0]
    low, high = min(known), max(known)
    if from_zero:
        low, high = min(low, 0.0), max(high, 0.0)
    if high - low <= 1e-9 * max(abs(high), abs(low)):
        low, high = low - (abs(low) or 1.0) * 0.5 * (not from_zero or low < 0), high + (abs(high) or 1.0) * 0.5
    step = max(_step((high - low) / most, degrees and 5.0 <= high - low <= 360.0), float(whole))
    return Scale(floor(low / step + 1e-9) * step, ceil(high / step - 1e-9) * step, step, first, last)


def _step(least: float, degrees: bool) -> float:
    if degrees:
        return next((each for each in _DEGREES if each >= least), _DEGREES[-1])
    tens = 10.0 ** floor(log10(least))
    return tens * next(each for each in _ROUND if each * tens >= least * (1 - 1e-9))


def number(value: float, figures: int = 3) -> str:
    """A value to so many figures (0: as it is), without an exponent, with a true minus: as it stands in a table or
    at the end of a bar.
    """
    if not figures:
        return _printed(f"{value:.10g}")
    if abs(value) < 1e-9 or not isfinite(value):
        return "0" if abs(value) < 1e-9 else "–"
    places = max(0, figures - 1 - floor(log10(abs(value))))
    rounded = f"{round(value, figures - 1 - floor(log10(abs(value)))):.{places}f}"
    return _printed(rounded)


def marked(text: str, comma: bool) -> str:
    """A number as it was printed, with the class's own mark of decimals."""
    return text.replace(".", ",") if comma else text


def _printed(text: str) -> str:
    sign, digits = ("−", text[1:]) if text.startswith("-") else ("", text)
    if not digits.strip("0."):
        sign = ""
    whole, point, rest = digits.partition(".")
    if len(whole) > 4:
        whole = f"{int(whole):,}".replace(",", "\u202f")
    return sign + whole + point + rest
