"""What can be read on the pages of a PDF: its letters, by the fonts' own tables, and its metadata."""

from __future__ import annotations

import re
from typing import Any

import pikepdf


def words(page: pikepdf.Page) -> str:
    """The letters of a page in the order in which they are set, a blank after each run."""
    fonts = {name: _letters(font) for name, font in page.Resources.Font.items()}
    known: dict[int, str] = {}
    said: list[str] = []
    for operands, operator in pikepdf.parse_content_stream(page):
        if str(operator) == "Tf":
            known = fonts[str(operands[0])]
        for piece in operands[0] if str(operator) == "TJ" else operands if str(operator) == "Tj" else ():
            if isinstance(piece, pikepdf.String):
                codes = bytes(piece)
                said += [known.get(int.from_bytes(codes[at : at + 2], "big"), "?") for at in range(0, len(codes), 2)]
        said += [" "] if str(operator) in ("Tj", "TJ") else []
    return "".join(said).replace("\u00a0", " ")


def _letters(font: Any) -> dict[int, str]:
    pairs = re.findall(
        r"<([0-9a-fA-F]+)>\s*<([0-9a-fA-F]+)>\s*$", font.ToUnicode.read_bytes().decode("latin-1"), re.MULTILINE
    )
    return {int(code, 16): bytes.fromhex(text).decode("utf-16-be") for code, text in pairs}


def everything(document: pikepdf.Pdf) -> str:
    """All that can be read in a document: text, alternative texts, titles of links and bookmarks, metadata."""
    strings = [
        str(value)
        for each in document.objects
        if isinstance(each, pikepdf.Dictionary)
        for value in each.values()
        if isinstance(value, pikepdf.String)
    ]
    data = [
        each.read_bytes().decode("utf-8", "replace")
        for each in document.objects
        if isinstance(each, pikepdf.Stream) and each.get("/Type") == "/Metadata"
    ]
    return "\n".join([*map(words, document.pages), *strings, *data])
