"""What one pass over a working has found so far: claims, suspicions, the text of each line. Decides nothing."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from .arithmetic import Arithmetic
from .hints import Hints
from .known import Known, True_
from .quantities import Row
from .reading import Line
from .tokens import Token
from .trace import Trace, TraceMark
from .values import Claim, Suspect, Value

_LEVEL = re.compile(r"horiz|level|\balong\b")


@dataclass(slots=True)
class Before:
    """What earlier passes found: worlds that blame a line, suspicions that a right answer cleared, worlds that are
    settled.
    """

    blamed: dict[int, set[int]] = field(default_factory=dict)
    cleared: set[tuple[int, str]] = field(default_factory=set)
    settled: set[int] = field(default_factory=set)

    def copy(self) -> Before:
        """What is known now, kept as it is."""
        return Before({line: set(each) for line, each in self.blamed.items()}, set(self.cleared), set(self.settled))

    def of(self, line: int) -> tuple[frozenset[int], frozenset[str]]:
        """What is known of one line."""
        return frozenset(self.blamed.get(line, ())), frozenset(key for at, key in self.cleared if at == line)

    @property
    def size(self) -> tuple[int, int, int]:
        return sum(map(len, self.blamed.values())), len(self.cleared), len(self.settled)


_SETS = ("made", "solved", "unread", "other_table", "run_on", "words_only")


@dataclass(frozen=True, slots=True)
class Mark:
    """How far a pass had come after a line: how many claims and suspicions there were, and what the trace knew."""

    claims: int
    suspects: int
    sets: tuple[frozenset[object], ...]
    trace: TraceMark
    things: tuple[str, int]


class State:
    """One pass."""

    def __init__(
        self,
        known: Known,
        hints: Hints,
        trace: Trace,
        lines: Sequence[Line],
        before: Before,
        made: Iterable[str] = (),
    ) -> None:
        self.known, self.hints, self.trace, self.lines, self.before = known, hints, trace, lines, before
        self.arithmetic = Arithmetic(trace)
        self.claims: list[Claim] = []
        self._by_line: dict[int, list[Claim]] = {}
        self._sorted = 0  # claims that are sorted by line
        self.suspects: list[Suspect] = []
        self.made: set[str] = set(made)  # true quantities that lines came to
        self.solved: set[str] = set()  # letters that were solved for
        self.alias: dict[str, str] = {}  # letters with the words of what they stand for
        self.bound: dict[str, Token] = {}  # letters with the numbers that a later line puts in their place
        self.unread: set[int] = set()
        self.other_table: set[int] = set()  # lines with a share of another published table
        self.run_on: set[int] = set()  # lines whose equals signs run on from step to step
        self.words_only: set[int] = set()
        self.tens = False  # whether the working takes g for 10
        self.line = 0
        self.dirty = False  # a sign was passed over in this clause
        self.text = ""  # of this clause
        self.solving = ""  # the letter that this clause was solved for
        self.lead = ""  # the sign with which it goes on from the line above

    def mark(self, things: tuple[str, int]) -> Mark:
        """How far this pass has come. `things`: the things that were named last, with their line."""
        sets = tuple(frozenset(getattr(self, name)) for name in _SETS)
        return Mark(len(self.claims), len(self.suspects), sets, self.trace.mark(), things)

    def go_on_from(self, other: State, mark: Mark) -> None:
        """Take over what another pass had found by then."""
        self.claims, self.suspects = other.claims[: mark.claims], other.suspects[: mark.suspects]
        for name, each in zip(_SETS, mark.sets, strict=True):
            setattr(self, name, set(each))
        self.trace.go_on_from(other.trace, mark.trace)

    @property
    def raw(self) -> str:
        """The line as typed, in small letters."""
        return self.lines[self.line - 1].text.lower() if self.line else ""

    def true_of(self, row: Row, unit: str = "") -> list[True_]:
        """The true quantities that a row is on this line: an angle said to be to the level is not the one to the
        upright.
        """
        found = self.known.true_of(row, unit)
        return (
            [each for each in found if each.form != "complement"]
            if any(each.form for each in found) and self.to_the_level(self.line)
            else found
        )

    def to_the_level(self, line: int) -> bool:
        """Whether a line says that its angle is to the level."""
        raw = self.raw_of(line)
        return bool(_LEVEL.search(raw)) and "vertical" not in raw and "90" not in raw

    def raw_of(self, line: int) -> str:
        return self.lines[line - 1].text.lower()

    def suspect(self, suspect: Suspect, value: Value | None) -> int:
        """Note a suspicion; the value rests on it from now on."""
        suspect.at = suspect.at or suspect.line
        place = suspect.place = len(self.suspects)
        self.suspects.append(suspect)
        if value is not None:
            suspect.deps = suspect.deps or value.deps
            suspect.number = value.number
            value.blames = value.blames | {place}
        return place

    def guilty(self) -> list[Suspect]:
        return [each for each in self.suspects if each.state == "guilty"]

    def on(self, line: int) -> list[Claim]:
        if self._sorted < len(self.claims):
            for each in self.claims[self._sorted :]:
                self._by_line.setdefault(each.line, []).append(each)
            self._sorted = len(self.claims)
        return self._by_line.get(line, [])

    def places(self, suspects: Iterable[Suspect]) -> frozenset[int]:
        """The places of some suspicions in the list."""
        return frozenset(each.place for each in suspects)
