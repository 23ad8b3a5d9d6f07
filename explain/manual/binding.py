"""Chapters and worked problems bound into one volume, as an edition wants it. Works nothing out, writes nothing."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from ..problem.course import Course
from ..problem.course_file import course_from
from ..jobs.pool import Trouble
from ..document.passage import Caution, Paragraph, Passage, Text
from ..document.volume import Part, Place, Volume
from .blocks import Block
from .book import Book
from .chapters import Chapter
from .conventions import conventions
from .editions import ONLY, Edition
from .index import index
from .numbering import CONVENTIONS, Number, resolved
from .task import WORDS, Body, Topic, Worked

CAUTION = (
    "Teaching models: plane, rigid and at rest. Real joints differ. Not for treatment, training load, lifting or "
    "equipment decisions; "
    "for those, local rules and licensed practice hold."
)
FOOT = "A teaching model: not for treatment, training load, lifting or equipment decisions."
_MISSING = "This problem could not be worked, and is left out here."


class Sheets(NamedTuple):
    """All that a volume is bound from. `named` is what every anchor is called; `only` is "all", "odd" or "even"."""

    book: Book
    chapters: Sequence[Chapter]
    numbers: Mapping[str, Number]
    named: Mapping[str, str]
    worked: Mapping[str, Worked | Trouble]
    edition: Edition
    only: str

    def problems(self, chapter: Chapter) -> Iterator[Block]:
        """The problems of a chapter that this volume holds."""
        wanted = ONLY[self.only]
        return (
            each for each in chapter.content if isinstance(each, Block) and wanted(self.numbers[each.label].running)
        )

    def title(self, block: Block) -> str:
        found = self.worked[block.label]
        return found.facts.title if isinstance(found, Worked) else block.label


def bind(sheets: Sheets) -> Volume:
    """The volume of an edition."""
    book, edition = sheets.book, sheets.edition
    course = course_from(book.course, Course())
    words = edition.words if sheets.only == "all" else f"{edition.words}: {sheets.only}-numbered problems"
    parts = [_conventions(book)]
    if edition.page:
        labels = {block.label for chapter in sheets.chapters for block in sheets.problems(chapter)}
        present = {CONVENTIONS} | {chapter.anchor for chapter in sheets.chapters} | labels
        parts += [
            part
            for place, chapter in enumerate(sheets.chapters, 1)
            for part in _chapter(chapter, place, sheets, present)
        ]
    parts += _answers(sheets)
    entries = index(_places(sheets)) if edition.page and book.index else ()
    return Volume(
        book.title,
        book.subtitle,
        book.authors,
        words,
        CAUTION,
        FOOT,
        tuple(parts),
        entries,
        book.language,
        course.paper,
    )


def _conventions(book: Book) -> Part:
    lead = (
        "These conventions hold throughout. Where a problem departs from one, it says so."
        if book.course
        else "These conventions hold where a problem does not say otherwise."
    )
    body: tuple[Passage, ...] = (
        Paragraph((Text(lead),)),
        conventions(course_from(book.course, Course())),
        Caution((Text(CAUTION),)),
    )
    return Part("conventions", CONVENTIONS, 1, "", "Conventions", body)


def _chapter(chapter: Chapter, place: int, sheets: Sheets, present: set[str]) -> Iterator[Part]:
    opening: list[Passage] = []
    kind, heading = "chapter", (chapter.anchor, 1, str(place), chapter.title)
    wanted = {block.label for block in sheets.problems(chapter)}
    for piece in chapter.content:
        if not isinstance(piece, Block):
            opening.append(resolved(piece, sheets.named, present))
            continue
        if opening or kind == "chapter":
            yield Part(kind, *heading, tuple(opening))
            kind, heading, opening = "prose", ("", 0, "", ""), []
        if piece.label in wanted:
            yield _problem(piece, sheets)
    if opening or kind == "chapter":
        yield Part("closing" if kind == "prose" else kind, *heading, tuple(opening))


def _problem(block: Block, sheets: Sheets) -> Part:
    found = sheets.worked[block.label]
    body: Body = (Paragraph((Text(_MISSING),)),)
    if isinstance(found, Worked):
        body = getattr(found, sheets.edition.page)
    return _filled(Part("problem", block.label, 2, sheets.numbers[block.label].printed, sheets.title(block)), body)


def _filled(part: Part, body: Body) -> Part:
    return part._replace(ready=body) if isinstance(body, str) else part._replace(body=body)


def _answers(sheets: Sheets) -> Iterator[Part]:
    """The back of the book, chapter by chapter."""
    if not sheets.edition.back:
        return
    title = "Answers" if sheets.edition.back == "all" else f"Answers to {sheets.edition.back}-numbered problems"
    yield Part("answers", "answers-of-the-book", 1, "", title)
    for place, chapter in enumerate(sheets.chapters, 1):
        blocks = [
            each for each in sheets.problems(chapter) if sheets.edition.answers(sheets.numbers[each.label].running)
        ]
        if blocks:
            yield Part("answer", "", 2, str(place), chapter.title)
        for block in blocks:
            found = sheets.worked[block.label]
            if isinstance(found, Worked):
                number = sheets.numbers[block.label].printed
                yield _filled(Part("answer", f"answer-to-{block.label}", 3, number, found.facts.title), found.answers)


def _places(sheets: Sheets) -> Iterator[tuple[Topic, Place]]:
    for chapter in sheets.chapters:
        for block in sheets.problems(chapter):
            found = sheets.worked[block.label]
            if isinstance(found, Worked):
                place = Place(sheets.numbers[block.label].printed, block.label)
                yield from (
                    (topic, place) for topic in (*found.facts.topics, *(Topic(WORDS, word) for word in block.words))
                )
