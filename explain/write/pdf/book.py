"""A volume as one tagged PDF: page numbers, running heads, bookmarks and links come from the stylesheet. A small one
is laid out at once, a large one in pieces, which are joined. Knows no mechanics.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, MutableMapping, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from ...document.passage import Heading, Page, Passage, Space, Text
from ...document.volume import Part, Volume
from ..html.book_elements import elements_of
from ..html.elements import elements, text
from .pages import ready, sized
from .pieces import MOST, Laid, Piece, pieces

if TYPE_CHECKING:
    from .paper_markup import Paper
    from .glyph_outlines import Ink

_HEAD = 12  # what a running head takes of a sheet, in mm
_WHOLE = {"A4": 205, "letter": 187}  # the height of a blank space that has a sheet for itself, in mm
_TITLED = 12  # what the title of a blank space takes


Set = Callable[[Sequence[Piece]], Iterable[Laid]]


def pdf_volume(volume: Volume, inks: MutableMapping[str, Ink] | None = None) -> bytes:
    """The whole book, laid out at once; raises what `explain.write.pdf.pages.pdf` raises. `inks` keeps formulas laid
    out, by their MathML.
    """
    ready()
    from .paper_markup import Paper
    from .weasy import printed

    hand = Paper(True, {} if inks is None else inks)
    found = bodies(volume.parts, volume.paper, hand)
    markup = head(volume), *elements_of(volume, lambda part: next(found)), "</body></html>"
    return printed("".join(markup), hand, "book.css", *sized(volume.paper))


def pdf_of_pieces(volume: Volume, set_all: Set, most: int = MOST) -> bytes:
    """The same book, laid out in pieces of at most so many problems by `set_all`, which may use other processes, and
    joined.
    """
    ready()
    found = pieces(volume, most)
    if len(found) < 2:
        return pdf_volume(volume)
    from .joined import joined

    return joined(volume, tuple(set_all(found)))


def head(volume: Volume | Piece) -> str:
    """The beginning of a document, its body open."""
    authors = f'<meta name="author" content="{text(", ".join(volume.authors))}">' if volume.authors else ""
    return (
        f'<!DOCTYPE html><html lang="{text(volume.language)}"><head><meta '
        f'charset="utf-8"><title>{text(volume.title)}</title>{authors}</head><body>'
    )


def bodies(parts: Sequence[Part], paper: str, hand: Paper, behind: Part | None = None) -> Iterator[str]:
    """The body of every part in order; a figure or a last blank space is as large as its sheet allows, what leads up
    to it counted. `behind` is the part that follows on them.
    """
    from .figure_room import left, room

    before: list[Passage] = []
    for part, after in zip(parts, (*parts[1:], behind), strict=True):
        opening = (
            [Space("", _HEAD), *before, Heading(2, (Text(part.title),))]
            if not before or part.kind == "problem"
            else before
        )
        body = part.body
        own = hand
        if part.kind == "problem":
            own = replace(hand, room=room(Page("", (*opening, *body), paper=paper)))
            if body and isinstance(body[-1], Space):
                blank = _fitted(body[-1], paper, left((*opening, *body[:-1]), paper), _closing(after))
                body = (*body[:-1], blank)
        yield "".join(element for passage in body for element in elements(passage, own))
        before = _leading(part)


def _leading(part: Part) -> list[Passage]:
    """What stands on the sheet on which the next problem begins."""
    if part.kind == "chapter":
        return [Heading(1, (Text(part.title),)), *part.body]
    return list(part.body) if part.kind == "prose" else []


def _closing(part: Part | None) -> int:
    """What the last words of a chapter need behind a blank space, in mm."""
    from .figure_room import left

    return int(left(()) - left(part.body)) + _TITLED if part is not None and part.kind == "closing" else 0


def _fitted(space: Space, paper: str, left: float, behind: int) -> Space:
    """A blank space to the end of its sheet, if that is as high as was asked for; else on a sheet of its own.

    Room is left for what is `behind`.
    """
    high = int(left) - _TITLED - behind
    return Space(
        space.title, high if high >= space.height else max(_WHOLE[paper] - behind, space.height), space.checklist
    )
