"""The numbers of pages, put at the foot of sheets that are laid out already, in the type that the foot of a sheet has.
Knows content streams.
"""

from __future__ import annotations

import re
from io import BytesIO
from typing import Any, NamedTuple

import pikepdf

from .pages import sized
from .paper_markup import Paper
from .weasy import printed

_DIGITS = "0123456789"
_SHOWN = re.compile(
    rb"([\d.]+ [\d.]+ [\d.]+ rg)\s+BT\s+1 0 0 -1 ([\d.]+) ([\d.]+) Tm\s+/(\w+) ([\d.]+) Tf\s+\[(.*?)\] TJ"
)


class Numbers(NamedTuple):
    """How the foot of a sheet shows a number: its colour, where it ends (`right`, `base`, in pixels from the upper
    left), its size, and the code and the width of each digit.
    """

    source: Any
    font: Any
    colour: bytes
    right: float
    base: float
    height: float
    size: float
    codes: tuple[bytes, ...]
    widths: tuple[float, ...]

    @property
    def name(self) -> str:
        return "/PageNumber"

    def font_in(self, document: Any) -> Any:
        """The font, as an object of a document."""
        return document.copy_foreign(self.font)

    def drawn(self, number: int) -> bytes:
        """What a page is to show, as content that is no part of the text."""
        digits = [int(each) for each in str(number)]
        left = self.right - sum(self.widths[each] for each in digits)
        shown = b"".join(self.codes[each] for each in digits)
        return b"q 0.75 0 0 -0.75 0 %.4f cm /Artifact BMC %s BT 1 0 0 -1 %.4f %.4f Tm %s %.4f Tf <%s> Tj ET EMC Q" % (
            self.height,
            self.colour,
            left,
            self.base,
            self.name.encode(),
            self.size,
            shown,
        )


def page_numbers(paper: str) -> Numbers:
    """The numbers as the stylesheet of a book sets them, read off a sheet that has every digit in its foot."""
    markup = "<!DOCTYPE html><html lang=en><head><title>Digits</title></head><body><p>.</p></body></html>"
    data = printed(markup, Paper(True, {}), "book.css", "digits.css", *sized(paper))
    source = pikepdf.open(BytesIO(data))
    page = source.pages[0]
    shown = [each for each in _SHOWN.finditer(page.Contents.read_bytes())]
    colour, left, base, name, size, codes = shown[-1].groups()
    font = page.Resources.Font[f"/{name.decode()}"]
    found = tuple(re.findall(rb"<([0-9a-f]{4})>", codes))
    assert len(found) == len(_DIGITS), "the foot of a sheet is not as it was taken for"
    widths = tuple(_width(font, int(code, 16)) * float(size) / 1000 for code in found)
    height = float(page.MediaBox[3])
    return Numbers(source, font, colour, float(left) + sum(widths), float(base), height, float(size), found, widths)


def _width(font: Any, code: int) -> float:
    """The width of a letter, in thousandths: a list of them follows the code of its first."""
    (descendant,) = font.DescendantFonts
    widths = list(descendant.W)
    for first, several in zip(widths[::2], widths[1::2], strict=True):
        if int(first) <= code < int(first) + len(several):
            return float(several[code - int(first)])
    return float(descendant.get("/DW", 1000))
