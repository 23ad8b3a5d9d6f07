"""One problem of a book as it goes out to a process, and what comes back. Knows no mechanics, so it loads at once."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from ..document.passage import Passage

Body = tuple[Passage, ...] | str
HEADINGS = JOINTS, MUSCLES, METHODS, WORDS = "Joints and other pivots", "Muscles", "Methods", "Words of the book"


class Topic(NamedTuple):
    """A word for the index, under its heading."""

    heading: str
    word: str


class Facts(NamedTuple):
    """What is known of a worked problem besides its pages. `answers` are pairs of a name and a value as it is
    printed.
    """

    title: str
    answers: tuple[tuple[str, str], ...]
    topics: tuple[Topic, ...]
    failing: tuple[str, ...] = ()


class Worked(NamedTuple):
    """A worked problem: as passages, or written in a format. `figures` are the files (name, SVG) that a format keeps
    beside the book.
    """

    facts: Facts
    sheet: Body = ()
    walk: Body = ()
    answers: Body = ()
    figures: tuple[tuple[str, str], ...] = ()


class Task(NamedTuple):
    """A problem to be worked. `course` are the keys of the book's course, `overlay` those that go before the problem's
    own.

    `form` is "markdown", "html" or "pdf"; `figures` is the folder of figures beside a Markdown book; `pages` are the
    pages wanted ("sheet", "walk", "answers"); `key` and `folder` say where the problem is kept, "" for nowhere. `root`
    is the folder
    that no name may lead out of; `named` says that the text is that of a file which a chapter names.
    """

    label: str
    text: str
    file: str
    course: Mapping[str, object]
    overlay: Mapping[str, object]
    diagram: int
    working: int
    form: str
    figures: str
    pages: tuple[str, ...]
    key: str
    folder: str
    root: str = ""
    named: bool = False

    @property
    def written_key(self) -> str:
        """The name under which the pages are kept in their format; passages alone serve PDF."""
        return self.key if self.form == "pdf" else f"{self.key}-{self.form}-{'-'.join(self.pages)}"
