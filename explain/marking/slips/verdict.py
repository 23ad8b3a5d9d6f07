"""What is said of a student's working: a verdict on each line, the slips found, the answers. Knows no rule and no
mechanics.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Kind = Literal["holds", "carried", "slips", "unclear", "aside"]
Cost = Literal["", "method", "accuracy", "unit", "direction", "none"]


@dataclass(frozen=True, slots=True)
class Named:
    """A slip that explains a line, with its wording: the name, what it is in a few words, what is said of it, and three
    hints of rising strength.

    `costs` is the mark that it costs: "" where that is not known.
    """

    slip: str
    title: str
    says: str
    hints: tuple[str, str, str]
    keys: tuple[str, ...] = ()  # what goes wrong first, by key
    costs: Cost = ""


@dataclass(frozen=True, slots=True)
class LineVerdict:
    """One line. `read_as` is how it was read; `says` why the verdict; `note` a comment that costs nothing (rounding,
    another table, another route).

    `slips` are those that explain the line, the likeliest first; empty where none does. `again`: the line repeats a
    slip that was counted before.
    `uses` are the keys of the quantities that the line states or balances ("jug.weight", "*moment jug", "total"): what
    marks are awarded for.
    `since` is the wrong line that a carried one follows from, 0 where that is not told; of a line that holds, the
    accepted one that it follows from. `checked` says of a line that holds what was checked: its "arithmetic" alone, or
    a "claim" about the problem. `lacks` names what a right answer still wants ("direction-missing"), "" where nothing.
    `accepted`: the line of the problem file's [[accept]] that it was accepted by, "" for none.
    """

    number: int
    text: str
    read_as: str
    verdict: Kind
    says: str = ""
    note: str = ""
    slips: tuple[Named, ...] = ()
    question: str = ""
    part: str = ""
    again: bool = False
    uses: tuple[str, ...] = ()
    since: int = 0
    checked: str = ""
    lacks: str = ""
    accepted: str = ""


@dataclass(frozen=True, slots=True)
class Given:
    """An answer that the student gives: its name ("biceps"), number and unit as typed, and whether it is right
    (size, sense and unit). `accepted`: right by a line that a person accepted alone.
    """

    name: str
    value: float
    unit: str
    right: bool
    carried: bool = False
    line: int = 0
    unit_missing: bool = False
    accepted: bool = False


@dataclass(frozen=True, slots=True)
class Marking:
    """A working as it was judged."""

    title: str
    lines: tuple[LineVerdict, ...]
    answers: tuple[Given, ...]

    def __repr__(self) -> str:
        first = self.first_wrong
        said = "no line slips" if first is None else f"first slip in line {first}"
        return f"<Marking of {self.title!r}: {len(self.lines)} lines, {said}>"

    @property
    def first_wrong(self) -> int | None:
        """The number of the first line that slips."""
        return next((each.number for each in self.lines if each.verdict == "slips"), None)

    @property
    def issues(self) -> tuple[LineVerdict, ...]:
        """The lines that slip, in order."""
        return tuple(each for each in self.lines if each.verdict == "slips")

    @property
    def needs_a_person(self) -> bool:
        return any(each.verdict in ("slips", "unclear") for each in self.lines)
