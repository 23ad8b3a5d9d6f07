"""Holds every certified line against the solution in floats, apart from the checker: no line may be further from it
than roundings explain.

With the true values of all letters put in, the sides of a line differ by what roundings have left there so far, and by
nothing else. How much that may
be goes from line to line: a step multiplies it, a value that is put in or a number that is rounded adds to it, each as
it bears on this very line.
"""

from __future__ import annotations

from collections.abc import Mapping
from math import acos, asin, atan, cos, degrees, inf, radians, sqrt
from typing import Protocol

from ..check import claim as ground
from .goal import Goal
from ..check.checker import Certified
from ..problem.course import Course
from ..equation.terms import DEGREE, Equation, Letter, Shown, Trig, lone, parted
from .float_sizes import FloatSizes, clipped, in_si
from .true_letters import TrueLetters

NOISE = 1e-9  # of the terms of a line, and of the largest force: what floats lose, and an angle kept to a billionth
# of a degree; a force below that is settled as nothing
SLACK = 1.001  # half units are taken to first order


class Made(Protocol):
    """One move of a working."""

    @property
    def goal(self) -> Goal: ...
    @property
    def line(self) -> Certified: ...
    @property
    def before(self) -> Certified | None: ...


class SecondOpinion:
    """Goes through the moves of one working; `agrees` says of each whether it is as near to the float solution as
    roundings allow.
    """

    def __init__(self, truth: TrueLetters, course: Course) -> None:
        self.truth, self.course, self.shown = truth, course, course.carry == "as shown"
        self.exact, self.written = FloatSizes({}, unrounded=True), FloatSizes({}, unrounded=False)
        self.off: dict[int, float] = {}  # how far the sides of a certified line may be apart, by the line's identity
        self.carried: list[tuple[Equation, float]] = []  # the same, by the line as it is gone on with
        self.slack: dict[str, float] = {}  # how far a value in the ledger may be from the true one

    def agrees(self, move: Made) -> bool:
        """Whether the sides of the new line differ by no more than roundings allow."""
        letters, line = self.truth.of(move.goal), move.line.equation
        rounded = self.shown or line.rounded
        sizes = (self.written if rounded else self.exact).having(letters)
        allowed = self._step(move, letters) + (self._roundings(line, sizes) if rounded else 0.0)
        apart, noise = abs(sizes.gap(line)), NOISE * sizes.largest(line, self.truth.wholes)
        self.off[id(move.line)] = allowed
        self.carried.append((self._carried(move.line), allowed))
        self._enter(move.line, allowed + noise)
        return apart <= SLACK * allowed + noise and self._written_well(line, letters, allowed + noise)

    def _enter(self, made: Certified, allowed: float) -> None:
        """A letter alone on the left has a value from here on; a relation says nothing new of one that was found
        before.
        """
        letter = lone(made.equation.left)
        if not isinstance(letter, Letter) or made.equation.rounded:
            return
        if isinstance(made.claim, ground.Follows):
            self.slack.setdefault(letter.name, allowed)
        else:
            self.slack[letter.name] = allowed

    # ------------------------------------------------------------------ what a step makes of it
    def _step(self, move: Made, letters: Mapping[str, float]) -> float:
        claim, line = move.line.claim, move.line.equation
        sizes = (self.written if self.shown else self.exact).having(letters)
        if isinstance(claim, ground.Rounded):
            letter = lone(line.left)
            return self.slack.get(letter.name, 0.0) if isinstance(letter, Letter) else 0.0
        if isinstance(claim, ground.Premise) or move.before is None:
            told = self.slack.get(claim.key, 0.0) if isinstance(claim, ground.Converted) else 0.0
            if isinstance(claim, ground.Pythagoras):
                told += sum(self._missed(line, part, sizes) for part in claim.parts)
            return told + NOISE * self.exact.having(letters).largest(line, self.truth.wholes)
        before, off = self._carried(move.before), self.off[id(move.before)]
        match claim:
            case ground.Scaled(by):
                return off * abs(sizes.sum((by,)))
            case ground.Put(names, _):
                return off + sum(self._put(before, name, sizes) for name in names)
            case ground.Tangent(by):
                ratio = lone(line.left)
                return (
                    off / abs(sizes.sum((by,)) * cos(radians(sizes.factor(ratio.angle))))
                    if isinstance(ratio, Trig)
                    else off
                )
            case ground.Divided(by):
                return self._over(before, off, by, sizes)
            case ground.Rooted():
                square = sizes.sum(before.right)
                return max(abs(sqrt(max(0.0, square + k * off)) - sqrt(max(0.0, square))) for k in (1, -1))
            case ground.Inverted():
                ratio = lone(before.left)
                return _turned(ratio.name, sizes.sum(before.right), off + NOISE) if isinstance(ratio, Trig) else off
        return off

    def _missed(self, line: Equation, part: str, sizes: FloatSizes) -> float:
        """What the sides may differ by where roundings may have turned the sign of a part of the joint force, or
        left nothing of it.
        """
        slack = self.slack.get(part, 0.0)
        if slack < abs(sizes.letters[part]):
            return 0.0
        return self._put(line, part, sizes) if part in line.letters else slack

    def _over(self, before: Equation, off: float, by: Equation, sizes: FloatSizes) -> float:
        """How far one line over another may be off where each is; of a line that is zero, over what it shares with
        the other.
        """
        other, size = next(far for line, far in reversed(self.carried) if line == by), sizes.sum(by.right)
        if abs(size) <= other:
            return inf
        top = sizes.sum(before.right)
        if not before.right:
            return off / (abs(size) - other)
        return max(abs((top + j * off) / (size + k * other) - top / size) for j in (1, -1) for k in (1, -1))

    def _carried(self, line: Certified) -> Equation:
        return line.equation.as_shown if self.shown else line.equation

    def _put(self, before: Equation, name: str, sizes: FloatSizes) -> float:
        """How far the sides move apart while a letter goes to the end of what its value may be."""
        slack = self.slack.get(name, 0.0)
        if not slack:
            return 0.0
        part = Equation(parted(before.left, name)[0], parted(before.right, name)[0])
        here, value = sizes.gap(part), sizes.letters[name]
        return max(abs(sizes.having({**sizes.letters, name: value + k * slack}).gap(part) - here) for k in (1, -1))

    # ------------------------------------------------------------------ roundings
    def _roundings(self, line: Equation, sizes: FloatSizes) -> float:
        """How far the sides may move apart while every rounded number goes half a unit of its last figure either
        way.
        """
        figures = self.course.figures if line.rounded else self.course.working_figures
        here, total = sizes.gap(line), 0.0
        for each in {id(leaf): leaf for leaf in line.leaves if isinstance(leaf, Shown)}.values():
            value, half = in_si(each.value), half_unit(each, figures)
            total += max(
                abs(sizes.having(sizes.letters, {id(each): value + k * half}).gap(line) - here) for k in (1, -1)
            )
        return total

    def _written_well(self, line: Equation, letters: Mapping[str, float], allowed: float) -> bool:
        """A lone value is written with the figures of the class, and so near the true one."""
        letter, found = lone(line.left), lone(line.right) if len(line.right) == 1 else None
        if not isinstance(letter, Letter) or not isinstance(found, Shown):
            return True
        figures = self.course.figures if line.rounded else self.course.working_figures
        return abs(in_si(found.value) - letters[letter.name]) <= SLACK * (allowed + half_unit(found, figures))


def half_unit(shown: Shown, figures: int) -> float:
    """Half a unit of the last figure that a class writes of this number, in kg, m, s; angles are kept to a millionth
    of a degree at the finest.
    """
    number = shown.value.number
    least = 5e-7 if shown.value.unit == DEGREE else 0.0
    if not number:
        return least
    unit = in_si(shown.value) / float(number)
    return max(least, 0.5 * 10.0 ** (number.adjusted() - figures + 1)) * abs(unit)


def _turned(name: str, ratio: float, off: float) -> float:
    """How far an angle may be off where its sine, cosine or tangent is."""
    turn = {"sin": lambda x: asin(clipped(x)), "cos": lambda x: acos(clipped(x)), "tan": atan}[name]
    return max(abs(degrees(turn(ratio + k * off) - turn(ratio))) for k in (1, -1))
