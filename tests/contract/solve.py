"""The answers of the contract's files by numpy, from definitions alone: `python tests/contract/solve.py` writes
answers.json.

Forces and moments (r × F) add to nothing. The data stand here a second time, copied by hand from the problem files;
g = 9.81 m/s². Knows nothing of the program.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

G = 9.81
KEPT = Path(__file__).with_name("answers.json")
NOTE = (
    "Written by tests/contract/solve.py in double precision; g = 9.81 m/s^2. Compare to a relative 1e-5, directions "
    "to 0.01 degrees."
)
Vector = NDArray[np.float64]
At = tuple[Vector, Vector]  # where, and the force there, or its direction where the size is sought


def along(way: float, degrees: float = 0.0) -> Vector:
    return way * np.array([np.cos(np.radians(degrees)), np.sin(np.radians(degrees))])


def weight(mass: float, way: float, degrees: float = 0.0) -> At:
    return along(way, degrees), along(mass * G, 270)


def _row(at: At) -> list[float]:
    (x, y), (right, up) = at
    return [right, up, x * up - y * right]


def at_rest(known: Sequence[At], pull: Sequence[At]) -> tuple[float, Vector]:
    """How hard a pull must be, and the force at the origin; a pull of several forces has the sizes of all as shares."""
    columns = [np.sum([_row(each) for each in pull], axis=0), [1, 0, 0], [0, 1, 0]]
    size, right, up = np.linalg.solve(np.transpose(columns), -np.sum([_row(each) for each in known], axis=0))
    return float(size), np.array([right, up])


def _figures(value: float) -> float:
    return float(f"{value:.6g}")


def force(size: float, degrees: float | None = None, unit: str = "N") -> dict[str, Any]:
    turned = {} if degrees is None else {"direction": _figures(degrees % 360)}
    return {"value": _figures(size), "unit": unit, **turned}


def joint(at: Vector) -> dict[str, Any]:
    return force(float(np.hypot(*at)), float(np.degrees(np.arctan2(at[1], at[0]))))


def answers() -> Iterator[tuple[str, Mapping[str, Any]]]:
    pull, push = at_rest([weight(1.6, 0.15), weight(3.0, 0.33)], [(along(0.040), along(1, 90))])
    yield "jug-level.toml", {"biceps": force(pull, 90)}
    pull, push = at_rest([weight(1.7, 0.16), weight(6.0, 0.35)], [(along(0.045), along(1, 180 - 70))])
    parts = {"reaction.right": force(float(push[0])), "reaction.up": force(float(push[1]))}
    yield "rock-oblique.toml", {"biceps": force(pull, 110), **parts, "reaction": joint(push)}
    shank, back = 270 + 40, 270 + 40 - 180
    cuff = [weight(4.4, 0.23, shank), weight(6.0, 0.36, shank)]
    pull, push = at_rest(cuff, [(along(0.065, shank), along(1, back - 22))])
    yield "leg-raise.toml", {"quadriceps": force(pull, 108), "reaction": joint(push)}
    pull, push = at_rest([weight(1.3, 0.13), (along(0.29), along(95, 90))], [(along(-0.023), along(1, 90))])
    yield "scale-push.toml", {"triceps": force(pull, 90), "reaction": joint(push)}
    both = [(along(0.046), along(1, 90)), (along(0.032), along(0.70, 90))]
    pull, push = at_rest([weight(1.4, 0.145), weight(5.5, 0.32)], both)
    yield "two-flexors.toml", {"biceps": force(pull), "brachialis": force(0.70 * pull), "reaction": joint(push)}
    yield "how-far-out.toml", {"dumbbell.at": force((350 * 0.042 - 1.5 * G * 0.155) / (7.0 * G) * 100, unit="cm")}
    steep = float(np.degrees(np.arcsin(400 * 0.040 / ((4.0 * 0.22 + 3.0 * 0.36) * G))))
    yield "how-steep.toml", {"shank.direction": force(steep, 270 + steep, "deg") | {"others": [_figures(180 - steep)]}}
    elbow = 0.30 * np.sin(np.radians(35))
    out = 1.9 * 0.13 * np.sin(np.radians(35)) + 1.1 * (elbow + 0.11) + 0.4 * (elbow + 0.31) + 2.5 * (elbow + 0.33)
    yield "two-links.toml", {"shoulder flexors": force(G * out / 0.030)}
    pull, push = at_rest([weight(0.839 * 74, 0.10)], [(along(-0.06134), along(1, 180 + 71))])
    yield "dancer.toml", {"hip abductors": force(pull, 251), "reaction": joint(push)}
    yield "shopping-us.toml", {"tibialis anterior": force((2.3 * 2.1 + 7.5 * 6.2) / 1.5, unit="lb")}
    pull, push = at_rest([weight(12, 0.50 * 3.2), weight(64, 1.1)], [(along(2.9), along(1, 90))])
    yield "beam.toml", {"far trestle": force(pull, 90), "reaction.up": force(float(push[1]))}


def text() -> str:
    return json.dumps({"note": NOTE, "answers": dict(answers())}, indent=1, ensure_ascii=False) + "\n"


if __name__ == "__main__":
    KEPT.write_text(text(), "utf-8")
