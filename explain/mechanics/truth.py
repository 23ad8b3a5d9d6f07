"""The truth: what equilibrium says of a free body, as sympy expressions in letters, from points and directions (r x F)
alone.

Knows nothing of how anyone would write it down. Letters are sympy symbols named by their keys ("biceps.force"),
bearings symbols too.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import reduce
from math import cos, radians, sin
from operator import add, mul
from typing import Any

import sympy as sp

from .body import Bearing, Body, Force, Relation, Step
from ..exact.prime_field import Field, dimension

WHOLE_TURNS = {0: (1, 0), 90: (0, 1), 180: (-1, 0), 270: (0, -1)}


class Truth:
    """Moments and components of every force, the three balances, and the relations between quantities.

    `moment[name]`, `level[name]`, `upright[name]` are r x F and the two components of a force on the body cut free
    (couples and
    "reaction" included); `relation[key]` is what a quantity follows from (its square for a line drawn between two
    points).
    """

    def __init__(self, body: Body) -> None:
        self.body = body
        self.bearings: dict[str, Bearing] = {}
        self.moment: dict[str, Any] = {}
        self.level: dict[str, Any] = {}
        self.upright: dict[str, Any] = {}
        self.place: dict[str, tuple[Any, Any]] = {}
        for force in body.forces:
            self._force(force)
        for twist in body.twists:
            self.moment[twist.name] = twist.turns * symbol(twist.size.name)
            self.level[twist.name] = self.upright[twist.name] = sp.S.Zero
        if body.problem.pivot.reaction:
            self.moment["reaction"], self.place["reaction"] = sp.S.Zero, (sp.S.Zero, sp.S.Zero)
            self.level["reaction"], self.upright["reaction"] = symbol("reaction.right"), symbol("reaction.up")
        self.relation = {each.letter.name: self._relation(each) for each in body.relations}

    def balances(self) -> tuple[Any, Any, Any]:
        """Moments about the pivot, level forces, upright forces: each is zero at rest."""
        return tuple(sp.Add(*side.values()) for side in (self.moment, self.level, self.upright))

    def moment_about(self, name: str, force: str) -> Any:
        """The moment of one force about the point where another acts."""
        x, y = self.place[name]
        return self.moment[force] - x * self.upright[force] + y * self.level[force]

    def component(self, force: str, axis: Bearing) -> Any:
        """The part of a force along an axis."""
        across, up = self._unit(axis)
        if force == "reaction" and axis.degrees % 90:
            raise KeyError("the joint force has its own letters along and across a segment")
        return self.level[force] * across + self.upright[force] * up

    def _unit(self, bearing: Bearing) -> tuple[Any, Any]:
        if not bearing.unknown and bearing.degrees % 360 in WHOLE_TURNS:
            return tuple(map(sp.Integer, WHOLE_TURNS[int(bearing.degrees % 360)]))
        name = f"bearing {bearing.degrees} {[(letter.name, k) for letter, k in bearing.unknown]}"
        self.bearings[name] = bearing
        return sp.cos(symbol(name)), sp.sin(symbol(name))

    def _walk(self, steps: tuple[Step, ...]) -> tuple[Any, Any]:
        parts = [(symbol(step.distance.name), self._unit(step.bearing)) for step in steps]
        return sp.Add(*(s * u[0] for s, u in parts)), sp.Add(*(s * u[1] for s, u in parts))

    def _force(self, force: Force) -> None:
        size = force.count * symbol(force.size.name)
        x, y = self.place[force.name] = self._walk(force.steps)
        if force.bearing is not None:
            across, up = self._unit(force.bearing)
        elif force.toward is not None:
            line = symbol(force.toward.line.name)
            across, up = (
                force.toward.right * symbol(force.toward.across.name) / line,
                force.toward.up * symbol(force.toward.rise.name) / line,
            )
        else:
            across = up = None
        if across is not None:
            self.level[force.name], self.upright[force.name] = size * across, size * up
        if force.arm is not None:
            self.moment[force.name] = force.turns * size * symbol(force.arm.name)
        else:
            self.moment[force.name] = size * (x * up - y * across)

    def _relation(self, relation: Relation) -> Any:
        parts = [symbol(each.name) for each in relation.of]
        match relation.kind:
            case _ if relation.parts:
                return sp.Add(*(k * sp.Mul(*(symbol(x.name) ** n for x, n in of)) for k, of in relation.parts))
            case "line":
                return parts[0] ** 2 + parts[1] ** 2
            case "across" | "rise":
                axis = 0 if relation.kind == "across" else 1
                return sp.Add(
                    *(k * symbol(step.distance.name) * self._unit(step.bearing)[axis] for k, step in relation.steps)
                )
        return sp.Mul(*parts)

    def carry(self, expression: Any, field: Field) -> int:
        """An expression as an element of the field, letters as that field's letters."""

        return int(walk(expression, FieldRing(field, lambda name: turn(self.bearings[name], field)))) % field.p

    def through_pivot(self, name: str, field: Field) -> bool:
        """Whether the line of a force passes through the pivot exactly, for the lengths and angles that were given,
        whatever the forces.
        """
        given = field.fresh()
        for each in self.body.givens:
            if dimension(each.value.unit) in ((0, 1, 0), (0, 0, 0)):
                given.letters[each.letter.name] = given.factor(each.value)
        for relation in self.body.relations:
            if relation.kind in ("share", "across", "rise", "middle", "third"):
                given.letters[relation.letter.name] = self.carry(self.relation[relation.letter.name], given)
        return self.carry(self.moment[name], given) == 0

    def size(self, expression: Any, values: Mapping[str, float]) -> float:
        """An expression as a float, with values for its letters (kg, m, s; angles in degrees)."""
        return float(walk(expression, FloatRing(values, self.bearings)))


