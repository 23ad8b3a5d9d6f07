"""Knows how a problem comes out: three balances of r × F by numpy, every root of an unknown angle by a fine scan."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np

from .body import FIXED, TURN, Array, Body, NoWayToTurn, Pull, Table, direction
from .quantities import si, split
from .roots import Unsolved, zeros

LINEAR, BENT = ("force", "mass", "weight", "moment"), ("direction", "at", "com", "moment_arm")


@dataclass
class Root:
    """One way in which everything balances; SI units, degrees."""

    unknown: float  # the value of the bent unknown, NaN where there is none
    values: dict[str, float]
    pulls: list[Pull]
    sizes: dict[str, float]
    body: Body


@dataclass
class Solution:
    roots: list[Root]
    bent: str = ""  # "shank.direction", "load.at" ... or ""
    forced: list[str] = field(default_factory=list)  # linear unknowns


def is_sought(entry: Table, key: str) -> bool:
    return isinstance(entry.get(key), str) and "?" in entry[key].split()


class Statics:
    """A problem as a system of balances, linear in its sizes and bent in at most one distance or angle."""

    def __init__(self, problem: Table, rows: Mapping[str, tuple[float, float]]) -> None:
        self.problem, self.rows = problem, rows
        course = problem.get("course", {})
        self.g = si(course.get("g", "9.81 m/s^2"), "acceleration")
        self.person = si(problem["person"]["mass"], "mass") if "person" in problem else math.nan
        self.bent = self._bent()
        self.held = problem.get("pivot", {}).get("reaction", True)

    def _bent(self) -> str:
        found = [
            f"{entry['name']}.{key}"
            for table in ("segment", "load", "muscle", "force")
            for entry in self.problem.get(table, [])
            for key in BENT
            if is_sought(entry, key)
        ]
        if len(found) > 1:
            raise Unsolved("two bent unknowns")
        return found[0] if found else ""

    def mass_size(self, entry: Table) -> tuple[float, dict[str, float]]:
        """The weight of a segment or load: a number, or so many times an unknown."""
        name = entry["name"]
        for key, times in (("mass", self.g), ("weight", 1.0)):
            if entry.get(key) == "?":
                return 0.0, {f"{name}.{key}": times}
        if entry.get("mass") == "table":
            return self.rows[name][0] * self.person * self.g, {}
        if "mass" in entry:
            number, word = split(entry["mass"])
            return (number / 100 * self.person if word == "%" else si(entry["mass"], "mass")) * self.g, {}
        number, word = split(entry["weight"])
        if "/" in word:  # of each length; of what grows, that at its heavy end
            first, second = (si(each, "length") for each in entry["spread"])
            long = abs(second - first) * (0.5 if entry.get("spread_to") else 1.0)
            return si(entry["weight"], "force per length") * long, {}
        return (number / 100 * self.person * self.g if word == "%" else si(entry["weight"], "force")), {}

    def force_size(self, entry: Table, done: Mapping[str, Pull]) -> tuple[float, dict[str, float]]:
        text = entry.get("force", "?")
        if "hung" in entry:  # over a smooth pulley: the weight of what hangs there
            hung = entry["hung"]
            return (0.0, {f"{entry['name']}.hung": self.g}) if hung == "?" else (si(hung, "mass") * self.g, {})
        if entry.get("share") == "area":
            first = next(each for each in self.problem["muscle"] if each.get("share") == "area")
            return 0.0, {first["name"]: split(entry["area"])[0] / split(first["area"])[0]}
        if text == "?":
            return 0.0, {entry["name"]: 1.0}
        if "*" in text:
            number, other = (part.strip() for part in text.split("*"))
            source = done[other]
            return float(number) * source.size, {k: float(number) * v for k, v in source.shares.items()}
        if text == "limit":
            return si(entry["limit"], "force"), {}
        number, word = split(text)
        return (number / 100 * self.person * self.g if word == "%" else si(text, "force")), {}

    def pulls(self, t: Array) -> tuple[Body, list[Pull]]:
        body = Body(self.problem, t, self.rows)
        pulls: dict[str, Pull] = {}
        for table in ("segment", "load"):
            for entry in self.problem.get(table, []):
                if table == "load" or "mass" in entry or "weight" in entry:
                    place = body.place(entry) if table == "load" else body.centre(entry["name"])
                    pull = pulls[entry["name"]] = body.weight(entry["name"], place)
                    pull.size, pull.shares = self.mass_size(entry)
        waiting = [*self.problem.get("muscle", []), *self.problem.get("force", [])]
        waiting.sort(key=lambda entry: "*" in entry.get("force", "?"))
        for entry in waiting:
            pull = pulls[entry["name"]] = body.pull(entry)
            pull.size, pull.shares = self.force_size(entry, pulls)
        for entry in self.problem.get("couple", []):
            pull = pulls[entry["name"]] = Pull(entry["name"], TURN[entry["turns"]] + body.zero)
            pull.size, pull.shares = (
                (0.0, {entry["name"]: 1.0}) if entry["moment"] == "?" else (si(entry["moment"], "moment"), {})
            )
        return body, list(pulls.values())

    def system(self, t: Array) -> tuple[Array, list[str], Body, list[Pull]]:
        """Rows of the balances: coefficients of the unknowns, last the known sum (all must add to zero)."""
        body, pulls = self.pulls(t)
        names = sorted({name for pull in pulls for name in pull.shares})
        couples = {entry["name"] for entry in self.problem.get("couple", [])}
        free = any(p.right is None and p.name not in couples for p in pulls)
        columns = names + (["reaction.right", "reaction.up"] if self.held and not free else [])
        slips = self.held and not free and "slips" in self.problem.get("pivot", {})
        table = np.zeros((len(t), 1 if free else 3 + slips, len(columns) + 1))
        for pull in pulls:
            times = self.count(pull.name)
            parts = [pull.moment] if free else [pull.moment, pull.right, pull.up]
            for row, part in enumerate(parts):
                if part is not None:
                    table[:, row, -1] += times * pull.size * part
                    for name, share in pull.shares.items():
                        table[:, row, columns.index(name)] += times * share * part
        if self.held and not free:
            table[:, 1, columns.index("reaction.right")] = 1.0
            table[:, 2, columns.index("reaction.up")] = 1.0
        if slips:  # about to slip: along = -/+ mu across, against the slipping
            (cosine, sine), friction = self.surface(), float(self.problem["pivot"]["friction"])
            against = friction * (1 if math.isclose(self.slipping(), 1.0) else -1)
            table[:, 3, columns.index("reaction.right")] = cosine - against * sine
            table[:, 3, columns.index("reaction.up")] = sine + against * cosine
        return table, columns, body, pulls

    def surface(self) -> tuple[float, float]:
        """The direction along the rough surface at the pivot; the body lies a quarter turn counter-clockwise of it."""
        angle = math.radians(
            float(direction(self.problem["pivot"].get("surface", "right"), np.zeros(1), np.zeros(1))[0])
        )
        return math.cos(angle), math.sin(angle)

    def slipping(self) -> float:
        """1 where the body is about to slip along the surface's own direction, -1 the other way."""
        angle = math.radians(FIXED[self.problem["pivot"]["slips"]])
        cosine, sine = self.surface()
        return math.cos(angle) * cosine + math.sin(angle) * sine

    def push(self, values: Mapping[str, float]) -> tuple[float, float]:
        """What the surface pushes with, along itself and straight away from itself."""
        (cosine, sine), right, up = self.surface(), values["reaction.right"], values["reaction.up"]
        return right * cosine + up * sine, up * cosine - right * sine

    def count(self, name: str) -> int:
        for table in ("muscle", "force"):
            for entry in self.problem.get(table, []):
                if entry["name"] == name:
                    return int(entry.get("count", 1))
        return 1

    def live_rows(self) -> list[int]:
        """Balances that do not read 0 = 0 whatever the unknown is."""
        table = self.system(np.array([0.137, 0.61, 11.0, 47.0, 133.0, 251.0]))[0]
        size = np.abs(table).max()
        return [row for row in range(table.shape[1]) if np.abs(table[:, row, :]).max() > 1e-12 * size]

    def solve(self) -> Solution:
        try:
            return self.solved()
        except NoWayToTurn as unclear:
            raise Unsolved("two directions on one line") from unclear

    def solved(self) -> Solution:
        if self.problem.get("balanced", True) is False:
            body, pulls = self.pulls(np.zeros(1))
            return Solution([Root(math.nan, {}, pulls, {p.name: p.size for p in pulls}, body)])
        rows = self.live_rows()
        columns = self.system(np.zeros(1))[1]
        if len(rows) != len(columns) + bool(self.bent):
            raise Unsolved(f"{len(rows)} balances for {len(columns) + bool(self.bent)} unknowns")
        roots = [self.root(t, rows) for t in self.candidates(rows)]
        if not roots:
            raise Unsolved("no root")
        return Solution(roots, self.bent, columns)

    def candidates(self, rows: list[int]) -> list[float]:
        """Values of the bent unknown at which the balances can all hold: where the determinant is zero."""
        if not self.bent:
            return [math.nan]

        def determinant(t: Array) -> Array:
            table = self.system(t)[0][:, rows, :]
            return np.asarray(np.linalg.det(table))

        if self.bent.endswith(".direction"):
            return list(dict.fromkeys(0.0 if 360 - each < 1e-9 else each for each in zeros(determinant)))
        ends = determinant(np.array([0.0, 1.0, 2.0]))
        slope = ends[1] - ends[0]
        if abs(ends[2] - ends[1] - slope) > 1e-9 * abs(ends).max() or abs(slope) < 1e-6 * abs(ends).max():
            raise Unsolved("not linear in the distance, or nearly blind to it")
        return [float(-ends[0] / slope)]

    def root(self, t: float, rows: list[int]) -> Root:
        table, columns, body, pulls = self.system(np.array([0.0 if math.isnan(t) else t]))
        matrix = table[0][rows]
        values: dict[str, float] = {}
        if columns:
            scale = np.abs(matrix[:, :-1]).max(axis=1, keepdims=True)
            matrix = matrix / np.where(scale > 0, scale, 1)
            if np.linalg.cond(matrix[:, :-1]) > 300:
                raise Unsolved("badly conditioned")
            answer, *_ = np.linalg.lstsq(matrix[:, :-1], -matrix[:, -1], rcond=None)
            values = dict(zip(columns, (float(v) for v in answer), strict=True))
        sharing = {each["name"] for each in self.problem.get("muscle", []) if each.get("share") == "area"}
        if len({float(pull.moment[0]) > 0 for pull in pulls if pull.name in sharing}) > 1:
            raise Unsolved("muscles that share turn both ways")
        if "friction" in self.problem.get("pivot", {}):
            along, across = self.push(values)
            if self.problem["pivot"]["friction"] == "?" and across < 1e-3 * abs(along):
                raise Unsolved("the surface would have to pull")
            values["reaction.friction"] = abs(along) / across
        sizes = {p.name: p.size + sum(share * values[name] for name, share in p.shares.items()) for p in pulls}
        return Root(t, values, pulls, sizes, body)
