"""The body cut free: its bones as rounded bars, the joint, the points where forces act. Knows no directions of forces."""
from __future__ import annotations

from math import dist, hypot
from typing import NamedTuple

from ..passage import Drawing
from .fig_frame import Frame
from .fig_shapes import Disc, Line, Pen, Shape, Spot, step, toward
from .labels import Anchor

INK = "#1d1d1b"
BAR = 18.0                                        # the thickness of a bone
RIM = 8.0                                         # the radius of the joint, its stroke counted
_EDGE = Pen(INK, BAR, round=True)
_FILL = Pen("#f0e8d6", BAR - 2.8, round=True)
THIN = Pen("#6a6a6a", 1.0, "5 3.5")              # a line that is only thought
_LEVER = Pen("#55524c", 2.0, round=True)
_JOINT = Pen(INK, 2.0, fill="#ffffff")
_DOT = Pen(INK, 0.0, fill=INK)


class Ray(NamedTuple):
    """A straight line that is drawn, from one spot to another."""

    start: Spot
    end: Spot

    @property
    def along(self) -> Spot:
        return toward(self.start, self.end)

    @property
    def length(self) -> float:
        return dist(self.start, self.end)

    def near(self, spot: Spot) -> bool:
        return min(dist(self.start, spot), dist(self.end, spot)) < RIM


class Body(NamedTuple):
    """Bars and lever lines lie under everything else, the joint and its dots above it."""

    under: tuple[Shape, ...]
    over: tuple[Shape, ...]
    rays: tuple[Ray, ...]


def body(drawing: Drawing, frame: Frame) -> Body:
    """The bones, or thin lever lines from the pivot where there are none; a point beside the bones hangs on the nearest one."""
    ends = [(frame.spot(bone.start), frame.spot(bone.end)) for bone in drawing.bones]
    levers = _levers(drawing, frame, ends)
    under = tuple(Line(*each, pen) for lines, pen in ((levers, _LEVER), (ends, _EDGE), (ends, _FILL)) for each in lines)
    rays = tuple(Ray(*each) for each in (*ends, *levers))
    pivot = frame.spot(drawing.pivot)
    dots = tuple(Disc(spot, 2.6, _DOT) for spot in _acting(drawing, frame) if dist(spot, pivot) > RIM)
    joint = (Disc(pivot, RIM - 1.0, _JOINT), Disc(pivot, 1.9, _DOT))
    return Body(under, dots + joint, rays)


def beside_joint(rays: tuple[Ray, ...], pivot: Spot) -> tuple[Anchor, ...]:
    """Where the joint's name may stand: all around, best away from the bones and a little upwards."""
    leaving = [toward(pivot, end) for ray in rays for end in (ray.start, ray.end) if dist(pivot, end) > RIM and ray.near(pivot)]
    right, down = sum(along[0] for along in leaving), sum(along[1] for along in leaving)
    away = toward((0.0, 0.0), (-right, -down - 0.8)) if hypot(right, down) > 0.2 else (-0.6, -0.8)
    return tuple(Anchor(step(pivot, side, RIM), side, price) for side, price in
                 ((away, 0.0), ((away[1], -away[0]), 3.0), ((-away[1], away[0]), 3.0), ((-away[0], -away[1]), 6.0)))


def _acting(drawing: Drawing, frame: Frame) -> tuple[Spot, ...]:
    """Every spot that gets a dot, each once."""
    spots = [frame.spot(each.at) for each in drawing.arrows] + [frame.spot(point) for point in drawing.points]
    return tuple(dict.fromkeys(spots))


def _levers(drawing: Drawing, frame: Frame, ends: list[tuple[Spot, Spot]]) -> list[tuple[Spot, Spot]]:
    pivot = frame.spot(drawing.pivot)
    spots = dict.fromkeys((*_acting(drawing, frame), *(frame.spot(turn.at) for turn in drawing.turns), pivot))
    levers = [(_nearest(spot, ends, pivot), spot) for spot in spots]
    return [(start, end) for start, end in levers if dist(start, end) > BAR / 2]


def _nearest(spot: Spot, ends: list[tuple[Spot, Spot]], pivot: Spot) -> Spot:
    """The spot of the bones that is nearest, or the pivot."""
    feet = [_foot(spot, start, end) for start, end in ends]
    return min(feet, key=lambda foot: dist(foot, spot), default=pivot)


def _foot(spot: Spot, start: Spot, end: Spot) -> Spot:
    along, length = toward(start, end), dist(start, end)
    far = (spot[0] - start[0]) * along[0] + (spot[1] - start[1]) * along[1]
    return step(start, along, min(max(far, 0.0), length))
