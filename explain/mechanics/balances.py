"""The conditions of rest as sums in floats: what is known, what is not yet, what each balance leaves over, and on
what it depends.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from ..equation import key as keys
from .body import Body
from ..document.english import the
from ..wording.pivot_words import pivot_force
from ..errors import Fault
from ..exact.interval import in_si
from ..exact.linear import NOTHING
from .truth import Truth

LOST = 1e-13


class Conditions:
    """The balances of one body; `known` and `pending` change as unknowns are settled."""

    def __init__(self, body: Body, truth: Truth) -> None:
        self.body, self.truth = body, truth
        self.known = {each.letter.name: each.sign * float(in_si(each.value)) for each in body.givens}
        self.pending = self._unknowns()
        self.meaning = {each.letter.name: each.meaning for each in body.sought}
        self.conditions = self._conditions()

    @property
    def used_up(self) -> str:
        """The part of the push at the pivot that is all the friction there is, "" where that is not told."""
        return next((each.letter.name for each in self.body.relations if each.kind == "slips"), "")

    def _unknowns(self) -> list[str]:
        masses = {
            relation.of[0].name: relation.letter.name for relation in self.body.relations if relation.kind == "weight"
        }
        names = [masses.get(each.letter.name, each.letter.name) for each in self.body.sought]
        if self.body.problem.pivot.reaction and self._all_directed():
            names += ["reaction.right", "reaction.up"]
        return list(dict.fromkeys(names))

    def _all_directed(self) -> bool:
        return all(force.directed for force in self.body.forces)

    def _conditions(self) -> dict[str, Callable[[dict[str, float]], float]]:
        """Each balance by its name, in the order in which they are tried."""

        def total(parts: Iterable[object]) -> Callable[[dict[str, float]], float]:
            expressions = tuple(parts)
            return lambda values: sum(self.truth.size(each, values) for each in expressions)

        out = {"moments": total(self.truth.moment.values())}
        if not self._all_directed():
            if not self.body.problem.pivot.reaction:
                self._direction_missing()
            return out
        if used := self.used_up:
            out["friction"] = lambda values: values[used] - self.truth.size(self.truth.relation[used], values)
        out["level"], out["upright"] = total(self.truth.level.values()), total(self.truth.upright.values())
        if not self.body.problem.pivot.reaction:
            placed = all(force.arm is None for force in self.body.forces)  # a given arm is the one about the pivot
            for force in self.body.forces:
                if force.size.name in self.pending and placed:
                    out[f"moments about {force.name}"] = total(
                        self.truth.moment_about(force.name, each) for each in self.truth.moment
                    )
        return out

    def _direction_missing(self) -> None:
        force = next(each for each in self.body.forces if not each.directed)
        raise Fault(
            file=self.body.problem.file,
            key=f"{force.name}.direction",
            found="a force with a moment arm and no direction",
            expected="its direction too, since no joint force stands in for what is missing",
            example='direction = "up"',
        )

    # ------------------------------------------------------------------ values
    def values_with(self, trial: dict[str, float]) -> dict[str, float]:
        """The known values, a trial for the unknowns, and what follows from both."""
        values = {**self.known, **trial}
        for relation in self.body.relations:
            name = relation.letter.name
            if name in trial or relation.kind == "slips":
                continue
            try:
                value = self.truth.size(self.truth.relation[name], values)
            except KeyError:
                continue
            values[name] = abs(value) ** 0.5 if relation.kind == "line" else value
        return values

    def scale(self, balance: str, trial: dict[str, float]) -> float:
        """The size of the largest term of a condition."""
        values = self.values_with(trial)
        level, upright = self.truth.level, self.truth.upright
        side = {"level": level, "upright": upright, "friction": upright}.get(balance, self.truth.moment)
        return max([abs(self.truth.size(each, values)) for each in side.values()] or [0.0]) or 1.0

    def _whole(self, balance: str, trial: dict[str, float]) -> float:
        """The moment of the largest force if it stood across the whole way to it: what floats lose where lengths
        cancel is measured against it.
        """
        if not balance.startswith("moments"):
            return 0.0
        values = self.values_with(trial)
        return max(
            [
                abs(each.count * values[each.size.name]) * sum(abs(values[step.distance.name]) for step in each.steps)
                for each in self.body.forces
            ]
            or [0.0]
        )

    def evaluate(self, balance: str, trial: dict[str, float]) -> float:
        return self.conditions[balance](self.values_with(trial))

    def depends(self, balance: str, unknown: str) -> bool:
        """Whether a condition changes with an unknown, at a general point."""
        general = {
            name: 0.731 + 0.137 * index + (30 if keys.of(name).is_angle else 0)
            for index, name in enumerate(self.pending)
        }
        moved = {**general, unknown: general[unknown] + (23.7 if keys.of(unknown).is_angle else 0.911)}
        difference = abs(self.evaluate(balance, general) - self.evaluate(balance, moved))
        return difference > max(NOTHING * self.scale(balance, general), LOST * self._whole(balance, general))

    def system(self, balances: Sequence[str], unknowns: Sequence[str]) -> list[list[float]]:
        """Rows of coefficients and the right side; empty where a balance does not depend evenly on the unknowns."""
        others = {name: 0.5 for name in self.pending}
        rows = []
        for balance in balances:

            def at(*values: float, of: str = balance) -> float:
                return self.evaluate(of, {**others, **dict(zip(unknowns, values, strict=True))})

            start = at(*(0.0 for _ in unknowns))
            step = max(1.0, abs(start))  # beside a huge constant a step of one is lost
            slopes = [(at(*(step * (name == each) for each in unknowns)) - start) / step for name in unknowns]
            trial = [2.0 + 1.3 * place for place in range(len(unknowns))]
            if abs(at(*trial) - start - sum(s * v for s, v in zip(slopes, trial, strict=True))) > 1e-6 * (
                abs(start) + sum(map(abs, slopes)) + 1e-12
            ):
                return []
            rows.append([*slopes, -start])
        return rows

    def changes(self, balances: Sequence[str], unknowns: Sequence[str]) -> list[list[float]]:
        """Rows of what each balance changes by with each unknown, at a general point, and a zero: however it depends
        on them.
        """
        general = {
            name: 0.731 + 0.137 * index + (30 if keys.of(name).is_angle else 0)
            for index, name in enumerate(self.pending)
        }
        moved = [{**general, name: general[name] + (23.7 if keys.of(name).is_angle else 0.911)} for name in unknowns]
        return [
            [*(self.evaluate(balance, each) - self.evaluate(balance, general) for each in moved), 0.0]
            for balance in balances
        ]

    def name_of(self, unknown: str) -> str:
        """An unknown in words."""
        if keys.of(unknown).is_joint:
            part = "horizontal" if unknown == keys.RIGHT else "vertical"
            return f"the {part} part of the {pivot_force(self.body.problem)}"
        if unknown in self.meaning:
            start, to, end = self.meaning[unknown].partition(" to ")
            return f"the distance from {the(start)} to {the(end)}" if to else f"the {self.meaning[unknown]}"
        return f"the {keys.of(unknown).what} of the {keys.of(unknown).owner}"
