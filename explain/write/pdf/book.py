"""A volume as one tagged PDF: page numbers, running heads, bookmarks and links come from the stylesheet. A small one
is laid out at once, a large one in pieces, which are joined. Knows no mechanics.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, MutableMapping, Sequence
from typing import TYPE_CHECKING

from ...document.volume import Volume
from ..html.book_elements import elements_of
from .book_markup import bodies, head
from .pages import ready, sized
from .pieces import MOST, Laid, Piece, pieces

if TYPE_CHECKING:
    from .glyph_outlines import Ink

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
