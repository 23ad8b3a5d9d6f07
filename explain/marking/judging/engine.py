"""Reads a working and judges it: the marking of one student's paper. Knows no slip by name; it is handed the rules."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from functools import cached_property

from ..slips.slip import SlipRule
from ..slips.verdict import LineVerdict, Marking
from ...solve.engine import Working
from .bare_answers import bare_answers
from .accepted import Accepted, overruled, prepared, rests_on
from .hints import Hints
from .known import Known
from .passes import Judged, Passes
from .reading import Reader
from .given import ask_about, given
from .telling import told
from .wanting import wants
from .verdicts import Verdict, verdicts


class Marker:
    """One problem, ready to mark workings of it: twins, quantities and slips are made once."""

    def __init__(self, working: Working, rules: Sequence[SlipRule]) -> None:
        self.working, self.rules = working, tuple(rules)
        body = working.body
        self.known = Known(working, self.rules)
        self.account = self.known.first
        names = {traced_key(key): name for name, key in working.asked}
        self._names = {key: name for key, name in names.items() if key in self.known.truth}
        self.asked = tuple(self._names) or tuple(self.known.first.unknowns)
        self.hints = Hints(
            self.known, body.problem.pivot.bone or body.problem.pivot.support, body.problem.pivot.name, self.asked
        )
        self.passes = Passes(self.known, self.hints, {})
        self.reader = Reader()

    @cached_property
    def _compounds(self) -> list[tuple[str, str]]:
        return [pair for each in self.known.first.items for pair in re.findall(r"(\w+) and (?:the )?(\w+)", each.name)]

    @cached_property
    def accepted(self) -> tuple[Accepted, ...]:
        """The lines of the problem file that a person accepted."""
        return tuple(prepared(each, self._judged) for each in self.working.body.problem.accepted)

    def judged(self, text: str) -> Judged:
        """A working judged, with the lines that a person accepted, before anything is said of it."""
        judged = self._judged(text)
        return overruled(judged, self.accepted) if self.working.body.problem.accepted else judged

    def rests_on(self, text: str, line: int) -> tuple[int, ...]:
        """The numbers of the lines of a working that one of them rests on."""
        return rests_on(self._judged(text), line)

    def _judged(self, text: str) -> Judged:
        inches = self.known.pounds or any(unit in ("in", "ft") for _, unit in self.known.first.written.values())
        inches = inches or bool(re.search(r"\d\s*(in\b|inch|ft\b|lb)", text))
        return self.passes.run(self.reader.read(text, inches, self._compounds))

    def bare_answers(self, text: str) -> frozenset[int]:
        """The numbers of the lines of a working that give an answer which nothing in it leads to."""
        judged = self.judged(text)
        return bare_answers(judged, verdicts(judged), self.asked)

    def verdicts(self, text: str) -> list[Verdict]:
        """The verdicts without words."""
        return verdicts(self.judged(text))

    def mark(self, text: str) -> Marking:
        """The verdicts on a working, in words. Never raises for a text."""
        judged = self.judged(text)
        found = verdicts(judged)
        answers = given(judged, found, self._names)
        ask_about(found, answers)
        rules = {each.SLIP: each for each in self.rules}
        lines = once(
            [
                told(judged, line, verdict, self.known, rules)
                for line, verdict in zip(judged.state.lines, found, strict=True)
            ]
        )
        wanting = wants(judged, found, self.asked, self.rules)
        for place, each in enumerate(lines):
            lacks, says = wanting.get(each.number, ("", ""))
            lines[place] = replace(each, note=each.note or says, lacks=lacks)
        return Marking(self.working.body.problem.title, tuple(lines), answers)


def traced_key(key: str) -> str:
    """The key by which what is asked is traced: a stress is worked out of a pull and an area."""
    return f"*stress {key.removesuffix('.stress')}" if key.endswith(".stress") else key


def once(lines: Sequence[LineVerdict]) -> list[LineVerdict]:
    """A slip that comes again is marked as such: it is counted once."""
    seen: set[str] = set()
    out = []
    for each in lines:
        first = {slip.slip for slip in each.slips[:1]}
        out.append(replace(each, again=bool(first & seen)) if each.verdict == "slips" else each)
        seen |= first
    return out
