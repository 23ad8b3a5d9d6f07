"""A small mark that says what counts as positive: axes with their names, an arc arrow round a plus sign. Knows no
forces.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

from ...equation.terms import Letter, term
from .body import INK
from .cells import Ground
from .outlines import letters, words
from .shapes import Arc, Box, Capsule, Line, Patch, Pen, Shape, Spot, bounds, capsules, covers, on_arc, step, unit
from .labels import Label, place
from .places import Anchor, Wanted

_LONG = 30.0
_ROUND = 12.0  # the radius of the turning sense's arc
_LINE = Pen(INK, 1.3)
_HEAD = Pen(INK, 0.0, fill=INK)
_PLUS = Pen(INK, 1.5)
SIZE = 14.0  # of their names, in pixels
_STEP, _MOST = 14.0, 12  # pixels from one place to the next, and how many of them side by side


class Axes(NamedTuple):
    shapes: tuple[Shape, ...]
    labels: tuple[Label, ...]


def axes(
    named: Sequence[tuple[str, float]],
    sense: int,
    view: Box,
    room: Sequence[Capsule],
    labels: Sequence[Label],
    size: float = SIZE,
) -> Axes:
    """The mark in the free corner that is nearest, or beside everything where there is none."""
    if not named and not sense:
        return Axes((), ())
    mark = _beside(_cross(tuple(named), size), _turning(sense))
    taken = _size(mark)
    for left, top in _corners(view, taken):
        box = Box(left, top, left + taken.width, top + taken.height)
        if not any(box.meets(label.box) for label in labels) and not any(covers(piece, box) for piece in room):
            return _moved(mark, left - taken.left, top - taken.top)
    if view.height > 0.6 * view.width:
        return _moved(mark, view.left - taken.width - taken.left, view.bottom - taken.bottom)
    return _moved(mark, view.left - taken.left, view.bottom - taken.top)


def _size(mark: Axes) -> Box:
    return bounds(capsules(mark.shapes), [label.box for label in mark.labels]).grown(5.0)


def _beside(one: Axes, other: Axes) -> Axes:
    """Two marks side by side, their middles level."""
    if not one.shapes or not other.shapes:
        return Axes((*one.shapes, *other.shapes), (*one.labels, *other.labels))
    left, right = _size(one), _size(other)
    other = _moved(other, left.right - right.left, (left.top + left.bottom - right.top - right.bottom) / 2)
    return Axes((*one.shapes, *other.shapes), (*one.labels, *other.labels))


@lru_cache(maxsize=4)
def _turning(sense: int) -> Axes:
    """A plus sign with an arc arrow round it."""
    if not sense:
        return Axes((), ())
    arc = Arc((0.0, 0.0), _ROUND, -60.0 if sense > 0 else 240.0, 275.0 * sense, _LINE)
    end, along = on_arc(arc, 1.0), unit(arc.first + arc.sweep + 90.0 * sense)
    head = Patch((step(end, along, 6.0), step(end, along, -3.0, 3.4), step(end, along, -3.0, -3.4)), _HEAD)
    plus = Line((-4.0, 0.0), (4.0, 0.0), _PLUS), Line((0.0, -4.0), (0.0, 4.0), _PLUS)
    return Axes((arc, head, *plus), ())


@lru_cache(maxsize=16)
def _cross(named: tuple[tuple[str, float], ...], size: float) -> Axes:
    """Axes from one origin, each with its name; x and y stand for letters and lean."""
    shapes, wanted = list[Shape](), list[Wanted]()
    for name, direction in named:
        along = unit(direction)
        tip = step((0.0, 0.0), along, _LONG)
        head = (tip, step(tip, along, -9.0, 3.4), step(tip, along, -9.0, -3.4))
        shapes += [Line((0.0, 0.0), step(tip, along, -6.0), _LINE), Patch(head, _HEAD)]
        outline = letters((term(Letter(name, name)),), size + 1.0) if len(name) == 1 else words(name, size)
        if outline.path:
            wanted.append(Wanted(outline, INK, (Anchor(tip, along),)))
    lettering = place(wanted, Ground(capsules(shapes)))
    return Axes((*shapes, *lettering.leaders), lettering.labels)


def _corners(view: Box, size: Box) -> list[Spot]:
    """Where the cross may stand inside the view, from the corners inwards."""
    across, down = view.width - size.width, view.height - size.height
    if across < 0 or down < 0:
        return []
    columns, lines = (min(_MOST, int(room / _STEP) + 1) for room in (across, down))
    spots = [
        (across * column / columns, down * line / lines) for column in range(columns + 1) for line in range(lines + 1)
    ]
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
            case Arc(centre):
                shapes.append(shape._replace(centre=there(centre)))
    labels = tuple(label._replace(box=Box(*there(label.box[:2]), *there(label.box[2:]))) for label in cross.labels)
    return Axes(tuple(shapes), labels)
