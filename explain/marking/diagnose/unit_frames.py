"""The units that a student's bare numbers may be counted in, and the kind of every quantity by its key. Knows no
line.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from ...exact.prime_field import scale

Dimension = tuple[int, int, int]
NONE, LENGTH, MASS, FORCE, MOMENT, RATE = (0, 0, 0), (0, 1, 0), (1, 0, 0), (1, 1, -2), (1, 2, -2), (0, 1, -2)
_LAST = {
    "force": FORCE,
    "weight": FORCE,
    "limit": FORCE,
    "mass": MASS,
    "at": LENGTH,
    "com": LENGTH,
    "length": LENGTH,
    "x": LENGTH,
    "y": LENGTH,
    "moment_arm": LENGTH,
    "across": LENGTH,
    "rise": LENGTH,
    "line": LENGTH,
    "moment": MOMENT,
    "area": (0, 2, 0),
    "height": LENGTH,
    "right": FORCE,
    "up": FORCE,
    "along": FORCE,
}
_FIRST = {
    "*arm": LENGTH,
    "*reach": LENGTH,
    "*line": LENGTH,
    "*x": LENGTH,
    "*y": LENGTH,
    "*moment": MOMENT,
    "*turning": FORCE,
    "*level": FORCE,
    "*alone": FORCE,
    "*upright": FORCE,
    "*angle": NONE,
    "*part": MOMENT,
}


def kind_of(key: str) -> Dimension:
    """The powers of kg, m and s of a quantity; angles and shares have none."""
    if key in ("total", "*sum"):
        return MOMENT
    if key == "g":
        return RATE
    if key in ("reaction", "reaction.across", "*weights"):
        return FORCE
    first = key.partition(" ")[0]
    if first in _FIRST:
        return _FIRST[first]
    return _LAST.get(key.rpartition(".")[2], NONE)


class Frame(NamedTuple):
    """Units for numbers without one: sizes in m and N, and their names."""

    length: float
    force: float
    names: tuple[str, str]

    def scale(self, kind: Dimension) -> float:
        """The SI size of the unit in which a quantity of this kind is counted."""
        a, b, c = kind
        if not a and not c:
            return self.length**b if b else 1.0
        if c == -2 * a:
            return float(self.force**a * self.length ** (b - a))
        return self.length**b if c == 0 else 1.0


def frames(lengths: Iterable[str], forces: Iterable[str]) -> tuple[Frame, ...]:
    """All pairs of a length unit and a force unit, the likeliest first."""
    sizes = {"kgf": 9.80665, **{name: float(scale(((name, 1),))) for name in ("N", "kN", "lbf")}}
    return tuple(
        Frame(float(scale(((length, 1),))), sizes[force], (length, force)) for force in forces for length in lengths
    )
