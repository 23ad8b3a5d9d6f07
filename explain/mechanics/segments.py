"""Lay the bones: letters with their values, bearings of segments and pulls, and the way from the pivot to each
place. Knows no force's size.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from types import MappingProxyType

from ..equation import key as keys
from .body import Bearing, Given, Relation, Sought, Step, turned_back
from ..document.english import its, the
from ..equation.terms import Letter, Quantity
from ..errors import Fault
from .letters import Letters
from ..problem.model import Couple, Direction, Load, Pair, Percent, Place, Problem, Pull, Segment, Unknown

NOMINAL = Fraction(
    45_000_001, 1_000_000
)  # just beside 45 degrees, where no two rays that are given in words lie on one line
LEVEL = {"right": 0, "up": 90, "left": 180, "down": 270}
_SIDES = (("to the right", "to the left"), ("above", "below"))


class Laying:
    """One pass over a problem; what has been found so far. `posture` has trial values for sought angles, 45 degrees
    where it says nothing.
    """

    def __init__(self, problem: Problem, posture: Mapping[str, Fraction] = MappingProxyType({})) -> None:
        self.problem, self.posture = problem, posture
        everything: list[Segment | Pull | Load | Couple] = [
            *problem.segments,
            *problem.pulls,
            *problem.loads,
            *problem.couples,
        ]
        turning: list[Segment | Pull] = [*problem.segments, *problem.pulls]
        angles = [
            each.name for each in turning if each.direction is not None and isinstance(each.direction.turn, Unknown)
        ]
        heavy = [each.name for each in everything if isinstance(each, Segment | Load)]
        self.letter = Letters(problem.course, [each.name for each in everything], angles, heavy)
        self.bearings: dict[str, Bearing] = {}
        self.starts: dict[str, tuple[Step, ...]] = {}
        self.givens: dict[str, Given] = {}
        self.relations: list[Relation] = []
        self.sought: list[Sought] = []
        self.turnovers: list[tuple[str, Fraction]] = []

    # ------------------------------------------------------------------ letters and values
    def _value(self, key: str, value: object, meaning: str, source: str = "") -> Letter:
        """The letter of a quantity; enters its value, its share, or that it is sought."""
        letter = self.letter(key)
        match value:
            case Quantity(number, unit):
                self.givens.setdefault(key, Given(letter, meaning, Quantity(abs(number), unit), source))
            case Unknown():
                self.sought.append(Sought(letter, meaning))
        return letter

    def _share(self, letter: Letter, share: Quantity, of: Letter, meaning: str, source: str = "") -> None:
        part = self._value(f"{letter.name}%", share, meaning, source)
        self.relations.append(Relation("share", letter, (part, of)))

    def _person(self, what: str, key: str) -> Letter:
        person = self.problem.person
        if person is None or person.mass is None:
            raise Fault(
                file=self.problem.file,
                key=key,
                found="a share of the body, but no body mass",
                expected="[person] with mass",
                example='[person]\nmass = "70 kg"',
            )
        mass = self._value("*person.mass", person.mass, "body mass")
        if what == "mass":
            return mass
        weight = self.letter("*person.weight")
        if all(each.letter != weight for each in self.relations):
            self.relations.append(Relation("weight", weight, (mass, self._g())))
        return weight

    def _g(self) -> Letter:
        return self._value("g", self.problem.course.g, "acceleration of free fall")

    # ------------------------------------------------------------------ directions and places
    def _bearing(self, direction: Direction, bone: Bearing | None, key: str) -> Bearing:
        start = self._line(direction.start, bone, key)
        if direction.turn is None:
            return start
        end = self._line(direction.toward, bone, key)
        sense = self._shorter_way(start, end, key)
        if isinstance(direction.turn, Unknown):
            angle = self.letter(keys.angle(key))
            return Bearing(start.degrees, (*start.unknown, (angle, sense)), within=start.within)
        turned = (start.degrees + sense * Fraction(direction.turn.number)) % 360
        return Bearing(turned, start.unknown, direction.turn, (*start.within, (key, sense)))

    def _line(self, word: str, bone: Bearing | None, key: str) -> Bearing:
        if word in LEVEL:
            return Bearing(Fraction(LEVEL[word]))
        if bone is None:
            raise Fault(
                file=self.problem.file,
                key=key,
                found=f'"{word}", but there is no segment',
                expected="a segment that it could be along",
                example='direction = "30 deg above left"',
            )
        along = bone if word == "out" else bone.turned(180)
        return Bearing(along.degrees, along.unknown, within=along.within)

    def _shorter_way(self, start: Bearing, end: Bearing, key: str) -> int:
        """+1 where the shorter way from one ray to the other is counter-clockwise. Where a sought angle turns one of
        them against the other,
        both ways are possible, and this posture tells which."""
        between = turned_back(end, start)
        at = between.at({letter.name: self.posture.get(letter.name, NOMINAL) for letter, _ in between.unknown}) % 360
        if at in (0, 180):
            raise Fault(
                file=self.problem.file,
                key=f"{key}.direction",
                found="two directions on one line",
                expected="two directions that are not on one line",
                example='direction = "70 deg from back toward up"',
            )
        if len(between.unknown) == 1:
            letter, k = between.unknown[0]
            self.turnovers += [(letter.name, (half - between.degrees) / k % 360) for half in (0, 180)]
        return 1 if at < 180 else -1

    def _lay(self, segment: Segment) -> None:
        index = self.problem.segments.index(segment)
        before = segment.start or (self.problem.segments[index - 1].name if index else "")
        parent = next((each for each in self.problem.segments if each.name == before), None)
        if parent is not None:
            if parent.length is None:
                raise Fault(
                    file=self.problem.file,
                    key=f"segment {parent.name}.length",
                    found="no length",
                    expected=f"the length of {parent.name}, since {segment.name} starts at its far end",
                    example='length = "28 cm"',
                )
            far = Step(
                self._value(f"{parent.name}.length", parent.length, f"length of {the(parent.name)}"),
                self.bearings[parent.name],
            )
            self.starts[segment.name] = (*self.starts[parent.name], far)
        else:
            self.starts[segment.name] = ()
        bone = self.bearings[parent.name] if parent else None
        self.bearings[segment.name] = self._bearing(segment.direction, bone, segment.name)
        self._seek_angle(segment)

    def _seek_angle(self, item: Segment | Pull) -> None:
        if item.direction is None or not isinstance(item.direction.turn, Unknown):
            return
        ends = (Fraction(item.range[0].number), Fraction(item.range[1].number)) if item.range else None
        self.sought.append(Sought(self.letter(keys.angle(item.name)), f"angle of {the(item.name)}", ends))

    def _along(self, key: str, amount: object, segment: str, meaning: str, source: str = "") -> tuple[Step, ...]:
        """From the pivot to a place along a segment."""
        bone = self.bearings[segment]
        letter = self._value(key, amount, meaning, source)
        if isinstance(amount, Percent):
            length = next(each.length for each in self.problem.segments if each.name == segment)
            if length is None:
                raise Fault(
                    file=self.problem.file,
                    key=key,
                    found=f"a share of the length of {segment}, which is not given",
                    expected="the length of the segment",
                    example='length = "26 cm"',
                )
            whole = self._value(f"{segment}.length", length, f"length of {the(segment)}")
            whose = its(segment) if keys.of(letter.name).what == "com" else "the"
            self._share(letter, amount.number, whole, f"{meaning}, as a share of {whose} length", source)
        negative = isinstance(amount, Quantity) and amount.number < 0
        if isinstance(amount, Quantity) and amount.number == 0:
            return self.starts[segment]
        return (*self.starts[segment], Step(letter, bone.turned(180) if negative else bone))

    def _point(self, keys: tuple[str, str], point: Pair, meaning: str) -> tuple[Step, ...]:
        steps = []
        for key, value, plus, minus, ways in zip(keys, point, (0, 90), (180, 270), _SIDES, strict=True):
            if value.number:
                letter = self._value(key, value, f"{meaning}, {ways[value.number < 0]}")
                steps.append(Step(letter, Bearing(Fraction(plus if value.number > 0 else minus))))
        return tuple(steps)

    def _place(self, name: str, place: Place) -> tuple[tuple[Step, ...], str]:
        if place.point is not None:
            return self._point(
                (f"{name}.x", f"{name}.y"), place.point, f"{self.problem.pivot.name} to {name}"
            ), place.on
        segment = place.on or (self.problem.segments[-1].name if self.problem.segments else "")
        if place.at is None or not segment:
            return (), segment
        return self._along(f"{name}.at", place.at, segment, f"{self._near(segment)} to {name}"), segment

    def _near(self, segment: str) -> str:
        """Where distances along a segment begin, in words."""
        return self.problem.pivot.name if not self.starts[segment] else f"near end of {the(segment)}"
