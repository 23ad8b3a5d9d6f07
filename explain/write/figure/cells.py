"""What lies where on a sheet, found by square cells, so that a look at a place costs what is near it and not all
there is.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import floor

from .shapes import Box, Capsule, Spot, covers, gap

_CELL = 32.0  # pixels
Cell = tuple[int, int]


class Ground:
    """Strokes, in the order in which they were drawn, and the boxes of labels."""

    def __init__(self, strokes: Iterable[Capsule] = ()) -> None:
        self.strokes: list[Capsule] = []
        self._strokes: dict[Cell, list[Capsule]] = {}
        self._boxes: dict[Cell, list[Box]] = {}
        self.bottom = 0.0
        self.draw(*strokes)

    def plus(self, strokes: Iterable[Capsule] = ()) -> Ground:
        """Another ground with the same and more on it."""
        more = Ground()
        more.strokes, more.bottom = [*self.strokes], self.bottom
        more._strokes = {cell: [*held] for cell, held in self._strokes.items()}
        more._boxes = {cell: [*held] for cell, held in self._boxes.items()}
        more.draw(*strokes)
        return more

    def draw(self, *strokes: Capsule) -> None:
        self.strokes += strokes
        for stroke in strokes:
            self.bottom = max(self.bottom, stroke.ay + stroke.half, stroke.by + stroke.half)
            for cell in _crossed(stroke):
                self._strokes.setdefault(cell, []).append(stroke)

    def write(self, box: Box) -> None:
        self.bottom = max(self.bottom, box.bottom)
        for cell in _cells(box):
            self._boxes.setdefault(cell, []).append(box)

    def free(self, box: Box, clear: float) -> bool:
        """Whether a box keeps so far away from every stroke, and twice as far from every other box."""
        return self.in_the_way(box, clear) is None

    def in_the_way(self, box: Box, clear: float) -> Capsule | Box | None:
        """A stroke that is nearer to a box than that, or another box that is nearer than twice that."""
        around, boxes, lines = box.grown(2 * clear), self._boxes, self._strokes
        for cell in _cells(around):
            if cell in boxes:
                for other in boxes[cell]:
                    if other.meets(around):
                        return other
            strokes = lines.get(cell)
            if strokes is None:
                continue
            for number, stroke in enumerate(strokes):
                if covers(stroke, box, clear):
                    strokes[0], strokes[number] = stroke, strokes[0]  # it will lie in the way of the next one too
                    return stroke
        return None

    def along(self, stroke: Capsule) -> tuple[set[Capsule], set[Box]]:
        """The strokes and boxes that share a cell with a stroke."""
        cells = list(_crossed(stroke))
        return (
            {each for cell in cells for each in self._strokes.get(cell, ())},
            {each for cell in cells for each in self._boxes.get(cell, ())},
        )


class Halo:
    """Strokes with so many pixels around them."""

    def __init__(self, far: float, strokes: Iterable[Capsule] = ()) -> None:
        self._far = far
        self._strokes: dict[Cell, list[Capsule]] = {}
        self.draw(*strokes)

    def draw(self, *strokes: Capsule) -> None:
        widest = {stroke[:4]: stroke for stroke in sorted(strokes, key=lambda stroke: stroke.half)}
        for stroke in widest.values():
            for cell in _crossed(stroke._replace(half=stroke.half + self._far)):
                self._strokes.setdefault(cell, []).append(stroke)

    def holds(self, spot: Spot) -> bool:
        """Whether a stroke is nearer to a spot than that."""
        strokes = self._strokes.get((floor(spot[0] / _CELL), floor(spot[1] / _CELL)), [])
        for number, stroke in enumerate(strokes):
            if gap(spot, stroke) < self._far:
                strokes[0], strokes[number] = stroke, strokes[0]
                return True
        return False


class Spots:
    """Spots of a sheet."""

    def __init__(self, spots: Iterable[Spot]) -> None:
        self._spots: dict[Cell, list[Spot]] = {}
        for spot in spots:
            self._spots.setdefault((floor(spot[0] / _CELL), floor(spot[1] / _CELL)), []).append(spot)

    def within(self, box: Box) -> Iterator[Spot]:
        """The spots of the cells that a box touches."""
        return (spot for cell in _cells(box) for spot in self._spots.get(cell, ()))


def _cells(box: Box) -> list[Cell]:
    """The cells that a box touches."""
    left, top, right, bottom = box
    rows = range(floor(top / _CELL), floor(bottom / _CELL) + 1)
    columns = range(floor(left / _CELL), floor(right / _CELL) + 1)
    return [(column, row) for column in columns for row in rows]


def _crossed(stroke: Capsule) -> Iterator[Cell]:
    """The cells that a stroke lies in: for each column, the rows that its piece in that column spans."""
    ax, ay, bx, by, half = stroke
    if ax > bx:
        ax, ay, bx, by = bx, by, ax, ay
    slope = (by - ay) / (bx - ax) if bx - ax > 1e-9 else 0.0
    for column in range(floor((ax - half) / _CELL), floor((bx + half) / _CELL) + 1):
        first, last = column * _CELL - half, (column + 1) * _CELL + half
        ends = (ay + slope * (max(first, ax) - ax), ay + slope * (min(last, bx) - ax)) if slope else (ay, by)
        for row in range(floor((min(ends) - half) / _CELL), floor((max(ends) + half) / _CELL) + 1):
            yield column, row
