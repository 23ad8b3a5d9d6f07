"""What came out, for those who check it: sizes, moments and components of every force as floats, and how a class would write them."""
from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from math import hypot
from typing import NamedTuple

from .answers import Answer, answers
from .body import Body, Force
from .field import scale
from .interval import Undefined, in_si, middle, to_figures
from .solve import Working

RESULTS = ("holds", "warns", "fails", "does not apply")


class Finding(NamedTuple):
    """What one check says. `result` is one of RESULTS; `label` is a word or two for the page, `source` where a note comes from;
    what is `quiet` is not worth a line on the page."""

    result: str
    says: str = ""
    label: str = ""
    source: str = ""
    quiet: bool = False


SILENT = Finding("does not apply")


@dataclass(frozen=True)
class Outcome:
    """A working with its numbers. Values are in kg, m, s and degrees, from the certified lines where these have them."""

    working: Working

    @cached_property
    def values(self) -> dict[str, float]:
        lengths = {f"{each.name}.length": float(in_si(each.length)) for each in self.body.problem.segments if each.length is not None}
        out = {**lengths, **self.working.settled.values}
        for key, terms in self.working.checker.ledger.items():
            try:
                out[key] = float(middle(self.working.checker.sizes.sum(terms)))
            except Undefined:
                continue
        return out

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
        """N m, counter-clockwise positive, of every force and couple."""
        return {name: self.working.truth.size(each, self.values) for name, each in self.working.truth.moment.items()
                if name != "reaction"}

    @cached_property
    def components(self) -> dict[str, tuple[float, float]]:
        """N to the right and up, of every force that has a direction."""
        truth = self.working.truth
        return {name: (truth.size(truth.level[name], self.values), truth.size(truth.upright[name], self.values))
                for name in truth.level if name != "reaction"}

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
        return self.joint is not None and any(name.startswith("reaction") for name in self.answers)

    @property
    def muscles(self) -> tuple[Force, ...]:
        return tuple(force for force in self.working.body.forces if force.kind == "muscle")

    @property
    def weights(self) -> tuple[Force, ...]:
        return tuple(force for force in self.working.body.forces if force.kind in ("weight", "load"))

    @property
    def largest_force(self) -> float:
        return max([abs(self.size(force)) * force.count for force in self.working.body.forces] or [1.0])

    def size(self, force: Force) -> float:
        """N, one of `count`; negative where it points against its stated direction."""
        return self.values[force.size.name]

    def arm(self, force: Force) -> float:
        """The perpendicular distance from the pivot in m."""
        if force.arm is not None:
            return self.values[force.arm.name]
        size = self.size(force) * force.count
        if abs(size) < 1e-12:
            return 0.0
        return abs(self.moments[force.name] / size)

    @property
    def blur(self) -> float:
        """How much of a number is lost where large ones cancel: in floats next to nothing, more where the class goes on with what is shown."""
        course = self.body.problem.course
        return 1e-12 if course.carry == "unrounded" else float(10 ** (1 - course.working_figures))

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
        unit = self.working.body.force_unit
        return f"{self.number(newtons / float(scale(((unit, 1),))))} {'lb' if unit == 'lbf' else unit}"

    def length(self, metres: float) -> str:
        unit = self.working.body.length_unit
        return f"{self.number(metres / float(scale(((unit, 1),))))} {unit}"

    def moment(self, value: float) -> str:
        return f"{self.moment_number(value)} {self.moment_unit}"

    def moment_number(self, value: float) -> str:
        force, length = self.working.body.force_unit, self.working.body.length_unit
        return self.number(value / float(scale(((force, 1), (length, 1)))))

    @property
    def moment_unit(self) -> str:
        force, length = self.working.body.force_unit, self.working.body.length_unit
        return f"{length}·lb" if force == "lbf" else f"{force}·{length}"

    def number(self, value: float) -> str:
        course = self.working.body.problem.course
        return number(value, course.figures, course.ties)


def number(value: float, figures: int = 3, ties: str = "up") -> str:
    """A number to so many figures, with a true minus, thousands apart and no exponent; what is as good as nothing is 0."""
    if abs(value) < 1e-9:
        return "0"
    digits = f"{to_figures(Fraction(f'{abs(value):.12g}'), figures, ties):f}"
    whole, point, rest = digits.partition(".")
    if len(whole) > 4:
        whole = f"{int(whole):,}".replace(",", "\u202f")
    return ("−" if value < 0 else "") + whole + point + rest


def times(value: float) -> str:
    """How many times: "8.3 times"."""
    return f"{number(value, 2)} times"


def listed(names: list[str]) -> str:
    return names[0] if len(names) == 1 else ", ".join(names[:-1]) + " and " + names[-1]
