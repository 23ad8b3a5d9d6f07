"""One student's final answers against everything that can lead to them: the truth first, one slip before two, and
never a pair named from one number.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from functools import cached_property
from typing import NamedTuple

from ..equation.terms import Unit
from ..marking.slips.account import Account
from ..marking.slips.slip import SlipRule
from ..reference.gravity import IN_CLASSES
from ..solve.answers import spelled
from .alternatives import Numbers, Spoiled, Table, World, numbers_of, other_arms, own, pairs, singles
from .answer_table import Row
from .asked import Wanted
from .cells import Cell
from .entry import Cause, Entry, Said, Verdict, Wrong, score_of
from .last_step_slips import rate, slips_of

CLOSE, FINE = (
    0.005,
    0.01,
)  # how near a slip's number lies; how far rounding to three figures on the way moves a right one
SHOWN = 8  # pairs that are named for one student
Watch = Callable[[Sequence[Spoiled]], Iterator[Spoiled]]


class Number(NamedTuple):
    """One answer with a number, in the unit of the answer. `sizes`: its column tells no sense, so that sizes alone
    are compared.
    """

    place: int
    cell: Cell
    value: float
    half: float
    sizes: bool
    open: float = 0.0


class Matcher:
    """One problem, ready to match answers. The pairs of slips are worked out when the first answer needs them;
    `watch` shows how far that has come. `accepted` are answers that are right too, each with a note.
    """

    def __init__(
        self,
        account: Account,
        rules: Sequence[SlipRule],
        wanted: Sequence[Wanted],
        watch: Watch = iter,
        accepted: Sequence[tuple[Numbers, str]] = (),
    ) -> None:
        self.account, self.rules, self.wanted, self._watch = account, tuple(rules), tuple(wanted), watch
        self._common = {rule.SLIP: rule.COMMON for rule in rules}
        self.places = {each.name: place for place, each in enumerate(self.wanted)}
        self.made = singles(account, self.rules, self.wanted)
        worlds = [*(each.world for each in self.made), *other_arms(account, self.wanted, self.made)]
        self.single = Table(worlds, len(self.wanted))
        self._truths = (*self._other_g(), *accepted)
        self._known: dict[tuple[Number, ...], tuple[tuple[Verdict, ...], str, tuple[Wrong, ...]]] = {}

    @cached_property
    def pair(self) -> Table:
        """Every pair of slips."""
        return Table(list(pairs(self.account, self.rules, self.wanted, self.made, self._watch)), len(self.wanted))

    @property
    def paired(self) -> bool:
        """Whether any answer needed the pairs."""
        return "pair" in self.__dict__

    def _other_g(self) -> Iterator[tuple[Numbers, str]]:
        yield numbers_of(self.account, self.wanted), ""
        if any(item.mass for item in self.account.items):
            data = self.account.data
            for g in IN_CLASSES:
                person = (
                    {"*person.weight": data["*person.mass"] * g}
                    if {"*person.mass", "*person.weight"} <= set(data)
                    else {}
                )
                if abs(g - data["g"]) > 1e-9:
                    yield (
                        numbers_of(replace(self.account, data={**data, "g": g, **person}), self.wanted),
                        f"with g = {g:g} m/s²",
                    )

    # ------------------------------------------------------------------ one student
    def entry(self, row: Row, units: Mapping[str, Unit], sizes: frozenset[str]) -> Entry:
        """What is found of a row. `units` are those of the headers; `sizes` the answers whose column tells no sense."""
        numbers = tuple(
            sorted(
                self._number(name, each, units.get(name, ()), name in sizes)
                for name, each in row.cells.items()
                if isinstance(each, Cell)
            )
        )
        verdicts, note, wrongs = self._known.get(numbers) or self._known.setdefault(numbers, self._judge(numbers))
        found = {each.place: (each, verdict) for each, verdict in zip(numbers, verdicts, strict=True)}
        told = {name: self._said(name, row, found.get(self.places[name]), note) for name in row.cells}
        told |= {name: Said(name, "", None, "blank") for name in row.blank}
        said = tuple(told[each.name] for each in self.wanted if each.name in told)
        return Entry(
            row.line, row.student, said, tuple(self._typed(each, row) for each in wrongs), score=score_of(said)
        )

    def _said(self, name: str, row: Row, found: tuple[Number, Verdict] | None, note: str) -> Said:
        if found is None:
            return Said(name, row.typed[name], None, "no number", str(row.cells[name]))
        return Said(name, row.typed[name], found[0].value, found[1], note if found[1] == "right" else "")

    def _typed(self, wrong: Wrong, row: Row) -> Wrong:
        return wrong._replace(text=row.typed[wrong.answers[0]])

    def _number(self, name: str, cell: Cell, unit: Unit, sizes: bool) -> Number:
        place = self.places[name]
        asked = self.wanted[place]
        by = rate(cell.unit or unit, asked.unit) if cell.unit or unit else 1.0
        by = 1.0 if by is None else by
        value = (
            cell.value if cell.other is None or _nearer(cell.value * by, cell.other * by, asked.value) else cell.other
        )
        signed = abs(value) * cell.way if asked.signed and cell.way else value
        return Number(
            place,
            cell._replace(text="", unit=cell.unit or unit) if not cell.told else cell,
            signed * by,
            cell.half * by,
            sizes and asked.signed,
            cell.open * by,
        )

    def _judge(self, numbers: tuple[Number, ...]) -> tuple[tuple[Verdict, ...], str, tuple[Wrong, ...]]:
        truth, note = min(
            self._truths, key=lambda each: sum(not self._right(number, numbers, each[0]) for number in numbers)
        )
        wrong = [each for each in numbers if not self._right(each, numbers, truth)]
        if not wrong:
            return tuple[Verdict, ...]("right" for _ in numbers), note, ()
        carried, fresh = self._carried(wrong, numbers)
        verdicts = tuple[Verdict, ...](
            "carried" if each in carried else "wrong" if each in wrong else "right" for each in numbers
        )
        return verdicts, note, tuple(self._wrongs(numbers, wrong, carried, fresh))

    def _right(self, number: Number, numbers: Sequence[Number], truth: Numbers) -> bool:
        unit = number.cell.unit
        if unit and rate(unit, self.wanted[number.place].unit) is None:
            return False
        return self._agrees(number, numbers, truth, FINE, number.open)

    # ------------------------------------------------------------------ does a number fit?
    def _agrees(
        self, number: Number, numbers: Sequence[Number], world: Numbers, close: float = CLOSE, least: float = 0.0
    ) -> bool:
        """Whether a number is what a world has, within the room it has, or `least`."""
        value = world[number.place]
        if value is None:
            return False
        size, signed = number.value, self.wanted[number.place].signed and not number.sizes
        if not signed:
            if size < 0 < value and not number.sizes:
                return False
            size, value = abs(size), abs(value)
        return abs(size - value) <= max(least * (1 + 1e-9), self._room(number, numbers, abs(value), close))

    def _room(self, number: Number, numbers: Sequence[Number], value: float, close: float) -> float:
        """Half a unit of the last place or a share of the value; a joint force is a difference, and has the room of
        the pulls it comes from.
        """
        if not self.wanted[number.place].key.startswith("reaction"):
            return max(close * value, number.half)
        return max(close * value, sum(each.half for each in numbers), close * self._largest)

    @cached_property
    def _largest(self) -> float:
        """The largest pull, in the unit of the joint force."""
        joint = next((each for each in self.wanted if each.key.startswith("reaction")), None)
        values = self.account.values()
        return max((abs(values[each.key] * joint.factor) for each in self.account.pulls), default=0.0) if joint else 0.0

    def _windows(self, numbers: Sequence[Number]) -> list[tuple[int, tuple[float, float]]]:
        """Where the size of each number may lie."""
        rooms = [
            (each.place, abs(each.value), self._room(each, numbers, abs(each.value) * 1.01, CLOSE)) for each in numbers
        ]
        return [(place, (size - room, size + room)) for place, size, room in rooms]

    # ------------------------------------------------------------------ what went wrong
    def _carried(self, wrong: Sequence[Number], numbers: Sequence[Number]) -> tuple[list[Number], list[Number]]:
        """The wrong answers that follow from earlier ones of the student's own, and those that do not."""
        carried, fresh, known = list[Number](), [wrong[0]], [wrong[0]]
        for each in wrong[1:]:
            follows = own(self.account, self.wanted, [(one.place, one.value) for one in known])
            (carried if follows is not None and self._agrees(each, numbers, follows) else fresh).append(each)
            known.append(each)
        return carried, fresh

    def _wrongs(
        self, numbers: Sequence[Number], wrong: Sequence[Number], carried: Sequence[Number], fresh: Sequence[Number]
    ) -> Iterator[Wrong]:
        causes = self._together(numbers, wrong)
        if len(fresh) == 1 and (carried or not causes):
            causes = tuple(dict.fromkeys((*causes, *self._alone(wrong[0]))))
        if causes or len(fresh) == 1:
            yield self._wrong(wrong, causes, 0 if causes else len(self._pairs(numbers)))
            return
        found = self._pairs(numbers)
        if found:
            yield self._wrong(wrong, found[:SHOWN], max(0, len(found) - SHOWN))
            return
        yield self._wrong((fresh[0], *carried), self._alone(fresh[0]))
        for each in fresh[1:]:
            yield self._wrong((each,), self._typed_slips(each))

    def _wrong(self, covers: Sequence[Number], causes: tuple[Cause, ...], pairs: int = 0) -> Wrong:
        first = covers[0]
        return Wrong(
            tuple(self.wanted[each.place].name for each in covers),
            causes,
            pairs,
            value=first.value,
            unit=spelled(self._unit(first)),
        )

    def _unit(self, number: Number) -> Unit:
        """The unit that a number is given in: the answer's own, unless it was typed with one of another kind."""
        asked = self.wanted[number.place].unit
        return number.cell.unit if number.cell.unit and rate(number.cell.unit, asked) is None else asked

    def _together(self, numbers: Sequence[Number], wrong: Sequence[Number]) -> tuple[Cause, ...]:
        """The single slips that all the answers fit, right ones too."""
        fitting = [
            each
            for each in self.single.near(self._windows(numbers))
            if all(self._agrees(one, numbers, each.numbers) for one in numbers)
        ]
        others = [{cause.slips for cause in self._typed_slips(each)} for each in wrong[1:]]
        typed = [cause for cause in self._typed_slips(wrong[0]) if all(cause.slips in each for each in others)]
        return self._listed(numbers[0], fitting, typed)

    def _alone(self, number: Number) -> tuple[Cause, ...]:
        fitting = [
            each for each in self.single.near(self._windows((number,))) if self._agrees(number, (number,), each.numbers)
        ]
        return self._listed(number, fitting, self._typed_slips(number))

    def _listed(self, number: Number, fitting: Sequence[World], typed: Sequence[Cause]) -> tuple[Cause, ...]:
        """The causes: those that agree to the last figure typed first, of these the commonest."""
        found = [
            (abs(abs(each.numbers[number.place] or 0.0) - abs(number.value)) > number.half, cause)
            for each in fitting
            for cause in each.causes
        ]
        ranked = sorted(
            (*found, *((False, each) for each in typed)), key=lambda each: (each[0], -self._common[each[1].slips[0]])
        )
        return tuple(dict.fromkeys(cause for _, cause in ranked))

    def _pairs(self, numbers: Sequence[Number]) -> tuple[Cause, ...]:
        fitting = (
            each
            for each in self.pair.near(self._windows(numbers))
            if all(self._agrees(one, numbers, each.numbers) for one in numbers)
        )
        return tuple({cause.slips: cause for each in fitting for cause in each.causes}.values())

    def _typed_slips(self, number: Number) -> tuple[Cause, ...]:
        asked = self.wanted[number.place]
        moments = self._moments if asked.is_force and asked.key in self.account.unknowns else ()
        return tuple(Cause((slip,), (asked.key,)) for slip in slips_of(number.cell, number.value, asked, moments))

    @cached_property
    def _moments(self) -> tuple[float, ...]:
        """The total moment in N m, N cm and with the class's unit of length: where a pull was asked, one step too
        few.
        """
        total = self.account.values()["total"]
        return total, total * 100, total / self.account.length


def _nearer(one: float, two: float, true: float) -> bool:
    return abs(abs(one) - abs(true)) <= abs(abs(two) - abs(true))
