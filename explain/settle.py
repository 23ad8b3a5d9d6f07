"""Which condition settles which unknown, in floats: the route through the balances, every root of an angle, and what cannot be settled.

Decides nothing about the page; the walkthrough derives each value again, certified.
"""
from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from itertools import combinations, permutations
from math import acos, atan2, degrees, hypot

from .body import Body
from .faults import Fault, NoWay
from .field import scale
from .truth import Truth

NOTHING = 1e-9


@dataclass(frozen=True, slots=True)
class Stage:
    """One balance and the unknown it settles: `balance` is "moments", "level", "upright", or "moments about NAME".

    With `partners`, further pairs of a balance and an unknown, they settle their unknowns together: each but the last gives its unknown by the later ones.
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


class Undetermined(Fault):
    """More unknowns than conditions, or conditions that contradict each other."""


class Settling:
    """One search for a route."""

    def __init__(self, body: Body, truth: Truth) -> None:
        self.body, self.truth = body, truth
        self.known = {each.letter.name: _si(each.value) for each in body.givens}
        self.pending = self._unknowns()
        self.meaning = {each.letter.name: each.meaning for each in body.sought}
        self.conditions = self._conditions()
        self.out = Settled(self.known)

    def _unknowns(self) -> list[str]:
        masses = {relation.of[0].name: relation.letter.name for relation in self.body.relations if relation.kind == "weight"}
        names = [masses.get(each.letter.name, each.letter.name) for each in self.body.sought]
        if self.body.problem.pivot.reaction and self._all_directed():
            names += ["reaction.right", "reaction.up"]
        return list(dict.fromkeys(names))

    def _all_directed(self) -> bool:
        return all(force.directed for force in self.body.forces)

    def _conditions(self) -> dict[str, Callable[[dict[str, float]], float]]:
        def total(parts: Iterable[object]) -> Callable[[dict[str, float]], float]:
            expressions = tuple(parts)
            return lambda values: sum(self.truth.size(each, values) for each in expressions)
        out = {"moments": total(self.truth.moment.values())}
        if not self._all_directed():
            if not self.body.problem.pivot.reaction:
                self._direction_missing()
            return out
        out["level"], out["upright"] = total(self.truth.level.values()), total(self.truth.upright.values())
        if not self.body.problem.pivot.reaction:
            for force in self.body.forces:
                if force.size.name in self.pending and force.arm is None:
                    out[f"moments about {force.name}"] = total(self.truth.moment_about(force.name, each) for each in self.truth.moment)
        return out

    def _direction_missing(self) -> None:
        force = next(each for each in self.body.forces if not each.directed)
        raise Fault(file=self.body.problem.file, key=f"{force.name}.direction", found="a force with a moment arm and no direction",
                    expected="its direction too, since no joint force stands in for what is missing", example='direction = "up"')

    # ------------------------------------------------------------------ values
    def values_with(self, trial: dict[str, float]) -> dict[str, float]:
        """The known values, a trial for the unknowns, and what follows from both."""
        values = {**self.known, **trial}
        for relation in self.body.relations:
            name = relation.letter.name
            if name in trial:
                continue
            try:
                value = self.truth.size(self.truth.relation[name], values)
            except KeyError:
                continue
            values[name] = abs(value) ** 0.5 if relation.kind == "line" else value
        return values

    def _scale(self, balance: str, trial: dict[str, float]) -> float:
        """The size of the largest term of a condition."""
        values = self.values_with(trial)
        side = {"level": self.truth.level, "upright": self.truth.upright}.get(balance, self.truth.moment)
        return max([abs(self.truth.size(each, values)) for each in side.values()] or [0.0]) or 1.0

    def evaluate(self, balance: str, trial: dict[str, float]) -> float:
        return self.conditions[balance](self.values_with(trial))

    def depends(self, balance: str, unknown: str) -> bool:
        """Whether a condition changes with an unknown, at a general point."""
        general = {name: 0.731 + 0.137 * index + (30 if name.startswith("*angle ") else 0) for index, name in enumerate(self.pending)}
        moved = {**general, unknown: general[unknown] + (23.7 if unknown.startswith("*angle ") else 0.911)}
        difference = abs(self.evaluate(balance, general) - self.evaluate(balance, moved))
        return difference > NOTHING * self._scale(balance, general)

    # ------------------------------------------------------------------ the search
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
            self._not_settled(open_conditions)
        self._consistent(open_conditions)
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
                if order is not None and len(_solved(self._system(balances, found))) == count:
                    return Stage(*order[0], order[1:])
        return None

    def _system(self, balances: Sequence[str], unknowns: Sequence[str]) -> list[list[float]]:
        """Rows of coefficients and the right side; empty where a balance does not depend evenly on the unknowns."""
        others = {name: 0.5 for name in self.pending}
        rows = []
        for balance in balances:
            def at(*values: float, of: str = balance) -> float:
                return self.evaluate(of, {**others, **dict(zip(unknowns, values, strict=True))})
            start = at(*(0.0 for _ in unknowns))
            slopes = [at(*(float(name == each) for each in unknowns)) - start for name in unknowns]
            trial = [2.0 + 1.3 * place for place in range(len(unknowns))]
            if abs(at(*trial) - start - sum(s * v for s, v in zip(slopes, trial, strict=True))) > 1e-6 * (abs(start) + sum(map(abs, slopes)) + 1e-12):
                return []
            rows.append([*slopes, -start])
        return rows

    def _solve_together(self, stage: Stage) -> None:
        pairs = ((stage.balance, stage.unknown), *stage.partners)
        names = [unknown for _, unknown in pairs]
        for name, value in zip(names, _solved(self._system([balance for balance, _ in pairs], names)), strict=True):
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
        size, scale_ = hypot(a, b), self._scale(balance, {**{name: 0.5 for name in self.pending}, unknown: 37.0})
        if size < NOTHING * scale_:
            same = abs(c) < NOTHING * scale_
            raise Undetermined(file=self.body.problem.file, key=unknown.removeprefix("*angle ") + ".direction",
                               found="every angle balances" if same else "no angle balances",
                               expected="a problem in which the angle matters: where all forces stay parallel, or keep their angle to the "
                                        "bone, it cancels", example='moment_arm = "4.0 cm", with a pull of given size')
        if abs(c) > size * (1 + 1e-12):
            raise Fault(file=self.body.problem.file, key=unknown.removeprefix("*angle ") + ".direction",
                        found=f"an angle whose sine or cosine would be {_plain(abs(c) / size)}",
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
                            found=f"balance at {' and '.join(f'{_plain(each)} degrees' for each in roots)} only",
                            expected=f"an angle between {float(bounds[0]):g} and {float(bounds[1]):g} degrees", example='range = ["0 deg", "180 deg"]')
            roots = [inside[0], *[each for each in roots if abs(each - inside[0] % 360) > 1e-9]]
        else:
            roots = [*[each for each in roots if each <= 180 + 1e-9], *[each for each in roots if each > 180 + 1e-9]]
        self.out.roots[unknown] = roots
        return roots[0]

    def _masses(self) -> None:
        for relation in self.body.relations:
            if relation.kind == "weight" and relation.of[0].name not in self.out.values:
                self.out.values[relation.of[0].name] = self.out.values[relation.letter.name] / self.out.values["g"]

    # ------------------------------------------------------------------ what cannot be
    def name_of(self, unknown: str) -> str:
        if unknown.startswith("reaction."):
            return f"the {'level' if unknown.endswith('right') else 'upright'} part of the joint force"
        if unknown in self.meaning:
            return f"the {self.meaning[unknown]}"
        return f"the {unknown.replace('.', ' of ') if unknown.startswith('angle') else ' of the '.join(reversed(unknown.split('.')))}"

    def _not_settled(self, open_conditions: list[str]) -> None:
        idle = [name for name in self.pending if not any(self.depends(each, name) for each in self.conditions)
                or (name.endswith(".force") and self.body.problem.pivot.reaction and not self.depends("moments", name))]
        muscles = [name for name in idle if name.endswith(".force") and not self.depends("moments", name)]
        if muscles:
            name = muscles[0].removesuffix(".force")
            raise Undetermined(file=self.body.problem.file, key=name, found=f"a line of pull of {name} that passes through the pivot: no arm, no moment",
                               expected="a pull that passes the pivot at some distance, so that it can balance anything",
                               example='at = "4.0 cm", direction = "70 deg from back toward up"')
        for name in self.pending:
            if not any(self.depends(each, name) for each in self.conditions) and len(self.pending) == 1 + sum(each.startswith("reaction.") for each in self.pending):
                self._no_matter(name)
        free = [name for name in self.pending if not name.startswith("reaction.")] or self.pending
        independent = [each for each in open_conditions if not each.startswith("moments about")]
        heard = [each for each in independent if any(self.depends(each, name) for name in self.pending)]
        angles = any(name.startswith("*angle ") for name in self.pending)
        system = [] if angles else self._system(independent, self.pending)
        enough = len(self.pending) <= len(heard)
        if enough and (angles or not system or _rank(system) == len(self.pending)):
            raise NoWay(f"The conditions settle {_listed(map(self.name_of, self.pending))} only together, and no way to separate them was found. "
                        "Try cutting the body free at the point where one of the unknown forces acts: make that point the pivot.")
        count = "one unknown" if len(free) == 1 else f"{len(free)} unknowns"
        raise Undetermined(file=self.body.problem.file, found=f"{count} that the balances cannot settle: {_listed(map(self.name_of, free))}",
                           expected=self._remedy(free), example='force = "0.70 * biceps"')

    def _no_matter(self, name: str) -> None:
        """An unknown on which nothing depends: every value balances, or none."""
        balance = next(iter(self.conditions))
        rest = self.evaluate(balance, {each: 37.0 for each in self.pending})
        every = abs(rest) < 1e-9 * self._scale(balance, {each: 37.0 for each in self.pending})
        what = "angle" if name.startswith("*angle ") else "value"
        key = name.removeprefix("*angle ") + ".direction" if what == "angle" else name
        raise Undetermined(file=self.body.problem.file, key=key, found=f"{'every' if every else 'no'} {what} balances" + ("" if what == "angle" else f": {self.name_of(name)} does not matter"),
                           expected="a problem in which the angle matters: where all forces stay parallel, or keep their angle to the bone, the angle cancels"
                           if what == "angle" else "an unknown that the balances depend on", example='moment_arm = "4.0 cm", with a pull of given size')

    def _remedy(self, free: list[str]) -> str:
        if len(free) > 1:
            return "no more unknowns than conditions: a value for one of them, or how they share (a force as a stated multiple of another)"
        return "an unknown that the balances depend on"

    def _consistent(self, open_conditions: list[str]) -> None:
        for balance in open_conditions:
            if balance.startswith("moments about"):
                continue
            rest = self.evaluate(balance, {})
            if abs(rest) > 1e-6 * self._scale(balance, {}):
                unit = "N m" if balance == "moments" else "N"
                what = {"moments": "moments about the pivot", "level": "level forces", "upright": "upright forces"}[balance]
                raise Undetermined(file=self.body.problem.file, found=f"conditions that contradict each other: the {what} add to {_plain(rest)} {unit}, "
                                   "and no unknown is left that could balance them",
                                   expected="forces that balance, or an unknown (\"?\") in place of one of the numbers", example='force = "?"')


def _ordered(balances: Sequence[str], unknowns: Sequence[str], settling: Settling) -> tuple[tuple[str, str], ...] | None:
    """Each balance with an unknown it depends on."""
    for names in permutations(unknowns):
        if all(settling.depends(balance, name) for balance, name in zip(balances, names, strict=True)):
            return tuple(zip(balances, names, strict=True))
    return None


def _solved(rows: list[list[float]]) -> list[float]:
    """The solution of a square system by elimination; empty where there is none or more than one."""
    rows = [list(row) for row in rows]
    size = len(rows)
    if _rank(rows) < size or not rows:
        return []
    for k in range(size):
        best = max(range(k, size), key=lambda i: abs(rows[i][k]))
        rows[k], rows[best] = rows[best], rows[k]
        for i in range(size):
            if i != k:
                ratio = rows[i][k] / rows[k][k]
                rows[i] = [a - ratio * b for a, b in zip(rows[i], rows[k], strict=True)]
    return [row[-1] / row[k] for k, row in enumerate(rows)]


def _rank(rows: list[list[float]]) -> int:
    """How many of the conditions are independent, coefficients only."""
    left = [row[:-1] for row in rows]
    left = [[each / (max(map(abs, row)) or 1.0) for each in row] for row in left]
    rank = 0
    for k in range(len(left[0]) if left else 0):
        best = max(range(rank, len(left)), key=lambda i: abs(left[i][k]), default=None)
        if best is None or abs(left[best][k]) < NOTHING:
            continue
        left[rank], left[best] = left[best], left[rank]
        for i in range(rank + 1, len(left)):
            ratio = left[i][k] / left[rank][k]
            left[i] = [a - ratio * b for a, b in zip(left[i], left[rank], strict=True)]
        rank += 1
    return rank


def _listed(names: Iterable[str]) -> str:
    all_names = list(names)
    return all_names[0] if len(all_names) == 1 else ", ".join(all_names[:-1]) + " and " + all_names[-1]


def _plain(value: float) -> str:
    return f"{value:.4g}"


def _si(value: object) -> float:
    from .equation import Quantity

    assert isinstance(value, Quantity)
    factor = 1.0 if value.unit == (("deg", 1),) else float(scale(value.unit))
    return float(value.number) * factor


def settle(body: Body, truth: Truth) -> Settled:
    """The route and the values. Raises Fault where the unknowns are not settled, NoWay where no route was found."""
    return Settling(body, truth).settle()


