"""A direction with another angle, in the words that it has: "70 deg from back toward up" stays in these words."""

from __future__ import annotations

import re
from decimal import ROUND_HALF_EVEN, Decimal
from typing import NamedTuple

from ..errors import Fault
from .directions import read
from .model import Unknown

_NUMBER = re.compile(r"\d+(?:\.\d*)?|\.\d+")
STEP = Decimal("0.1")  # degrees: no hand turns more finely


class Turnable(NamedTuple):
    """The angle that a direction states: from 0 to `most` degrees, from the way `start` towards the way `toward`."""

    degrees: Decimal
    most: int
    start: str
    toward: str


def turnable(words: str) -> Turnable | None:
    """The angle of a direction that is a plain number; None for "up", for a "?", for what is no direction."""
    try:
        found = read(words)
    except Fault:
        return None
    number = _NUMBER.search(words)
    if found.turn is None or isinstance(found.turn, Unknown) or number is None:
        return None
    degrees = Decimal(number[0])
    if degrees != found.turn.number:  # as in "3e1 deg"
        return None
    return Turnable(degrees, 90 if degrees <= 90 else 180, found.start, found.toward)


def turned(words: str, degrees: Decimal) -> str | None:
    """A direction in its own words with its angle set, as far as these words reach; None where it has no plain angle.

    Decimals are those that the new angle needs, and trailing zeros where they were written before: "45.00 deg".
    """
    old = turnable(words)
    if old is None or not degrees.is_finite():
        return None
    new = min(max(degrees, Decimal(0)), Decimal(old.most)).quantize(STEP, ROUND_HALF_EVEN)
    number = _NUMBER.search(words)
    assert number is not None
    decimals = number[0].partition(".")[2]
    places = max(len(decimals) if decimals.endswith("0") else 0, 1 if new % 1 else 0)
    return f"{words[: number.start()]}{new:.{places}f}{words[number.end() :]}"
