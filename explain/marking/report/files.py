"""Reports in every format, several in one file. Knows the writers, and decides nothing."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from ...document.passage import Page
from ..slips.verdict import Marking

if TYPE_CHECKING:
    from .page import Worked


def written(pages: Sequence[Page], form: str, title: str) -> bytes:
    """Pages in one file: markdown, html, pdf or text. Raises `explain.write.pdf.pages.NoPaper` where PDF cannot be
    made.
    """
    title = pages[0].title if len(pages) == 1 else title
    match form:
        case "pdf":
            from ...write.pdf.pages import pdf_pages

            return pdf_pages(pages, title)
        case "html":
            from ...write.html.pages import html_pages

            return html_pages(pages, title).encode()
        case "markdown":
            from ...write.markdown.pages import markdown

            return "\n---\n\n".join(map(markdown, pages)).encode()
    from ...write.text.pages import text

    return "\n\n".join(text(each, 100) for each in pages).encode()


def json_lines(walkthrough: Worked, markings: Sequence[Marking], audience: str, hints: int) -> bytes:
    """One object a line; without an audience, or for a tutor, everything that is known."""
    from ..marks.award import awarded
    from ..marks.scheme import scheme_of
    from .as_json import mark_json, student_json

    outcome = walkthrough.outcome
    if audience == "student":
        return b"".join(student_json(each, outcome, hints).encode() + b"\n" for each in markings)
    scheme = scheme_of(outcome)
    return b"".join(mark_json(each, awarded(scheme, each), outcome).encode() + b"\n" for each in markings)
