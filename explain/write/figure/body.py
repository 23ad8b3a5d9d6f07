"""The body cut free: its bones as rounded bars or one outline, the joint, the points where forces act. Knows no
directions of forces.
"""

from __future__ import annotations

from math import dist, hypot
from typing import NamedTuple

from ...document.passage import Drawing
from .frame import Frame
from .shapes import Disc, Line, Patch, Pen, Shape, Spot, hull, step, toward, unit
from .places import Anchor

INK = "#1d1d1b"
BAR = 18.0  # the thickness of a bone
RIM = 8.0  # the radius of the joint, its stroke counted
_EDGE = Pen(INK, BAR, round=True)
_FILL = Pen("#f0e8d6", BAR - 2.8, round=True)
_OUTLINE = Pen("#8a8475", 1.4, fill="#f6f1e5")
THIN = Pen("#6a6a6a", 1.0, "5 3.5")  # a line that is only thought
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
    """The bones, or one outline round all points where there are none; a point beside the bones hangs on the nearest
    one.
    """
    pivot = frame.spot(drawing.pivot)
    ends = [(frame.spot(bone.start), frame.spot(bone.end)) for bone in drawing.bones] or _lever(drawing, frame)
    levers = _levers(drawing, frame, ends) if ends else []
    bars = ((levers, _LEVER), (ends, _EDGE), (ends, _FILL))
    under = tuple(Line(*each, pen) for lines, pen in bars for each in lines) if ends else (_outline(drawing, frame),)
    dots = tuple(Disc(spot, 2.6, _DOT) for spot in _acting(drawing, frame) if dist(spot, pivot) > RIM)
    joint = (Disc(pivot, RIM - 1.0, _JOINT), Disc(pivot, 1.9, _DOT))
    return Body(under, dots + joint, tuple(Ray(*each) for each in (*ends, *levers)))


def _lever(drawing: Drawing, frame: Frame) -> list[tuple[Spot, Spot]]:
    """One bar from end to end where a body without bones has all its points on one line through the joint."""
    spots = sorted({frame.spot(drawing.pivot), *_acting(drawing, frame)})
    start, end = spots[0], spots[-1]
    return [] if start == end or any(dist(_foot(spot, start, end), spot) > 1.0 for spot in spots) else [(start, end)]


def _outline(drawing: Drawing, frame: Frame) -> Patch:
    """A light closed outline round the points where forces act and the joint, with rounded corners."""
    around = [
        step(spot, unit(turn), BAR)
        for spot in (frame.spot(drawing.pivot), *_acting(drawing, frame))
        for turn in range(0, 360, 15)
    ]
    return Patch(hull(around), _OUTLINE)


def beside_joint(rays: tuple[Ray, ...], pivot: Spot) -> tuple[Anchor, ...]:
    """Where the joint's name may stand: all around, best away from the bones and a little upwards."""
    leaving = [
        toward(pivot, end) for ray in rays for end in (ray.start, ray.end) if dist(pivot, end) > RIM and ray.near(pivot)
    ]
    right, down = sum(along[0] for along in leaving), sum(along[1] for along in leaving)
    away = toward((0.0, 0.0), (-right, -down - 0.8)) if hypot(right, down) > 0.2 else (-0.6, -0.8)
    return tuple(
        Anchor(step(pivot, side, RIM), side, price)
        for side, price in (
            (away, 0.0),
            ((away[1], -away[0]), 3.0),
            ((-away[1], away[0]), 3.0),
            ((-away[0], -away[1]), 6.0),
        )
    )


def _acting(drawing: Drawing, frame: Frame) -> tuple[Spot, ...]:
    """Every spot that gets a dot, each once."""
    spots = [frame.spot(each.at) for each in drawing.arrows] + [frame.spot(point) for point in drawing.points]
    return tuple(dict.fromkeys(spots))


def _levers(drawing: Drawing, frame: Frame, ends: list[tuple[Spot, Spot]]) -> list[tuple[Spot, Spot]]:
    pivot = frame.spot(drawing.pivot)
    armed = {
        frame.spot(arrow.at)
        for arrow in drawing.arrows
        if arrow.arm and arrow.arm.needed and dist(frame.foot(arrow), frame.spot(arrow.at)) < BAR
    }
    spots = [
        spot
        for spot in dict.fromkeys((*_acting(drawing, frame), *(frame.spot(turn.at) for turn in drawing.turns), pivot))
        if spot not in armed
    ]
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
