"""Pages as one tagged PDF: formulas as outlines, nothing fetched, the same bytes for the same pages. Knows no
mechanics.
"""

from __future__ import annotations

from collections.abc import MutableMapping, Sequence
from contextlib import redirect_stdout
from functools import lru_cache
from importlib import import_module
from io import StringIO
from typing import TYPE_CHECKING

from ...document.passage import Page
from ..html.elements import text

if TYPE_CHECKING:
    from .glyph_outlines import Ink

TIGHTER = {False: ("tight.css", "closest.css"), True: ("compact-tight.css",)}  # by whether a page is compact
_ADVICE = "apt install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0"


class NoPaper(Exception):
    """The libraries that lay out PDF pages are not installed; Markdown and HTML need none of them."""

    exit_code = 2

    def __init__(self) -> None:
        super().__init__(f"PDF needs Pango, which was not found; on Debian and Ubuntu: {_ADVICE}")


def pdf(page: Page, strokes: bool = True, compact: bool = False) -> bytes:
    """One page as a PDF document, `compact` with smaller type, and figures beside words. Raises NoPaper without Pango,
    `ua.NoAlternative` for a figure without a title.
    """
    return pdf_pages((page,), page.title, strokes, compact=compact)


def pdf_pages(
    pages: Sequence[Page],
    title: str,
    strokes: bool = True,
    inks: MutableMapping[str, Ink] | None = None,
    compact: bool = False,
) -> bytes:
    """Several pages as one PDF document, each beginning a sheet; raises what `pdf` raises.

    `strokes` strikes out units that cancel. `inks` keeps formulas laid out, by their MathML, from one call to the next;
    without it they are kept as long as the process runs.
    """
    ready()
    from .paper_markup import Paper
    from .weasy import printed

    hand = Paper(strokes, kept_inks() if inks is None else inks, compact=compact)
    language = text(pages[0].language) if pages else "en"
    parts = [
        f'<!DOCTYPE html><html lang="{language}"><head><meta charset="utf-8"><title>{text(title)}</title></head><body>'
    ]
    parts.extend(map(hand.article, pages))
    styles = (*sized(pages[0].paper if pages else "A4"), *(("compact.css",) if compact else ()))
    tighter = TIGHTER[compact] if len(pages) == 1 else ()
    return printed("".join((*parts, "</body></html>")), hand, *styles, tighter=tighter)


def sized(paper: str) -> tuple[str, ...]:
    """The stylesheets that make sheets of this paper of those of A4."""
    return () if paper == "A4" else (f"{paper}.css",)


@lru_cache(maxsize=1)
def kept_inks() -> dict[str, Ink]:
    """Formulas laid out, as long as the process runs."""
    return {}


def ready() -> None:
    """WeasyPrint without Pango prints advice to standard output, where a page may be on its way, and raises OSError."""
    try:
        with redirect_stdout(StringIO()):
            import_module("weasyprint")
    except OSError:
        raise NoPaper from None
