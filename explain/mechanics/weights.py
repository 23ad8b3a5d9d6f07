"""What is heavy: the weights of segments and loads as forces, each at its place. Knows no pull and no equation."""

from __future__ import annotations

from fractions import Fraction

from .body import Bearing, Force, Relation, Sought, Step
from ..document.english import is_a_weight, the, verb
from ..equation.terms import Letter, Quantity
from ..errors import Fault
from .segments import Laying
from .spread import End, resultant_place, whole_weight
from ..problem.model import FromTable, Load, Percent, Segment, Spread, Unknown
from ..reference.segment_tables import segment_row

PERCENT = (("%", 1),)


class Weighing(Laying):
    """The weights on the bones that were laid."""

    def _weight(self, name: str, mass: object, weight: object, source: str = "") -> Letter:
        letter = self._value(f"{name}.weight", weight, name if is_a_weight(name) else f"weight of {the(name)}")
        if isinstance(weight, Percent):
            self._share(
                letter, weight.number, self._person("weight", f"{name}.weight"), f"share of the body weight: {name}"
            )
        if mass is not None:
            heavy = self.letter(f"{name}.mass")
            if not isinstance(mass, Unknown):
                self._value(f"{name}.mass", mass, f"mass of {the(name)}")
            if isinstance(mass, Percent):
                self._share(
                    heavy, mass.number, self._person("mass", f"{name}.mass"), f"share of the body mass: {name}", source
                )
            if isinstance(mass, Unknown):
                self.sought.append(Sought(heavy, f"mass of {the(name)}"))
            self.relations.append(Relation("weight", letter, (heavy, self._g())))
        return letter

    def _segment_weight(self, segment: Segment) -> Force:
        mass, com, source = segment.mass, segment.com, ""
        if isinstance(mass, FromTable) or isinstance(com, FromTable):
            person = self.problem.person
            if person is None or not person.table:
                raise Fault(
                    file=self.problem.file,
                    key=f"segment {segment.name}",
                    found='"table", but no table is named',
                    expected="[person] with table",
                    example='[person]\nmass = "70 kg"\ntable = "winter"',
                )
            row = segment_row(person.table, segment.name, person.sex, person.own)
            source = row.source
            mass = Percent(Quantity(row.mass_percent, PERCENT)) if isinstance(mass, FromTable) else mass
            com = Percent(Quantity(row.com_percent, PERCENT)) if isinstance(com, FromTable) else com
        letter = self._weight(segment.name, mass, segment.weight, source if isinstance(segment.mass, FromTable) else "")
        where = self.problem.pivot.name if not self.starts[segment.name] else "near end"
        named = f"centre of mass of {the(segment.name)}"
        steps = self._along(
            f"{segment.name}.com",
            com,
            segment.name,
            named if isinstance(com, Percent) else f"{where} to the {named}",
            source if isinstance(segment.com, FromTable) else "",
        )
        return Force(segment.name, "weight", letter, steps, Bearing(Fraction(270)), segment=segment.name)

    def _load(self, load: Load) -> Force:
        if load.spread is not None:
            return self._spread_load(load, load.spread)
        letter = self._weight(load.name, load.mass, load.weight)
        steps, segment = self._place(load.name, load.place)
        return Force(load.name, "load", letter, steps, Bearing(Fraction(270)), segment=segment)

    def _spread_load(self, load: Load, spread: Spread) -> Force:
        """One arrow for all of a spread load, where it acts as a whole."""
        segment = load.place.on or self.problem.segments[-1].name
        near = self._near(segment)
        ends = tuple(
            End(
                self._value(f"{load.name}.{key}", each, f"{near} to where {the(load.name)} {verb(load.name, does)}"),
                each,
            )
            for key, does, each in zip(("from", "to"), ("begin", "end"), spread.ends, strict=True)
            if each.number
        )
        if load.per_length:
            where = " at the heavy end" if spread.growing else ""
            meaning = f"weight of each length of {the(load.name)}{where}"
            each = self._value(f"{load.name}.per_length", load.weight, meaning)
            letter = self.letter(f"{load.name}.weight")
            self.relations.append(whole_weight(letter, each, ends, spread))
        else:
            letter = self._weight(load.name, load.mass, load.weight)
        place, relation = resultant_place(self.letter(f"{load.name}.at"), ends, spread)
        self.relations.append(relation)
        bone = self.bearings[segment]
        steps = (*self.starts[segment], Step(relation.letter, bone.turned(180) if place < 0 else bone))
        return Force(load.name, "load", letter, steps, Bearing(Fraction(270)), segment=segment)
