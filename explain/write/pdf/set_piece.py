"""One piece of a volume laid out: what a process of the crew does. Knows WeasyPrint's document, and no other piece."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from ..html.book_elements import section
from ..html.elements import text
from .book_markup import bodies, head
from .pages import sized
from .paper_markup import Paper
from .pieces import Laid, Mark, Piece
from .weasy import rendered, written

_POINT = 0.75  # of a pixel


def set_piece(piece: Piece) -> Laid:
    """The piece as a PDF of its own. Raises what `explain.write.pdf.pages.pdf` raises."""
    hand = Paper(True, {})
    found = bodies(piece.parts, piece.paper, hand, piece.behind)
    markup = [head(piece), "<main>"]
    for place, part in enumerate(piece.parts):
        markup.append(section(part, next(found), "" if place else carried(piece.chapter, piece.foot)))
    return laid("".join((*markup, "</main></body></html>")), hand, piece.paper)


def carried(chapter: str, foot: str) -> str:
    """Attributes by which a piece knows what stands in the head and at the foot of its sheets."""
    return f' data-chapter="{text(chapter)}" data-foot="{text(foot)}"'


def laid(markup: str, hand: Paper, paper: str, *more: str) -> Laid:
    """A document with the marks in it. Links to what other pieces hold are kept, as links to names."""
    document = rendered(markup, hand, "book.css", "piece.css", *sized(paper), *more)
    marks = tuple(_marks(document))
    own = {mark.name for mark in marks if not mark.level}
    for page in document.pages:
        for kind, target, *_ in page.links:
            if kind == "internal" and target not in own:
                page.anchors.setdefault(target, (0, 0, 0, 0))  # WeasyPrint drops a link whose name it does not find
    return Laid(written(document, hand), len(document.pages), marks)


def _marks(document: Any) -> Iterator[Mark]:
    for place, page in enumerate(document.pages):
        for name, (x, y, *_) in page.anchors.items():
            yield Mark(name, 0, place, x * _POINT, (page.height - y) * _POINT)
        for level, title, (x, y), _ in page.bookmarks:
            yield Mark(title, level, place, x * _POINT, (page.height - y) * _POINT)
