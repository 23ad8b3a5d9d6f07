"""A rough surface at the pivot: a line along it with short strokes on the side away from the body."""

from __future__ import annotations

from ...document.passage import Drawing
from .body import INK, RIM
from .frame import Frame
from .shapes import Line, Pen, Shape, step, unit

_HALF, _EVERY, _STROKE = 42.0, 10.0, 7.0  # pixels
_EDGE, _THIN = Pen(INK, 1.6), Pen(INK, 0.9)


def ground(drawing: Drawing, frame: Frame) -> tuple[Shape, ...]:
    """The surface on which the body stands, where there is one."""
    if drawing.surface is None:
        return ()
    along, below = unit(drawing.surface), unit(drawing.surface - 90.0)
    middle = step(frame.spot(drawing.pivot), below, RIM)
    edge = Line(step(middle, along, -_HALF), step(middle, along, _HALF), _EDGE)
    count = int(2 * _HALF / _EVERY)
    starts = [step(edge.start, along, (number + 1) * _EVERY) for number in range(count)]
    ends = [step(step(start, below, _STROKE), along, -_STROKE * 0.7) for start in starts]
    return (edge, *(Line(start, end, _THIN) for start, end in zip(starts, ends, strict=True)))
