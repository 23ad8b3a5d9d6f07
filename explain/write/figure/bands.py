"""Spread loads: a row of thin arrows onto the bone, as high all along or growing, with a line over their ends."""

from __future__ import annotations

from math import dist

from ...document.passage import Band, Drawing
from .body import BAR
from .forces import LOOKS
from .frame import Frame
from .shapes import Line, Patch, Pen, Shape, Spot, step

_HIGH = 30.0  # pixels, of the arrows, or of the longest where they grow
_EVERY = 19.0  # pixels from one arrow to the next, about
_LEAST = 9.0  # no shorter arrow is drawn
_HEAD, _HALF = 6.0, 2.4
_UP, _DOWN = (0.0, -1.0), (0.0, 1.0)
_THIN = Pen(LOOKS["load"].ink, 1.1)
_FULL = Pen(LOOKS["load"].ink, 0.0, fill=LOOKS["load"].ink)


def bands(drawing: Drawing, frame: Frame) -> tuple[Shape, ...]:
    """The rows of arrows of all spread loads."""
    return tuple(shape for band in drawing.bands for shape in _band(band, frame))


def _band(band: Band, frame: Frame) -> tuple[Shape, ...]:
    start, end = (step(frame.spot(each), _UP, BAR / 2 + 2.0) for each in (band.start, band.end))
    count = max(3, round(dist(start, end) / _EVERY) + 1)
    shares = [number / (count - 1) for number in range(count)]
    feet = [(start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])) for share in shares]
    highs = [_HIGH * (share if band.growing else 1.0) for share in shares]
    edge = Line(step(feet[0], _UP, highs[0]), step(feet[-1], _UP, highs[-1]), _THIN)
    arrows = [shape for foot, high in zip(feet, highs, strict=True) if high >= _LEAST for shape in _arrow(foot, high)]
    return (edge, *arrows)


def _arrow(foot: Spot, high: float) -> tuple[Shape, ...]:
    neck = step(foot, _UP, _HEAD)
    return (
        Line(step(foot, _UP, high), neck, _THIN),
        Patch((foot, step(neck, _DOWN, 0.0, _HALF), step(neck, _DOWN, 0.0, -_HALF)), _FULL),
    )
