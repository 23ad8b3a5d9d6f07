"""What plots of every kind share: pens that can be told apart in black and white, lettering at a spot, lines of the
grid.
"""

from __future__ import annotations

from collections.abc import Iterator

from ...document.passage import Axis
from .body import INK
from .outlines import words
from .shapes import Box, Disc, Line, Patch, Pen, Shape, Spot, bounds, capsules
from .free_body import Layout
from .labels import Label

QUIET = "#4a4a48"
GRID = Pen("#d8d5cd", 0.8)
EDGE = Pen(INK, 1.2)
SIZE, SMALL = 14.0, 12.5
PENS = (Pen(INK, 2.0), Pen("#555555", 2.0, "7 4"), Pen("#777777", 2.0, "2 3"), Pen("#333333", 2.0, "9 3 2 3"))
FILLS = ("#8f8b80", "#ffffff", "#4a4a48", "#d8d5cd")
_MARGIN = 14.0
_TITLE = 54  # letters across a plot


def lettered(
    text: str, spot: Spot, across: float, down: float, size: float = SMALL, ink: str = QUIET, width: int = 26
) -> Iterator[Label]:
    """A text whose box has the spot at so much of its width and height (0 left or top, 1 right or bottom), in lines of
    at most `width` letters; nothing for a blank one.
    """
    outline = words(text, size, width)
    if outline.path:
        left, top = spot[0] - across * outline.width, spot[1] - down * outline.height
        yield Label(Box(left, top, left + outline.width, top + outline.height), outline, ink)


def title(axis: Axis, spot: Spot, across: float, down: float) -> Iterator[Label]:
    """What an axis shows and in which unit, in lines that take up to the whole width of a plot."""
    return lettered(titled(axis), spot, across, down, SIZE, INK, _TITLE)


def titled(axis: Axis) -> str:
    """ "pull of the biceps (N)"."""
    return f"{axis.title} ({axis.unit})" if axis.unit else axis.title


def mark(kind: int, spot: Spot, pen: Pen) -> Shape:
    """A spot of a curve: disc, square, triangle or diamond, each kind with its own, so that no colour is needed."""
    x, y = spot
    solid = Pen(pen.ink, 1.0, fill=pen.ink if kind % 2 == 0 else "#ffffff")
    match kind % 4:
        case 0:
            return Disc(spot, 2.8, solid)
        case 1:
            return Patch(((x - 3, y - 3), (x + 3, y - 3), (x + 3, y + 3), (x - 3, y + 3)), solid)
        case 2:
            return Patch(((x, y - 3.6), (x + 3.4, y + 2.6), (x - 3.4, y + 2.6)), solid)
    return Patch(((x, y - 3.8), (x + 3.8, y), (x, y + 3.8), (x - 3.8, y)), solid)


def sheet(shapes: list[Shape], labels: list[Label]) -> Layout:
    """Everything with a margin around it."""
    view = bounds(capsules(shapes), [label.box for label in labels]).grown(_MARGIN)
    return Layout(tuple(labels), tuple(shapes), view)


def rule(start: Spot, end: Spot, pen: Pen = GRID) -> Line:
    return Line(start, end, pen)
