"""Marks for a judged working, with follow-through: each slip costs once, what follows from it earns. Knows no slip by
name.

After the public examination vocabulary: method (a right idea carried far enough to be seen), accuracy (the right value
from a right method),
independent (a fact on its own), communication (direction, unit, drawing); one unit mark a question, lost once (common
practice, no source).
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from .deductions import Charges, Piece
from .scheme import DIAGRAM, DIRECTION, UNIT, Point, Scheme
from .evidence import Sight, Sights
from ..slips.verdict import Marking

_ENDS_IN_NOTHING = re.compile(r"=\s*0\s*$")  # an equation set to zero, with no value behind it


@dataclass(frozen=True, slots=True)
class Award:
    """What one row earned: `marks` for sure, `open` more that a person decides about; `why` in a few words."""

    point: Point
    marks: int
    why: str
    open: int = 0


@dataclass(frozen=True, slots=True)
class Marks:
    """All rows of a scheme as awarded."""

    awards: tuple[Award, ...]

    @property
    def earned(self) -> int:
        return sum(each.marks for each in self.awards)

    @property
    def open(self) -> int:
        return sum(each.open for each in self.awards)

    @property
    def total(self) -> int:
        return sum(each.point.marks for each in self.awards)


class _Verdict(NamedTuple):
    marks: int
    why: str
    open: int = 0


def awarded(scheme: Scheme, marking: Marking) -> Marks:
    """The marks of a working; nothing in it is judged anew."""
    awarding = _Awarding(scheme, marking)
    return Marks(tuple(awarding.row(place, point) for place, point in enumerate(scheme.points)))


class _Awarding:
    """One working against one scheme."""

    def __init__(self, scheme: Scheme, marking: Marking) -> None:
        self.scheme, self.answers, self.lines = scheme, marking.answers, marking.lines
        self.sights, self.charges = Sights(scheme, marking), Charges(scheme, marking)

    def row(self, row: int, point: Point) -> Award:
        mine = [self._piece(place, each) for place, each in enumerate(self.charges.pieces) if each.row == row]
        return Award(
            point,
            sum(each.marks for each in mine),
            "; ".join(dict.fromkeys(each.why for each in mine)),
            sum(each.open for each in mine),
        )

    def _piece(self, place: int, piece: Piece) -> _Verdict:
        if place in self.charges.lost:
            left = piece.marks - self.charges.cost(place)
            shown = left > 0 and all(self.sights.of(need, piece.kind) for need in piece.needs)
            return _Verdict(left if shown else 0, self.charges.lost[place])
        if place in self.charges.asking:
            return _Verdict(0, self.charges.asking[place], piece.marks)
        if {UNIT, DIRECTION, DIAGRAM} & {*piece.needs}:
            return self._said(piece)
        sights = [sight for need in piece.needs if (sight := self.sights.of(need, piece.kind))]
        if len(sights) < len(piece.needs):
            return _Verdict(0, "no working is shown for it" if self._bare(piece) else "not shown")
        if piece.kind == "accuracy" and any(self._unstated(need) for need in piece.needs):
            return _Verdict(0, "no value is stated")
        if any(each.verdict == "unclear" for each in sights):
            return _Verdict(0, "in a line that could not be followed", piece.marks)
        if piece.kind != "method" and any(each.verdict == "slips" for each in sights):
            return _Verdict(0, "the value does not hold")
        if piece.kind == "accuracy" and self.scheme.strict and self._method_missing(place):
            return _Verdict(0, "no method is shown for it")
        return _Verdict(piece.marks, _earned(sights))

    def _bare(self, piece: Piece) -> bool:
        """Whether the values are there, and no working."""
        return piece.kind == "method" and all(self.sights.of(need, "accuracy") for need in piece.needs)

    def _unstated(self, need: str) -> bool:
        """Whether an unknown that is asked for has no value in the working, though an equation would give it."""
        if need not in self.scheme.unknowns & self.scheme.asked:
            return False
        given = any(
            need in (each.name, f"{each.name}.force") or need.partition(".")[0] == each.name for each in self.answers
        )
        return not given and all(_ENDS_IN_NOTHING.search(each.text) for each in self.lines if need in each.uses)

    def _method_missing(self, place: int) -> bool:
        methods = [
            each
            for at, each in enumerate(self.charges.pieces)
            if each.kind == "method" and self.charges.led_to(at) == place
        ]
        return any(self.sights.of(need) is None for each in methods for need in each.needs)

    def _said(self, piece: Piece) -> _Verdict:
        """Whether a unit, a direction, a drawing is there."""
        if DIAGRAM in piece.needs:
            return _Verdict(0, "a person looks at the drawing", piece.marks)
        if DIRECTION in piece.needs:
            told = self.sights.of("*angle reaction", "accuracy") or self.sights.of("reaction", "accuracy")
            if any(each.lacks == "direction-missing" for each in self.lines):
                return _Verdict(0, "the direction of a force is not told")
            return _Verdict(piece.marks, "told") if told else _Verdict(0, "not shown")
        if not self.answers:
            return _Verdict(0, "no answer is given")
        bare = next((each for each in self.answers if each.unit_missing), None)
        if bare is None:
            return _Verdict(piece.marks, "given")
        return _Verdict(0, f"an answer has no unit{f' (line {bare.line})' if bare.line else ''}")


def _earned(sights: Sequence[Sight]) -> str:
    """Why a piece is earned, told by the sight that needs it most."""
    verdicts = {each.verdict.removeprefix("implied ") for each in sights}
    line = max((each.line for each in sights), default=0)
    where = f"line {line}" if line else "the answer"
    if verdicts & {"carried", "again"}:
        return f"{where}, followed through"
    if "slips" in verdicts:
        return f"{where}: the idea is there"
    return f"{where} follows from it" if any(each.verdict.startswith("implied") for each in sights) else where
