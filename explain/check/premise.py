"""Where a line may start: what the truth says of a weight, an arm, an angle, a balance. Part of what is believed;
trusts no rule.
"""

from __future__ import annotations

from collections.abc import Mapping
from math import hypot
from typing import Any

from ..equation import key as keys
from . import claim as ground
from ..mechanics.body import RIGHT, UP, Bearing
from ..equation.terms import Equation, Factor, Letter, Power, Term, Terms, Trig, flipped, letters, lone
from ..exact.prime_field import Field
from ..exact.interval import Sizes, Undefined, fraction, middle, sign
from ..mechanics.truth import Truth, turn

from .roundings import Refused

SENSES = (1, -1)
LEVEL, ALONG = ("reaction.right", "reaction.up"), ("reaction.along", "reaction.across")


class Premises:
    """Tests a first line against the truth in one field. `ledger` holds the known values."""

    def __init__(
        self, truth: Truth, ledger: Mapping[str, Terms], sizes: Sizes, angles: Mapping[str, float] | None = None
    ) -> None:
        self.truth, self.ledger, self.sizes, self.angles = truth, ledger, sizes, angles or {}
        self.body, self.course = truth.body, truth.body.problem.course

    def holds(self, line: Equation, claim: ground.Claim, f: Field) -> bool:
        """Whether the line is what its claim says."""
        match claim:
            case ground.AtRest(key):
                return self._at_rest(key) and not line.right and _is(lone(line.left), key)
            case ground.Balance():
                return self._balance(line, claim, f)
            case ground.Follows(key):
                left = _base(lone(line.left)) if keys.of(key).what == "line" else lone(line.left)
                return _is(left, key) and f.sum(line.right) == self.truth.carry(self.truth.relation[key], f)
            case ground.Converted(key):
                return (
                    _is(lone(line.left), key)
                    and not letters(line.right)
                    and f.sum(line.right) == f.sum(self.ledger[key])
                )
            case ground.Pythagoras(parts):
                return parts == (ALONG if self.course.axes else LEVEL) and self._pythagoras(line, parts, f)
        return self._of_one_force(line, claim, f)

    def _at_rest(self, key: str) -> bool:
        """Whether a sum is one that vanishes."""
        if key == keys.JOINT_MOMENT:
            return self.body.problem.pivot.reaction
        return self.body.problem.balanced and (
            key in ground.AT_REST or bool(self.course.axes) and key in ground.ALONG_AXES
        )

    def _of_one_force(self, line: Equation, claim: ground.Claim, f: Field) -> bool:
        letter = lone(line.left)
        match claim:
            case ground.Arm(name, sense, about):
                moment = self.truth.moment_about(about, name) if about else self.truth.moment[name]
                unplaced = any(each.name == about and each.arm is not None for each in self.body.forces)
                if unplaced or not _is(letter, keys.arm(name, about)) or not self._arm(line.right, sense):
                    return False
                if not line.right:
                    return not about and self.truth.through_pivot(name, f)
                return sense * f.sum(line.right) * self._size(name, f) % f.p == self.truth.carry(moment, f)
            case ground.Turning(name, sense):
                steps = self.body.force(name).steps
                size = self.body.force(name).count * f.letter(steps[0].distance.name)
                return (
                    _is(letter, keys.turning(name))
                    and len(steps) == 1
                    and self._part(line.right, name, sense)
                    and sense * f.sum(line.right) * size % f.p == self.truth.carry(self.truth.moment[name], f)
                )
            case ground.Moment(name, sense):
                return (
                    _is(letter, keys.moment(name))
                    and sense in SENSES
                    and sense == self.sense()
                    and (self.course.balance, self.course.first) != ("two sides", "moments")  # it is a size there
                    and f.sum(line.right) == sense * self._moment(name, f) % f.p
                )
            case ground.Between(name, first, second):
                return (_is(letter, keys.fold(name)) or _is(letter, keys.inclination(name))) and self._between(
                    line.right, name, first, second, f
                )
            case ground.Stress(name):
                return _is(letter, f"{name}.stress") and f.sum(line.right) == f.over(
                    self.body.force(name).sign * f.letter(f"{name}.force"), f.letter(f"{name}.area")
                )
        return False

    # ------------------------------------------------------------------ arms and angles
    def _size(self, name: str, f: Field) -> int:
        force = self.body.force(name)
        return force.count * f.letter(force.size.name)

    def _arm(self, right: Terms, sense: int) -> bool:
        """A length or a size is not negative, and known."""
        return sense in SENSES and sign(self.sizes.sum(right)) >= 0

    def _part(self, right: Terms, name: str, sense: int) -> bool:
        """The turning part of a force has the sign of the force: it is negative where the force was found to point
        the other way.
        """
        return (
            sense in SENSES and sign(self.sizes.sum(right)) * sign(self.sizes.factor(self.body.force(name).size)) >= 0
        )

    def _between(self, right: Terms, name: str, first: Bearing, second: Bearing, f: Field) -> bool:
        own = self.body.force(name).bearing
        if own is None or _line(first) != _line(own) or _line(second) not in map(_line, self._lines()):
            return False
        between, written = f.over(turn(first, f), turn(second, f)), f.angle(right)
        alike = written in (between, f.over(1, between), f.p - between, f.p - f.over(1, between))
        return alike and 0 <= fraction(self.sizes.sum(right)) <= 90

    def _lines(self) -> list[Bearing]:
        """The lines that forces are measured against: level and upright, and the bones."""
        return [RIGHT, UP, *self.body.bearings.values()]

    # ------------------------------------------------------------------ balances
    def _senses(self) -> tuple[int, ...]:
        """The senses a balance may be counted in: both where "up" is positive and no place is known, since either
        says the same.
        """
        told = self.sense()
        return (told,) if told else SENSES

    def sense(self) -> int:
        """+1 where counter-clockwise counts as positive, -1 where clockwise does; for "up" what the upright forces
        do, 0 where that is not settled yet.
        """
        if self.course.positive != "up":
            return -1 if self.course.positive == "clockwise" else 1
        (values, untold), open_places = self._values(), False
        for force in self.body.forces:
            if any(symbol.name in untold for each in self.truth.place[force.name] for symbol in each.free_symbols):
                open_places = True
                continue
            x, y = (self.truth.size(each, values) for each in self.truth.place[force.name])
            level, upright = (
                self.truth.size(each[force.name], values) for each in (self.truth.level, self.truth.upright)
            )
            if abs(upright * x) > 1e-9 * hypot(level, upright) * hypot(x, y):
                return 1 if x > 0 else -1
        return 0 if open_places else 1

    def _values(self, *more: Any) -> tuple[dict[str, float], set[str]]:
        """What is known of each letter of the truth's forces and places, and of some more sums, in kg, m, s and
        degrees, one where nothing is known; and of which nothing is.
        """
        truth, out, untold = self.truth, dict(self.angles), set[str]()
        found = (
            *truth.level.values(),
            *truth.upright.values(),
            *(part for place in truth.place.values() for part in place),
            *more,
        )
        for name in (
            {symbol.name for each in found for symbol in each.free_symbols} - out.keys() - truth.bearings.keys()
        ):
            try:
                out[name] = middle(self.sizes.sum(self.ledger[name]))
            except (LookupError, Undefined):
                out[name] = 1.0
                untold.add(name)
        return out, untold

    def _balance(self, line: Equation, claim: ground.Balance, f: Field) -> bool:
        terms, other = (line.right, line.left) if claim.total else (line.left, line.right)
        senses = self._senses() if claim.axis is None else (1,)
        if self.course.balance == "two sides" and not claim.total:
            terms, other, senses = (*terms, *flipped(other)), (), SENSES  # either side may come first
        total = self._is_total(other, claim) if claim.total else (not other and self.body.problem.balanced)
        if not total or claim.sense not in senses or not self._axis_allowed(claim.axis):
            return False
        written: dict[str, int] = dict.fromkeys(self.truth.moment, 0)
        for each in terms:
            if each.source not in written:
                return False
            written[each.source] += self._told(each, claim, f)
        return all(found % f.p == claim.sense * self._adds(name, claim, f) % f.p for name, found in written.items())

    def _told(self, each: Term, claim: ground.Balance, f: Field) -> int:
        """A term of a balance; the letter of a moment stands for that moment, with its sign where the class puts all
        on one side, else as a size.
        """
        if each.factors != (self.body.letters.known.get(keys.moment(each.source)),):
            return f.sum((each,))
        about_pivot = claim.axis is None and not claim.about
        signed = self.course.balance != "two sides"
        if not about_pivot or (signed and (each.sign < 0 or claim.sense != self.sense())):
            raise Refused("the letter of a moment stands for the moment about the pivot, with its sign")
        if not signed and each.sign * claim.sense != self._turns(each.source):
            raise Refused("the letter of a moment stands on the side to which it turns")
        return claim.sense * self._moment(each.source, f)

    def _turns(self, name: str) -> int:
        """Which way a force turns, +1 counter-clockwise, where its size is taken as positive; 0 where nobody knows."""
        moment = self.truth.moment[name]
        values, untold = self._values(moment)
        sizes = {each.size.name: 1.0 for each in self.body.forces} | {each.size.name: 1.0 for each in self.body.twists}
        turning = self.truth.size(moment, {**values, **sizes})
        known = {symbol.name for symbol in moment.free_symbols} & untold <= sizes.keys()
        return 0 if not known or not turning else 1 if turning > 0 else -1

    def _is_total(self, other: Terms, claim: ground.Balance) -> bool:
        """The sum of all moments about the pivot, in the sense of the class."""
        return (
            claim.total == "total"
            and _is(lone(other), "total")
            and claim.axis is None
            and not claim.about
            and claim.sense == self.sense()
        )

    def _axis_allowed(self, axis: Bearing | None) -> bool:
        if axis is None:
            return True
        bone = self.body.bearings.get(self.course.axes) if self.body.problem.pivot.reaction else None
        return _same(axis, bone) or _same(axis, bone.turned(90)) if bone else _same(axis, RIGHT) or _same(axis, UP)

    def _adds(self, name: str, claim: ground.Balance, f: Field) -> int:
        """What one force adds to a balance, from the truth."""
        if claim.axis is None:
            return (
                self.truth.carry(self.truth.moment_about(claim.about, name), f)
                if claim.about
                else self._moment(name, f)
            )
        if name == "reaction" and self.course.axes:
            return f.letter(
                "reaction.along" if _same(claim.axis, self.body.bearings[self.course.axes]) else "reaction.across"
            )
        return self.truth.carry(self.truth.component(name, claim.axis), f)

    def _moment(self, name: str, f: Field) -> int:
        """The moment of one force about the pivot; nothing where a line before said that its arm is nothing."""
        none = f.letters.get(keys.arm(name)) == 0 and self.truth.through_pivot(name, f)
        return 0 if none else self.truth.carry(self.truth.moment[name], f)

    def _pythagoras(self, line: Equation, parts: tuple[str, str], f: Field) -> bool:
        x, y = (f.letter(each) for each in parts)
        match lone(line.left):
            case Power(base, 2):
                return _is(base, "reaction") and f.sum(line.right) == (x * x + y * y) % f.p
            case Trig("tan", angle):
                ratio = f.over(y, x)
                return (
                    _is(angle, keys.JOINT_ANGLE)
                    and pow(f.sum(line.right), 2, f.p) == ratio * ratio % f.p
                    and sign(self.sizes.sum(line.right)) >= 0
                )
            case Letter(name=keys.FRICTION):
                way = f.over(
                    f.turn(self.body.problem.pivot.surface),
                    turn(self.body.bearings.get(self.course.axes, RIGHT), f),
                )
                along, across = (a * f.ratio("cos", way) + b * f.ratio("sin", way) for a, b in ((x, y), (y, -x)))
                return (
                    pow(f.sum(line.right) * across, 2, f.p) == pow(along, 2, f.p)
                    and sign(self.sizes.sum(line.right)) >= 0
                )
            case Letter() as size:
                return _is(size, "reaction") and self._one_part(line.right, parts, f)
        return False

    def _one_part(self, right: Terms, parts: tuple[str, str], f: Field) -> bool:
        """One part is found to be zero, so the size is the other without its sign."""
        left_over = [name for name in parts if self.ledger.get(name) != ()]
        if len(left_over) == 2:
            return False
        if not left_over:
            return not right
        other = f.letter(left_over[0])
        return f.sum(right) in (other, f.p - other) and sign(self.sizes.sum(right)) >= 0


def _is(factor: Factor | None, key: str) -> bool:
    """Whether a factor is the letter of this key."""
    return isinstance(factor, Letter) and factor.name == key


def _base(factor: Factor | None) -> Factor | None:
    """What stands squared."""
    return factor.base if isinstance(factor, Power) and factor.exponent == 2 else None


def _same(a: Bearing, b: Bearing) -> bool:
    return a.degrees % 360 == b.degrees % 360 and a.unknown == b.unknown


def _line(bearing: Bearing) -> tuple[object, ...]:
    return bearing.degrees % 180, bearing.unknown
