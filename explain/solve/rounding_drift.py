"""How far the roundings of a working can have moved its numbers, where a class goes on with what it has written.
Knows no mechanics.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import radians

from ..equation.terms import DEGREE, Shown, leaves
from ..exact.interval import Undefined, fraction, in_si
from .engine import Working

FLOAT = 1e-9  # what floats lose where large numbers cancel, with much to spare


def moved(working: Working) -> float:
    """The share of a product of the working's numbers that its roundings can have moved it by; next to nothing where
    all figures are carried.
    """
    if not working.checker.carry_shown:
        return FLOAT
    whole = 1.0
    for share in _shares(working):
        whole *= 1 + share
    return whole - 1 + FLOAT


def _shares(working: Working) -> Iterator[float]:
    """What each rounding took or gave, in shares of the number; of an angle in radians, as much as its sine can
    change.
    """
    for move in working.moves:
        equation = move.line.equation
        if equation.rounded:  # an answer as it is given; what goes on is the number before it
            continue
        for each in leaves((*equation.left, *equation.right)):
            if isinstance(each, Shown):
                yield _share(working, each)


def _share(working: Working, rounded: Shown) -> float:
    try:
        written, exact = float(in_si(rounded.value)), float(fraction(working.checker.sizes.sum((rounded.of,))))
    except Undefined:
        return 0.0
    off, size = abs(written - exact), min(abs(written), abs(exact))
    if rounded.value.unit == DEGREE:
        return max(radians(off), off / size if size else 0.0)
    return off / size if size else 0.0
