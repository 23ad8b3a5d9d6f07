"""A book file (TOML): title, authors, course, chapters and how they are numbered. Knows its keys, and no chapter's
text.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from os.path import isfile
from pathlib import Path

from ..input import CHAPTER, Door
from ..errors import Fault
from ..problem.toml_table import Fields
from ..problem.reader import named_course, tables_of

EDITIONS = ("student", "odd", "answers", "instructor")
_KEYS = (
    "title",
    "subtitle",
    "authors",
    "course",
    "chapters",
    "edition",
    "numbering",
    "diagram",
    "working",
    "language",
    "index",
)
DIAGRAM, WORKING = 62, 60  # room for the student's own, in mm, at least
_EXAMPLE = 'title = "Statics of the body"'
_TALLEST = 200


@dataclass(frozen=True, slots=True)
class Book:
    """`chapters` are files and what they hold, `course` has the keys of the course file, `numbering` is "chapter" or
    "book".

    `diagram` and `working` are room in mm; `door` is the way from the book file to those that it names. Of a chapter
    that cannot be read a message stands in `missing`, by its file, and what it holds is nothing.
    """

    file: Path
    title: str
    chapters: tuple[tuple[Path, bytes], ...]
    subtitle: str = ""
    authors: tuple[str, ...] = ()
    course: Mapping[str, object] = field(default_factory=dict)
    edition: str = "instructor"
    numbering: str = "chapter"
    diagram: int = DIAGRAM
    working: int = WORKING
    language: str = "en"
    index: bool = True
    door: Door = Door()
    missing: Mapping[Path, str] = field(default_factory=dict)


def read_book(path: Path, root: str = "") -> Book:
    """The book of a book file; no name in it or in its chapters leads out of a `root`. Raises Fault."""
    if not isfile(path):
        raise Fault(
            str(path),
            found="no file that can be read",
            expected="the path of a book file",
            example="explain manual book.toml -o book.pdf",
        )
    fields = tables_of(path, root)
    fields.only(_KEYS)
    title = fields.text("title", "Statics of the body")
    if not title:
        raise fields.missing("title", "the title of the book", _EXAMPLE)
    heights = (fields.whole(key, 0, _TALLEST) for key in ("diagram", "working"))
    diagram, working = (
        default if height is None else height for height, default in zip(heights, (DIAGRAM, WORKING), strict=True)
    )
    chapters, missing = _chapters(fields)
    return Book(
        path,
        title,
        chapters,
        fields.text("subtitle", "Problems") or "",
        fields.texts("authors", "Ms Adebayo") or (),
        named_course(fields) if fields.text("course", "course.toml") else {},
        fields.choice("edition", {each: each for each in EDITIONS}) or "instructor",
        fields.choice("numbering", {"chapter": "chapter", "book": "book"}) or "chapter",
        diagram,
        working,
        fields.text("language", "en") or "en",
        fields.flag("index") is not False,
        fields.origin.door,
        missing,
    )


def _chapters(fields: Fields) -> tuple[tuple[tuple[Path, bytes], ...], dict[Path, str]]:
    """The files with what they hold, and what is said of those that cannot be read. Raises Fault where none can."""
    example = 'chapters = ["01-elbow.md", "02-knee.md"]'
    names = fields.texts("chapters", "01-elbow.md")
    if not names:
        raise fields.missing("chapters", "a list of chapter files, in order", example)
    if len(set(names)) < len(names):
        raise fields.fault("chapters", "one file twice", "each chapter once", example)
    chapters, faults = [], dict[Path, Fault]()
    for name in names:
        data = b""
        try:
            data = fields.file("chapters", name, CHAPTER, example)
        except Fault as fault:
            faults[Path(name)] = fault
        chapters.append((Path(name) if Path(name) in faults else Path(fields.origin.door.path(name)), data))
    if len(faults) == len(names):
        raise next(iter(faults.values()))
    return tuple(chapters), {path: str(fault) for path, fault in faults.items()}
