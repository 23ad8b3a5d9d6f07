"""A figure as a ready-made form of a PDF, straight from its shapes. Knows how WeasyPrint asks an image for its drawing;
no mechanics.

WeasyPrint draws SVG too, but takes some ten times as long for it. What it asks of an image is told in `equation_image`.
"""

from __future__ import annotations

import re
import zlib
from collections.abc import Iterator
from functools import lru_cache
from math import ceil, cos, radians, sin, tan
from typing import Any

import pydyf

from ..figure.shapes import Arc, Disc, Line, Patch, Pen, Shape, Spot
from ..figure.free_body import Layout

_ROUND = 0.5523  # of a radius: the handles of the curve that stands for a quarter of a circle
_COMMAND = re.compile(r"([MLQCZ])([^MLQCZ]*)")


class FigureImage:
    """A figure in pixels as it is laid out."""

    def __init__(self, name: str, laid: Layout) -> None:
        """`name` is its own in the document."""
        self.id = name
        self.laid = laid

    def get_intrinsic_size(self, resolution: float, font_size: float) -> tuple[float, float, float]:
        """Width and height in pixels, and their ratio."""
        view = self.laid.view
        return view.width, view.height, view.width / view.height

    def draw(self, stream: Any, width: float, height: float, style: Any) -> None:
        """Place the form on a page, `width` by `height` pixels from the origin."""
        view = self.laid.view
        scale = height / view.height
        stream.transform(scale, 0, 0, scale, -view.left * scale, -view.top * scale)
        stream.draw_x_object(stream.add_image(self, True, 1))

    def get_x_object(self, interpolate: bool, dpi_ratio: float) -> pydyf.Stream:
        """The form itself, asked for once a document."""
        view = self.laid.view
        labels = (
            f"{_colour(each.ink, 'rg')} q 1 0 0 1 {_n(each.box.left)} {_n(each.box.top)} cm "
            f"{_outline(each.outline.path)} f Q"
            for each in self.laid.labels
        )
        operators = "\n".join(
            (*(f"q {_pen(each.pen)} {_way(each)} {_paint(each.pen)} Q" for each in self.laid.shapes), *labels)
        )
        return pydyf.Stream(
            [zlib.compress(operators.encode("ascii"))],
            pydyf.Dictionary(
                {
                    "Type": "/XObject",
                    "Subtype": "/Form",
                    "BBox": pydyf.Array((view.left, view.top, view.right, view.bottom)),
                    "Resources": pydyf.Dictionary(),
                    "Filter": "/FlateDecode",
                }
            ),
        )


def _n(value: float) -> str:
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _colour(hexadecimal: str, operator: str) -> str:
    parts = (int(hexadecimal[place : place + 2], 16) / 255 for place in (1, 3, 5))
    return " ".join(f"{part:.3g}" for part in parts) + f" {operator}"


def _pen(pen: Pen) -> str:
    parts = [_colour(pen.fill, "rg")] if pen.fill != "none" else []
    if pen.width:
        parts += [_colour(pen.ink, "RG"), f"{_n(pen.width)} w"]
    if pen.dash:
        parts.append(f"[{pen.dash}] 0 d")
    if pen.round:
        parts.append("1 J")
    return " ".join(parts)


def _paint(pen: Pen) -> str:
    return {(True, True): "B", (True, False): "S", (False, True): "f", (False, False): "n"}[
        bool(pen.width), pen.fill != "none"
    ]


def _way(shape: Shape) -> str:
    """The path of a shape."""
    match shape:
        case Line(start, end, _):
            return f"{_spots(start)} m {_spots(end)} l"
        case Patch(corners, _):
            return " l ".join(map(_spots, corners)).replace(" l ", " m ", 1) + " l h"
        case Disc(centre, radius, _):
            return " ".join(_round(centre, radius, 0.0, 360.0)) + " h"
        case Arc(centre, radius, first, sweep, _):
            return " ".join(_round(centre, radius, first, sweep))


def _spots(*spots: Spot) -> str:
    return " ".join(f"{_n(x)} {_n(y)}" for x, y in spots)


def _round(centre: Spot, radius: float, first: float, sweep: float) -> Iterator[str]:
    """An arc in pieces of at most a quarter of a circle, each as a cubic curve; angles counter-clockwise as seen on
    the page.
    """
    count = max(ceil(abs(sweep) / 90), 1)
    piece = radians(sweep) / count
    handle = 4 / 3 * tan(piece / 4)

    def spot(angle: float, ahead: float) -> Spot:
        return (
            centre[0] + radius * (cos(angle) - ahead * sin(angle)),
            centre[1] - radius * (sin(angle) + ahead * cos(angle)),
        )

    yield _spots(spot(radians(first), 0.0)) + " m"
    for place in range(count):
        start = radians(first) + place * piece
        yield _spots(spot(start, handle), spot(start + piece, -handle), spot(start + piece, 0.0)) + " c"


@lru_cache(maxsize=2048)
def _outline(path: str) -> str:
    """The outline of a letter: an SVG path of M, L, Q, C and Z, all absolute, as a path of a PDF."""
    operators: list[str] = []
    at = (0.0, 0.0)
    for letter, rest in _COMMAND.findall(path):
        numbers = [float(each) for each in rest.split()]
        match letter:
            case "M" | "L":
                operators.append(f"{_n(numbers[0])} {_n(numbers[1])} {letter.lower()}")
            case "Q":
                operators.append(_cubic(at, (numbers[0], numbers[1]), (numbers[2], numbers[3])))
            case "C":
                operators.append(" ".join(map(_n, numbers)) + " c")
            case _:
                operators.append("h")
        at = (numbers[-2], numbers[-1]) if numbers else at
    return " ".join(operators)


def _cubic(start: Spot, bend: Spot, end: Spot) -> str:
    """A quadratic curve as the cubic one that PDF has: its handles lie two thirds of the way to the bend."""
    first, second = (
        (near[0] + (bend[0] - near[0]) * 2 / 3, near[1] + (bend[1] - near[1]) * 2 / 3) for near in (start, end)
    )
    return _spots(first, second, end) + " c"
