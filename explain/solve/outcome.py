"""What came out, for those who check it: sizes, moments and components of every force as floats, and how a class
would write them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import cached_property
from math import hypot
from typing import Literal, NamedTuple

from ..equation import key as keys
from .answers import Answer, answers, told_short
from ..mechanics.body import Body, Force
from ..mechanics.signed_letters import along_each
from ..equation.terms import Letter
from ..exact.prime_field import scale
from ..exact.interval import Undefined, in_si, middle, to_figures
from .rounding_drift import moved
from .comparable_numbers import Beside, in_one_place, spelled, to_like_figures
from .engine import Working

Kind = Literal["proof", "lesson", "note"]
Result = Literal["holds", "warns", "fails", "does not apply"]


class Finding(NamedTuple):
    """What one check says. `label` is a word or two for the page, `source` where a note
    comes from;
    what is `quiet` is not worth a line on the page. A proof tells whether the answer stands, a lesson what may be
    learnt from it,
    a note how it compares with people; `of` names the forces and segments of which it speaks."""

    result: Result
    says: str = ""
    label: str = ""
    source: str = ""
    quiet: bool = False
    kind: Kind = "proof"
    of: tuple[str, ...] = ()


SILENT = Finding("does not apply")
LEFT_OF_FLOATS = 1e-10  # of the most a force could turn with: the sine of a millionth of a degree is far more


@dataclass(frozen=True)
class Outcome:
    """A working with its numbers. Values are in kg, m, s and degrees, from the certified lines where these have
    them.
    """

    working: Working

    def __repr__(self) -> str:
        return f"<Outcome of {self.body.problem.title!r}: {told_short(self.answers)}>"

    @cached_property
    def values(self) -> dict[str, float]:
        lengths = {
            f"{each.name}.length": float(in_si(each.length))
            for each in self.body.problem.segments
            if each.length is not None
        }
        out = {**lengths, **self.working.settled.values}
        for key, terms in self.working.checker.ledger.items():
            try:
                out[key] = float(middle(self.working.checker.sizes.sum(terms)))
            except Undefined:
                continue
        return out

    @property
    def sizes(self) -> Mapping[str, float]:
        """The values, of each force along its own direction, whichever its letter stands for."""
        return along_each(self.body, self.values)

    @cached_property
    def answers(self) -> dict[str, Answer]:
        return answers(self.working)

    @property
    def body(self) -> Body:
        return self.working.body

    @property
    def pivot(self) -> str:
        return str(self.working.body.problem.pivot.name)

    @property
    def word(self) -> str:
        return self.working.body.problem.course.word

    @cached_property
    def moments(self) -> dict[str, float]:
        """N m, counter-clockwise positive, of every force and couple; nothing where only floats leave some lever
        arm.
        """
        truth = self.working.truth
        found = {name: truth.size(each, self.values) for name, each in truth.moment.items() if name != "reaction"}
        most = {force.name: self.pull(force) * self.way(force) for force in self.body.forces if force.arm is None}
        return {name: each if abs(each) > LEFT_OF_FLOATS * most.get(name, 0.0) else 0.0 for name, each in found.items()}

    @cached_property
    def components(self) -> dict[str, tuple[float, float]]:
        """N to the right and up, of every force that has a direction."""
        truth = self.working.truth
        return {
            name: (truth.size(truth.level[name], self.values), truth.size(truth.upright[name], self.values))
            for name in truth.level
            if name != "reaction"
        }

    @property
    def directed(self) -> bool:
        return all(force.directed for force in self.working.body.forces)

    @cached_property
    def joint(self) -> tuple[float, float] | None:
        """The joint force on the body cut free; None where it is not settled."""
        if "reaction.right" not in self.values or "reaction.up" not in self.values:
            return None
        return self.values["reaction.right"], self.values["reaction.up"]

    @property
    def joint_asked(self) -> bool:
        return self.joint is not None and any(keys.of(name).is_joint for name in self.answers)

    @property
    def muscles(self) -> tuple[Force, ...]:
        return tuple(force for force in self.working.body.forces if force.kind == "muscle")

    @property
    def weights(self) -> tuple[Force, ...]:
        return tuple(force for force in self.working.body.forces if force.kind in ("weight", "load"))

    @property
    def largest_force(self) -> float:
        return max([self.pull(force) for force in self.working.body.forces] or [1.0])

    @property
    def all_forces(self) -> float:
        """N, the sizes of all forces but the joint's added up, whatever their directions."""
        return sum(map(self.pull, self.body.forces))

    def pull(self, force: Force) -> float:
        """N, all of `count` together, without a sign."""
        return abs(self.size(force)) * force.count

    def size(self, force: Force) -> float:
        """N, one of `count`; negative where it points against its stated direction."""
        return force.sign * self.values[force.size.name]

    def arm(self, force: Force) -> float:
        """The perpendicular distance from the pivot in m."""
        if force.arm is not None:
            return self.values[force.arm.name]
        size = self.size(force) * force.count
        if abs(size) < 1e-12:
            return 0.0
        return abs(self.moments[force.name] / size)

    @cached_property
    def moved(self) -> float:
        """The share by which the roundings on the way can have moved a number: next to nothing, but where the class
        goes on with what is shown.
        """
        return moved(self.working)

    def is_given(self, letter: Letter | None) -> bool:
        """Whether the author wrote its value."""
        return any(each.letter == letter for each in self.body.givens)

    @cached_property
    def possible(self) -> bool:
        """Whether what was found can be: no mass, weight, moment arm or centre of mass that was sought is negative."""
        sought = [
            each.letter.name
            for each in self.body.sought
            if keys.of(each.letter.name).what in ("mass", "hung", "weight", "moment_arm", "com")
        ]
        return all(self.sizes.get(key, 0.0) >= 0 for key in sought)

    def place(self, force: Force) -> tuple[float, float]:
        truth = self.working.truth
        x, y = truth.place[force.name]
        return truth.size(x, self.values), truth.size(y, self.values)

    def reach(self, force: Force) -> float:
        """How far from the pivot a force acts, in m."""
        return hypot(*self.place(force))

    def way(self, force: Force) -> float:
        """How long the way along the bones is from the pivot to where a force acts, in m."""
        return sum(abs(self.values[step.distance.name]) for step in force.steps)

    # ------------------------------------------------------------------ in writing
    def force(self, newtons: float) -> str:
        """A force as the class writes it: its unit, figures and ties."""
        return f"{self.number(newtons / self.one_force)} {self.force_unit}"

    def length(self, metres: float) -> str:
        return f"{self.number(metres / self.one_length)} {self.body.length_unit}"

    def moment(self, value: float) -> str:
        return f"{self.number(value / self.one_moment)} {self.moment_unit}"

    @property
    def one_force(self) -> float:
        """The class's unit of force in N."""
        return float(scale(((self.body.force_unit, 1),)))

    @property
    def one_length(self) -> float:
        """The class's unit of length in m."""
        return float(scale(((self.body.length_unit, 1),)))

    @property
    def one_moment(self) -> float:
        return self.one_force * self.one_length

    @property
    def force_unit(self) -> str:
        return "lb" if self.body.force_unit == "lbf" else self.body.force_unit

    @property
    def moment_unit(self) -> str:
        return (
            f"{self.body.length_unit}·lb"
            if self.body.force_unit == "lbf"
            else f"{self.body.force_unit}·{self.body.length_unit}"
        )

    def beside(self, values: Sequence[float], one: float, said: Callable[[Sequence[Decimal]], bool]) -> Beside:
        """Values in the class's unit `one` to one decimal place, so that what is said of them is true as printed."""
        course = self.body.problem.course
        return in_one_place(
            [value / one for value in values],
            course.figures,
            max(course.working_figures, course.figures + 1),
            course.ties,
            said,
        )

    def compared(
        self, values: Sequence[float], one: float, said: Callable[[Sequence[Decimal]], bool], figures: int = 0
    ) -> Beside:
        """Values in the class's unit `one`, each to the class's figures or more, so that what is said of them is
        true as printed.
        """
        course = self.body.problem.course
        return to_like_figures([value / one for value in values], figures or course.figures, course.ties, said)

    @property
    def figures(self) -> int:
        return self.body.problem.course.figures

    def times(self, ratio: float) -> str:
        """How many times, to two figures: "8.3 times"."""
        return f"{number(ratio, 2, self.body.problem.course.ties)} times"

    def number(self, value: float) -> str:
        course = self.working.body.problem.course
        return number(value, course.figures, course.ties)


def number(value: float, figures: int = 3, ties: str = "up") -> str:
    """A number to so many figures, with a true minus, thousands apart and no exponent; what is as good as nothing is
    0.
    """
    if abs(value) < 1e-9:
        return "0"
    size = to_figures(Fraction(f"{abs(value):.12g}"), figures, ties)
    return spelled(-size if value < 0 else size)
