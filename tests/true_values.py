"""What every letter of a worked problem is worth, to fifty digits, from the forces, places and directions of the
free body alone.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from fifty_digits import NEAR, ODD, SI, Base, degrees, mp, size, worth

from explain.mechanics.body import Bearing, Force, Relation, Step
from explain.check.claim import Arm, Between, Moment
from explain.equation.terms import Equation, Terms, letters
from explain.problem.model import Unknown
from explain.solve.engine import Move, Working

NOUGHT = mp.mpf(10) ** -50  # what is left of the cosine of a right angle
ANGLES = ("*angle ", "*fold ", "*inclination ")
SUMS = ("level", "upright", "along", "across", "*moment reaction")


class TrueValues:
    """The values of one working's letters; kilogram, metre, second and degree are as large as `base` says."""

    def __init__(self, working: Working, base: Base = SI) -> None:
        self.body, self.base = working.body, base
        self.known: dict[str, Any] = {each.letter.name: each.sign * size(each.value, base) for each in self.body.givens}
        for stage in working.settled.stages:
            if stage.partners and stage.partners[0][1].startswith("*angle "):
                self._arrow(stage.unknown, stage.partners[0][1], working.settled.values)
            elif stage.partners:
                pairs = ((stage.balance, stage.unknown), *stage.partners)
                self._together(tuple(balance for balance, _ in pairs), tuple(unknown for _, unknown in pairs))
            else:
                self.known[stage.unknown] = self._solved(stage.balance, stage.unknown, working.settled.values)
        self.values = self.with_({})
        self._geometry()
        self._joint()

    # ------------------------------------------------------------------ what follows from what is known
    def with_(self, trial: Mapping[str, Any]) -> dict[str, Any]:
        """The known values, a trial for an unknown, and every relation that can be followed."""
        values = {**self.known, **trial}
        for _ in self.body.relations:
            for relation in self.body.relations:
                self._follow(relation, values)
        return values

    def _follow(self, relation: Relation, values: dict[str, Any]) -> None:
        name, of = relation.letter.name, [each.name for each in relation.of]
        if relation.kind == "weight" and of[0] not in values and name in values:
            values[of[0]] = relation.sign * values[name] / values[of[1]]
        if name in values or relation.kind == "slips":
            return
        try:
            values[name] = self._relation(relation, of, values)
        except KeyError:
            return

    def _relation(self, relation: Relation, of: list[str], values: Mapping[str, Any]) -> Any:
        match relation.kind:
            case "line":
                return mp.sqrt(values[of[0]] ** 2 + values[of[1]] ** 2)
            case "across" | "rise":
                axis = 0 if relation.kind == "across" else 1
                return mp.fsum(
                    k * values[step.distance.name] * self._unit(step.bearing, values)[axis]
                    for k, step in relation.steps
                )
            case "ratio":
                areas = {pull.name: pull.area for pull in self.body.problem.pulls if pull.share and pull.area}
                own, first = areas[name_of(relation)], next(iter(areas.values()))
                return size(own, self.base) / size(first, self.base)
            case "middle" | "third" | "per length":
                return self._spread(relation, values)
        return relation.sign * mp.fprod(values[each] for each in of)

    def _spread(self, relation: Relation, values: Mapping[str, Any]) -> Any:
        """Where a spread load acts, or what it weighs, from the two ends that its author wrote."""
        name = name_of(relation)
        load = next(each for each in self.body.problem.loads if each.name == name)
        assert load.spread is not None
        first, second = (size(each, self.base) for each in load.spread.ends)
        far, whole = (mp.mpf(2) / 3, mp.mpf(1) / 2) if load.spread.growing else (mp.mpf(1) / 2, mp.mpf(1))
        if relation.kind == "per length":
            return values[f"{name}.per_length"] * abs(second - first) * whole
        return abs(first + far * (second - first))

    def _unit(self, bearing: Bearing, values: Mapping[str, Any]) -> tuple[Any, Any]:
        turn = self._turn(bearing, values) * mp.pi / 180
        return mp.chop(mp.cos(turn), tol=NOUGHT), mp.chop(mp.sin(turn), tol=NOUGHT)

    def _turn(self, bearing: Bearing, values: Mapping[str, Any]) -> Any:
        start = mp.mpf(bearing.degrees.numerator) / bearing.degrees.denominator
        return start + mp.fsum(k * values[letter.name] for letter, k in bearing.unknown)

    def _walk(self, steps: tuple[Step, ...], values: Mapping[str, Any]) -> tuple[Any, Any]:
        ways = [(values[step.distance.name], self._unit(step.bearing, values)) for step in steps]
        return mp.fsum(s * way[0] for s, way in ways), mp.fsum(s * way[1] for s, way in ways)

    # ------------------------------------------------------------------ forces
    def _push(self, force: Force, values: Mapping[str, Any]) -> tuple[Any, Any]:
        """The two components of a force."""
        pull = force.sign * force.count * values[force.size.name]
        if force.toward is not None:
            line = values[force.toward.line.name]
            way = (
                force.toward.right * values[force.toward.across.name] / line,
                force.toward.up * values[force.toward.rise.name] / line,
            )
        elif force.bearing is not None:
            way = self._unit(force.bearing, values)
        else:
            way = (mp.mpf(0), mp.mpf(0))
        return pull * way[0], pull * way[1]

    def _turning(self, force: Force, values: Mapping[str, Any], about: tuple[Any, Any]) -> Any:
        if force.arm is not None:
            return force.turns * force.count * values[force.size.name] * values[force.arm.name]
        (x, y), (right, up) = self._walk(force.steps, values), self._push(force, values)
        return (x - about[0]) * up - (y - about[1]) * right

    def moments(self, values: Mapping[str, Any], about: str = "") -> Any:
        """The sum of all moments but the joint force's, counter-clockwise."""
        point = self._walk(self.body.force(about).steps, values) if about else (mp.mpf(0), mp.mpf(0))
        turning = [self._turning(force, values, point) for force in self.body.forces]
        return mp.fsum([*turning, *(each.turns * values[each.size.name] for each in self.body.twists)])

    def _balance(self, name: str) -> Callable[[Mapping[str, Any]], Any]:
        if name.startswith("moments"):
            return lambda values: self.moments(values, name.partition("about ")[2])
        if name == "friction":
            return self._slipping
        axis = 0 if name == "level" else 1
        joint = "reaction.right" if name == "level" else "reaction.up"
        return lambda values: mp.fsum(
            [values.get(joint, mp.mpf(0)), *(self._push(force, values)[axis] for force in self.body.forces)]
        )

    def _on_surface(self, right: Any, up: Any) -> tuple[Any, Any]:
        """What the rough surface pushes along itself and across, to the side of the body."""
        surface = self.body.problem.pivot.surface
        turn = mp.mpf(surface.numerator) / surface.denominator * mp.pi / 180
        return right * mp.cos(turn) + up * mp.sin(turn), up * mp.cos(turn) - right * mp.sin(turn)

    def _slipping(self, values: Mapping[str, Any]) -> Any:
        pivot = self.body.problem.pivot
        along, across = self._on_surface(*(values.get(f"reaction.{part}", mp.mpf(0)) for part in ("right", "up")))
        return along + pivot.slips * values["*friction reaction"] * across

    def _solved(self, balance: str, unknown: str, near: Mapping[str, float]) -> Any:
        """The value of one unknown from one balance: of an angle's two the one that the program found in floats."""
        total = self._balance(balance)
        rest = {name: mp.mpf(1) for name in self._sought() if name != unknown and name not in self.known}

        def at(value: Any) -> Any:
            return total(self.with_({**rest, unknown: mp.mpf(value)}))

        if not unknown.startswith("*angle "):
            return -at(0) / (at(1) - at(0))
        c = (at(0) + at(180)) / 2
        a, b = at(0) - c, at(90) - c
        ratio = -c / mp.hypot(a, b)
        inside = mp.sign(ratio) if abs(abs(ratio) - 1) < NEAR else ratio  # both angles of a turn in one
        middle, half = degrees(mp.atan2(b, a)), degrees(mp.acos(inside))
        roots = [middle + half, middle - half]
        roots = [each + 360 * k for each in roots for k in (-1, 0, 1)]
        return min(roots, key=lambda root: abs(root - near[unknown]))

    def _together(self, balances: tuple[str, ...], unknowns: tuple[str, ...]) -> None:
        """As many unknowns as balances."""
        rest = {name: mp.mpf(1) for name in self._sought() if name not in self.known}
        rows = []
        for total in map(self._balance, balances):
            nothing = dict.fromkeys(unknowns, mp.mpf(0))
            start = total(self.with_({**rest, **nothing}))
            rows.append(
                [*(total(self.with_({**rest, **nothing, name: mp.mpf(1)})) - start for name in unknowns), -start]
            )
        found = mp.lu_solve(mp.matrix([row[:-1] for row in rows]), mp.matrix([row[-1] for row in rows]))
        self.known |= dict(zip(unknowns, found, strict=True))

    def _arrow(self, size: str, angle: str, near: Mapping[str, float]) -> None:
        """A force of which size and angle are sought: as long as what the others leave over, and turned until it
        points the other way.
        """
        rest = {name: mp.mpf(1) for name in self._sought() if name not in self.known}

        def parts(pull: int, turned: int) -> Any:
            values = self.with_({**rest, size: mp.mpf(pull), angle: mp.mpf(turned)})
            return mp.mpc(self._balance("level")(values), self._balance("upright")(values))

        left = -parts(0, 0)
        one, quarter = parts(1, 0) + left, parts(1, 90) + left
        turn = 1 if abs(quarter - one * 1j) < abs(quarter + one * 1j) else -1
        found = turn * degrees(mp.arg(left / one))
        self.known[size] = abs(left / one)
        self.known[angle] = min((found + 360 * k for k in (-1, 0, 1)), key=lambda each: abs(each - near[angle]))

    def _sought(self) -> list[str]:
        """The unknowns; for a mass that is sought the weight stands in."""
        weights = {
            relation.of[0].name: relation.letter.name for relation in self.body.relations if relation.kind == "weight"
        }
        return [weights.get(each.letter.name, each.letter.name) for each in self.body.sought]

    # ------------------------------------------------------------------ letters of the working
    def _geometry(self) -> None:
        values, origin = self.values, (mp.mpf(0), mp.mpf(0))
        for force in self.body.forces:
            if force.size.name not in values:
                continue
            moment = self._turning(force, {**values, force.size.name: mp.mpf(1)}, origin) / force.count
            values[f"*arm {force.name}"] = abs(moment)
            if len(force.steps) == 1 and values[force.steps[0].distance.name]:
                values[f"*turning {force.name}"] = (
                    values[force.size.name] * abs(moment) / values[force.steps[0].distance.name]
                )
            course = self.body.problem.course
            sized = (course.balance, course.first) == ("two sides", "moments")
            sense = (1 if moment >= 0 else -1) if sized else course.sense
            values[f"*moment {force.name}"] = sense * force.count * values[force.size.name] * moment
        for pull in self.body.problem.pulls:
            if pull.area is not None and f"{pull.name}.force" in values:
                sign = self.body.force(pull.name).sign
                values[f"{pull.name}.stress"] = sign * values[f"{pull.name}.force"] / values[f"{pull.name}.area"]

    def _joint(self) -> None:
        values, zero = self.values, mp.mpf(0)
        values.update(dict.fromkeys(SUMS, zero))
        values["total"] = zero
        if not self.body.problem.balanced:
            values["total"] = self.body.problem.course.sense * self.moments(values)
        if not self.body.problem.pivot.reaction or not all(force.directed for force in self.body.forces):
            return
        pushes = [self._push(force, values) for force in self.body.forces]
        right, up = -mp.fsum(push[0] for push in pushes), -mp.fsum(push[1] for push in pushes)
        values["reaction.right"], values["reaction.up"], values["reaction"] = right, up, mp.hypot(right, up)
        if isinstance(self.body.problem.pivot.friction, Unknown):
            along, across = self._on_surface(right, up)
            values["*friction reaction"] = abs(along / across)
        first, second = right, up
        if self.body.problem.course.axes:
            along, across = self._unit(self.body.bearings[self.body.problem.course.axes], values)
            first, second = right * along + up * across, up * along - right * across
            values["reaction.along"], values["reaction.across"] = first, second
        if first:
            values["*angle reaction"] = degrees(mp.atan(abs(second / first)))

    def named(self, move: Move) -> None:
        """Take in what a move gives a letter to that depends on the move: an angle between two lines, an arm about
        another point.
        """
        match move.line.claim:
            case Between(_, first, second):
                apart = (self._turn(first, self.values) - self._turn(second, self.values)) % 180
                self.values[move.goal.sought] = min(apart, 180 - apart)
            case Arm(force, _, about) if about:
                cut, point = self.body.force(force), self._walk(self.body.force(about).steps, self.values)
                self.values[f"*arm {force}"] = (
                    abs(self._turning(cut, {**self.values, cut.size.name: mp.mpf(1)}, point)) / cut.count
                )
            case Moment(force, sense):
                own = self._turning(self.body.force(force), self.values, (mp.mpf(0), mp.mpf(0)))
                self.values[f"*moment {force}"] = sense * own
        if move.goal.key == "total moment":
            self.values["total"] = move.goal.sense * self.moments(self.values)

    def letters(self) -> dict[str, Any]:
        """The value of each letter, in the base; inside this class angles are plain degrees."""
        one = mp.mpf(self.base.deg)
        return {name: value * one if name.startswith(ANGLES) else value for name, value in self.values.items()}

    def carried(self, ledger: Mapping[str, Terms], before: Equation | None, sought: str) -> dict[str, Any]:
        """The values a class goes on with that carries what is shown: numbers as shown, and the sought letter from
        the line before.
        """
        values = self.letters()
        self._told(values, ledger)
        if before is None or sought not in values:
            return values

        shares = {name: terms for name, terms in ledger.items() if letters(terms) and name != sought}

        def rest(value: Any) -> Any:
            values[sought] = value
            self._told(values, shares)
            return worth(before.left, values, self.base) - worth(before.right, values, self.base)

        start = values[sought]
        step = abs(start) / 10**6 or mp.mpf(1)
        rest(mp.findroot(rest, (start, start + step), tol=mp.mpf(10) ** -60, maxsteps=30, verify=False))
        return values

    def _told(self, values: dict[str, Any], ledger: Mapping[str, Terms]) -> None:
        """Enter what the working's own numbers say; a share of a share needs a second look."""
        for _ in range(2):
            values |= {name: worth(terms, values, self.base) for name, terms in ledger.items()}


def name_of(relation: Relation) -> str:
    return relation.letter.name.rpartition(".")[0]


def both(working: Working) -> tuple[TrueValues, TrueValues]:
    """The values in kg, m and s, and in a base of odd sizes."""
    return TrueValues(working, SI), TrueValues(working, ODD)
