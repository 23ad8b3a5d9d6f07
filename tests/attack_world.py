"""The world of a problem, to fifty digits: what every letter is worth by its definition, and whether a ground is so."""

from __future__ import annotations

from collections.abc import Mapping
from contextlib import suppress
from typing import Any, NamedTuple

from fifty_digits import NEAR, ODD, SI, Worthless, mp, over, rightly_rounded, unit_size, worth
from true_values import SUMS, TrueValues

from explain.check.claim import Arm, Balance, Between, Claim, Moment, Turning
from explain.equation.terms import Equation, Shown, Term
from explain.solve.engine import Working

FINEST = -6  # a class that carries what is shown writes no finer angle
ENDLESS = 99
HERE = (mp.mpf(0), mp.mpf(0))
UNTOLD = (LookupError, AttributeError, TypeError, StopIteration, ValueError, ArithmeticError)


class Known(NamedTuple):
    """What the letters are worth in kg, m, s and in the base of odd sizes."""

    si: dict[str, Any]
    odd: dict[str, Any]

    def with_(self, more: Mapping[str, tuple[Any, Any]]) -> Known:
        """And these letters, each with its two values."""
        return Known(
            {**self.si, **{name: two[0] for name, two in more.items()}},
            {**self.odd, **{name: two[1] for name, two in more.items()}},
        )


