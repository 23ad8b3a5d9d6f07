"""The parts of a volume as elements for paper, each with the room that its sheet has for a figure or a blank space.
Knows no sheet that is laid out.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from ...document.passage import Heading, Page, Passage, Space, Text
from ...document.volume import Part, Volume
from ..html.elements import elements, text
from .pieces import Piece

if TYPE_CHECKING:
    from .paper_markup import Paper

_HEAD = 12  # what a running head takes of a sheet, in mm
_WHOLE = {"A4": 205, "letter": 187}  # the height of a blank space that has a sheet for itself, in mm
_TITLED = 12  # what the title of a blank space takes


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
    from .figure_room import left

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
            whole, own = hand.placed(Page("", (*opening, *body), paper=paper), len(opening))
            body = whole.passages[len(opening) :]
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
