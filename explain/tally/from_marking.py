"""A working that was judged line by line, as an entry of the tally: each wrong line once, and a slip that comes
again not at all. Judges nothing.
"""

from __future__ import annotations

from collections.abc import Iterator

from ..marking.slips.verdict import Given, LineVerdict, Marking
from ..marking.marks.award import awarded
from ..marking.marks.scheme import Scheme
from .entry import Cause, Entry, Said, Score, Verdict, Wrong


def entry_of(place: int, student: str, marking: Marking, scheme: Scheme) -> Entry:
    """What a marking says of one student, with the marks by a scheme; a working with nothing to judge in it is reported
    as such.
    """
    judged = [each for each in marking.lines if each.verdict != "aside"]
    unclear = sum(each.verdict == "unclear" for each in judged)
    trouble = "" if judged or marking.answers else "no line of working"
    marks = awarded(scheme, marking)
    score = Score(marks.earned, marks.open, marks.total)
    said, wrongs = tuple(map(_said, marking.answers)), tuple(_wrongs(marking))
    return Entry(place, student, said, wrongs, unclear, trouble, score=score)


def _said(given: Given) -> Said:
    verdict: Verdict = "right" if given.right else "carried" if given.carried else "wrong"
    return Said(given.name, f"{given.value:.10g} {given.unit}".strip(), given.value, verdict)


def _wrongs(marking: Marking) -> Iterator[Wrong]:
    for each in marking.issues:
        if not each.again:
            yield Wrong((), tuple(_causes(each)), line=each.number, text=each.text.strip())


def _causes(line: LineVerdict) -> Iterator[Cause]:
    """The slips that explain a line; where they are keyed by nothing, by what the line is about."""
    for slip in line.slips:
        yield Cause((slip.slip,), slip.keys or line.uses[-1:], ("",))
