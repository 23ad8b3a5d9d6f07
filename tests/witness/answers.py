"""Knows what every answer must be, from the witness's own solution, and says where a told answer differs."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from decimal import ROUND_HALF_EVEN, ROUND_HALF_UP, Decimal
from typing import Any

from .body import TURN, Table, resultant_of
from .problems import Case
from .quantities import unit
from .solution import Root

KIND = {
    "mass": "mass",
    "weight": "force",
    "at": "length",
    "com": "length",
    "moment_arm": "length",
    "moment": "moment",
    "stress": "stress",
    "hung": "mass",
}
RELATIVE, OF_LARGEST = 1e-5, 1e-6


def near_angles(a: float, b: float, within: float = 0.01) -> bool:
    return abs((a - b + 180) % 360 - 180) < within


class Expected:
    """The answers of one root, in SI units and degrees."""

    def __init__(self, case: Case, root: Root) -> None:
        self.case, self.root = case, root
        self.tables: dict[str, tuple[str, Table]] = {
            entry["name"]: (table, entry)
            for table in ("segment", "load", "muscle", "force", "couple")
            for entry in case.problem.get(table, [])
        }
        self.pulls = {pull.name: pull for pull in root.pulls}
        sizes = [abs(size) for size in root.sizes.values()] + [
            abs(value) for name, value in root.values.items() if name in ("reaction.right", "reaction.up")
        ]
        self.largest = max(sizes, default=1.0)

    def value(self, name: str) -> tuple[float, str]:
        """An answer and what kind of quantity it is."""
        if name == "total.moment":
            return self.sense() * sum(self.turning(each) for each in self.pulls), "moment"
        if name == "reaction.friction":
            return self.root.values[name], "number"
        if name.startswith("reaction"):
            return self.reaction(name), "force"
        owner, _, part = name.partition(".")
        if not part:
            return self.root.sizes[owner], "moment" if self.tables[owner][0] == "couple" else "force"
        if part == "moment":
            return self.moment(owner), "moment"
        if part == "at" and "spread" in self.tables[owner][1]:
            return resultant_of(self.tables[owner][1]), "length"
        if part == "stress":
            return self.root.sizes[owner] / (float(self.tables[owner][1]["area"].split()[0]) * 1e-4), "stress"
        if name == self.case.solution.bent:
            return self.root.unknown, KIND.get(part, "angle")
        return self.root.values[name], KIND[part]

    def moment(self, name: str) -> float:
        """In the course's own sense: a moment's sign follows `positive`."""
        if "moment" in self.tables[name][1]:
            return self.root.sizes[name]  # a couple is told along its own turns
        return self.sense() * self.turning(name)

    def sense(self) -> float:
        """1 where counter-clockwise counts as positive; "up" does so to the right of the pivot."""
        counted = self.case.problem["course"].get("positive", "counter-clockwise")
        if counted == "up":
            return 1.0 if sum(float(each.place[0][0]) for each in self.pulls.values() if each.place) > 0 else -1.0
        return TURN.get(counted, 1.0)

    def turning(self, name: str) -> float:
        """About the pivot, counter-clockwise."""
        times = int(self.tables[name][1].get("count", 1))
        return times * self.root.sizes[name] * float(self.pulls[name].moment[0])

    def reaction(self, name: str) -> float:
        right, up = self.root.values["reaction.right"], self.root.values["reaction.up"]
        if name in ("reaction.along", "reaction.across"):
            axes = self.case.problem["course"]["axes"].removeprefix("along and across the ")
            angle = math.radians(float(self.root.body.angles[axes][0])) + (
                math.pi / 2 if name.endswith("across") else 0
            )
            return right * math.cos(angle) + up * math.sin(angle)
        return {"reaction": math.hypot(right, up), "reaction.right": right, "reaction.up": up}[name]

    def direction(self, name: str) -> float | None:
        """Degrees from right; None where the answer has none."""
        if name == "reaction":
            return math.degrees(math.atan2(self.root.values["reaction.up"], self.root.values["reaction.right"])) % 360
        owner, _, part = name.partition(".")
        if part == "direction" and self.tables[owner][0] == "segment":
            return float(self.root.body.angles[owner][0]) % 360
        pull = self.pulls.get(owner)
        if part not in ("", "direction") or pull is None or pull.right is None or pull.up is None:
            return None
        return math.degrees(math.atan2(float(pull.up[0]), float(pull.right[0]))) % 360


CARRIED_OFF = "carried far off"


def failings(case: Case, told: dict[str, Any]) -> Iterator[tuple[str, str]]:
    """Each wrong answer: its sort, and what is said and what is right."""
    asked = case.problem.get("ask") or default_ask(case)
    missing = [name for name in asked if name not in told["answers"]]
    if missing:
        yield "an answer is missing", ", ".join(missing)
    root = chosen(case, told)
    expected = Expected(case, root)
    warned = warned_of_roundings(told)
    for name, answer in told["answers"].items():
        for sort, says in failings_of_one(case, expected, name, answer):
            if not (warned and sort == CARRIED_OFF):
                yield sort, f"{name}: {says}"


def warned_of_roundings(told: dict[str, Any]) -> bool:
    """Whether the page itself says that the roundings have made another answer."""
    return any(each["name"] == "rounded_away" and each["result"] != "does not apply" for each in told.get("checks", []))


def default_ask(case: Case) -> list[str]:
    names = [name for name in case.solution.forced if not name.startswith("reaction")]
    return [*names, *([case.solution.bent] if case.solution.bent else [])]


def chosen(case: Case, told: dict[str, Any]) -> Root:
    """The root whose angle is told, else the first."""
    answer = told["answers"].get(case.solution.bent)
    roots = case.solution.roots
    if answer is None or not case.solution.bent.endswith(".direction"):
        return roots[0]
    return min(roots, key=lambda root: abs((root.unknown - answer["value"] + 180) % 360 - 180))


def failings_of_one(case: Case, expected: Expected, name: str, answer: dict[str, Any]) -> Iterator[tuple[str, str]]:
    right, kind = expected.value(name)
    value = answer["value"]
    si = value * unit(answer["unit"], kind)
    scale = expected.largest if kind == "force" else 0.0
    noise = 1e-12 if kind != "stress" else 1e-9 * expected.largest
    if kind == "angle":
        if not near_angles(right, value, 1e-3):
            yield "a wrong angle", f"{value}, but {right:.6f}"
        yield from failings_of_roots(case, name, answer)
    elif abs(si - right) > max(RELATIVE * abs(right), OF_LARGEST * scale, noise):
        told_reversed = abs(si + right) <= RELATIVE * abs(right)
        yield (
            ("a reversed answer" if told_reversed else "a wrong answer"),
            f"{value} {answer['unit']}, but {right:.8g} (SI)",
        )
    direction = expected.direction(name)
    yield from failings_of_direction(direction, answer, small=abs(right) < 1e-9 * scale)
    yield from failings_of_rounding(case.problem["course"], answer)
    yield from failings_of_unit(case, name, kind, answer)


def failings_of_direction(right: float | None, answer: dict[str, Any], small: bool) -> Iterator[tuple[str, str]]:
    told = answer.get("direction")
    if right is None or small:
        if told is not None and small:
            yield "a direction of nothing", f"{told}"
        return
    if told is None:
        yield "no direction", f"{right:.4f}"
    elif not near_angles(told, right):
        yield "a wrong direction", f"{told}, but {right:.4f}"


def failings_of_roots(case: Case, name: str, answer: dict[str, Any]) -> Iterator[tuple[str, str]]:
    """All roots told, none invented, and the smallest in 0 to 180 first (no range is ever drawn)."""
    roots = [root.unknown for root in case.solution.roots if positive(root, name)]
    told = [answer["value"], *answer.get("others", [])]
    for root in roots:
        if not any(near_angles(root, each) for each in told):
            yield "a root is missing", f"{root:.4f}; told {told}"
    for each in told:
        if not any(near_angles(root.unknown, each) for root in case.solution.roots):
            yield "a false root", f"{each}; right {[round(root, 4) for root in roots]}"
    first = min([root for root in roots if root <= 180] or roots)
    if not near_angles(first, answer["value"]):
        yield "another root first", f"{answer['value']}, the smallest in 0 to 180 is {first:.4f}"


def positive(root: Root, name: str) -> bool:
    """Where size and angle of one force are both sought, a negative size is the same force told twice."""
    return root.values.get(name.partition(".")[0], 1.0) > 0


def rounded(value: float, figures: int, ties: str) -> Decimal:
    exact = Decimal(f"{value:.11e}")
    if not exact:
        return Decimal(0)
    return exact.quantize(
        Decimal(1).scaleb(exact.adjusted() + 1 - figures), ROUND_HALF_EVEN if ties == "even" else ROUND_HALF_UP
    )


def failings_of_rounding(course: Table, answer: dict[str, Any]) -> Iterator[tuple[str, str]]:
    figures, shown, value = int(course.get("figures", 3)), answer.get("shown"), answer["value"]
    if not shown:
        yield "nothing shown", str(answer)
        return
    number = Decimal(
        re.split(r"(?<=[0-9])\s+(?![0-9])", shown)[0]
        .replace("−", "-")
        .replace(" ", "")
        .replace("\u202f", "")
        .rstrip("°")
    )
    if (number == 0) != (value == 0):
        yield "shown nothing, or something for nothing", f"{value} shown as {shown}"
        return
    if value == 0:
        return
    if course.get("carry", "unrounded") == "unrounded":
        right = rounded(value, figures, course.get("ties", "up"))
        tie = abs(
            abs(Decimal(f"{value:.11e}") - right) / right.copy_abs().scaleb(0) * 2 - Decimal(10) ** -figures
        ) < Decimal("1e-10")
        if number != right and not tie:
            yield "a wrong rounding", f"{value} shown as {shown}, to {figures} figures {right}"
    elif abs(float(number) - value) > 0.5 * abs(value) + 1e-9:
        yield CARRIED_OFF, f"{value} shown as {shown}"
    written = shown.lstrip("-−").split(" ")[0].rstrip("°")
    if "." in written and len(written.replace(".", "").lstrip("0")) < figures:
        yield "fewer figures shown than the course's", f"{value} shown as {shown}, {figures} figures"
    if "." not in written and len(written.lstrip("0")) < figures:
        yield "fewer figures shown than the course's", f"{value} shown as {shown}, {figures} figures"


def failings_of_unit(case: Case, name: str, kind: str, answer: dict[str, Any]) -> Iterator[tuple[str, str]]:
    wanted = {"force": case.problem["course"].get("forces"), "length": case.problem["course"].get("lengths")}.get(kind)
    wanted = {"metres": "m", "as given": None}.get(wanted or "", wanted)
    if wanted is not None and answer["unit"] != wanted:
        yield "another unit than the course's", f"{answer['unit']}, the course says {wanted}"
