"""Reads a working and judges it line by line: the marking of one student's paper. Knows no wording of slips; it is
handed the rules.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal
from typing import NamedTuple

from ..slips.account import Account
from ..slips.account_of_working import account_of
from ..reading import (
    Chain,
    Expr,
    Habits,
    Measured,
    Name,
    Number,
    Product,
    Reading,
    Unread,
    UnknownName,
    Vocabulary,
    read_lines,
    vocabulary_of,
    within,
)
from ..reading.vocabulary import fold
from ..slips.slip import SlipRule
from ...solve.engine import Working
from ..slips.verdict import Given, Kind, LineVerdict, Marking
from .answers import answers
from .exact_data import angles, written
from .unit_frames import frames
from .piece_test import Holds, unsigned
from .piece_verdict import Found, worst
from .judge import Judge
from .other_tables import other_tables
from .verdict_words import judged
from .comments import wants
from .label_words import key_of, vocabulary, without
from .alternatives import Worlds

OWN_G = frozenset(map(Decimal, ("9.81", "9.8", "9.80665")))


class Marker:
    """One problem, ready to mark workings of it: the account, the vocabulary and every world with slips are made
    once.
    """

    def __init__(self, working: Working, rules: Sequence[SlipRule]) -> None:
        body = working.body
        self.working, self.rules = working, tuple(rules)
        self.account: Account = account_of(working)
        self.worlds = Worlds(self.account, self.rules, others=tuple(other_tables(body.problem, self.account.data)))
        self.bone = body.problem.pivot.bone
        self.vocabulary = vocabulary(self.account, body.letters, body.problem.pivot.name, self.bone)
        self.asked = (
            tuple(key for _, key in working.asked if key in self.worlds.truths()[0].values) or self.account.unknowns
        )
        typed = (name for each in body.givens for name, _ in each.value.unit if name in ("m", "cm", "mm", "in", "ft"))
        self.lengths = tuple(dict.fromkeys((body.length_unit, *typed, "m", "cm")))
        self.forces = tuple(dict.fromkeys((body.force_unit, "N")))
        self.data = frozenset((*written(working), *angles(self.account)))
        self.habits = Habits(pound="lb" if any(each.value.unit == (("lb", 1),) for each in body.givens) else "lbf")
        self.flipped = body.problem.course.reaction_on != "the body cut free"

    def mark(self, text: str) -> Marking:
        """The verdicts on a working. Never raises for a text."""
        readings: Sequence[Reading] = read_lines(text, self.vocabulary, self.habits)
        shares = self._shares(readings)
        known = without(self.vocabulary, shares) if shares else self.vocabulary
        readings = read_lines(text, known, self.habits) if shares else readings
        bound = self._bound(readings, known)
        if bound is not None:
            readings = read_lines(text, bound, self.habits)
        readings = self._apart(text, readings, bound or known)
        forces = (*self.forces, "kgf") if _kilograms(readings) else self.forces
        judge = Judge(
            self.worlds,
            Holds(self.account, list(frames(self.lengths, forces)), data=self.data),
            self.asked,
            self.flipped,
            self.bone,
            self._gravity(readings),
        )
        lines = [_Line(each, self._line(judge, each)) for each in readings]
        verdicts = tuple(judged(each.reading, each.found, self.rules, self.account) for each in lines)
        wanting = wants([(each.reading, each.found) for each in lines], self.asked, self.rules)
        verdicts = tuple(replace(each, note=each.note or wanting.get(each.number, "")) for each in verdicts)
        return Marking(self.working.body.problem.title, _once(verdicts), self._answers(lines, judge))

    def _line(self, judge: Judge, reading: Reading) -> list[Found]:
        if reading.replaced:
            return []
        found: list[Found] = []
        for piece in reading.pieces:
            if isinstance(piece, Chain):
                found.append(judge.piece(piece))
            elif isinstance(piece, Unread):
                found.append(Found("unclear", why=piece.why))
        return found

    def _shares(self, readings: Sequence[Reading]) -> frozenset[str]:
        """F1 and F2 beside F are what each load alone asks of the one pull, not the pull."""
        names = [
            part for each in _chains(readings) for side in each.sides for part in within(side) if isinstance(part, Name)
        ]
        for pull in self.account.unknowns if sum(each.kind == "muscle" for each in self.account.items) == 1 else ():
            texts = {
                each.text
                for each in names
                if pull in each.keys and each.text not in self.vocabulary.given.get("*weights", ())
            }
            numbered = {text for text in texts if text[-1:].isdigit()}
            if len(numbered) > 1 and texts - numbered:
                return frozenset(numbered)
        return frozenset()

    def _apart(self, text: str, readings: Sequence[Reading], known: Vocabulary) -> Sequence[Reading]:
        """The readings when no letter stands for what another letter of the working stands for alone: beside F_br,
        F_b is not the brachialis.
        """
        names = {
            part.text: part.keys
            for each in _chains(readings)
            for side in each.sides
            for part in within(side)
            if isinstance(part, Name)
        }
        single = {keys[0]: text for text, keys in names.items() if len(keys) == 1}
        gone = {}
        for name, keys in names.items():
            taken = tuple(key for key in keys if single.get(key, name) != name)
            if taken and len(taken) < len(keys) and len(fold(name)) > 1:
                gone[fold(name)] = taken
        if not gone:
            return readings
        left = {
            key: tuple(each for each in spelled if key not in gone.get(fold(each), ()))
            for key, spelled in known.given.items()
        }
        return read_lines(text, vocabulary_of(left), self.habits)

    def _bound(self, readings: Sequence[Reading], known_names: Vocabulary) -> Vocabulary | None:
        """The vocabulary with letters of the student's own: those with a part of an item's name, and one for the
        pull that no known letter names.
        """
        strange = dict.fromkeys(
            part.text
            for each in _chains(readings)
            for side in each.sides
            for part in within(side)
            if isinstance(part, UnknownName)
        )
        more = {
            key: text for text in strange if (key := key_of(text, self.account) or self._part_of(text, known_names))
        }
        known = {
            key
            for each in _chains(readings)
            for side in each.sides
            for part in within(side)
            if isinstance(part, Name)
            for key in part.keys
        }
        missing = [key for key in self.account.unknowns if key not in known and key not in more]
        alone = [
            side.text
            for chain in _chains(readings)
            for side in chain.sides[:1]
            if isinstance(side, UnknownName) and len(chain.sides) > 1 and side.text not in more.values()
        ]
        alone.sort(
            key=lambda text: sum(
                part.text == text
                for each in _chains(readings)
                for side in each.sides
                for part in within(side)
                if isinstance(part, UnknownName)
            )
        )
        if missing and alone:
            more[self._asked_of(missing[0])] = alone[-1]
        return known_names.also({key: (text,) for key, text in more.items()}) if more else None

    def _part_of(self, text: str, known: Vocabulary) -> str:
        """A letter of a pull with x or y behind it is a part of that pull: Px beside P; "" for any other."""
        head, side = text[:-1].rstrip("_"), {"x": "*level", "y": "*upright"}.get(text[-1:])
        pulls = [key for key in known.keys(head) if key.endswith(".force")] if head and side else []
        return f"{side} {pulls[0].rpartition('.')[0]}" if len(pulls) == 1 else ""

    def _gravity(self, readings: Sequence[Reading]) -> float | None:
        """The g that a working is taken with: the one typed; 10 only where it multiplies a mass, or carries its
        unit.
        """
        masses = {
            each.number
            for item in self.account.items
            if item.mass in self.account.written
            for each in [_Typed(self.account.written[item.mass][0])]
        }
        for chain in _chains(readings):
            for side in chain.sides:
                for each in within(side):
                    found = _typed_g(each, masses)
                    if found is not None:
                        return found
        return None

    def _asked_of(self, unknown: str) -> str:
        """What is asked of the item of an unknown: its mass, where a balance settles its weight."""
        owner = unknown.rpartition(".")[0]
        return next((key for key in self.asked if owner and key.rpartition(".")[0] == owner), unknown)

    def _answers(self, lines: Sequence[_Line], judge: Judge) -> tuple[Given, ...]:
        names = {key: name for name, key in self.working.asked}
        return answers([(each.reading, each.found) for each in lines if not each.replaced], names, judge)


class _Typed(NamedTuple):
    text: str

    @property
    def number(self) -> Decimal:
        return Decimal(self.text).normalize()


def _typed_g(part: Expr, masses: set[Decimal]) -> float | None:
    """The g in a part of a side, None where there is none."""
    if isinstance(part, Number) and part.value in OWN_G:
        return float(part.value)
    if isinstance(part, Product):
        bare = (unsigned(each) for each in part.factors)
        numbers = {each.value for each in bare if isinstance(each, Number)}
        if Decimal(10) in numbers and {each.normalize() for each in numbers} & (masses - {Decimal(10)}):
            return 10.0
    return None


class _Line:
    """One line with what was found of its pieces."""

    def __init__(self, reading: Reading, found: list[Found]) -> None:
        self.reading, self.found, self.replaced = reading, found, reading.replaced

    @property
    def verdict(self) -> Kind:
        return worst(self.found)


def _chains(readings: Sequence[Reading]) -> list[Chain]:
    return [piece for each in readings if not each.replaced for piece in each.pieces if isinstance(piece, Chain)]


def _kilograms(readings: Sequence[Reading]) -> bool:
    """Whether the working counts moments in kilograms on purpose: a unit of kg times a length, or a force in kg
    turned into newtons.
    """
    for chain in _chains(readings):
        for side in chain.sides:
            for each in within(side):
                if (
                    isinstance(each, Measured)
                    and {name for name, _ in each.unit} & {"kg", "kgf"}
                    and len(each.unit) > 1
                ):
                    return True
    return False


def _once(verdicts: Sequence[LineVerdict]) -> tuple[LineVerdict, ...]:
    """A slip that comes again is marked as such: it is counted once."""
    seen: set[str] = set()
    out = []
    for each in verdicts:
        names = {slip.slip for slip in each.slips}
        out.append(replace(each, again=bool(names & seen)) if each.verdict == "slips" else each)
        seen |= names
    return tuple(out)
