"""Knows the names, quantities and directions of a page, and what each is truly worth in one problem."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator

from .answers import Expected, near_angles
from .body import FIXED
from .equations import unit_worth
from .lines import half_unit
from .problems import Case
from .run_one import Outcome

NUMBER = r"[−+]?[0-9][0-9\u202f]*(?:\.[0-9]+)?"
UNITS = r"(?:kN|N|lb|kg|g|mm|cm|m|in|ft)(?:[·/ ](?:N|lb|mm|cm²|cm|m|in|ft)\b)?|°|%"
WAY = (
    r"straight (?:up|down)|straight to the (?:left|right)"
    r"|[0-9.]+° (?:above|below) the horizontal, to the (?:left|right)"
    r"|[0-9.]+° to the (?:left|right) of straight (?:up|down)"
)


class Truth:
    """What the words of one page must agree with: the root that is told, and how the class rounds."""

    def __init__(self, case: Case, expected: Expected, outcome: Outcome) -> None:
        course = case.problem["course"]
        self.case, self.expected, self.outcome, self.root = case, expected, outcome, expected.root
        self.figures, self.working = int(course.get("figures", 3)), int(course.get("working_figures", 5))
        self.shown = course.get("carry", "unrounded") == "as shown"
        self.names = sorted(expected.tables, key=len, reverse=True)
        self.name = "|".join(re.escape(name) for name in self.names)
        self.about = ""  # the thing at whose place moments are taken; "" the pivot
        self.patterns: dict[str, re.Pattern[str]] = {}
        self.pivot = case.problem["pivot"]["name"]

    def pattern(self, text: str) -> re.Pattern[str]:
        """A sentence with its slots: {name}, {q} (a quantity: number and unit), {n} (a number), {way}."""
        if text not in self.patterns:
            slots = {"name": f"(?:{self.name})", "q": rf"{NUMBER} ?(?:{UNITS})", "n": NUMBER, "way": WAY}
            self.patterns[text] = re.compile(re.sub(r"\{(name|q|n|way)\}", lambda slot: slots[slot[1]], text))
        return self.patterns[text]

    def named(self, text: str) -> list[str]:
        """The names in a list such as "the forearm, the hand and the jug", longest first where one holds another."""
        return re.findall(rf"\b({self.name})\b", text[0].lower() + text[1:] if text else text)

    def quantity(self, text: str, mass: bool = False) -> tuple[float, float]:
        """A printed quantity in SI units, and half a unit of its last figure."""
        number = re.match(NUMBER, text)
        assert number is not None
        bare, unit = number[0].lstrip("−+"), text[number.end() :].strip().replace(" ", "·")
        worth = unit_worth("" if unit == "%" else unit, mass)
        return self.signed(number[0]) * worth, half_unit(bare, self.figures) * worth

    def signed(self, number: str) -> float:
        return float(number.replace("\u202f", "").replace("−", "-"))

    def agrees(self, text: str, right: float, mass: bool = False, ratio: bool = False) -> bool:
        """Whether a printed quantity is right to its last figure (more loosely where rounded values are carried on)."""
        value, half = self.quantity(text, mass)
        if ratio:
            digits = re.match(r"[0-9.]*", text.replace("\u202f", ""))
            worth = (
                self.quantity(text)[0] / (float(digits[0]) or 1.0) if digits and digits[0] and float(digits[0]) else 1.0
            )
            half = max(half, half_unit(digits[0] if digits else "0", 2 if digits and len(digits[0]) < 4 else 3) * worth)
        slack = half * 1.0001 + 1e-9 * abs(right) + 1e-11 * self.expected.largest
        if self.shown:
            slack = 3 * half + 10.0 ** (2 - self.working) * abs(right) + max(1e-6 * self.expected.largest, self.drift)
        return abs(value - right) <= slack

    @property
    def drift(self) -> float:
        """What sums of rounded terms may leave, in N or N m, where the class goes on from what is shown."""
        return 10.0 ** (1 - self.working) * self.expected.largest if self.shown else 0.0

    def turning(self, name: str, about: tuple[float, float] = (0.0, 0.0)) -> float:
        """The moment of everything of a name about a point, counter-clockwise, SI."""
        pull, times = self.expected.pulls[name], int(self.expected.tables[name][1].get("count", 1))
        size = self.root.sizes[name] * times
        moment = float(pull.moment[0])
        if pull.right is not None and pull.up is not None:
            moment -= about[0] * float(pull.up[0]) - about[1] * float(pull.right[0])
        return size * moment

    def joint_turning(self, about: tuple[float, float]) -> float:
        return -(
            about[0] * self.root.values.get("reaction.up", 0.0) - about[1] * self.root.values.get("reaction.right", 0.0)
        )

    def centre_of_moments(self, name: str) -> tuple[float, float]:
        names = self.named(name) or ([self.about] if self.about else [])
        return (self.place(names[0]) if names else None) or (0.0, 0.0)

    def arm(self, name: str) -> float:
        return abs(float(self.expected.pulls[name].moment[0]))

    def place(self, name: str) -> tuple[float, float] | None:
        place = self.expected.pulls[name].place if name in self.expected.pulls else None
        return (float(place[0][0]), float(place[1][0])) if place else None

    def size(self, name: str) -> float:
        return self.root.sizes[name] * int(self.expected.tables[name][1].get("count", 1))

    def parts(self, name: str) -> tuple[float, float]:
        pull = self.expected.pulls[name]
        if pull.right is None or pull.up is None:
            return 0.0, 0.0
        return self.size(name) * float(pull.right[0]), self.size(name) * float(pull.up[0])


def way_angle(words: str) -> float:
    """Degrees from right of a direction as it is said."""
    if found := re.fullmatch(r"straight (?:to the )?(\w+)", words):
        return FIXED[found[1]]
    if found := re.fullmatch(r"([0-9.]+)° (above|below) the horizontal, to the (left|right)", words):
        up = float(found[1]) * (1 if found[2] == "above" else -1)
        return up % 360 if found[3] == "right" else (180 - up) % 360
    found = re.fullmatch(r"([0-9.]+)° to the (left|right) of straight (up|down)", words)
    assert found is not None, words
    turn = 1 if (found[2] == "left") == (found[3] == "up") else -1
    return (FIXED[found[3]] + turn * float(found[1])) % 360


def way_agrees(words: str, right: float, loose: float = 0.0) -> bool:
    """To the last figure of the angle printed, or three figures for a plain direction."""
    number = re.search(r"[0-9.]+(?=°)", words)
    half = half_unit(number[0], 1 if number[0].endswith("0") else 9) if number else 0.05
    return near_angles(way_angle(words), right, half * 1.01 + 1e-6 + loose)


Judge = Callable[[Truth, "re.Match[str]"], Iterator[str]]


def degrees(right: float, up: float) -> float:
    return math.degrees(math.atan2(up, right)) % 360