class World:
    """One problem as it is: the worth of every letter by its definition, and of every ground by the free body."""

    def __init__(self, working: Working) -> None:
        self.body, self.course = working.body, working.body.problem.course
        self.as_shown = self.course.carry == "as shown"
        self.sense = self.course.sense if self.course.positive != "up" else _sense_told(working)
        self.true = (TrueValues(working, SI), TrueValues(working, ODD))
        for each in self.true:
            self._sums(each)
            self._arms(each)
        self._looked_at: dict[int, tuple[Shown, int]] = {}
        self.known = Known(self.true[0].letters(), self.true[1].letters())

    def _sums(self, true: TrueValues) -> None:
        """Sums vanish only of a body at rest, and only those that the problem has."""
        values, problem = true.values, self.body.problem
        gone = {name for name in (*SUMS, "total") if not problem.balanced}
        gone |= {"along", "across"} if not self.course.axes else set()
        gone |= {"*moment reaction"} if not problem.pivot.reaction else set()
        for name in gone:
            values.pop(name, None)
        if self.sense is None:
            return
        for force in self.body.forces:
            if force.size.name in values:
                turning = true._turning(force, values, HERE)
                values[f"*moment {force.name}"] = self._own_side(true, force, values) * turning
        if not problem.balanced:
            values["total"] = self.sense * true.moments(values)

    def _own_side(self, true: TrueValues, force: Any, values: dict[str, Any]) -> int:
        """The sense in which a moment's letter is counted: the class's, or where it is a size that of its force."""
        if (self.course.balance, self.course.first) != ("two sides", "moments"):
            return self.sense
        return 1 if true._turning(force, {**values, force.size.name: mp.mpf(1)}, HERE) >= 0 else -1

    def _arms(self, true: TrueValues) -> None:
        """An arm has a letter for each point it is measured from; that of the pivot says so by saying nothing."""
        for about in ("", *(each.name for each in self.body.forces if each.arm is None)):
            for force in self.body.forces:
                with suppress(*UNTOLD):
                    key = f"*arm {force.name} *about {about}" if about else f"*arm {force.name}"
                    true.values[key] = self._arm(true, force.name, about)

    def rounding(self, shown: Shown, least: int) -> str:
        """What is wrong with a rounded number where at least so many figures are wanted."""
        known = self._looked_at.get(id(shown))
        if known is None or known[0] is not shown:
            figures = -1 if not rightly_rounded(shown, self.course.ties) else figures_of(shown, self.as_shown)
            known = self._looked_at[id(shown)] = (shown, figures)
        return "wrongly rounded" if known[1] < 0 else "rounded too coarsely" if known[1] < least else ""

    # ------------------------------------------------------------------ what a claim says
    def meaning(self, claim: Claim) -> Mapping[str, tuple[Any, Any]]:
        """The letter that a claim defines, and its worth in both bases; nothing where the claim defines none."""
        try:
            match claim:
                case Between(name, first, second):
                    acute = self._twice(lambda true: self._acute(true, first, second) * mp.mpf(true.base.deg))
                    return {f"*fold {name}": acute, f"*inclination {name}": acute}
        except UNTOLD:
            pass
        return {}

    def _twice(self, ask: Any) -> tuple[Any, Any]:
        return ask(self.true[0]), ask(self.true[1])

    def _point(self, true: TrueValues, about: str) -> Any:
        if not about or about == "reaction" and self.body.problem.pivot.reaction:
            return HERE
        return true._walk(self.body.force(about).steps, true.values)

    def _arm(self, true: TrueValues, name: str, about: str) -> Any:
        force = self.body.force(name)
        unit = {**true.values, force.size.name: mp.mpf(1)}
        return abs(true._turning(force, unit, self._point(true, about))) / force.count

    def _acute(self, true: TrueValues, first: Any, second: Any) -> Any:
        apart = (true._turn(first, true.values) - true._turn(second, true.values)) % 180
        return min(apart, 180 - apart)

    def ground_holds(self, line: Equation, claim: Claim) -> bool:
        """Whether the sense, the point, the axis and the forces that a ground names are so, whatever the line says."""
        try:
            match claim:
                case Arm(name, sense, about):
                    return sense in (1, -1) and sense * self._turns(name, about) >= 0
                case Turning(name, sense):
                    return sense in (1, -1) and sense * self._turns(name, "") >= 0
                case Moment(_, sense):
                    return sense in (1, -1) and self.sense in (None, sense)
                case Balance():
                    return self._balanced(line, claim)
        except UNTOLD:
            return False
        return True

    def _turns(self, name: str, about: str) -> int:
        true, force = self.true[0], self.body.force(name)
        turning = true._turning(force, {**true.values, force.size.name: mp.mpf(1)}, self._point(true, about))
        return 0 if abs(turning) < NEAR else int(mp.sign(turning))

    def _balanced(self, line: Equation, claim: Balance) -> bool:
        """Every force with just what it adds, term by term, counted in the class's sense."""
        sided = self.course.balance == "two sides" and not claim.total
        if claim.sense not in (1, -1) or not sided and claim.axis is None and self.sense not in (None, claim.sense):
            return False
        written: dict[str, list[Term]] = {}
        both = (*line.left, *(each.flipped() for each in line.right)) if sided else line.left
        for each in line.right if claim.total else both:
            written.setdefault(each.source, []).append(each)
        acting = {each.name for each in self.body.forces} | {each.name for each in self.body.twists}
        for name in {*written, *acting, "reaction"}:
            found = worth(tuple(written.get(name, ())), self.known.si)
            added = claim.sense * self._adds(name, claim)
            if abs(found - added) > NEAR * max(1, abs(added)):
                return False
        return True

    def _adds(self, name: str, claim: Balance) -> Any:
        true = self.true[0]
        right, up = true.values.get("reaction.right", mp.mpf(0)), true.values.get("reaction.up", mp.mpf(0))
        if claim.axis is not None:
            axis = true._unit(claim.axis, true.values)
            push = (right, up)
            if name != "reaction":
                push = HERE if self._twist(name) else true._push(self.body.force(name), true.values)
            return push[0] * axis[0] + push[1] * axis[1]
        x, y = self._point(true, claim.about)
        if name == "reaction":
            return y * right - x * up
        twist = self._twist(name)
        if twist is not None:
            return twist.turns * true.values[twist.size.name]
        return true._turning(self.body.force(name), true.values, (x, y))

    def _twist(self, name: str) -> Any:
        return next((each for each in self.body.twists if each.name == name), None)


def _sense_told(working: Working) -> int | None:
    """Where "up" is positive: the sense that the working itself declares."""
    for move in working.moves:
        match move.line.claim:
            case Balance(axis=None, sense=sense) | Moment(sense=sense):
                return sense
    return None


def figures_of(shown: Shown, as_shown: bool) -> int:
    """How many figures a number has: endless where it is just the value, none where it is 0 and the value is not."""
    number, unit = shown.value.number, shown.value.unit
    try:
        size = over(worth((shown.of,), {}), unit_size(unit))
    except Worthless:
        return 0
    exact = abs(size - mp.mpf(str(number))) <= NEAR * abs(size)
    if exact or as_shown and unit == (("deg", 1),) and number.as_tuple().exponent == FINEST:
        return ENDLESS
    return len(number.as_tuple().digits) if number else 0
