"""Which condition settles which unknown, in floats: the route through the balances, every root of an angle, and what cannot be settled.

Decides nothing about the page; the walkthrough derives each value again, certified.
"""
from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from itertools import combinations, permutations
from math import acos, atan2, degrees, hypot

from .body import Body
from .conditions import Conditions
from .faults import Fault, NoWay
from .linear import NOTHING, solved
from .truth import Truth
from .unsettled import Undetermined, consistent, not_settled, plain

__all__ = ("Settled", "Settling", "Stage", "Undetermined", "settle")


@dataclass(frozen=True, slots=True)
class Stage:
    """One balance and the unknown it settles: `balance` is "moments", "level", "upright", or "moments about NAME".

    With `partners`, further pairs of a balance and an unknown, they settle their unknowns together:
    each but the last gives its unknown by the later ones.
    """

    balance: str
    unknown: str
    partners: tuple[tuple[str, str], ...] = ()


@dataclass(slots=True)
class Settled:
    """Values of all letters (kg, m, s, degrees), the stages in order, and for an angle its roots in order, the wanted one first."""

    values: dict[str, float]
    stages: list[Stage] = field(default_factory=list)
    roots: dict[str, list[float]] = field(default_factory=dict)
    sines: dict[str, float] = field(default_factory=dict)


