"""The steps of an account that have a usual way: dividing, angles of a resultant, an angle at which balances vanish.
Knows nothing of what is summed.
"""

from __future__ import annotations

from cmath import phase
from collections.abc import Callable
from math import acos, atan2, degrees, hypot

from .account_items import Impossible


def nearest_root(gap: Callable[[float], float], true: float) -> float:
    """The angle in degrees where `gap`, which is a cos + b sin + c of it, vanishes. Raises Impossible where there is
    none.
    """
    at = {angle: gap(angle) for angle in (0.0, 90.0, 180.0)}
    steady = (at[0.0] + at[180.0]) / 2
    a, b = at[0.0] - steady, at[90.0] - steady
    size = hypot(a, b)
    if size < 1e-15 or abs(steady) > size * (1 + 1e-12):
        raise Impossible("no such angle")
    middle, aside = degrees(atan2(b, a)), degrees(acos(max(-1.0, min(1.0, -steady / size))))
    found = [(middle + k * aside + 180) % 360 - 180 for k in (1, -1)]
    best = min(found, key=lambda angle: abs((angle - true + 180) % 360 - 180))
    if abs(gap(best)) > 1e-9 * max(abs(v) for v in (*at.values(), 1e-9)):
        raise Impossible("an angle that enters twice")
    return best + 360 * round((true - best) / 360)


def angle_of_arrow(parts: Callable[[float, float], complex], true: float) -> float:
    """The angle in degrees of an arrow, of some size, with which both `parts` (right, and up as i) vanish. Raises
    Impossible where they go with no arrow.
    """
    rest = parts(0.0, 0.0)
    one, quarter = (parts(1.0, angle) - rest for angle in (0.0, 90.0))
    turn = 1 if abs(quarter - one * 1j) < abs(quarter + one * 1j) else -1
    if abs(rest) < 1e-12 or abs(one) < 1e-12:
        raise Impossible("nothing is left to pull")
    angle = turn * degrees(phase(-rest / one))
    if abs(parts(abs(rest / one), angle)) > 1e-9 * abs(rest):
        raise Impossible("no arrow closes these balances")
    return angle + 360 * round((true - angle) / 360)


def divide(others: list[float], by: float) -> float:
    """The unknown: the known terms on the other side, over what it is multiplied by. Raises Impossible."""
    if abs(by) < 1e-15:
        raise Impossible("the unknown drops out")
    return sum(others) / by


def acute(along: float, across: float) -> float:
    """The angle in degrees of a resultant to its first part, 0 to 90."""
    return degrees(atan2(abs(across), abs(along)))


def from_right(right: float, up: float) -> float:
    """The direction in degrees of a resultant from right, counter-clockwise, -180 to 180."""
    return degrees(atan2(up, right))
