"""What ziamath lays out, as outlines and where they stand. Knows MathML elements one at a time, and no page.

ziamath (written against 0.13) draws in STIX Two Math.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import NamedTuple
from xml.etree import ElementTree

import ziamath
from ziafont.glyph import SimpleGlyph
from ziafont.svgpath import Lineto, Moveto, Quad
from ziamath.drawable import Diagonal, Drawable, Glyph, HLine, VLine

from .spacing import spaced

EM = 100.0  # all measures are hundredths of an em, right and down positive
BAR = "0 0 1 1 re f"  # the outline of a bar, to be drawn as wide and as high as it is


class Stroke(NamedTuple):
    """PDF operators that draw one outline around its own origin, and the scale and place it gets."""

    outline: str
    wide: float
    high: float
    x: float
    y: float


class Ink(NamedTuple):
    """A formula laid out: its strokes, its advance, the ends of the ink left and right, above and below the
    baseline.
    """

    strokes: tuple[Stroke, ...]
    advance: float
    left: float
    right: float
    rise: float
    drop: float


NOTHING = Ink((), 0.0, 0.0, 0.0, 0.0, 0.0)


def moved(each: Ink, right: float = 0.0, down: float = 0.0) -> Ink:
    """The same ink elsewhere; blank space before it counts as its own."""
    strokes = tuple(stroke._replace(x=stroke.x + right, y=stroke.y + down) for stroke in each.strokes)
    return Ink(strokes, each.advance + right, each.left + right, each.right + right, each.rise - down, each.drop + down)


def beside(pieces: Iterable[Ink]) -> Ink:
    """Pieces one after the other on one baseline."""
    strokes: list[Stroke] = []
    x = left = right = rise = drop = 0.0
    for each in pieces:
        strokes.extend(stroke._replace(x=stroke.x + x) for stroke in each.strokes)
        left, right = min(left, x + each.left), max(right, x + each.right)
        rise, drop = max(rise, each.rise), max(drop, each.drop)
        x += each.advance
    return Ink(tuple(strokes), x, left, max(right, x), rise, drop)


def laid(element: ElementTree.Element, display: str) -> Drawable:
    """The row that ziamath makes of one element; it takes the namespace away from it."""
    math = ElementTree.Element("math", display=display)
    math.append(element)
    return ziamath.Math(spaced(math), size=EM, margin=0).node


def strokes(node: Drawable, x: float = 0.0, y: float = 0.0) -> Iterator[Stroke]:
    """What is drawn in a node that stands at a place. Raises ValueError for a kind of stroke that our formulas do
    not have.
    """
    match node:
        case Glyph():
            scale = node.size / node.glyph.font.info.layout.unitsperem
            yield Stroke(_outline(node.glyph), scale, -scale, x, y)
        case HLine():
            yield Stroke(BAR, node.length, node.lw, x, y)
        case VLine():
            yield Stroke(BAR, node.lw, node.height, x - node.lw / 2, y)
        case Diagonal():
            line = f"{number(node.lw)} w 0 {number(-node.height)} m {number(node.width)} 0 l S"
            yield Stroke(line, 1.0, 1.0, x, y)
        case _ if hasattr(node, "nodexy"):
            for (right, down), inner in zip(node.nodexy, node.nodes, strict=True):
                yield from strokes(inner, x + right, y + down)
        case _:
            raise ValueError(f"a formula holds a stroke that is not drawn here: {type(node).__name__}")


@lru_cache(maxsize=4096)
def _outline(glyph: SimpleGlyph) -> str:
    """A letter in units of its font, up positive, filled."""
    operators: list[str] = []
    x = y = 0.0
    for each in glyph.operators:
        match each:
            case Moveto(p=to):
                operators.append(f"{'h ' if operators else ''}{number(to.x)} {number(to.y)} m")
            case Lineto(p=to):
                operators.append(f"{number(to.x)} {number(to.y)} l")
            case Quad(p1=bend, p2=to):
                operators.append(_cubic((x, y), (bend.x, bend.y), (to.x, to.y)))
            case _:
                raise ValueError(f"the formula font holds a curve that is not drawn here: {type(each).__name__}")
        x, y = to.x, to.y
    return " ".join((*operators, "h f")) if operators else ""


def _cubic(start: tuple[float, float], bend: tuple[float, float], end: tuple[float, float]) -> str:
    """A quadratic curve as the cubic one that PDF has: its handles lie two thirds of the way to the bend."""
    handles = (at + (towards - at) * 2 / 3 for near in (start, end) for at, towards in zip(near, bend, strict=True))
    return " ".join(map(number, (*handles, *end))) + " c"


def number(value: float) -> str:
    """A number as PDF takes it, to a tenth."""
    return f"{value:.1f}".rstrip("0").rstrip(".") if abs(value) >= 0.05 else "0"
