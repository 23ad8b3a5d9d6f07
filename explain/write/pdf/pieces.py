"""A large volume cut where a sheet begins, so that its pieces can be laid out apart, in little memory and by several
processes. Knows parts and their order, and no page.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from ...document.volume import Part, Volume, heading

MOST = 8  # problems of a piece
_OPENING = ("conventions", "chapter", "problem", "prose", "answers")  # kinds that begin a sheet


class Piece(NamedTuple):
    """Parts that stand together, what stands in the head (`chapter`) and at the `foot` of their sheets, and the part
    `behind` them, with what is said of the whole volume.
    """

    parts: tuple[Part, ...]
    behind: Part | None
    chapter: str
    foot: str
    title: str
    authors: tuple[str, ...]
    language: str
    paper: str


class Mark(NamedTuple):
    """A place on a page of a piece, counted from 0, in points from its lower left corner: an anchor (level 0), or a
    bookmark with its level and title.
    """

    name: str
    level: int
    page: int
    x: float
    y: float


class Laid(NamedTuple):
    """A piece as a PDF of its own, without page numbers, and the places in it that others refer to."""

    data: bytes
    pages: int
    marks: tuple[Mark, ...]


def pieces(volume: Volume, most: int = MOST) -> tuple[Piece, ...]:
    """The volume in pieces of at most so many problems, as far as it has places to be cut at."""
    cut = list(_cut(volume, most))
    out, chapter = list[Piece](), ""
    for parts, after in zip(cut, (*cut, ())[1:], strict=True):
        opened = parts[0]
        own = _headed(opened) if opened.level == 1 else chapter
        behind = after[0] if after else None
        said = volume.foot, volume.title, volume.authors, volume.language, volume.paper
        out.append(Piece(parts, behind, own, *said))
        chapter = next((_headed(part) for part in reversed(parts) if part.level == 1), chapter)
    return tuple(out)


def _cut(volume: Volume, most: int) -> Iterator[tuple[Part, ...]]:
    held, problems, led_up = list[Part](), 0, False
    for part in volume.parts:
        begins = part.kind in _OPENING and not (part.kind == "problem" and led_up)
        if held and begins and (part.kind == "answers" or problems >= most):
            yield tuple(held)
            held, problems = [], 0
        held.append(part)
        problems += part.kind == "problem"
        led_up = part.kind in ("chapter", "prose")
    if held:
        yield tuple(held)


def _headed(part: Part) -> str:
    number, title = heading(part)
    return f"{number} {title}".strip()
