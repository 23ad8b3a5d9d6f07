"""Bars beside each other, lying so that long names can be read: one row for each name, the value at the end of each
bar. Decides no value.
"""

from __future__ import annotations

from collections.abc import Iterator

from ...document.passage import Curve, Plot
from .body import INK
from .outlines import words
from .shapes import Patch, Pen, Shape
from .free_body import Layout
from .labels import Label
from .plot_frame import EDGE, FILLS, lettered, rule, sheet, title
from .plot_scale import Scale, marked, number, scale

_WIDE = 250.0  # so that names and bars can be read on a telephone, whose window they are drawn into
_BAR, _GAP, _NARROW = 15.0, 11.0, 4.0
_BOX = 11.0


def bars(plot: Plot, low: bool = False) -> Layout:
    """Names from the top down; zero is always on the scale, and bars of what is negative run to the left of it. In a
    `low` plot they stand closer.
    """
    values = [y for curve in plot.curves for _, y in curve.points if y is not None]
    whole = all(each % 1 == 0 for each in values)
    across = scale(values, 0.0, _WIDE, 5, from_zero=True, whole=whole)
    shapes: list[Shape] = []
    labels: list[Label] = []
    room, high = _rows(plot, _NARROW if low else _GAP)
    for x, text in across.ticks(plot.comma):
        shapes.append(rule((x, 0.0), (x, high)))
        labels += lettered(text, (x, high + 8.0), 0.5, 0.0)
    for kind, curve in enumerate(plot.curves):
        shapes += _set(kind, curve, across, room, len(plot.curves))
        labels += _values(kind, curve, across, room, plot)
    shapes.append(rule((across.at(0.0), 0.0), (across.at(0.0), high), EDGE))
    for name, middle in zip(plot.names, room, strict=True):
        labels += lettered(name, (-10.0, middle), 1.0, 0.5, ink=INK)
    labels += title(plot.y, (_WIDE / 2, high + 28.0), 0.5, 0.0)
    _legend(plot, high + 58.0, shapes, labels)
    return sheet(shapes, labels)


def _rows(plot: Plot, gap: float) -> tuple[list[float], float]:
    """The middle of each row, and where the last one ends: a row is as high as its bars, or as its name in several
    lines.
    """
    least, at, room = _BAR * max(len(plot.curves), 1), gap / 2, []
    for name in plot.names:
        high = max(least, words(name, 12.5).height + 2.0)
        room.append(at + high / 2)
        at += high + gap
    return room, max(at - gap / 2, 20.0)


def _top(kind: int, middle: float, count: int) -> float:
    return middle + (kind - count / 2) * _BAR


def _set(kind: int, curve: Curve, across: Scale, room: list[float], count: int) -> Iterator[Shape]:
    pen = Pen(INK, 1.0, fill=FILLS[kind % len(FILLS)])
    for x, y in curve.points:
        if y is not None and y:
            top, left, right = _top(kind, room[int(x)], count), across.at(0.0), across.at(y)
            yield Patch(((left, top), (right, top), (right, top + _BAR - 1.0), (left, top + _BAR - 1.0)), pen)


def _values(kind: int, curve: Curve, across: Scale, room: list[float], plot: Plot) -> Iterator[Label]:
    for x, y in curve.points:
        middle = _top(kind, room[int(x)], len(plot.curves)) + _BAR / 2
        behind = -1.0 if y is not None and y < 0 else 1.0
        text = "–" if y is None else marked(number(y, plot.figures), plot.comma)
        yield from lettered(
            text, (across.at(y or 0.0) + 6.0 * behind, middle), 0.0 if behind > 0 else 1.0, 0.5, ink=INK
        )


def _legend(plot: Plot, top: float, shapes: list[Shape], labels: list[Label]) -> None:
    if len(plot.curves) < 2:
        return
    left = 0.0
    for kind, curve in enumerate(plot.curves):
        pen = Pen(INK, 1.0, fill=FILLS[kind % len(FILLS)])
        shapes.append(Patch(((left, top), (left + _BOX, top), (left + _BOX, top + _BOX), (left, top + _BOX)), pen))
        named = list(lettered(curve.name, (left + _BOX + 6.0, top + _BOX / 2), 0.0, 0.5))
        labels += named
        left += _BOX + 24.0 + (named[0].box.width if named else 0.0)
