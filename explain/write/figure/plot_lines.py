"""Curves over an axis: grid, lines, marks, and each curve's name at its end. Decides no value."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from ...document.passage import Curve, Plot
from .shapes import Line, Shape, Spot
from .free_body import Layout
from .labels import Label
from .plot_frame import EDGE, PENS, lettered, mark, rule, sheet, title
from .plot_scale import Scale, scale

_WIDE, _HIGH, _LOW = 400.0, 250.0, 150.0
_MARKED = 40  # a curve of more points is drawn without marks
_APART = 17.0  # between the names of two curves


def lines(plot: Plot, low: bool = False) -> Layout:
    """The plot with y upwards; zero is on it wherever that takes no more than half of the height. One that is `low` has
    larger type for its height.
    """
    high = _LOW if low else _HIGH
    across = scale((x for curve in plot.curves for x, _ in curve.points), 0.0, _WIDE, 7, plot.x.unit in ("°", "deg"))
    ys = [y for curve in plot.curves for _, y in curve.points if y is not None]
    near = bool(ys) and min(ys) > 0 and max(ys) < 2 * min(ys)
    up = scale(ys, high, 0.0, 4 if low else 6, from_zero=not near)
    shapes: list[Shape] = []
    labels: list[Label] = []
    _grid(plot, across, up, high, shapes, labels)
    for kind, curve in enumerate(plot.curves):
        shapes += _curve(kind, curve, across, up)
    labels += _names(plot, across, up, high)
    return sheet(shapes, labels)


def _grid(plot: Plot, across: Scale, up: Scale, high: float, shapes: list[Shape], labels: list[Label]) -> None:
    for x, text in across.ticks(plot.comma):
        shapes.append(rule((x, 0.0), (x, high)))
        labels += lettered(text, (x, high + 8.0), 0.5, 0.0)
    for y, text in up.ticks(plot.comma):
        shapes.append(rule((0.0, y), (_WIDE, y)))
        labels += lettered(text, (-8.0, y), 1.0, 0.5)
    floor = up.at(0.0) if up.low < 0.0 < up.high else high
    shapes += [rule((0.0, 0.0), (0.0, high), EDGE), rule((0.0, floor), (_WIDE, floor), EDGE)]
    labels += title(plot.x, (_WIDE / 2, high + 28.0), 0.5, 0.0)
    labels += title(plot.y, (0.0, -14.0), 0.0, 1.0)


def _curve(kind: int, curve: Curve, across: Scale, up: Scale) -> Iterator[Shape]:
    pen = PENS[kind % len(PENS)]
    spots = _spots(curve, across, up)
    for one, other in pairwise(spots):
        if one and other:
            yield Line(one, other, pen)
    lonely = [
        spot
        for place, spot in enumerate(spots)
        if spot and not any(spots[max(0, place - 1) : place] + spots[place + 1 : place + 2])
    ]
    yield from (mark(kind, spot, pen) for spot in (spots if len(spots) <= _MARKED else lonely) if spot)


def _spots(curve: Curve, across: Scale, up: Scale) -> list[Spot | None]:
    return [None if y is None else (across.at(x), up.at(y)) for x, y in curve.points]


def _names(plot: Plot, across: Scale, up: Scale, high: float) -> Iterator[Label]:
    """The names of several curves, beside their ends and clear of each other."""
    if len(plot.curves) < 2:
        return
    ends = [_end(curve, across, up, high) for curve in plot.curves]
    beneath = -1e9
    for place in sorted(range(len(ends)), key=lambda each: ends[each]):
        beneath = max(ends[place], beneath + _APART)
        yield from lettered(plot.curves[place].name, (_WIDE + 10.0, beneath), 0.0, 0.5, ink=PENS[place % len(PENS)].ink)


def _end(curve: Curve, across: Scale, up: Scale, high: float) -> float:
    known: Sequence[Spot] = [spot for spot in _spots(curve, across, up) if spot]
    return known[-1][1] if known else high
