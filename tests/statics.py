"""Statics a second time: a problem file's numbers read in floats and solved with numpy. Shares nothing with the program
but the file format.

Lengths in m, masses in kg, forces in N, moments in N m, angles in degrees; counter-clockwise, right and up are
positive.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import reduce
from math import atan2, cos, degrees, hypot, radians, sin
from typing import Any

import numpy as np
from numpy.typing import NDArray

# NIST SP 811, Appendix B.8; the pound-force is a pound times 9.80665 m/s^2.
SIZE = {
    "m": 1.0,
    "cm": 0.01,
    "mm": 0.001,
    "in": 0.0254,
    "ft": 0.3048,
    "kg": 1.0,
    "g": 0.001,
    "N": 1.0,
    "kN": 1000.0,
    "lbf": 0.45359237 * 9.80665,
    "s": 1.0,
    "deg": 1.0,
    "%": 0.01,
    "": 1.0,
}
POUND = {"mass": 0.45359237, "force": 0.45359237 * 9.80665}
LEVEL = {"right": 0.0, "up": 90.0, "left": 180.0, "down": 270.0, "above": 90.0, "below": 270.0}
Vector = NDArray[np.float64]


def value(text: str, pound: str = "force") -> float:
    """A quantity such as "4.0 cm", "12 N m" or "9.81 m/s^2" in kg, m, s; `pound` says what lb is."""
    number, _, unit = text.strip().partition(" ")
    top, _, bottom = unit.partition("/")
    return reduce(
        lambda a, b: a / b,
        map(lambda each: _size(each, pound), bottom.split()),
        float(number) * reduce(lambda a, b: a * b, map(lambda each: _size(each, pound), top.split()), 1.0),
    )


def _size(unit: str, pound: str) -> float:
    name, _, power = unit.partition("^")
    return float((POUND[pound] if name == "lb" else SIZE[name]) ** int(power or 1))


@dataclass(slots=True)
class Statics:
    """One problem. `unknown` names what is sought, as answers are named."""

    problem: Mapping[str, Any]
    unknown: tuple[str, ...] = ()
    values: dict[str, float] = field(default_factory=dict)
    forces: list[Mapping[str, Any]] = field(default_factory=list)

    def __post_init__(self) -> None:
        tables = (
            ("segment", ("mass", "weight", "com", "direction")),
            ("load", ("mass", "weight", "at")),
            ("muscle", ("force", "at", "direction", "moment_arm")),
            ("force", ("force", "at", "direction", "moment_arm", "hung")),
            ("couple", ("moment",)),
        )
        found = []
        sharing = [each["name"] for each in self.problem.get("muscle", ()) if each.get("share") == "area"]
        for kind, keys in tables:
            for each in self.problem.get(kind, ()):
                asked = {**({"force": "?"} if kind == "muscle" else {}), **each}
                found += [
                    each["name"] + ("" if key in ("force", "moment") else f".{key}")
                    for key in keys
                    if str(asked.get(key, "")).startswith("?") and not (key == "force" and each["name"] in sharing[1:])
                ]
        self.unknown = tuple(found)

    @property
    def g(self) -> float:
        return value(self.problem.get("course", {}).get("g", "9.81 m/s^2"))

    @property
    def reaction(self) -> bool:
        return bool(self.problem["pivot"].get("reaction", True))

    # ------------------------------------------------------------------ geometry
    def turn(self, words: str, bone: float | None, key: str) -> float:
        """A direction in degrees from right."""
        if words in ("out", "back"):
            assert bone is not None
            return bone + (180 if words == "back" else 0)
        if words in LEVEL:
            return LEVEL[words]
        found = re.fullmatch(r"(\S+?)(?: deg)? (?:from (\w+) toward (\w+)|(\w+)(?: of)? (\w+))", words)
        assert found is not None, words
        start, end = (found[2], found[3]) if found[2] else (found[5], found[4])
        first, last = self.turn(start, bone, ""), self.turn(end, bone, "")
        if (last - first) % 180 < 1e-9:
            raise ArithmeticError("a turn between two directions on one line")
        sense = 1 if (last - first) % 360 < 180 else -1
        return first + sense * (self.values[f"{key}.direction"] if found[1] == "?" else float(found[1]))

    def bone(self, name: str) -> tuple[Vector, float]:
        """Where a segment starts, and its direction."""
        segments = self.problem["segment"]
        index = next(place for place, each in enumerate(segments) if each["name"] == name)
        segment = segments[index]
        before = segment.get("from") or (segments[index - 1]["name"] if index else "")
        if not before:
            return np.zeros(2), self.turn(segment.get("direction", "right"), None, name)
        start, along = self.bone(before)
        far = start + way(along) * value(next(each["length"] for each in segments if each["name"] == before))
        return far, self.turn(segment.get("direction", "right"), along, name)

    def place(self, each: Mapping[str, Any], key: str = "at") -> tuple[Vector, float | None]:
        """Where a force acts, and the direction of its segment."""
        on = each.get("on") or (self.problem["segment"][-1]["name"] if self.problem.get("segment") else "")
        on = each["name"] if key == "com" else on
        start, along = self.bone(on) if on else (np.zeros(2), None)
        if "point" in each:
            return np.array([value(part) for part in each["point"]]), along
        if "spread" in each:
            first, second = (value(end) for end in each["spread"])
            return start + way(along or 0.0) * (
                first + (second - first) * (2 / 3 if each.get("spread_to") else 0.5)
            ), along
        if key not in each:
            return np.zeros(2), along
        assert along is not None
        return start + way(along) * self._length(each, key, on), along

    def _length(self, each: Mapping[str, Any], key: str, on: str) -> float:
        text = each[key]
        if text == "?":
            return self.values[f"{each['name']}.{key}"]
        whole = (
            value(next(s for s in self.problem["segment"] if s["name"] == on)["length"]) if text.endswith("%") else 1.0
        )
        return value(text) * whole

    # ------------------------------------------------------------------ forces
    def weight(self, each: Mapping[str, Any]) -> float:
        person = value(self.problem.get("person", {}).get("mass", "0 kg"), "mass")
        if "weight" in each:
            text = each["weight"]
            if "/" in text:
                first, second = (value(end) for end in each["spread"])
                return value(text) * abs(second - first) * (0.5 if each.get("spread_to") else 1.0)
            return (
                self.values[f"{each['name']}.weight"]
                if text == "?"
                else value(text) * (person * self.g if text.endswith("%") else 1)
            )
        text = each["mass"]
        mass = (
            self.values[f"{each['name']}.mass"]
            if text == "?"
            else value(text, "mass") * (person if text.endswith("%") else 1)
        )
        return mass * self.g

    def size(self, name: str) -> float:
        """The force of one pull."""
        weights = [
            each for each in (*self.problem.get("segment", ()), *self.problem.get("load", ())) if each["name"] == name
        ]
        if weights:
            return self.weight(weights[0])
        pull = next(each for each in self.pulls() if each["name"] == name)
        text = pull.get("force", "?")
        if "hung" in pull:
            hung = pull["hung"]
            return self.g * (self.values[f"{name}.hung"] if hung == "?" else value(hung, "mass"))
        if pull.get("share") == "area":
            first = next(each for each in self.pulls() if each.get("share") == "area")
            return self.values[first["name"]] * value(pull["area"]) / value(first["area"])
        if text == "?":
            return self.values[name]
        if "*" in text:
            share, _, other = text.partition("*")
            return float(share) * self.size(other.strip())
        person = value(self.problem.get("person", {}).get("mass", "0 kg"), "mass") * self.g
        return value(text) * (person if text.endswith("%") else 1.0)

    def pulls(self) -> Sequence[Mapping[str, Any]]:
        return (*self.problem.get("muscle", ()), *self.problem.get("force", ()))

    def pushes(self) -> dict[str, tuple[float, float, float]]:
        """Moment, level and upright part of every force and couple on the body but the joint's; nan where a
        direction is not told.
        """
        out = {}
        for each in (*self.problem.get("segment", ()), *self.problem.get("load", ())):
            if "mass" in each or "weight" in each:
                at, _ = self.place(each, "com" if each in self.problem.get("segment", ()) else "at")
                out[each["name"]] = (-at[0] * self.weight(each), 0.0, -self.weight(each))
        for each in self.pulls():
            out[each["name"]] = self._push(each)
        for each in self.problem.get("couple", ()):
            moment = self.values[each["name"]] if each["moment"] == "?" else value(each["moment"])
            out[each["name"]] = (sense(each) * moment, 0.0, 0.0)
        return out

    def _push(self, each: Mapping[str, Any]) -> tuple[float, float, float]:
        at, along = self.place(each)
        size = each.get("count", 1) * self.size(each["name"])
        if "toward" in each:
            run = np.array([value(part) for part in each["toward"]]) - at
            if not run.any():
                raise ArithmeticError("a pull towards where it grips")
            push = size * run / hypot(*run)
        elif "direction" in each:
            push = size * way(self.turn(each["direction"], along, each["name"]))
        else:
            push = np.array([np.nan, np.nan])
        if "moment_arm" in each:
            arm = self.values[f"{each['name']}.moment_arm"] if each["moment_arm"] == "?" else value(each["moment_arm"])
            return sense(each) * arm * size, float(push[0]), float(push[1])
        return float(at[0] * push[1] - at[1] * push[0]), float(push[0]), float(push[1])

    def surface(self) -> Vector:
        """The direction along the rough surface at the pivot."""
        return way(self.turn(self.problem["pivot"].get("surface", "right"), None, ""))

    def slipping(self, left: Vector) -> float:
        """What is left over of the push along the surface where all of the friction acts against the slipping; `left`
        is what the other forces leave.
        """
        along, pivot = self.surface(), self.problem["pivot"]
        push = -left[1:]
        against = -np.sign(np.dot(along, way(LEVEL[pivot["slips"]]))) * float(pivot["friction"])
        return float(np.dot(push, along) - against * np.dot(push, [-along[1], along[0]]))

    def unsettled(self, values: Mapping[str, float]) -> Vector:
        """What has to vanish: moments alone where a joint force takes up the rest, else all three balances; and where
        the body is about to slip what is left over along the surface.
        """
        left = self.rest(values)
        if "slips" in self.problem["pivot"]:
            return np.array([left[0], self.slipping(left)])
        return left[:1] if self.reaction else left

    def rest(self, values: Mapping[str, float]) -> Vector:
        """What is left over of moments, level and upright forces with these values for the unknowns, without the
        joint force.
        """
        self.values = dict(values)
        return np.array(list(self.pushes().values())).sum(axis=0)


def sense(each: Mapping[str, Any]) -> int:
    return 1 if each["turns"] == "counter-clockwise" else -1


def way(turn: float) -> Vector:
    return np.array([cos(radians(turn)), sin(radians(turn))])


def solved(problem: Mapping[str, Any]) -> dict[str, float]:
    """Every unknown, and the joint force with its parts, from the three balances as one system (Newton's method; exact
    in a step where linear).

    Raises ArithmeticError where the system does not settle its unknowns well.
    """
    statics = Statics(problem)
    angle = next((name for name in statics.unknown if name.endswith(".direction")), "")
    values = dict.fromkeys(statics.unknown, 1.0)
    if angle:
        values[angle] = roots(problem)[0]
    elif values:
        values = _newton(statics, values)
    left = [float(each) for each in statics.rest(values)]
    for muscle in problem.get("muscle", ()):
        if muscle.get("share") == "area":
            size = statics.size(muscle["name"])
            values |= {muscle["name"]: size, f"{muscle['name']}.stress": size / value(muscle["area"])}
    if statics.reaction:
        values |= {
            "reaction.right": -left[1],
            "reaction.up": -left[2],
            "reaction": hypot(left[1], left[2]),
            "reaction.direction": degrees(atan2(-left[2], -left[1])) % 360,
        }
        if problem["pivot"].get("friction") == "?":
            along = statics.surface()
            push = np.array([values["reaction.right"], values["reaction.up"]])
            across = float(np.dot(push, [-along[1], along[0]]))
            if across < 1e-6 * values["reaction"]:
                raise ArithmeticError("the surface would have to pull")
            values["reaction.friction"] = abs(float(np.dot(push, along))) / across
        axes = problem.get("course", {}).get("axes", "").removeprefix("along and across the ")
        if axes and axes != "level and upright":
            along = way(statics.bone(axes)[1])
            values |= {
                "reaction.along": -float(np.dot(left[1:], along)),
                "reaction.across": -float(np.dot(left[1:], [-along[1], along[0]])),
            }
    return values


def _newton(statics: Statics, start: dict[str, float]) -> dict[str, float]:
    names, at = list(start), np.array(list(start.values()))
    for _ in range(30):
        here = statics.unsettled(dict(zip(names, at, strict=True)))
        slope = np.array(
            [statics.unsettled(dict(zip(names, at + step, strict=True))) - here for step in np.eye(len(names))]
        ).T
        if np.linalg.matrix_rank(slope, tol=1e-9) < len(names):
            raise ArithmeticError("the balances do not settle the unknowns")
        change = np.linalg.lstsq(slope, here, rcond=None)[0]
        at = at - change
        if np.abs(change).max() < 1e-13 * np.abs(at).max():
            return dict(zip(names, map(float, at), strict=True))
    raise ArithmeticError("no solution was reached")


def roots(problem: Mapping[str, Any]) -> list[float]:
    """The angles from 0 to 360 degrees at which the moments vanish: those up to 180 first."""
    statics = Statics(problem)
    name = next(each for each in statics.unknown if each.endswith(".direction"))
    a, b, c = np.linalg.solve(
        [[cos(radians(t)), sin(radians(t)), 1] for t in (10, 130, 250)],
        [statics.rest({name: t})[0] for t in (10, 130, 250)],
    )
    size = hypot(a, b)
    if size < 1e-9 or abs(c) > 0.995 * size:
        raise ArithmeticError("no angle, or two that nearly meet")
    middle, half = degrees(atan2(b, a)), degrees(np.arccos(-c / size))
    found = sorted((each + 1e-9) % 360 - 1e-9 for each in (middle + half, middle - half))
    return [*[each for each in found if each <= 180], *[each for each in found if each > 180]]
