"""A book file (TOML): title, authors, course, chapters and how they are numbered. Knows its keys, and no chapter's text."""
from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from ..faults import Fault
from ..fields import Fields
from ..files import course_keys, opened

EDITIONS = ("student", "odd", "answers", "instructor")
_KEYS = ("title", "subtitle", "authors", "course", "chapters", "edition", "numbering", "diagram", "working", "language", "index")
DIAGRAM, WORKING = 62, 60                         # room for the student's own, in mm, at least
_EXAMPLE = 'title = "Statics of the body"'
_TALLEST = 200


@dataclass(frozen=True, slots=True)
class Book:
    """`course` holds the keys of the course file, `numbering` is "chapter" or "book"; `diagram` and `working` are room in mm."""

    file: Path
    title: str
    chapters: tuple[Path, ...]
    subtitle: str = ""
    authors: tuple[str, ...] = ()
    course: Mapping[str, object] = field(default_factory=dict)
    edition: str = "instructor"
    numbering: str = "chapter"
    diagram: int = DIAGRAM
    working: int = WORKING
    language: str = "en"
    index: bool = True


def read_book(path: Path) -> Book:
    """The book of a book file. Raises Fault."""
    if not path.is_file():
        raise Fault(str(path), found="no file that can be read", expected="the path of a book file", example="explain manual book.toml -o book.pdf")
    fields = opened(path, "")
    fields.only(_KEYS)
    title = fields.text("title", "Statics of the body")
    if not title:
        raise fields.missing("title", "the title of the book", _EXAMPLE)
    heights = (fields.whole(key, 0, _TALLEST) for key in ("diagram", "working"))
    diagram, working = (default if height is None else height for height, default in zip(heights, (DIAGRAM, WORKING), strict=True))
    return Book(
        path, title, _chapters(fields, path.parent), fields.text("subtitle", "Problems") or "", fields.texts("authors", "Ms Adebayo") or (),
        _course(fields, path.parent), fields.choice("edition", {each: each for each in EDITIONS}) or "instructor",
        fields.choice("numbering", {"chapter": "chapter", "book": "book"}) or "chapter", diagram, working,
        fields.text("language", "en") or "en", fields.flag("index") is not False)


def _chapters(fields: Fields, folder: Path) -> tuple[Path, ...]:
    example = 'chapters = ["01-elbow.md", "02-knee.md"]'
    names = fields.texts("chapters", "01-elbow.md")
    if not names:
        raise fields.missing("chapters", "a list of chapter files, in order", example)
    for name in names:
        if not (folder / name).is_file():
            raise fields.fault("chapters", f'"{name}", but there is no such file', "paths of Markdown files, from where the book file is", example)
    if len(set(names)) < len(names):
        raise fields.fault("chapters", "one file twice", "each chapter once", example)
    return tuple(folder / name for name in names)


def _course(fields: Fields, folder: Path) -> Mapping[str, object]:
    name = fields.text("course", "course.toml")
    if not name:
        return {}
    if not (folder / name).is_file():
        raise fields.fault("course", f'"{name}", but there is no such file', "the path of a course file, from where the book file is",
                           'course = "course.toml"')
    return course_keys(folder / name)
