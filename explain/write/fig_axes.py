"""A small cross of axes that says which senses count as positive. Knows their names and directions."""
from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from .fig_body import INK
from .fig_outlines import words
from .fig_shapes import Box, Capsule, Line, Patch, Pen, Shape, Spot, bounds, capsules, covers, step, unit
from .labels import Anchor, Label, Wanted, place

_LONG = 34.0
_LINE = Pen(INK, 1.3)
_HEAD = Pen(INK, 0.0, fill=INK)
_SIZE = 14.0
_STEP = 14.0


class Axes(NamedTuple):
    shapes: tuple[Shape, ...]
    labels: tuple[Label, ...]


def axes(named: Sequence[tuple[str, float]], view: Box, room: Sequence[Capsule], labels: Sequence[Label]) -> Axes:
    """The cross in the free corner that is nearest, or left of everything where there is none."""
    if not named:
        return Axes((), ())
    cross = _cross(named)
    size = bounds(capsules(cross.shapes), [label.box for label in cross.labels]).grown(5.0)
    for left, top in _corners(view, size):
        box = Box(left, top, left + size.width, top + size.height)
        if not any(box.meets(label.box) for label in labels) and not any(covers(piece, box) for piece in room):
            return _moved(cross, left - size.left, top - size.top)
    return _moved(cross, view.left - size.width - size.left, view.bottom - size.height - size.top)


def _cross(named: Sequence[tuple[str, float]]) -> Axes:
    shapes, wanted = list[Shape](), list[Wanted]()
    for name, direction in named:
        along = unit(direction)
        tip = step((0.0, 0.0), along, _LONG)
        head = (tip, step(tip, along, -9.0, 3.4), step(tip, along, -9.0, -3.4))
        shapes += [Line((0.0, 0.0), step(tip, along, -6.0), _LINE), Patch(head, _HEAD)]
        outline = words(name, _SIZE)
        if outline.path:
            wanted.append(Wanted(outline, INK, (Anchor(tip, along),)))
    lettering = place(wanted, capsules(shapes))
    return Axes((*shapes, *lettering.leaders), lettering.labels)


def _corners(view: Box, size: Box) -> list[Spot]:
    """Where the cross may stand inside the view, from the corners inwards."""
    across, down = view.width - size.width, view.height - size.height
    if across < 0 or down < 0:
        return []
    spots = [(right, low) for right in range(0, int(across) + 1, int(_STEP)) for low in range(0, int(down) + 1, int(_STEP))]
    rank = sorted((min(right, across - right) + min(low, down - low), right, -low, right, low) for right, low in spots)
    return [(view.left + right, view.top + low) for *_, right, low in rank]


def _moved(cross: Axes, right: float, down: float) -> Axes:
    def there(spot: Spot) -> Spot:
        return spot[0] + right, spot[1] + down

    shapes: list[Shape] = []
    for shape in cross.shapes:
        match shape:
            case Line(start, end, pen):
                shapes.append(Line(there(start), there(end), pen))
            case Patch(corners, pen):
                shapes.append(Patch(tuple(there(spot) for spot in corners), pen))
    labels = tuple(label._replace(box=Box(*there(label.box[:2]), *there(label.box[2:]))) for label in cross.labels)
    return Axes(tuple(shapes), labels)