def turn(bearing: Bearing, field: Field) -> int:
    """A direction as a unit of the field."""
    out = field.turn(bearing.degrees % 360)
    for letter, k in bearing.unknown:
        out = out * pow(field.letter(letter.name), k, field.p) % field.p
    return out


def symbol(name: str) -> Any:
    return sp.Symbol(name)


class FieldRing:
    """Arithmetic of the field, for `walk`."""

    def __init__(self, field: Field, angle: Callable[[str], int]) -> None:
        self.field, self.angle, self.p = field, angle, field.p

    def number(self, top: int, bottom: int) -> int:
        return top * pow(bottom, -1, self.p) % self.p if bottom != 1 else top % self.p

    def letter(self, name: str) -> int:
        return self.field.letter(name)

    def power(self, a: int, n: int) -> int:
        return pow(a, n, self.p) if n >= 0 else self.field.over(1, pow(a, -n, self.p))

    def ratio(self, function: str, name: str) -> int:
        return self.field.ratio(function, self.angle(name))


class FloatRing:
    """Arithmetic of floats, for `walk`."""

    def __init__(self, values: Mapping[str, float], bearings: Mapping[str, Bearing]) -> None:
        self.values, self.bearings = values, bearings

    def number(self, top: int, bottom: int) -> float:
        return top / bottom

    def letter(self, name: str) -> float:
        return self.values[name]

    def power(self, a: float, n: int) -> float:
        return float(a**n)

    def ratio(self, function: str, name: str) -> float:
        degrees = float(self.bearings[name].at(self.values))
        return cos(radians(degrees)) if function == "cos" else sin(radians(degrees))


def walk(expression: Any, ring: Any) -> Any:
    """One sympy expression in another arithmetic: sums, products, whole powers, sines and cosines of a bearing."""
    if expression.is_Symbol:
        return ring.letter(expression.name)
    if expression.is_Rational:
        return ring.number(int(expression.p), int(expression.q))
    if expression.is_Add or expression.is_Mul:
        return reduce(add if expression.is_Add else mul, [walk(each, ring) for each in expression.args])
    if expression.is_Pow:
        return ring.power(walk(expression.base, ring), int(expression.exp))
    return ring.ratio(type(expression).__name__, expression.args[0].name)