class Settling(Conditions):
    """One search for a route."""

    def __init__(self, body: Body, truth: Truth) -> None:
        super().__init__(body, truth)
        self.out = Settled(self.known)

    def settle(self) -> Settled:
        open_conditions = list(self.conditions)
        while self.pending:
            found = self._single(open_conditions)
            if found is None:
                together = self._together(open_conditions)
                if together is None:
                    break
                self._solve_together(together)
                used = (together.balance, *(balance for balance, _ in together.partners))
                open_conditions = [each for each in open_conditions if each not in used]
                continue
            balance, unknown = found
            self._solve(balance, unknown)
            self.out.stages.append(Stage(balance, unknown))
            self.pending.remove(unknown)
            open_conditions.remove(balance)
        if self.pending:
            not_settled(self, open_conditions)
        consistent(self, open_conditions)
        self.out.values = self.values_with({})
        self._masses()
        return self.out

    def _single(self, conditions: list[str]) -> tuple[str, str] | None:
        order = sorted(conditions, key=lambda name: (name != "moments", name.startswith("moments about"), name != "level"))
        for balance in order:
            found = [name for name in self.pending if self.depends(balance, name)]
            if len(found) == 1:
                return balance, found[0]
        return None

    def _together(self, conditions: list[str]) -> Stage | None:
        """Two or three balances that depend evenly on as many unknowns, and tell them apart."""
        independent = sorted((each for each in conditions if not each.startswith("moments about")), key=lambda name: name == "moments")
        for count in (2, 3):
            for balances in combinations(independent, count):
                found = [name for name in self.pending if any(self.depends(each, name) for each in balances)]
                if len(found) != count or any(name.startswith("*angle ") for name in found):
                    continue
                order = _ordered(balances, found, self)
                if order is not None and len(solved(self.system(balances, found))) == count:
                    return Stage(*order[0], order[1:])
        return None

    def _solve_together(self, stage: Stage) -> None:
        pairs = ((stage.balance, stage.unknown), *stage.partners)
        names = [unknown for _, unknown in pairs]
        for name, value in zip(names, solved(self.system([balance for balance, _ in pairs], names)), strict=True):
            self.known[name] = value
        self.out.stages.append(stage)
        self.pending = [name for name in self.pending if name not in names]

    def _solve(self, balance: str, unknown: str) -> None:
        others = {name: 0.5 for name in self.pending if name != unknown}
        def at(value: float) -> float:
            return self.evaluate(balance, {**others, unknown: value})
        if unknown.startswith("*angle "):
            self.known[unknown] = self._angle(balance, unknown, at)
            return
        constant, slope = at(0.0), at(1.0) - at(0.0)
        if abs(at(2.0) - constant - 2 * slope) > 1e-6 * (abs(slope) + abs(constant)):
            raise NoWay(f"The {balance} do not depend evenly on {self.name_of(unknown)}, so this working cannot settle it.")
        value = -constant / slope
        largest = max([abs(v) for k, v in self.values_with({**others, unknown: value}).items() if k.endswith((".force", ".weight"))] or [1.0])
        self.known[unknown] = 0.0 if abs(value) < NOTHING * largest and not unknown.endswith((".at", ".moment_arm")) else value

    def _angle(self, balance: str, unknown: str, at: Callable[[float], float]) -> float:
        a, c, b = (at(0.0) - at(180.0)) / 2, (at(0.0) + at(180.0)) / 2, 0.0
        b = at(90.0) - c
        size, scale = hypot(a, b), self.scale(balance, {**{name: 0.5 for name in self.pending}, unknown: 37.0})
        if size < NOTHING * scale:
            same = abs(c) < NOTHING * scale
            raise Undetermined(file=self.body.problem.file, key=unknown.removeprefix("*angle ") + ".direction",
                               found="every angle balances" if same else "no angle balances",
                               expected="a problem in which the angle matters: where all forces stay parallel, or keep their angle to the "
                                        "bone, it cancels", example='moment_arm = "4.0 cm", with a pull of given size')
        if abs(c) > size * (1 + 1e-12):
            raise Fault(file=self.body.problem.file, key=unknown.removeprefix("*angle ") + ".direction",
                        found=f"an angle whose sine or cosine would be {plain(abs(c) / size)}",
                        expected="a sine between -1 and 1: no angle has one beyond that, so this balance cannot be reached at any angle",
                        example="a larger pull, or a smaller load")
        first, step = degrees(atan2(b, a)), degrees(acos(max(-1.0, min(1.0, -c / size))))
        roots = sorted({round((first + step) % 360, 9), round((first - step) % 360, 9)})
        return self._choose(unknown, roots)

    def _choose(self, unknown: str, roots: list[float]) -> float:
        bounds = next((each.range for each in self.body.sought if each.letter.name == unknown), None)
        if bounds is not None:
            inside = [root for each in roots for root in (each, each - 360) if float(bounds[0]) - 1e-9 <= root <= float(bounds[1]) + 1e-9]
            if not inside:
                raise Fault(file=self.body.problem.file, key=unknown.removeprefix("*angle ") + ".range",
                            found=f"balance at {' and '.join(f'{plain(each)} degrees' for each in roots)} only",
                            expected=f"an angle between {float(bounds[0]):g} and {float(bounds[1]):g} degrees",
                            example='range = ["0 deg", "180 deg"]')
            roots = [inside[0], *[each for each in roots if abs(each - inside[0] % 360) > 1e-9]]
        else:
            roots = [*[each for each in roots if each <= 180 + 1e-9], *[each for each in roots if each > 180 + 1e-9]]
        self.out.roots[unknown] = roots
        return roots[0]

    def _masses(self) -> None:
        for relation in self.body.relations:
            if relation.kind == "weight" and relation.of[0].name not in self.out.values:
                self.out.values[relation.of[0].name] = self.out.values[relation.letter.name] / self.out.values["g"]


def _ordered(balances: Sequence[str], unknowns: Sequence[str], settling: Settling) -> tuple[tuple[str, str], ...] | None:
    """Each balance with an unknown it depends on."""
    for names in permutations(unknowns):
        if all(settling.depends(balance, name) for balance, name in zip(balances, names, strict=True)):
            return tuple(zip(balances, names, strict=True))
    return None


def settle(body: Body, truth: Truth) -> Settled:
    """The route and the values. Raises Fault where the unknowns are not settled, NoWay where no route was found."""
    return Settling(body, truth).settle()
