"""Knows where each force acts and which way it points, as numpy arrays over trial values of one unknown."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

import numpy as np
from numpy.typing import NDArray

from .quantities import si, split

Array = NDArray[np.float64]
Table = Mapping[str, Any]
FIXED = {"right": 0.0, "up": 90.0, "left": 180.0, "down": 270.0, "above": 90.0, "below": 270.0}
TURN = {"counter-clockwise": 1.0, "clockwise": -1.0}
ANGLE = r"(\?|[0-9.]+)(?: deg)?"


@dataclass
class Pull:
    """A force or couple: per unit of its size its parts and its moment; the size is affine in the unknowns."""

    name: str
    moment: Array
    right: Array | None = None
    up: Array | None = None
    size: float = 0.0
    shares: dict[str, float] = field(default_factory=dict)
    place: tuple[Array, Array] | None = None


class NoWayToTurn(Exception):
    """Two directions on one line: which way to turn between them is not told."""


def turned(start: Array, goal: Array, by: Array) -> Array:
    """From one direction so many degrees the shorter way towards another."""
    sine = np.sin(np.radians(goal - start))
    if np.all(np.abs(sine) < 1e-9):
        raise NoWayToTurn
    return np.asarray(start + by * np.sign(sine))


def resultant_of(entry: Table) -> float:
    """Where the whole of a spread load acts, in m along its segment: the centroid of a rectangle is at its middle, that
    of a triangle two thirds of the way from its point.
    """
    first, second = (si(each, "length") for each in entry["spread"])
    return first + (second - first) * (2 / 3 if entry.get("spread_to") else 1 / 2)


def direction(text: str, along: Array, t: Array) -> Array:
    """Degrees counter-clockwise from right; `along` is the direction of the segment, t stands for a "?"."""
    words = {**{word: np.full_like(t, angle) for word, angle in FIXED.items()}, "out": along, "back": along + 180}
    if text in words:
        return words[text]
    for pattern, start, goal in (
        (rf"{ANGLE} (above|below) (\w+)", 3, 2),
        (rf"{ANGLE} (\w+) of (\w+)", 3, 2),
        (rf"{ANGLE} from (\w+) toward (\w+)", 2, 3),
    ):
        if found := re.fullmatch(pattern, text):
            by = t if found[1] == "?" else np.full_like(t, float(found[1]))
            return turned(words[found[start]], words[found[goal]], by)
    raise AssertionError(f"no direction: {text}")


class Body:
    """The segments laid end to end, for all trial values of the unknown at once."""

    def __init__(self, problem: Table, t: Array, rows: Mapping[str, tuple[float, float]]) -> None:
        self.problem, self.t, self.rows = problem, t, rows
        self.zero = np.zeros_like(t)
        self.segments: dict[str, Table] = {s["name"]: s for s in problem.get("segment", [])}
        self.angles = {name: direction(s.get("direction", "right"), self.zero, t) for name, s in self.segments.items()}
        self.near: dict[str, tuple[Array, Array]] = {}
        before = ""
        for name, segment in self.segments.items():
            start = segment.get("from", before)
            self.near[name] = self.along(start, self.length(start) + self.zero) if start else (self.zero, self.zero)
            before = name
        self.last = before

    def length(self, name: str) -> float:
        return si(self.segments[name]["length"], "length")

    def along(self, name: str, distance: Array) -> tuple[Array, Array]:
        x, y = self.near[name]
        angle = np.radians(self.angles[name])
        return x + distance * np.cos(angle), y + distance * np.sin(angle)

    def distance(self, text: str, name: str) -> Array:
        """An `at`, a `com` or a moment arm; t stands for the "?"."""
        if text == "?":
            return self.t
        number, word = split(text)
        return (number / 100 * self.length(name) if word == "%" else si(text, "length")) + self.zero

    def place(self, entry: Table) -> tuple[Array, Array]:
        if "point" in entry:
            return self.point(entry["point"])
        on = entry.get("on", self.last)
        if "spread" in entry:
            return self.along(on, resultant_of(entry) + self.zero)
        return self.along(on, self.distance(entry["at"], on))

    def point(self, pair: list[str]) -> tuple[Array, Array]:
        return si(pair[0], "length") + self.zero, si(pair[1], "length") + self.zero

    def heading(self, entry: Table) -> Array:
        """Which way a force points, in degrees."""
        if "toward" in entry:
            (x, y), (far, high) = self.place(entry), self.point(entry["toward"])
            return np.degrees(np.arctan2(high - y, far - x))
        on = entry.get("on", self.last)
        return direction(entry["direction"], self.angles[on] if on else self.zero, self.t)

    def pull(self, entry: Table, heading: Array | None = None) -> Pull:
        """A muscle or other force, per unit of its size."""
        name = entry["name"]
        if "moment_arm" in entry:
            arm = self.distance(entry["moment_arm"], self.last) * TURN[entry["turns"]]
            if "direction" not in entry:
                return Pull(name, arm)
            angle = np.radians(self.heading(entry))
            return Pull(name, arm, np.cos(angle), np.sin(angle))
        angle = np.radians(self.heading(entry) if heading is None else heading)
        x, y = self.place(entry)
        return Pull(name, x * np.sin(angle) - y * np.cos(angle), np.cos(angle), np.sin(angle), place=(x, y))

    def weight(self, name: str, place: tuple[Array, Array]) -> Pull:
        return Pull(name, -place[0], self.zero, self.zero - 1, place=place)

    def centre(self, name: str) -> tuple[Array, Array]:
        com = self.segments[name]["com"]
        distance = self.rows[name][1] * self.length(name) + self.zero if com == "table" else self.distance(com, name)
        return self.along(name, distance)
