"""The true value of every letter that may stand on a line, in floats: from the solution and the truth's moments and
components, not from any line.
"""

from __future__ import annotations

from collections.abc import Mapping
from math import atan, cos, degrees, hypot, radians, sin
from types import MappingProxyType

from ..equation import key as keys
from .goal import Fold, Goal
from ..mechanics.body import Bearing, Body, Force
from ..mechanics.truth import Truth

AT_REST = ("level", "upright", "along", "across", keys.JOINT_MOMENT)


class TrueLetters:
    """`of` gives the values for the lines of one goal: about another point a force has another arm."""

    def __init__(self, body: Body, truth: Truth, values: Mapping[str, float], sense: int) -> None:
        self.body, self.truth, self.sense = body, truth, sense
        self.values = {**values, **dict.fromkeys(AT_REST, 0.0)}
        self._of_the_whole()
        self.wholes = self._wholes()
        self.arms: dict[str, dict[str, float]] = {}

    def of(self, goal: Goal) -> Mapping[str, float]:
        """Kg, m, s and degrees."""
        if goal.about not in self.arms:
            self.arms[goal.about] = {
                **self.values,
                **{
                    keys.arm(force.name, goal.about): self._arm(force, goal.about)
                    for force in self.body.forces
                    if all(step.distance.name in self.values for step in force.steps)
                },
            }
        here = self.arms[goal.about]
        return {**here, goal.sought: float(goal.acute)} if isinstance(goal, Fold) else here

    def _of_the_whole(self) -> None:
        values, known = self.values, {name: moment for name, moment in self.truth.moment.items() if name != "reaction"}
        for name, moment in known.items():
            if {symbol.name for symbol in moment.free_symbols} <= values.keys() | self.truth.bearings.keys():
                values[keys.moment(name)] = self._counted(name) * self.truth.size(moment, values)
        values["total"] = (
            0.0 if self.body.problem.balanced else sum(values.get(keys.moment(name), 0.0) for name in known)
        )
        for force in self.body.forces:
            if len(force.steps) == 1 and force.arm is None and force.size.name in values:
                values[keys.turning(force.name)] = values[force.size.name] * self._arm(
                    force, "", {force.steps[0].distance.name: 1.0}
                )
            if f"{force.name}.area" in values:
                values[f"{force.name}.stress"] = force.sign * values[force.size.name] / values[f"{force.name}.area"]
        if "reaction.right" in values:
            self._joint()

    def _counted(self, name: str) -> float:
        """Which sense of turning a moment's letter counts as positive: the class's, or where it is a size on its own
        side of a line that which the force has.
        """
        course = self.body.problem.course
        force = next((each for each in self.body.forces if each.name == name), None)
        if (course.balance, course.first) != ("two sides", "moments") or force is None:
            return self.sense
        turning = self.truth.size(self.truth.moment[name], {**self.values, force.size.name: 1.0})
        return 1.0 if turning >= 0 else -1.0

    def _wholes(self) -> dict[str, float]:
        """What floats lose of a force, a distance or a moment is measured against: the largest force, how far out
        any acts, and both.
        """
        values, forces = self.values, [force for force in self.body.forces if force.size.name in self.values]
        joint = [name for name in (keys.JOINT, keys.RIGHT, keys.UP, keys.ALONG, keys.ACROSS) if name in values]
        whole = max(
            map(abs, (*(values[force.size.name] * force.count for force in forces), *(values[name] for name in joint))),
            default=0.0,
        )
        reach = max(
            (sum(abs(values.get(step.distance.name, 0.0)) for step in force.steps) for force in forces), default=0.0
        )
        far = [keys.arm(force.name, about) for force in forces for about in ("", *self.truth.place)]
        far += [step.distance.name for force in forces for step in force.steps] + [
            force.arm.name for force in forces if force.arm
        ]
        return {
            **{force.size.name: whole for force in forces},
            **dict.fromkeys(joint, whole),
            **dict.fromkeys(far, reach),
            **{name: whole * reach for name in values if keys.of(name).what == "*moment"},
        }

    def _joint(self) -> None:
        values, bone = self.values, self.body.bearings.get(self.body.problem.course.axes)
        x, y = values[keys.RIGHT], values[keys.UP]
        values[keys.JOINT] = hypot(x, y)
        if bone is not None:
            x, y = values[keys.ALONG], values[keys.ACROSS] = joint_along(bone, values)
        values[keys.JOINT_ANGLE] = degrees(atan(abs(y / x))) if x else 90.0

    def _arm(self, force: Force, about: str, instead: Mapping[str, float] = MappingProxyType({})) -> float:
        """The distance of a line of force from the pivot, or from the point where another acts."""
        one = {**self.values, force.size.name: 1.0, **instead}
        moment = self.truth.moment_about(about, force.name) if about else self.truth.moment[force.name]
        return abs(self.truth.size(moment, one)) / force.count


def joint_along(bone: Bearing, values: Mapping[str, float]) -> tuple[float, float]:
    """The parts of the joint force along and across a segment, in N."""
    turn, right, up = radians(bone.at(values) % 360), values[keys.RIGHT], values[keys.UP]
    return right * cos(turn) + up * sin(turn), -right * sin(turn) + up * cos(turn)
