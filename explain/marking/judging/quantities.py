"""All quantities that a right working may name, each as a row of values: in the problem as written and in its twins."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from itertools import combinations, permutations

import numpy as np
from numpy.typing import NDArray

from ..slips.account import Account, Item, Values

Row = NDArray[np.float64]
MOST_TERMS = 6


def quantities(accounts: Sequence[Account], values: Sequence[Values], other_points: bool = True) -> dict[str, Row]:
    """By key every quantity of these accounts with its values, and what sums, parts and other points make of them."""
    return _Closure(accounts, values).all(other_points)


class _Closure:
    """One problem and its twins, side by side."""

    def __init__(self, accounts: Sequence[Account], values: Sequence[Values]) -> None:
        self.accounts, self.values = accounts, values
        self.largest: dict[str, float] = {}
        shared = set.intersection(*(set(each) for each in values))
        self.out: dict[str, Row] = {key: np.array([each[key] for each in values], float) for key in sorted(shared)}
        names = [
            each.name for each in accounts[0].items if all(any(i.name == each.name for i in a.items) for a in accounts)
        ]
        self.items: dict[str, list[Item]] = {
            name: [a.item(name) for a in accounts] for name in names if accounts[0].item(name).key in self.out
        }
        unknowns = set(accounts[0].unknowns)
        self.pulls = [
            name for name, each in self.items.items() if each[0].key in unknowns or each[0].multiple[1] in unknowns
        ]
        self.count = {name: each[0].count for name, each in self.items.items()}

    def all(self, other_points: bool) -> dict[str, Row]:
        boxes = {side: self._parts(side) for side in ("level", "upright")}
        moments = {
            name: self.out[f"*moment {name}"] * self._each(name, lambda i: i.in_moments)
            for name in self.items
            if f"*moment {name}" in self.out
        }
        force = {name: self.out[each[0].key] * self.count[name] for name, each in self.items.items()}
        self._one_of_many(force, moments)
        self._functions()
        self._straight_lines()
        for tag in ("bone", "lies"):
            boxes.update(self._along(tag, boxes["level"], boxes["upright"]))
        for side, box in boxes.items():
            self._sums(f"*sum{side}", box)
        self._sums("*summoment", moments)
        self._sums(
            "*summoment one", {name: row / self.count[name] for name, row in moments.items() if self.count[name] > 1}
        )
        self._sums("*sumweight", {name: row for name, row in force.items() if name not in self.pulls})
        self._sums("*sumpull", {name: force[name] for name in self.pulls if name in force})
        self._sums(
            "*summass",
            {
                name: self.out[each[0].mass]
                for name, each in self.items.items()
                if each[0].mass and each[0].mass in self.out
            },
        )
        self._per_mass(moments)
        self._shares()
        for name in self.pulls:
            if name in moments and name in force and np.all(force[name]):
                self.out.setdefault(f"*arm {name}", np.abs(moments[name] / force[name]))
        if len(self.pulls) > 1 and "total" in self.out:
            self.out.update(
                {
                    f"*reach {name}": np.abs(self.out["total"] / force[name])
                    for name in self.pulls
                    if np.all(force.get(name, 0))
                }
            )
        if other_points:
            self._other_points(force)
        return self._sound()

    def _sound(self) -> dict[str, Row]:
        """What has a value in every twin, and not nothing."""
        keys, rows = list(self.out), np.array(list(self.out.values()))
        good = np.isfinite(rows).all(axis=1) & (np.abs(rows) > self._least()).all(axis=1)
        return {key: row for key, row, fine in zip(keys, rows, good.tolist(), strict=True) if fine}

    def _least(self) -> Row:
        """What counts as nothing: of a sum, a trifle of its largest term."""
        return np.array([[1e-9 * self.largest.get(key, 1e-3)] for key in self.out])

    def _each(self, name: str, look: Callable[[Item], float]) -> Row:
        return np.array([look(each) for each in self.items[name]], float)

    def _parts(self, side: str) -> dict[str, Row]:
        return {
            name: self.out[f"*{side} {name}"] * self._each(name, lambda i: i.in_forces)
            for name in self.items
            if f"*{side} {name}" in self.out
        }

    def _one_of_many(self, force: Mapping[str, Row], moments: Mapping[str, Row]) -> None:
        """Of muscles on both sides: what one makes, and all together."""
        for name, count in self.count.items():
            if count == 1:
                continue
            self.out[f"*all {name}"] = force[name]
            for head in ("*moment", "*level", "*upright", "*turning"):
                if f"{head} {name}" in self.out:
                    self.out[f"{head} one {name}"] = self.out[f"{head} {name}"] / count
        for name in self.pulls:
            if self.count.get(name, 1) > 1 and len(self.pulls) == 1:
                self.out.update(
                    {
                        f"*alone all {key[7:]}": row * self.count[name]
                        for key, row in self.out.items()
                        if key.startswith("*alone ")
                    }
                )

    def _functions(self) -> None:
        """Sines and cosines as they are written, and the single terms of a lever arm."""
        for name, items in self.items.items():
            for side in ("level", "upright"):
                turned = [getattr(each, side) for each in items]
                if turned[0] is not None and turned[0].function and not turned[0].unknown:
                    row = np.array(
                        [t.value(v, a.mode) for t, v, a in zip(turned, self.values, self.accounts, strict=True)]
                    )
                    self.out[f"*trig {side} {name}"] = row
                    if f"*line {name}" in self.out:
                        self.out[f"*leg {side} {name}"] = self.out[f"*line {name}"] * np.abs(row)
            for place, leg in enumerate(items[0].legs):
                if leg.turned.function and not leg.turned.unknown and all(len(each.legs) > place for each in items):
                    turns = np.array(
                        [
                            each.legs[place].turned.value(v, a.mode)
                            for each, v, a in zip(items, self.values, self.accounts, strict=True)
                        ]
                    )
                    self.out[f"*trig leg{place} {name}"] = turns
                    if leg.key in self.out:
                        self.out[f"*leg{place} {name}"] = turns * self.out[leg.key]

    def _straight_lines(self) -> None:
        """How far from the pivot each force acts, in a straight line."""
        for name in self.items:
            if f"*x {name}" in self.out and f"*y {name}" in self.out:
                self.out.setdefault(f"*line {name}", np.hypot(self.out[f"*x {name}"], self.out[f"*y {name}"]))

    def _along(
        self, tag: str, level: Mapping[str, Row], upright: Mapping[str, Row]
    ) -> Iterator[tuple[str, dict[str, Row]]]:
        """Parts along and across the bone that the class counts by, and along the first segment."""
        lies = [getattr(each, tag) for each in self.accounts]
        if any(each is None for each in lies):
            return
        c, s = np.cos(np.radians(lies)), np.sin(np.radians(lies))
        along = {name: level[name] * c + upright[name] * s for name in level if name in upright}
        across = {name: upright[name] * c - level[name] * s for name in level if name in upright}
        for way, box in (("along", along), ("across", across)):
            self.out.update({f"*{way} {tag} {name}": row for name, row in box.items()})
        if {"reaction.right", "reaction.up"} <= self.out.keys():
            right, up = self.out["reaction.right"], self.out["reaction.up"]
            head = "reaction." if tag == "bone" else "*reaction "
            self.out[head + "along"], self.out[head + "across"] = right * c + up * s, up * c - right * s
        yield f"along {tag}", along
        yield f"across {tag}", across

    def _sums(self, head: str, box: Mapping[str, Row]) -> None:
        """Sums of some of the terms, with their signs."""
        sizes = {name: float(abs(row[0])) for name, row in box.items()}
        names = [name for name in box if sizes[name] > 1e-12][:MOST_TERMS]
        for size in range(2, len(names) + 1):
            for some in combinations(names, size):
                key = f"{head} {'+'.join(some)}"
                self.out[key] = sum((box[name] for name in some[1:]), box[some[0]])
                self.largest[key] = max(sizes[name] for name in some)

    def _per_mass(self, moments: Mapping[str, Row]) -> None:
        """What stands before a mass that is sought in the balance of moments."""
        for name, items in self.items.items():
            sought = {items[0].key, items[0].mass} & {*self.accounts[0].unknowns}
            if sought and items[0].mass in self.out and self.out[items[0].mass].all() and name in moments:
                self.out[f"*per mass {name}"] = moments[name] / self.out[items[0].mass]
                self.out[f"*per mass {name}, cm"] = 100 * self.out[f"*per mass {name}"]

    def _shares(self) -> None:
        """Lengths along a segment that follow from shares of it."""
        for key in [key for key in self.out if key.endswith(".com%")]:
            if f"{key[:-5]}.length" in self.out:
                self.out.setdefault(key[:-1], self.out[key] * self.out[f"{key[:-5]}.length"])

    def _other_points(self, force: Mapping[str, Row]) -> None:
        """Distances and moments about the points where other forces act."""
        arms = {name: np.abs(self.out[f"*arm {name}"]) for name in self.items if f"*arm {name}" in self.out}
        for one, other in permutations(arms, 2):
            self.out[f"*away {one}-{other}"] = arms[one] - arms[other]
            if one in force:
                self.out[f"*turn {one}-{other}"] = (arms[one] - arms[other]) * force[one]
            if np.all(arms[other]):
                self.out[f"*ratio {one}/{other}"] = arms[one] / arms[other]
