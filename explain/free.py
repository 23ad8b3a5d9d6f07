"""Cut the body free: from what the author wrote to forces, places and bearings. Knows the format's rules, no equation."""
from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from pathlib import Path

from .body import Bearing, Body, Force, Given, Kind, Relation, Sought, Step, Toward, Twist
from .english import is_a_weight, its, the, verb
from .equation import Letter, Quantity
from .faults import Fault
from .letters import Letters
from .phrases import factor_meaning, force_meaning
from .problem import AtLimit, Couple, Direction, FromTable, Load, Multiple, Pair, Percent, Place, Problem, Pull, Segment, Unknown
from .tables import segment_row

LENGTHS = ("m", "cm", "mm", "in", "ft")
LEVEL = {"right": 0, "up": 90, "left": 180, "down": 270}
PERCENT = (("%", 1),)
_SIDES = (("to the right", "to the left"), ("above", "below"))


def cut_free(problem: Problem) -> Body:
    """The free body of a problem. Raises Fault where the geometry cannot be."""
    return _Cutting(problem).body()


class _Cutting:
    """One pass over a problem; what has been found so far."""

    def __init__(self, problem: Problem) -> None:
        self.problem = problem
        everything: list[Segment | Pull | Load | Couple] = [*problem.segments, *problem.pulls, *problem.loads, *problem.couples]
        turning: list[Segment | Pull] = [*problem.segments, *problem.pulls]
        angles = [each.name for each in turning if each.direction is not None and isinstance(each.direction.turn, Unknown)]
        heavy = [each.name for each in everything if isinstance(each, Segment | Load)]
        self.letter = Letters(problem.course, [each.name for each in everything], angles, heavy)
        self.bearings: dict[str, Bearing] = {}
        self.starts: dict[str, tuple[Step, ...]] = {}
        self.givens: dict[str, Given] = {}
        self.relations: list[Relation] = []
        self.sought: list[Sought] = []

    def body(self) -> Body:
        for segment in self.problem.segments:
            self._lay(segment)
        weights = [self._segment_weight(each) for each in self.problem.segments if each.mass is not None or each.weight is not None]
        pulls = [self._pull(each) for each in self.problem.pulls]
        loads = [self._load(each) for each in self.problem.loads]
        forces = (*[p for p in pulls if p.kind == "muscle"], *[p for p in pulls if p.kind == "force"], *weights, *loads)
        twists = tuple(self._couple(each) for each in self.problem.couples)
        return Body(self.problem, self.letter, self.bearings, self.starts, forces, twists, tuple(self.givens.values()),
                    tuple(self.relations), tuple(self.sought), self._length_unit(), self._force_unit(), self._mass_unit())

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
        part = self._value(f"{letter.name.rpartition('.')[0]}.{letter.name.rpartition('.')[2]}%", share, meaning, source)
        self.relations.append(Relation("share", letter, (part, of)))

    def _person(self, what: str, key: str) -> Letter:
        person = self.problem.person
        if person is None or person.mass is None:
            raise Fault(file=self.problem.file, key=key, found="a share of the body, but no body mass",
                        expected="[person] with mass", example='[person]\nmass = "70 kg"')
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
            angle = self.letter(f"*angle {key}")
            return Bearing(start.degrees, (*start.unknown, (angle, sense)))
        return Bearing((start.degrees + sense * Fraction(direction.turn.number)) % 360, start.unknown, direction.turn)

    def _line(self, word: str, bone: Bearing | None, key: str) -> Bearing:
        if word in LEVEL:
            return Bearing(Fraction(LEVEL[word]))
        if bone is None:
            raise Fault(file=self.problem.file, key=key, found=f'"{word}", but there is no segment',
                        expected="a segment that it could be along", example='direction = "30 deg above left"')
        along = bone if word == "out" else bone.turned(180)
        return Bearing(along.degrees, along.unknown)

    def _shorter_way(self, start: Bearing, end: Bearing, key: str) -> int:
        nominal = {letter.name: Fraction(45) for letter, _ in (*start.unknown, *end.unknown)}
        between = (end.at(nominal) - start.at(nominal)) % 360
        if between in (0, 180):
            raise Fault(file=self.problem.file, key=f"{key}.direction", found="two directions on one line",
                        expected="two directions that are not on one line", example='direction = "70 deg from back toward up"')
        return 1 if between < 180 else -1

    def _lay(self, segment: Segment) -> None:
        index = self.problem.segments.index(segment)
        before = segment.start or (self.problem.segments[index - 1].name if index else "")
        parent = next((each for each in self.problem.segments if each.name == before), None)
        if parent is not None:
            if parent.length is None:
                raise Fault(file=self.problem.file, key=f"segment {parent.name}.length", found="no length",
                            expected=f"the length of {parent.name}, since {segment.name} starts at its far end", example='length = "28 cm"')
            far = Step(self._value(f"{parent.name}.length", parent.length, f"length of {the(parent.name)}"), self.bearings[parent.name])
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
        self.sought.append(Sought(self.letter(f"*angle {item.name}"), f"angle of {the(item.name)}", ends))

    def _along(self, key: str, amount: object, segment: str, meaning: str, source: str = "") -> tuple[Step, ...]:
        """From the pivot to a place along a segment."""
        bone = self.bearings[segment]
        letter = self._value(key, amount, meaning, source)
        if isinstance(amount, Percent):
            length = next(each.length for each in self.problem.segments if each.name == segment)
            if length is None:
                raise Fault(file=self.problem.file, key=key, found=f"a share of the length of {segment}, which is not given",
                            expected="the length of the segment", example='length = "26 cm"')
            whole = self._value(f"{segment}.length", length, f"length of {the(segment)}")
            whose = its(segment) if meaning.startswith("centre") else "the"
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
            return self._point((f"{name}.x", f"{name}.y"), place.point, f"{self.problem.pivot.name} to {name}"), place.on
        segment = place.on or (self.problem.segments[-1].name if self.problem.segments else "")
        if place.at is None or not segment:
            return (), segment
        near = self.problem.pivot.name if not self.starts[segment] else f"near end of {the(segment)}"
        return self._along(f"{name}.at", place.at, segment, f"{near} to {name}"), segment

    # ------------------------------------------------------------------ forces
    def _weight(self, name: str, mass: object, weight: object, source: str = "") -> Letter:
        letter = self._value(f"{name}.weight", weight, name if is_a_weight(name) else f"weight of {the(name)}")
        if isinstance(weight, Percent):
            self._share(letter, weight.number, self._person("weight", f"{name}.weight"), f"share of the body weight: {name}")
        if mass is not None:
            heavy = self.letter(f"{name}.mass")
            if not isinstance(mass, Unknown):
                self._value(f"{name}.mass", mass, f"mass of {the(name)}")
            if isinstance(mass, Percent):
                self._share(heavy, mass.number, self._person("mass", f"{name}.mass"), f"share of the body mass: {name}", source)
            if isinstance(mass, Unknown):
                self.sought.append(Sought(heavy, f"mass of {the(name)}"))
            self.relations.append(Relation("weight", letter, (heavy, self._g())))
        return letter

    def _segment_weight(self, segment: Segment) -> Force:
        mass, com, source = segment.mass, segment.com, ""
        if isinstance(mass, FromTable) or isinstance(com, FromTable):
            person = self.problem.person
            if person is None or not person.table:
                raise Fault(file=self.problem.file, key=f"segment {segment.name}", found='"table", but no table is named',
                            expected="[person] with table", example='[person]\nmass = "70 kg"\ntable = "winter"')
            folder = Path(self.problem.file).parent if self.problem.file else None
            row = segment_row(person.table, segment.name, person.sex, folder)
            source = row.source
            mass = Percent(Quantity(row.mass_percent, PERCENT)) if isinstance(mass, FromTable) else mass
            com = Percent(Quantity(row.com_percent, PERCENT)) if isinstance(com, FromTable) else com
        letter = self._weight(segment.name, mass, segment.weight, source if isinstance(segment.mass, FromTable) else "")
        where = self.problem.pivot.name if not self.starts[segment.name] else "near end"
        named = f"centre of mass of {the(segment.name)}"
        steps = self._along(f"{segment.name}.com", com, segment.name, named if isinstance(com, Percent) else f"{where} to the {named}",
                            source if isinstance(segment.com, FromTable) else "")
        return Force(segment.name, "weight", letter, steps, Bearing(Fraction(270)), segment=segment.name)

    def _load(self, load: Load) -> Force:
        letter = self._weight(load.name, load.mass, load.weight)
        steps, segment = self._place(load.name, load.place)
        return Force(load.name, "load", letter, steps, Bearing(Fraction(270)), segment=segment)

    def _pull(self, pull: Pull) -> Force:
        kind: Kind = "muscle" if pull.kind == "muscle" else "force"
        letter = self._size(pull)
        steps, segment = self._place(pull.name, pull.place)
        bone = self.bearings.get(segment) or (self.bearings[self.problem.segments[-1].name] if self.problem.segments else None)
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
        letter = self._value(f"{pull.name}.force", force, force_meaning(pull))
        if isinstance(force, Percent):
            self._share(letter, force.number, self._person("weight", f"{pull.name}.force"), f"share of the body weight: {pull.name}")
        if isinstance(force, Multiple):
            factor = self._value(f"{pull.name}.force%", force.factor, factor_meaning(self.problem, pull, force.of))
            self.relations.append(Relation("multiple", letter, (factor, self._size_letter(force.of))))
        if pull.area is not None:
            self._value(f"{pull.name}.area", pull.area, f"cross-section of {the(pull.name)}")
        return letter

    def _size_letter(self, name: str) -> Letter:
        heavy: list[Load | Segment] = [*self.problem.loads, *self.problem.segments]
        weights = {each.name for each in heavy}
        return self.letter(f"{name}.{'weight' if name in weights else 'force'}")

    def _toward(self, name: str, grip: tuple[Step, ...], point: Pair) -> Toward | Bearing:
        target = self._point((f"{name}.tx", f"{name}.ty"), point, f"{self.problem.pivot.name} to the point {the(name)} {verb(name, 'pull')} toward")
        across, rise, line = (self.letter(f"{name}.{what}") for what in ("across", "rise", "line"))
        walk = (*((1, step) for step in target), *((-1, step) for step in grip))
        right, up = self._component_sign(walk, 0), self._component_sign(walk, 90)
        if not right and not up:
            raise Fault(file=self.problem.file, key=f"{name}.toward", found="the point where it grips",
                        expected="another point, for a direction", example='toward = ["2 cm", "25 cm"]')
        if not right or not up:
            return Bearing(Fraction({1: 0, -1: 180}[right] if right else {1: 90, -1: 270}[up]))
        self.relations.append(Relation("across", across, (), tuple((k * right, step) for k, step in walk)))
        self.relations.append(Relation("rise", rise, (), tuple((k * up, step) for k, step in walk)))
        self.relations.append(Relation("line", line, (across, rise)))
        return Toward(across, right, rise, up, line)

    def _component_sign(self, walk: tuple[tuple[int, Step], ...], axis: int) -> int:
        from .interval import middle, sine, times
        from .quantity import convert

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
            raise Fault(file=self.problem.file, key=letter.name, found='"?" where the direction of a pull depends on it',
                        expected="a number, or a direction in degrees", example='direction = "70 deg from back toward up"')
        part, whole = (self.givens[each.name].value for each in share.of)
        return Quantity(part.number * whole.number / Decimal(100), whole.unit)

    def _couple(self, couple: Couple) -> Twist:
        return Twist(couple.name, self._value(f"{couple.name}.moment", couple.moment, f"{self.problem.course.word} of {the(couple.name)}"), couple.turns)

    # ------------------------------------------------------------------ units of the answers
    def _length_unit(self) -> str:
        if self.problem.course.lengths != "as given":
            return self.problem.course.lengths
        first = (each.value.unit[0][0] for each in self.givens.values()
                 if len(each.value.unit) == 1 and each.value.unit[0] in tuple((name, 1) for name in LENGTHS))
        return next(first, "m")

    def _force_unit(self) -> str:
        if self.problem.course.forces:
            return self.problem.course.forces
        units = [each.value.unit for each in self.givens.values() if each.value.unit in ((("N", 1),), (("kN", 1),), (("lbf", 1),))]
        masses = any(each.value.unit in ((("kg", 1),), (("g", 1),), (("lb", 1),)) for each in self.givens.values())
        return "lbf" if units and not masses and all(unit == (("lbf", 1),) for unit in units) else "N"

    def _mass_unit(self) -> str:
        units = [each.value.unit[0][0] for each in self.givens.values()
                 if each.value.unit in ((("kg", 1),), (("g", 1),), (("lb", 1),)) and each.letter.name != "*person.mass"]
        person = self.givens.get("*person.mass")
        return units[0] if units else person.value.unit[0][0] if person else "kg"


def _limit(limit: Quantity | Unknown | None) -> Quantity | Unknown:
    """What a muscle at its limit pulls with."""
    return limit if limit is not None else Unknown()
