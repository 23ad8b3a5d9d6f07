"""A book before anyone decides how it looks: its parts in order, each with its heading and number, and an index.
Knows no problem.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from .passage import Passage


class Part(NamedTuple):
    """One part. `kind`: conventions, chapter, problem, prose (which leads up to a problem), closing (prose that does
    not), answers, answer.

    Prose has no heading (`level` 0). A body is passages, or `ready`: the same as a process of the crew has written them
    already, in the
    format of the book.
    """

    kind: str
    anchor: str = ""
    level: int = 0
    number: str = ""
    title: str = ""
    body: tuple[Passage, ...] = ()
    ready: str = ""


class Place(NamedTuple):
    """Where an entry of the index leads: the number that is printed, and the anchor."""

    number: str
    anchor: str


class Entry(NamedTuple):
    """A word of the index, under its heading, with its places in order."""

    heading: str
    word: str
    places: tuple[Place, ...]


@dataclass(frozen=True, slots=True)
class Volume:
    """`edition` is said on the title page; the caution stands there too, and in few words (`foot`) at the foot of
    every sheet.
    """

    title: str
    subtitle: str
    authors: tuple[str, ...]
    edition: str
    caution: str
    foot: str
    parts: tuple[Part, ...]
    index: tuple[Entry, ...] = ()
    language: str = "en"
    paper: str = "A4"

    def listed(self) -> Iterator[Part]:
        """What the table of contents names: whatever has a heading, except single answers."""
        return (part for part in self.parts if part.level and part.kind != "answer")


def heading(part: Part) -> tuple[str, str]:
    """The number of a part as its heading gives it ("Problem 2.3", "2"), and its title."""
    return (f"Problem {part.number}" if part.kind == "problem" else part.number), part.title
