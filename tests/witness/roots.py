"""Knows how to find all roots of a function of an angle: a fine scan in floats, and which it will not vouch for."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from .body import Array

STEP = 0.125  # degrees, of the scan


class Unsolved(Exception):
    """This problem is none the witness can vouch for: not settled, badly conditioned, or without a root."""


def zeros(function: Callable[[Array], Array]) -> list[float]:
    """All zeros in a whole turn: sign changes of a fine scan, bisected; a near miss or a double root is refused."""
    grid = np.arange(-STEP / 2, 360 + STEP, STEP)
    values = function(grid)
    size = float(np.abs(values).max())
    if size == 0:
        raise Unsolved("blind to the angle")
    found = []
    for at in np.nonzero(values[:-1] * values[1:] <= 0)[0]:
        low, high, sign = grid[at], grid[at + 1], np.sign(values[at])
        for _ in range(60):
            middle = (low + high) / 2
            low, high = (middle, high) if np.sign(function(np.array([middle]))[0]) == sign else (low, middle)
        if (
            np.abs(function(np.array([low - 1e-6, low + 1e-6]))).max() < 1e-5 * size
        ):  # not a jump, where a sense of turning flips
            found.append(float((low + high) / 2 % 360))
    calm = np.abs(values)
    low_points = (calm[1:-1] < 0.004 * size) & (calm[1:-1] <= calm[:-2]) & (calm[1:-1] <= calm[2:])
    for angle in grid[1:-1][low_points]:
        if not any(abs((angle - root + 180) % 360 - 180) < 2 * STEP for root in found):
            raise Unsolved("nearly a double root")
    found = sorted(set(found))  # a root at 0 is found at 360 too
    if any(b - a < 1 for a, b in zip(found, found[1:], strict=False)):
        raise Unsolved("two roots close together")
    return found
