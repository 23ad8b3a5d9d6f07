"""Cut the body free: from what the author wrote to forces, places and bearings. Knows the format's rules, no
equation.
"""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from types import MappingProxyType

from ..equation import key as keys
from .body import Bearing, Body, Force, Kind, Relation, Step, Toward, Twist
from ..document.english import the, verb
from ..equation.terms import Letter, Quantity
from ..errors import Fault
from .signed_letters import with_signs
from .weights import Weighing
from ..wording.phrases import factor_meaning, force_meaning
from ..wording.hung_words import hung_meaning
from ..problem.model import (
    AtLimit,
    Couple,
    Hung,
    Load,
    Multiple,
    Pair,
    Percent,
    Problem,
    Pull,
    Segment,
    Unknown,
)

LENGTHS = ("m", "cm", "mm", "in", "ft")


def cut_free(problem: Problem, posture: Mapping[str, Fraction] = MappingProxyType({})) -> Body:
    """The free body of a problem, in a posture where its angles are sought. Raises Fault where the geometry cannot
    be.
    """
    return _Cutting(problem, posture).body()


class _Cutting(Weighing):
    """The forces on the bones that were laid."""

    def body(self) -> Body:
        for segment in self.problem.segments:
            self._lay(segment)
        weights = [
            self._segment_weight(each)
            for each in self.problem.segments
            if each.mass is not None or each.weight is not None
        ]
        pulls = [self._pull(each) for each in self.problem.pulls]
        loads = [self._load(each) for each in self.problem.loads]
        forces = (*[p for p in pulls if p.kind == "muscle"], *[p for p in pulls if p.kind == "force"], *weights, *loads)
        self._rough()
        twists = tuple(self._couple(each) for each in self.problem.couples)
        givens, relations = tuple(self.givens.values()), tuple(self.relations)
        if self.problem.course.letters_have_signs:
            forces, givens, relations = with_signs(self.problem, forces, givens, relations)
        return Body(
            self.problem,
            self.letter,
            self.bearings,
            self.starts,
            forces,
            twists,
            givens,
            relations,
            tuple(self.sought),
            self._length_unit(),
            self._force_unit(),
            self._mass_unit(),
            tuple(self.turnovers),
        )

    def _rough(self) -> None:
        """A coefficient of friction that is given, and where all of it is used what the surface pushes along itself."""
        pivot = self.problem.pivot
        if not isinstance(pivot.friction, Quantity):
            return
        letter = self._value(keys.FRICTION, pivot.friction, f"coefficient of friction at {the(pivot.name)}")
        if pivot.slips:
            level = pivot.surface % 180 == 0
            along, across = (self.letter(each) for each in ((keys.RIGHT, keys.UP) if level else (keys.UP, keys.RIGHT)))
            lies = 1 if pivot.surface in (0, 270) else -1  # whether what is positive leads away from the surface
            ahead = 1 if pivot.surface in (0, 90) else -1
            parts = ((Fraction(-pivot.slips * ahead * lies), ((letter, 1), (across, 1))),)
            self.relations.append(Relation("slips", along, (letter, across), parts=parts))

    # ------------------------------------------------------------------ forces
    def _pull(self, pull: Pull) -> Force:
        kind: Kind = "muscle" if pull.kind == "muscle" else "force"
        letter = self._size(pull)
        steps, segment = self._place(pull.name, pull.place)
        bone = self.bearings.get(segment) or (
            self.bearings[self.problem.segments[-1].name] if self.problem.segments else None
        )
        bearing = self._bearing(pull.direction, bone, pull.name) if pull.direction else None
        self._seek_angle(pull)
        arm = None
        if pull.moment_arm is not None:
            arm = self._value(f"{pull.name}.moment_arm", pull.moment_arm, f"moment arm of {the(pull.name)}")
        toward = self._toward(pull.name, steps, pull.toward) if pull.toward else None
        if isinstance(toward, Bearing):
            bearing, toward = toward, None
        return Force(pull.name, kind, letter, steps, bearing, toward, arm, pull.turns, pull.count, segment)

    def _size(self, pull: Pull) -> Letter:
        force = pull.force
        if isinstance(force, AtLimit):
            force = _limit(pull.limit)
        if isinstance(force, Hung):
            letter = self.letter(f"{pull.name}.force")
            mass = self._value(f"{pull.name}.hung", force.mass, hung_meaning(pull))
            self.relations.append(Relation("weight", letter, (mass, self._g())))
            return letter
        first = next((each for each in self.problem.pulls if each.share), pull)
        if pull.share and pull is not first:
            return self._by_area(pull, first)
        letter = self._value(f"{pull.name}.force", force, force_meaning(pull))
        if isinstance(force, Percent):
            self._share(
                letter,
                force.number,
                self._person("weight", f"{pull.name}.force"),
                f"share of the body weight: {pull.name}",
            )
        if isinstance(force, Multiple):
            factor = self._value(f"{pull.name}.force%", force.factor, factor_meaning(self.problem, pull, force.of))
            self.relations.append(Relation("multiple", letter, (factor, self._size_letter(force.of))))
        if pull.area is not None:
            self._area(pull)
        return letter

    def _area(self, pull: Pull) -> Letter:
        return self._value(f"{pull.name}.area", pull.area, f"cross-section of {the(pull.name)}")

    def _by_area(self, pull: Pull, first: Pull) -> Letter:
        """A pull that is to another one as their cross-sections are."""
        own, whole, ratio = self._area(pull), self._area(first), self.letter(f"{pull.name}.force%")
        letter, other = (self.letter(f"{each.name}.force") for each in (pull, first))
        self.relations.append(Relation("ratio", ratio, (own, whole), parts=((Fraction(1), ((own, 1), (whole, -1))),)))
        self.relations.append(Relation("multiple", letter, (ratio, other)))
        return letter

    def _size_letter(self, name: str) -> Letter:
        heavy: list[Load | Segment] = [*self.problem.loads, *self.problem.segments]
        weights = {each.name for each in heavy}
        return self.letter(f"{name}.{'weight' if name in weights else 'force'}")

    def _toward(self, name: str, grip: tuple[Step, ...], point: Pair) -> Toward | Bearing:
        if any(step.bearing.unknown for step in grip):
            raise Fault(
                file=self.problem.file,
                key=f"{name}.toward",
                found="a pull towards a fixed point, while the slope of its bone is sought",
                expected="a direction that is given: the pull would turn with the slope, and no step of algebra "
                "gives the slope then",
                example='direction = "70 deg from back toward up"',
                advice="Give the slope and ask for the pull; a series with a sweep shows it at many slopes.",
            )
        target = self._point(
            (f"{name}.tx", f"{name}.ty"),
            point,
            f"{self.problem.pivot.name} to the point {the(name)} {verb(name, 'pull')} toward",
        )
        across, rise, line = (self.letter(f"{name}.{what}") for what in ("across", "rise", "line"))
        walk = (*((1, step) for step in target), *((-1, step) for step in grip))
        right, up = self._component_sign(walk, 0), self._component_sign(walk, 90)
        if not right and not up:
            raise Fault(
                file=self.problem.file,
                key=f"{name}.toward",
                found="the point where it grips",
                expected="another point, for a direction",
                example='toward = ["2 cm", "25 cm"]',
            )
        if not right or not up:
            return Bearing(Fraction({1: 0, -1: 180}[right] if right else {1: 90, -1: 270}[up]))
        self.relations.append(Relation("across", across, (), tuple((k * right, step) for k, step in walk)))
        self.relations.append(Relation("rise", rise, (), tuple((k * up, step) for k, step in walk)))
        self.relations.append(Relation("line", line, (across, rise)))
        return Toward(across, right, rise, up, line)

    def _component_sign(self, walk: tuple[tuple[int, Step], ...], axis: int) -> int:
        from ..exact.interval import middle, sine, times
        from ..problem.quantity import convert

        total = 0.0
        for k, step in walk:
            value = convert(self._length_of(step.distance), (("m", 1),))
            total += k * middle(times(Fraction(value.number), sine(step.bearing.degrees - axis + 90)))
        return 0 if abs(total) < 1e-12 else 1 if total > 0 else -1

    def _length_of(self, letter: Letter) -> Quantity:
        if letter.name in self.givens:
            return self.givens[letter.name].value
        share = next((each for each in self.relations if each.letter == letter), None)
        if share is None:
            raise Fault(
                file=self.problem.file,
                key=letter.name,
                found='"?" where the direction of a pull depends on it',
                expected="a number, or a direction in degrees",
                example='direction = "70 deg from back toward up"',
            )
        part, whole = (self.givens[each.name].value for each in share.of)
        return Quantity(part.number * whole.number / Decimal(100), whole.unit)

    def _couple(self, couple: Couple) -> Twist:
        return Twist(
            couple.name,
            self._value(f"{couple.name}.moment", couple.moment, f"{self.problem.course.word} of {the(couple.name)}"),
            couple.turns,
        )

    # ------------------------------------------------------------------ units of the answers
    def _length_unit(self) -> str:
        if self.problem.course.lengths != "as given":
            return self.problem.course.lengths
        first = (
            each.value.unit[0][0]
            for each in self.givens.values()
            if len(each.value.unit) == 1 and each.value.unit[0] in tuple((name, 1) for name in LENGTHS)
        )
        return next(first, "m")

    def _force_unit(self) -> str:
        if self.problem.course.forces:
            return self.problem.course.forces
        units = [
            each.value.unit[:1]
            for each in self.givens.values()
            if each.value.unit[:1] in ((("N", 1),), (("kN", 1),), (("lbf", 1),))
            and (len(each.value.unit) == 1 or each.value.unit[1][1] < 0)
        ]
        masses = any(each.value.unit in ((("kg", 1),), (("g", 1),), (("lb", 1),)) for each in self.givens.values())
        return "lbf" if units and not masses and all(unit == (("lbf", 1),) for unit in units) else "N"

    def _mass_unit(self) -> str:
        units = [
            each.value.unit[0][0]
            for each in self.givens.values()
            if each.value.unit in ((("kg", 1),), (("g", 1),), (("lb", 1),)) and each.letter.name != "*person.mass"
        ]
        person = self.givens.get("*person.mass")
        return units[0] if units else person.value.unit[0][0] if person else "kg"


def _limit(limit: Quantity | Unknown | None) -> Quantity | Unknown:
    """What a muscle at its limit pulls with."""
    return limit if limit is not None else Unknown()
