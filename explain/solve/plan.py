"""The order of a working: which conversions, weights, angles, arms and balances come, and what is asked. Writes no
line.
"""

from __future__ import annotations

from dataclasses import replace

from ..equation import key as keys
from . import goal as goals
from .board import FORCE, FORCE_PER_LENGTH, LENGTH, LENGTHS, MASS, MOMENT
from .goal import Goal
from ..mechanics.body import RIGHT, UP, Bearing, Body, Relation
from ..document.english import noun_of, the
from ..equation.terms import Letter, Quantity, Term, Unit
from ..errors import Fault
from ..exact.prime_field import dimension
from ..mechanics.geometry import part
from ..mechanics.polar import BALANCES, is_small, one_angle, ratio_of
from ..mechanics.settlement import Settled, Stage
from ..mechanics.truth import Truth
from .plan_moments import Turning
from .true_letters import joint_along
from ..mechanics.asked import Asked, asked

__all__ = ("Asked", "Planning", "asked", "plan")


class Planning(Turning):
    """One whole plan."""

    def plan(self) -> tuple[Goal, ...]:
        self._conversions()
        self._relations(heavy=True)
        if self.body.problem.balanced and self.body.problem.pivot.reaction and self._takes_moments():
            self._add(goals.Pivot("", keys.JOINT_MOMENT))
        self._relations(heavy=False)
        if not self.body.problem.balanced:
            self._moments_only()
            return tuple(self.goals)
        for stage in self._needed_stages():
            if stage.polar:
                self._size_and_angle(stage)
                continue
            if stage.partners:
                self._together(stage)
                continue
            if stage.balance == "friction":
                self._all_friction(stage.unknown)
            elif stage.balance.startswith("moments"):
                self._moments(stage.unknown, stage.balance.partition("about ")[2])
            elif not keys.of(stage.unknown).is_joint or not self._bones_axes():
                self._forces(stage.balance, stage.unknown)
            self.unknown.discard(stage.unknown)
            self._follow(stage.unknown)
        self._reaction()
        self._afterwards()
        return tuple(self.goals)

    # ------------------------------------------------------------------ before the balances
    def _conversions(self) -> None:
        for given in self.body.givens:
            unit = self._unit_for(given.value.unit)
            if unit is not None and unit != given.value.unit and self._is_used(given.letter.name):
                self._add(goals.Convert(given.letter.name, given.letter.name, unit))

    def _is_used(self, key: str) -> bool:
        return keys.of(key).what not in ("area", "limit")

    def _unit_for(self, unit: Unit) -> Unit | None:
        """The unit a given value should be in; None where it may stay."""
        if not unit or unit[0][0] in ("deg", "%"):
            return None
        kind = dimension(unit)
        if kind == LENGTH:
            return ((self.body.length_unit, 1),)
        if kind == FORCE:
            return ((self.body.force_unit, 1),)
        if kind == MASS and self.body.force_unit == "N":
            return (("kg", 1),)
        if kind == FORCE_PER_LENGTH:
            return ((self.body.force_unit, 1), (self.body.length_unit, -1))
        if kind == MOMENT:
            same = unit[0][0] == self.body.force_unit and self.course.lengths == "as given" and not self._has_lengths()
            return unit if same else ((self.body.force_unit, 1), (self.body.length_unit, 1))
        return None

    def _has_lengths(self) -> bool:
        return any(
            each.value.unit and each.value.unit[0][0] in LENGTHS and len(each.value.unit) == 1
            for each in self.body.givens
        )

    def _relations(self, heavy: bool) -> None:
        known = [
            each
            for each in self.body.relations
            if each.kind != "slips" and (each.kind != "weight" or each.of[0].name not in self.unknown)
        ]
        for relation in sorted(known, key=_group):
            if (_group(relation) < 2) is not heavy:
                continue
            pounds = (
                relation.kind == "weight" and self.body.force_unit == "lbf" and self._in_kilograms(relation.of[0].name)
            )
            self._add(goals.Relation(relation.letter.name, relation.letter.name, pounds))
            if pounds:
                self._add(goals.Convert(relation.letter.name, relation.letter.name, (("lbf", 1),)))

    def _in_kilograms(self, mass: str) -> bool:
        """Whether a mass is given in kilograms, or follows from one that is."""
        share = next((each for each in self.body.relations if each.letter.name == mass), None)
        given = next(
            (each.value for each in self.body.givens if each.letter.name == (share.of[1].name if share else mass)), None
        )
        return given is not None and given.unit in ((("kg", 1),), (("g", 1),))

    def _needed_stages(self) -> list[Stage]:
        stages = self.settled.stages
        wanted = [index for index, stage in enumerate(stages) if not keys.of(stage.unknown).is_joint]
        if keys.FRICTION in self.keys or any(keys.of(key).is_joint for key in self.keys):
            return list(stages)
        return list(stages[: max(wanted) + 1]) if wanted else []

    def _takes_moments(self) -> bool:
        stages = self._needed_stages()
        return any(name.startswith("moments") for each in stages for name, _ in ((each.balance, ""), *each.partners))

    def _together(self, stage: Stage) -> None:
        """Several balances for as many unknowns: all but the last are left open, the last is closed, and the others
        taken up again in turn.
        """
        pairs = ((stage.balance, stage.unknown), *stage.partners)
        opened = []
        for place, (balance, unknown) in enumerate(pairs):
            if balance.startswith("moments"):
                self._moments(unknown, "")
            elif balance == "friction":
                self._all_friction(unknown)
            else:
                self._forces(balance, unknown)
            if place < len(pairs) - 1:
                opened.append(replace(self.goals.pop(), until="open", asked=False))
                self.goals.append(opened[-1])
        self.unknown -= {unknown for _, unknown in pairs}
        self._follow(pairs[-1][1])
        for goal in reversed(opened):
            self.goals.append(goals.Back(goal.key, goal.sought, asked=goal.sought in self.keys))
            self._follow(goal.sought)

    def _all_friction(self, unknown: str) -> None:
        """Where the body is about to slip, what the surface pushes along itself."""
        used = next(each for each in self.body.relations if each.kind == "slips")
        self._add(goals.Relation(used.letter.name, unknown))

    def _size_and_angle(self, stage: Stage) -> None:
        """The two parts of a force alone, the angle from the one over the other, then the size from that part which
        does not shrink.
        """
        size, angle = stage.unknown, stage.partners[0][1]
        for balance in BALANCES:
            self._forces(balance, size)
            self.goals.append(replace(self.goals.pop(), until="part", asked=False))
        level, upright = (
            next(goal for goal in self.goals if isinstance(goal, goals.Forces) and goal.key == each)
            for each in BALANCES
        )
        place, level = self.goals.index(level), replace(level, terms=one_angle(level.terms, upright.terms, angle))
        self.goals[place] = level
        sine, cosine = sorted((level.key, upright.key), reverse=ratio_of(level.terms, angle).name == "cos")
        divisor = ratio_of((level if cosine == "level" else upright).terms, angle)
        self.unknown -= {size, angle}
        self.goals.append(goals.Ratio(sine, angle, size, cosine, asked=angle in self.keys))
        over = sine if is_small(divisor, self.values[angle]) else cosine
        self.goals.append(goals.Back(over, size, asked=size in self.keys))
        self._follow(size)

    def _bones_axes(self) -> bool:
        return bool(self.course.axes)

    def _forces(self, balance: str, unknown: str) -> None:
        axis, name = (RIGHT, "level") if balance == "level" else (UP, "upright")
        self._along_axis(
            axis,
            name,
            unknown,
            "right" if name == "level" else "up",
            "horizontal forces, positive to the right" if name == "level" else "vertical forces, positive upwards",
        )

    def _along_axis(self, axis: Bearing, name: str, unknown: str, reaction: str, way: str) -> None:
        terms = []
        if self.body.problem.pivot.reaction:
            terms.append(Term(1, (self.body.letters(f"reaction.{reaction}"),), "reaction"))
        for force in self.body.forces:
            found = part(self.body, force, axis, name in ("level", "along"))
            if found.sign:
                line = {
                    "level": "the horizontal",
                    "upright": "the horizontal",
                    "along": f"the {self.course.axes}",
                    "across": f"the {self.course.axes}",
                }[name]
                self._name_derived(
                    force,
                    found.derived,
                    f"{line} and {noun_of('pull' if force.kind == 'muscle' else 'line', force.name)}",
                )
                head = (Quantity.of(str(force.count)),) if force.count > 1 else ()
                terms.append(Term(found.sign * force.sign, (*head, force.size, *found.factors), force.name))
        if self.course.balance != "two sides":
            self._add(goals.AtRest(name, name))
        self._add(goals.Forces(name, unknown, axis, tuple(terms), way))

    def _reaction(self) -> None:
        wanted = set(self.keys)
        if keys.FRICTION not in wanted and not any(keys.of(key).is_joint for key in wanted):
            return
        pair = ("reaction.right", "reaction.up")
        if self._bones_axes():
            bone = self.body.bearings[self.course.axes]
            pair = ("reaction.along", "reaction.across")
            self._along_axis(
                bone,
                "along",
                pair[0],
                "along",
                f"forces along the {self.course.axes}, positive away from {the(self.body.problem.pivot.name)}",
            )
            self._along_axis(
                bone.turned(90),
                "across",
                pair[1],
                "across",
                f"forces across the {self.course.axes}, positive a quarter turn counter-clockwise from there",
            )
            if wanted & {"reaction.right", "reaction.up"}:
                raise Fault(
                    file=self.body.problem.file,
                    key="ask",
                    found="horizontal and vertical parts of the joint force, and axes along a segment",
                    expected="parts in the axes of the course",
                    example='ask = ["reaction.along", "reaction.across"]',
                )
        if keys.FRICTION in wanted:
            first, second = (self.body.letters(each) for each in pair)
            self._add(goals.Friction("", keys.FRICTION, (first, second)))
        if "reaction" in wanted and self.course.resultant != ("parts",):
            first, second = (self.body.letters(each) for each in pair)
            self._add(goals.Resultant("", "reaction", (first, second)))
            if all(abs(self._part_value(each)) > 1e-9 for each in pair):
                self._add(goals.ResultantAngle("", keys.JOINT_ANGLE, (first, second)))

    def _part_value(self, key: str) -> float:
        """A part of the joint force over the largest force."""
        parts = {**self.values}
        if self._bones_axes():
            parts[keys.ALONG], parts[keys.ACROSS] = joint_along(self.body.bearings[self.course.axes], self.values)
        return parts[key] / (self.settled.largest_force() or 1.0)

    # ------------------------------------------------------------------ after the balances
    def _follow(self, unknown: str) -> None:
        """A force that is a stated multiple of the one just found; a mass from a weight just found."""
        for relation in self.body.relations:
            if relation.kind == "multiple" and relation.of[1].name == unknown:
                self._add(goals.Relation(relation.letter.name, relation.letter.name))
                self._follow(relation.letter.name)
            if relation.kind == "weight" and relation.letter.name == unknown and relation.of[0].name in self.unknown:
                self._add(goals.Relation(relation.letter.name, relation.of[0].name))
                self.unknown.discard(relation.of[0].name)

    def _afterwards(self) -> None:
        for each in self.wanted:
            key = keys.of(each.key)
            if key.what == "*moment":
                self._one_moment(key.owner)
            elif each.key == "total":
                self._total()
            elif key.what == "stress":
                self._add(goals.Stress(key.owner, each.key))
        areas = [pull.name for pull in self.body.problem.pulls if pull.area is not None]
        for name in areas:
            if f"{name}.stress" not in self.keys:
                self._add(goals.Stress(name, f"{name}.stress"))

    def _moments_only(self) -> None:
        for each in self.wanted:
            if each.key == "total":
                self._total()
            elif keys.of(each.key).what == "*moment":
                self._one_moment(keys.of(each.key).owner)
            else:
                raise Fault(
                    file=self.body.problem.file,
                    key="ask",
                    found=f"{each.name}, where nothing has to be at rest",
                    expected="moments only: NAME.moment or total.moment",
                    example='ask = ["total.moment"]',
                )

    def _one_moment(self, name: str) -> None:
        force = self.body.force(name)
        turn, factors = self._arm(force, "")
        head = (Quantity.of(str(force.count)),) if force.count > 1 else ()
        size = (
            ()
            if factors and isinstance(factors[0], Letter) and keys.of(factors[0].name).what == "*turning"
            else (force.size,)
        )
        terms = (Term(turn * self._sense() * force.sign, (*head, *size, *factors)),) if factors else ()
        if (self.course.balance, self.course.first) == ("two sides", "moments"):
            raise Fault(
                file=self.body.problem.file,
                key="ask",
                found=f"{name}.moment, in a class whose letters of moments are sizes on two sides",
                expected="the products first, so that the letter of a moment may have its sign",
                example='first = "products"',
            )
        if not self._sought(keys.moment(name)):
            self._add(goals.Moment(name, keys.moment(name), self._sense(), terms))

    def _total(self) -> None:
        self._add(goals.Moments("total moment", "total", self._sense(), self._moment_terms("")))


def _group(relation: Relation) -> int:
    """Masses and weights first, then how forces share, then lengths."""
    if relation.kind in ("multiple", "ratio"):
        return 1
    return 0 if keys.of(relation.letter.name).what in ("mass", "weight", "force") else 2


def plan(body: Body, truth: Truth, settled: Settled) -> tuple[Goal, ...]:
    """The goals of a working, in order."""
    return Planning(body, truth, settled).plan()
