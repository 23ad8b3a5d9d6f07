"""The shapes a figure is made of, in pixels with y downwards, and the room each takes up. Knows no mechanics."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import pairwise
from math import ceil, cos, dist, hypot, radians, sin
from typing import NamedTuple

Spot = tuple[float, float]


class Pen(NamedTuple):
    """How a shape is drawn: colours, the width of its stroke in pixels, its dashes, round ends or flat ones."""

    ink: str
    width: float = 1.0
    dash: str = ""
    fill: str = "none"
    round: bool = False


class Line(NamedTuple):
    start: Spot
    end: Spot
    pen: Pen


class Arc(NamedTuple):
    """From the angle `first` on through `sweep` degrees, counter-clockwise positive as seen on the page."""

    centre: Spot
    radius: float
    first: float
    sweep: float
    pen: Pen


class Patch(NamedTuple):
    """A polygon, closed."""

    corners: tuple[Spot, ...]
    pen: Pen


class Disc(NamedTuple):
    centre: Spot
    radius: float
    pen: Pen


Shape = Line | Arc | Patch | Disc


class Box(NamedTuple):
    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        return self.right - self.left

    @property
    def height(self) -> float:
        return self.bottom - self.top

    def grown(self, by: float) -> Box:
        return Box(self.left - by, self.top - by, self.right + by, self.bottom + by)

    def meets(self, other: Box) -> bool:
        """Whether the two share more than an edge."""
        return (
            self.left < other.right and other.left < self.right and self.top < other.bottom and other.top < self.bottom
        )


class Capsule(NamedTuple):
    """All that lies within `half` of the straight piece from (ax, ay) to (bx, by)."""

    ax: float
    ay: float
    bx: float
    by: float
    half: float


def unit(direction: float) -> Spot:
    """The unit vector on the page of a direction in degrees, counter-clockwise from right."""
    return cos(radians(direction)), -sin(radians(direction))


def step(spot: Spot, along: Spot, far: float, across: float = 0.0) -> Spot:
    """The spot `far` on along a unit vector and `across` to the right of it as seen on the page."""
    return spot[0] + along[0] * far - along[1] * across, spot[1] + along[1] * far + along[0] * across


def toward(start: Spot, end: Spot) -> Spot:
    """The unit vector from one spot to another; to the right where they are the same."""
    far = dist(start, end)
    return ((end[0] - start[0]) / far, (end[1] - start[1]) / far) if far else (1.0, 0.0)


def coordinates(piece: Capsule, origin: Spot, along: Spot) -> tuple[Spot, Spot]:
    """The ends of a capsule as distances along a unit vector from the origin and across it, to the right as seen on
    the page.
    """
    (x, y), (right, down) = origin, along
    ax, ay, bx, by = piece.ax - x, piece.ay - y, piece.bx - x, piece.by - y
    return (ax * right + ay * down, ay * right - ax * down), (bx * right + by * down, by * right - bx * down)


def on_arc(arc: Arc, share: float) -> Spot:
    """The spot of an arc at a share, 0 to 1, of its sweep."""
    turn = radians(arc.first + arc.sweep * share)
    return arc.centre[0] + cos(turn) * arc.radius, arc.centre[1] - sin(turn) * arc.radius


def capsules(shapes: Iterable[Shape]) -> tuple[Capsule, ...]:
    """The room that shapes take up; curves in pieces of at most 9 degrees."""
    return tuple(piece for shape in shapes for piece in _pieces(shape))


def _pieces(shape: Shape) -> tuple[Capsule, ...]:
    match shape:
        case Line(start, end, pen):
            return (Capsule(*start, *end, pen.width / 2),)
        case Disc(centre, radius, pen):
            return (Capsule(*centre, *centre, radius + pen.width / 2),)
        case Patch(corners, pen):
            return tuple(
                Capsule(*a, *b, pen.width / 2) for a, b in zip(corners, corners[1:] + corners[:1], strict=True)
            )
        case Arc(sweep=sweep, pen=pen):
            count = max(1, ceil(abs(sweep) / 9))
            spots = [on_arc(shape, share / count) for share in range(count + 1)]
            return tuple(Capsule(*a, *b, pen.width / 2) for a, b in pairwise(spots))


def bounds(pieces: Iterable[Capsule], boxes: Iterable[Box] = ()) -> Box:
    """The smallest box around everything; an empty one at the origin where there is nothing."""
    around = [
        (min(ax, bx) - half, min(ay, by) - half, max(ax, bx) + half, max(ay, by) + half)
        for ax, ay, bx, by, half in pieces
    ] + list(boxes)
    if not around:
        return Box(0, 0, 0, 0)
    lefts, tops, rights, bottoms = zip(*around, strict=True)
    return Box(min(lefts), min(tops), max(rights), max(bottoms))


def hull(spots: Iterable[Spot]) -> tuple[Spot, ...]:
    """The corners of the smallest convex outline round spots (A. M. Andrew's monotone chain, 1979)."""
    ordered = sorted(set(spots))
    lower, upper = _chain(ordered), _chain(ordered[::-1])
    return (*lower[:-1], *upper[:-1])


def _chain(spots: Iterable[Spot]) -> list[Spot]:
    chain: list[Spot] = []
    for spot in spots:
        while len(chain) > 1 and _left_turn(chain[-2], chain[-1], spot) <= 0.0:
            chain.pop()
        chain.append(spot)
    return chain


def _left_turn(a: Spot, b: Spot, c: Spot) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def gap(spot: Spot, piece: Capsule) -> float:
    """How far a spot is from the edge of a capsule, negative within it."""
    ax, ay, bx, by, half = piece
    ux, uy, px, py = bx - ax, by - ay, spot[0] - ax, spot[1] - ay
    square = ux * ux + uy * uy
    share = (px * ux + py * uy) / square if square else 0.0
    share = 0.0 if share < 0.0 else 1.0 if share > 1.0 else share
    return hypot(px - share * ux, py - share * uy) - half


def covers(piece: Capsule, box: Box, clear: float = 0.0) -> bool:
    """Whether a capsule reaches into a box or comes so near to it; at the corners it errs to the safe side."""
    ax, ay, bx, by, half = piece
    left, top, right, bottom = box
    left, top, right, bottom = left - clear - half, top - clear - half, right + clear + half, bottom + clear + half
    if (ax <= left and bx <= left) or (ax >= right and bx >= right):
        return False
    if (ay <= top and by <= top) or (ay >= bottom and by >= bottom):
        return False
    if (left < ax < right and top < ay < bottom) or (left < bx < right and top < by < bottom):
        return True
    run, fall, enter, leave = bx - ax, by - ay, 0.0, 1.0
    if run:
        near, far = (left - ax) / run, (right - ax) / run
        enter, leave = (max(near, 0.0), min(far, 1.0)) if run > 0.0 else (max(far, 0.0), min(near, 1.0))
    if fall:
        near, far = (top - ay) / fall, (bottom - ay) / fall
        enter, leave = (max(near, enter), min(far, leave)) if fall > 0.0 else (max(far, enter), min(near, leave))
    return enter < leave
