"""The numbers of slips_table.json, worked out by hand formulas: what each slip gives, beside the true value.

    python tests/slips_numbers.py

prints every row again. Shares nothing with the program. REF is one forearm, 25 degrees below the level, with a load; of
the scenarios S.. (data in tests/scenarios) some need only the true answer, to four figures, and the ratio that the slip
makes of it.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from math import cos, hypot, pi, radians, sin, sqrt, tan
from pathlib import Path

Ratio = Callable[[float], float]


@dataclass(frozen=True)
class Forearm:
    """Load and forearm (kg), their distances along it and its length (m), the slope and the angle of pull (degrees)."""

    load: float = 5.0
    far: float = 0.34
    own: float = 1.6
    com: float = 0.17
    length: float = 0.38
    grip: float = 0.05
    slope: float = 25.0
    pull: float = 58.0
    g: float = 9.81
    cos_load: Ratio = cos
    sin_pull: Ratio = sin
    turn: float = pi / 180  # of a degree

    @property
    def level(self) -> float:
        return self.cos_load(self.slope * self.turn)

    @property
    def load_moment(self) -> float:
        return self.load * self.g * self.far * self.level

    @property
    def own_moment(self) -> float:
        return self.own * self.g * self.com * self.level

    @property
    def arm(self) -> float:
        return self.grip * self.sin_pull(self.pull * self.turn)

    @property
    def force(self) -> float:
        return (self.load_moment + self.own_moment) / self.arm

    @property
    def joint(self) -> float:
        """The size of the joint force: the muscle pulls back along the bone and up across it."""
        way = radians(180.0 - self.slope - self.pull)
        return hypot(self.force * cos(way), self.force * sin(way) - (self.load + self.own) * self.g)


TRUE = Forearm()
OF_THE_FOREARM: Mapping[str, float] = {
    "mass-for-weight": TRUE.force / TRUE.g,
    "g-in-one-term-only": (TRUE.load_moment + TRUE.own_moment / TRUE.g) / TRUE.arm,
    "g-twice": (TRUE.load_moment * TRUE.g + TRUE.own_moment) / TRUE.arm,
    "g-divided": TRUE.force / TRUE.g**2,
    "kilogram-answer": TRUE.force / TRUE.g,
    "gram-kilogram-slip": replace(TRUE, own=1600.0).force,
    "segment-left-out": replace(TRUE, own=0.0).force,
    "segment-counted-twice": (TRUE.load_moment + TRUE.own_moment + 0.4 * TRUE.g * 0.34 * TRUE.level) / TRUE.arm,
    "load-left-out": replace(TRUE, load=0.0).force,
    "loads-merged-at-one-point": replace(TRUE, com=TRUE.far).force,
    "segment-at-tip": replace(TRUE, com=TRUE.length).force,
    "wrong-pivot-distance": replace(TRUE, far=TRUE.far - TRUE.grip).force,
    "mixed-length-units": TRUE.force * 100,
    "decimal-shift": TRUE.force / 10,
    "torque-in-newton-centimetre-mislabelled": (TRUE.load_moment + TRUE.own_moment) * 100,
    "adding-arms": replace(TRUE, far=TRUE.far + TRUE.grip).force,
    "angle-ignored-load": replace(TRUE, slope=0.0).force,
    "insertion-used-as-arm": replace(TRUE, pull=90.0).force,
    "sine-cosine-swap-load": replace(TRUE, cos_load=sin).force,
    "sine-cosine-swap-muscle": replace(TRUE, sin_pull=cos).force,
    "angle-wrong-reference": replace(TRUE, slope=90.0 - TRUE.slope).force,
    "muscle-angle-to-horizontal": replace(TRUE, pull=TRUE.pull + TRUE.slope).force,
    "included-for-flexion": abs(cos(radians(180.0 - TRUE.slope))),
    "radian-mode": abs(replace(TRUE, turn=1.0).force),
    "grad-mode": replace(TRUE, turn=pi / 200).force,
    "tangent-for-sine": replace(TRUE, sin_pull=tan).force,
    "divide-by-trig": replace(TRUE, cos_load=lambda turn: 1 / cos(turn)).force,
    "axial-part-counted": (TRUE.load_moment + TRUE.own_moment)
    / (TRUE.grip * (sin(radians(TRUE.pull)) + cos(radians(TRUE.pull)))),
    "sign-of-a-term": (TRUE.load_moment - TRUE.own_moment) / TRUE.arm,
    "force-balance-only": (TRUE.load + TRUE.own) * TRUE.g,
    "reaction-omits-muscle": (TRUE.load + TRUE.own) * TRUE.g,
    "multiply-for-divide": (TRUE.load_moment + TRUE.own_moment) * TRUE.arm,
    "bracket-slip": (TRUE.load_moment + TRUE.own_moment / TRUE.level) / TRUE.arm,
    "calculator-order": (TRUE.load_moment + TRUE.own_moment) / TRUE.grip * sin(radians(TRUE.pull)),
    "digit-transposed": replace(TRUE, far=0.43).force,
    "wrong-datum": replace(TRUE, load=TRUE.own, own=TRUE.load).force,
    "unit-label-wrong": TRUE.force,
    "stopped-at-moment": TRUE.load_moment + TRUE.own_moment,
}
OF_A_SCENARIO: Mapping[str, Ratio] = {
    "pound-as-mass": lambda true: true * 32.2,  # feet per second squared
    "pound-kilogram-slip": lambda true: true / 4.4482216 * 2.20462 * 9.81,
    "percent-slip": lambda true: true * 100,
    "wrong-table-row": lambda true: true * 0.022 / 0.016,
    "limb-share-forgotten": lambda true: true * 2,
    "limb-share-twice": lambda true: true / 2,
    "helper-muscle-left-out": lambda true: true * (4.6 + 0.70 * 3.2) / 4.6,  # arms of 4.6 and 3.2 cm, F2 = 0.70 F1
    "share-rule-reversed": lambda true: true * (4.6 + 0.70 * 3.2) / (4.6 + 3.2 / 0.70),
    "stance-leg-not-removed": lambda true: true / 0.839,
    "com-at-midpoint": lambda true: true * 0.50 / 0.43,
    "com-from-wrong-end": lambda true: true * 0.57 / 0.43,
    "chain-distance-not-added": lambda true: true - 27.0,
    "inch-foot-mix": lambda true: true * 12,
    "perpendicular-arm-resolved-again": lambda true: true / sin(radians(60.0)),
    "arctan-upside-down": lambda true: 90.0 - true,
    "wrong-quadrant": lambda true: -true,
    "reaction-on-other-body": lambda true: true + 180.0,
    "inverse-ratio": lambda true: 1 / true,
    "up-positive-both-sides": lambda true: -true,
    "divide-wrong-way": lambda true: 1 / true,
}

G = 9.81
CAN, BAG, ROCK = 3.0 * G, 7.0 * G, (1.7 * 16 + 6.0 * 35) * G / (4.5 * sin(radians(70.0)))  # ROCK: the pull, N
LEAN = radians(70.0)
PARTS = (188.2, 441.6)  # N, of the joint force under the rock
OF_ITS_DATA: Mapping[str, float] = {
    "arms-swapped": CAN * 4.0 / 33.0,
    "torque-by-division": CAN * 4.0 / 33.0,
    "second-segment-left-out": (4.5 * G * 35 + 0.016 * 68 * G * 0.43 * 27) / 3.6,
    "reaction-wrong-sense": (CAN * 33 + 1.6 * G * 15) / 4.0 + CAN + 1.6 * G,
    "reaction-equals-muscle": (CAN * 33 + 1.6 * G * 15) / 4.0,
    "resultant-by-adding": sum(PARTS),
    "pythagoras-broken": sqrt(PARTS[1] ** 2 - PARTS[0] ** 2),
    "horizontal-part-forgotten": PARTS[1],
    "reaction-components-swapped": hypot(ROCK * sin(LEAN), ROCK * cos(LEAN) - (1.7 + 6.0) * G),
    "scale-force-direction": (-95 * 29 - 1.3 * G * 13) / 2.3,
    "term-moved-sign-kept": (350 * 4.2 + 1.5 * G * 15.5) / BAG,
}


def numbers() -> dict[str, float]:
    """The wrong number of every row that is worked out here, by slip."""
    rows = json.loads((Path(__file__).parent / "slips_table.json").read_text("utf-8"))["slips"]
    true = {row["id"]: float(row["true"]) for row in rows if "true" in row}
    return {**OF_THE_FOREARM, **OF_ITS_DATA, **{slip: made(true[slip]) for slip, made in OF_A_SCENARIO.items()}}


if __name__ == "__main__":
    for slip, wrong in numbers().items():
        print(f"{slip:42}{wrong:.10g}")
