"""Pages in any format that is a file of pages: one door to the writers. Decides nothing."""

from __future__ import annotations

from collections.abc import Sequence

from ..document.passage import Page

WIDTH = 100  # columns of a page of text


def written(pages: Sequence[Page], form: str, title: str = "") -> bytes:
    """Pages in one file: markdown, html, pdf, latex or text; `title` is that of several. Raises
    `explain.write.pdf.pages.NoPaper` where PDF cannot be made.
    """
    title = pages[0].title if len(pages) == 1 or not title else title
    match form:
        case "pdf":
            from .pdf.pages import pdf_pages

            return pdf_pages(pages, title)
        case "html":
            from .html.pages import html_pages

            return html_pages(pages, title).encode()
        case "latex":
            from .latex.pages import latex_pages

            return latex_pages(pages).encode()
        case "markdown":
            from .markdown.pages import markdown

            return "\n---\n\n".join(map(markdown, pages)).encode()
    from .text.pages import text

    return "\n\n".join(text(each, WIDTH) for each in pages).encode()
