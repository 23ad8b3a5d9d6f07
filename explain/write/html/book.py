"""A volume as one HTML file that stands alone. Knows no mechanics."""

from __future__ import annotations

from importlib.resources import files

from ...document.volume import Part, Volume
from .book_elements import elements_of
from .pages import head, passages_html


def html_volume(volume: Volume) -> str:
    """The whole book; a part that is written already is taken as it is."""
    style = (files(__package__) / "book-screen.css").read_text(encoding="utf-8")
    return (
        "\n".join((head(volume.language, volume.title, style), *elements_of(volume, _body), "</body>", "</html>"))
        + "\n"
    )


def _body(part: Part) -> str:
    return part.ready or passages_html(part.body, part.anchor or "part")
