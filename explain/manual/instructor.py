"""What only an instructor's page holds besides the walkthrough. Knows where it stands in a book, and no rule.

Slips to expect and marks come from whoever knows them: `explanations` is called with a worked problem and gives passages.
"""
from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from ..passage import Heading, Line, Passage, Table, Text


class Slip(NamedTuple):
    """A slip to expect: its name, what it does, and the wrong answer that it leads to."""

    name: str
    does: str
    leads_to: str


class Mark(NamedTuple):
    """Marks of one kind (method, accuracy, independent, communication): how many, and for what."""

    kind: str
    marks: int
    reason: str


def notes(slips: Sequence[Slip], marks: Sequence[Mark]) -> tuple[Passage, ...]:
    """The passages behind a walkthrough; none where nothing is known."""
    found: list[Passage] = []
    if slips:
        rows = tuple(_cells(each.name.replace("-", " "), each.does, each.leads_to) for each in slips)
        found += [_headed("Slips to expect"), Table("", _cells("Slip", "What is done", "Leads to"), rows, frozenset({2}))]
    if marks:
        rows = tuple(_cells(each.kind, each.reason, str(each.marks)) for each in marks)
        total = f"Marks ({sum(each.marks for each in marks)})"
        found += [_headed(total), Table("", _cells("Kind", "For", "Marks"), rows, frozenset({2}))]
    return tuple(found)


def _headed(words: str) -> Heading:
    return Heading(2, (Text(words),))


def _cells(*words: str) -> tuple[Line, ...]:
    return tuple((Text(each),) for each in words)
