"""A formula as a ready-made form of a PDF. Knows how WeasyPrint asks an image for its size and its drawing; no MathML.

The form goes to WeasyPrint through the image cache of its renderer. What it asks of an image there is nowhere
documented (written
against 70.0): `id`, `get_intrinsic_size`, `draw`, `get_x_object`. Each letter is a form of its own, shared by all
formulas of the
document, which makes files a fifth of the size.
"""

from __future__ import annotations

import re
import zlib
from typing import Any

import pydyf

from .glyph_outlines import EM, Ink, Stroke, number

_SLACK = 2.0  # room around the ink, so that no viewer shaves an edge off
_SHORT = 60  # an outline of fewer letters, a bar or a stroke, is drawn in place
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")


class TypeCase:
    """The letters that the formulas of one document are made of, each drawn once, and the forms of those formulas."""

    def __init__(self) -> None:
        self._letters: dict[str, str] = {}
        self._forms: list[pydyf.Stream] = []

    def form(self, drawn: Ink) -> pydyf.Stream:
        """A formula as a form, its baseline at y = 0, down positive."""
        operators = "\n".join(self._stroke(each) for each in drawn.strokes if each.outline)
        box = (drawn.left - _SLACK, -drawn.rise - _SLACK, drawn.right + _SLACK, drawn.drop + _SLACK)
        made = _form(operators, box)
        self._forms.append(made)
        return made

    def _stroke(self, stroke: Stroke) -> str:
        outline = stroke.outline
        if len(outline) > _SHORT:
            outline = f"/{self._letters.setdefault(outline, f'L{len(self._letters)}')} Do"
        return f"q {stroke.wide:.4g} 0 0 {stroke.high:.4g} {number(stroke.x)} {number(stroke.y)} cm {outline} Q"

    def lay_in(self, pdf: pydyf.PDF) -> None:
        """Add the letters to the PDF; to be called once, when all forms are made."""
        letters = pydyf.Dictionary()
        for outline, name in self._letters.items():
            letter = _form(outline, _bounds(outline))
            pdf.add_object(letter)
            letters[name] = letter.reference
        resources = pydyf.Dictionary({"XObject": letters})
        pdf.add_object(resources)
        for form in self._forms:
            form.extra["Resources"] = resources.reference


class EquationImage:
    """A formula as wide as its advance, in the size and the colour of the text around it."""

    def __init__(self, name: str, drawn: Ink, above: float, below: float, case: TypeCase) -> None:
        """`name` is its own in the document; its box reaches `above` the baseline and `below` it, in hundredths of
        an em.
        """
        self.id = name
        self.drawn, self.above, self.below, self.case = drawn, above, below, case

    def get_intrinsic_size(self, resolution: float, font_size: float) -> tuple[float, float, float]:
        """Width and height in pixels, and their ratio."""
        width, height = max(self.drawn.advance, 1.0), self.above + self.below  # a letter may have no width of its own
        return width * font_size / EM, height * font_size / EM, width / height

    def draw(self, stream: Any, width: float, height: float, style: Any) -> None:
        """Place the form on a page, `width` by `height` pixels from the origin."""
        stream.set_color(style["color"])
        stream.set_color(style["color"], stroke=True)
        scale = height / (self.above + self.below)
        stream.transform(scale, 0, 0, scale, 0, self.above * scale)
        stream.draw_x_object(stream.add_image(self, True, 1))

    def get_x_object(self, interpolate: bool, dpi_ratio: float) -> pydyf.Stream:
        """The form itself, asked for once a document."""
        return self.case.form(self.drawn)


def _form(operators: str, box: tuple[float, float, float, float]) -> pydyf.Stream:
    return pydyf.Stream(
        [zlib.compress(operators.encode("ascii"))],
        pydyf.Dictionary(
            {
                "Type": "/XObject",
                "Subtype": "/Form",
                "BBox": pydyf.Array(map(number, box)),
                "Filter": "/FlateDecode",
            }
        ),
    )


def _bounds(outline: str) -> tuple[float, float, float, float]:
    """A box that holds an outline: its ends and its handles."""
    numbers = [float(each) for each in _NUMBER.findall(outline)]
    across, up = numbers[::2], numbers[1::2]
    return min(across) - 1, min(up) - 1, max(across) + 1, max(up) + 1
