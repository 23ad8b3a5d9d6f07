"""How each force turns: its arm, its turning part, and the terms of a balance of moments, with the goals these need
first. Writes no line.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from ..equation import key as keys
from . import goal as goals
from .goal import Goal
from ..mechanics.body import Bearing, Body, Force
from ..document.english import noun_of, weight_of
from ..equation.terms import Factor, Group, Letter, Quantity, Term, Terms, letters, term
from ..errors import Fault
from ..exact.prime_field import drawn
from ..mechanics.geometry import Lever, lever
from ..mechanics.settlement import Settled
from ..mechanics.truth import Truth
from ..mechanics.asked import asked


class Turning:
    """A plan as far as moments go; goals are collected in order."""

    def __init__(self, body: Body, truth: Truth, settled: Settled) -> None:
        self.body, self.truth, self.settled, self.course = body, truth, settled, body.problem.course
        self.values = settled.values
        self.wanted = asked(body)
        self.keys = [each.key for each in self.wanted]
        self.unknown = {each.letter.name for each in body.sought} | {stage.unknown for stage in settled.stages}
        self.goals: list[Goal] = []
        self.folded: set[str] = set()

    def _add(self, goal: Goal) -> None:
        parts = keys.JOINT in self.keys and "parts" in self.course.resultant and keys.of(goal.sought).is_joint
        own = goal.sought == keys.JOINT_ANGLE or isinstance(goal, goals.Stress)
        self.goals.append(replace(goal, asked=True) if own or parts or goal.sought in self.keys else goal)

    def _sought(self, key: str) -> bool:
        """Whether a goal seeks this letter already."""
        return any(goal.sought == key for goal in self.goals)

    # ------------------------------------------------------------------ arms
    def _name_derived(self, force: Force, derived: tuple[tuple[Bearing, Bearing, Fraction], ...], which: str) -> None:
        for first, second, acute in derived:
            tag = f"{force.name} {acute}"
            if tag not in self.folded:
                self.folded.add(tag)
                named = (keys.fold(force.name), keys.inclination(force.name))
                sought = next((key for key in named if not self._sought(key)), None)
                if sought:
                    self._add(goals.Fold(force.name, sought, first, second, acute, which))

    def _arm(self, force: Force, about: str) -> tuple[int, tuple[Factor, ...]]:
        """How a force turns, and the factors that stand beside its size in the balance."""
        found = lever(self.body, force, self.values, self.body.force(about) if about else None)
        if not found.terms:
            return found.sense, ()
        plain = len(found.terms) == 1 and found.terms[0].sign > 0
        bare = plain and len(found.terms[0].factors) == 1 and isinstance(found.terms[0].factors[0], Letter)
        worked = not bare and (force.toward is not None or self.course.carry != "unrounded")
        if worked and not about and self.truth.through_pivot(force.name, drawn()):
            found = Lever(found.sense, (), ())  # worked out step by step the arm would be what rounding leaves of it
        if bare:
            return found.sense, found.terms[0].factors
        if found.terms and letters(found.terms) & self.unknown:
            return found.sense, found.terms[0].factors if plain else (Group(found.terms),)
        self._name_derived(force, found.derived, self._lines(force))
        if (
            self.course.method == "turning component"
            and found.terms
            and len(force.steps) == 1
            and plain
            and force.toward is None
            and not about
        ):
            return self._turning(force, found)
        key = keys.arm(force.name, about)
        if not self._sought(key):
            self._add(goals.Arm(force.name, key, found, about=about))
        return found.sense, (self.body.letters(key),)

    def _turning(self, force: Force, found: Lever) -> tuple[int, tuple[Factor, ...]]:
        distance, rest = (
            force.steps[0].distance,
            tuple(f for f in found.terms[0].factors if f != force.steps[0].distance),
        )
        if force.size.name in self.unknown or force.size.name not in self.values or self._shared(force):
            return found.sense, (distance, *rest)
        key = keys.turning(force.name)
        if not self._sought(key):
            self._add(goals.Turning(force.name, key, found))
        return found.sense, (self.body.letters(key), distance)

    def _shared(self, force: Force) -> bool:
        return any(
            each.kind == "multiple" and each.letter == force.size and each.of[1].name in self.unknown
            for each in self.body.relations
        )

    def _lines(self, force: Force) -> str:
        bone = force.segment or "line from the pivot"
        if force.kind in ("weight", "load"):
            return f"the {bone} and the vertical line of {weight_of(force.name)}"
        return f"the {bone} and {noun_of('pull', force.name)}"

    # ------------------------------------------------------------------ balances
    def _moments(self, unknown: str, about: str) -> None:
        terms, sense = self._moment_terms(about), self._sense()
        if self.course.balance != "two sides":
            self._add(goals.AtRest("total", "total", about=about))
        if self.course.first == "moments" and not about and self._told_apart(terms):
            self._add(goals.MomentLetters("", unknown, sense, tuple(map(self._own_letter, terms))))
            if self.course.signs == "with the numbers":
                terms = tuple(self._worked_out(each, unknown, sense) for each in terms)
        self._add(goals.Moments("", unknown, sense, terms, about=about))

    def _told_apart(self, terms: Terms) -> bool:
        """Whether the moments can stand by their letters: on two sides it must be known which way each turns."""
        if self.course.balance != "two sides":
            return True
        sizes = {each.size.name for each in self.body.forces} | {each.size.name for each in self.body.twists}
        masses = {name for name in self.unknown if keys.of(name).what in ("mass", "hung")}
        forces = {force.name for force in self.body.forces} & {each.source for each in terms}
        return self.unknown <= sizes | masses | {keys.RIGHT, keys.UP} and not any(
            self.truth.through_pivot(name, drawn()) for name in forces
        )

    def _own_letter(self, each: Term) -> Term:
        """A moment by its letter: with its sign in it, or where it stands on its own side as a size. A couple has a
        letter of its own, a size.
        """
        if any(twist.name == each.source for twist in self.body.twists):
            return each
        sign = each.sign if self.course.balance == "two sides" else 1
        return Term(sign, (self.body.letters(keys.moment(each.source)),), each.source)

    def _worked_out(self, each: Term, unknown: str, sense: int) -> Term:
        """The letter of a moment whose number is worked out first, with its sign; the one that is sought stays a
        product.
        """
        own = self._own_letter(each)
        shared = any(force.name == each.source and self._shared(force) for force in self.body.forces)
        if own == each or shared or each.letters & self.unknown:
            return each
        key = keys.moment(each.source)
        if not self._sought(key):
            self._add(goals.Moment(each.source, key, sense, (each,)))
        return own

    def _sense(self) -> int:
        if self.course.positive == "up":
            return self._up_sense()
        return self.course.sense

    def _up_sense(self) -> int:
        """The sense that goes with "up is positive", where that rule is valid: only upward and downward parts turn,
        all on one side of the pivot.
        """
        reasons, sides = [], set()
        values = {
            **self.values,
            **{each.size.name: 1.0 for each in self.body.forces if not self.values.get(each.size.name)},
        }
        if self.body.twists:
            reasons.append(
                f"the couple {self.body.twists[0].name} has a turning sense but no force that points up or down"
            )
        for force in self.body.forces:
            if force.arm is not None:
                reasons.append(f"of {force.name} the arm and the turning sense are given, not where it acts")
                continue
            x, y = (self.truth.size(each, values) for each in self.truth.place[force.name])
            right, up = (self.truth.size(each[force.name], values) for each in (self.truth.level, self.truth.upright))
            size = (right * right + up * up) ** 0.5 * (x * x + y * y) ** 0.5 or 1.0
            if abs(right * y) > 1e-9 * size:
                reasons.append(
                    f"{force.name} is not vertical, and its horizontal part, at another height than the pivot, turns "
                    "too"
                )
            elif abs(up * x) > 1e-9 * size:
                sides.add(1 if x > 0 else -1)
        if len(sides) > 1:
            reasons.append(
                "forces act on both sides of the pivot, and an upward force behind it turns the same way as a "
                "downward force in front"
            )
        if reasons:
            raise Fault(
                file=self.body.problem.file,
                key="course.positive",
                found='"up", but ' + "; ".join(reasons),
                expected='a turning sense: "up is positive" holds for moments only where upward and downward parts '
                "alone "
                "turn, all on one side of the pivot",
                example='positive = "counter-clockwise"',
            )
        return sides.pop() if sides else 1

    def _moment_terms(self, about: str) -> Terms:
        sense, terms = self._sense(), []
        for force in self.body.forces:
            turn, factors = self._arm(force, about)
            if not factors:
                continue
            head = term(Quantity.of(str(force.count))).factors if force.count > 1 else ()
            size = (
                ()
                if factors and isinstance(factors[0], Letter) and keys.of(factors[0].name).what == "*turning"
                else (force.size,)
            )
            terms.append(Term(turn * sense * force.sign, (*head, *size, *factors), force.name))
        terms += [Term(each.turns * sense, (each.size,), each.name) for each in self.body.twists]
        if about and self.body.problem.pivot.reaction:
            raise Fault(
                found="moments about another point while the joint force is unknown", expected="moments about the pivot"
            )
        return tuple(terms)
