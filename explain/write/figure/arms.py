"""Perpendicular distances from the joint to a line of pull, and lines of pull thought on. Knows no lengths in metres.

A force that is alone in its direction has its arm drawn from the joint itself. Arms of parallel forces would lie on
each other: they are drawn in rows beside the joint, each up to its own line of pull.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import dist
from typing import NamedTuple

from ...document.passage import Arrow, Drawing
from .body import RIM, THIN, Ray
from .frame import Frame
from .outlines import letters
from .shapes import Capsule, Disc, Line, Pen, Shape, Spot, capsules, step, toward, unit
from .places import Anchor, Wanted

_INK = "#4a4a4a"
ARM = Pen(_INK, 1.3)
_SQUARE = Pen(_INK, 0.9)
_POINT = Pen(_INK, 1.1, fill="#ffffff")
_TURNED = 90.0  # pixels that a couple takes up around its point
_PARALLEL = 0.5  # degrees between forces whose arms would look like one
_CORNER = 8.0
_SIZE = 16.0


class Armed(NamedTuple):
    """A force on a line that is shown: its arm, where that ends, and how far its line reaches from its point on, in
    pixels.
    """

    arrow: Arrow
    start: Spot
    ends: tuple[float, ...]
    foot: Spot | None
    shapes: tuple[Shape, ...]
    wanted: tuple[Wanted, ...]

    @property
    def room(self) -> tuple[Capsule, ...]:
        """What the arm takes up."""
        return capsules(self.shapes)

    @property
    def line(self) -> Capsule:
        """The line of pull from the first of its ends to the last."""
        along, reach = unit(self.arrow.direction), (0.0, *self.ends)
        return Capsule(*step(self.start, along, min(reach)), *step(self.start, along, max(reach)), THIN.width / 2)

    def lines(self, ray: Ray) -> Iterator[Line]:
        """The line of pull, dashed on from both ends of the arrow that lies on it."""
        along = unit(self.arrow.direction)
        tail, tip = (_far(self.start, along, spot) for spot in (ray.start, ray.end))
        for begin, end in ((tip, max((tip, *self.ends))), (tail, min((tail, *self.ends)))):
            if abs(end - begin) > 3.0:
                yield Line(step(self.start, along, begin), step(self.start, along, end), THIN)


def arms(drawing: Drawing, frame: Frame) -> tuple[Armed, ...]:
    """The forces whose lines are shown, with the arms that begin at the joint."""
    begins_there = from_joint(drawing, frame)
    lines = ((arrow, begins_there(arrow)) for arrow in drawing.arrows if arrow.arm or arrow.toward)
    return tuple(_armed(arrow, frame, at_joint) for arrow, at_joint in lines if at_joint or arrow.toward)


def from_joint(drawing: Drawing, frame: Frame) -> Callable[[Arrow], bool]:
    """Tells of an arrow that has an arm whether that begins at the joint: it does where it is given, and where neither
    another arm nor a couple about the joint is in its way.
    """
    armed = [arrow for arrow in drawing.arrows if arrow.arm]
    pivot = frame.spot(drawing.pivot)
    least = _TURNED if any(frame.spot(turn.at) == pivot for turn in drawing.turns) else 0.0

    def begins_there(arrow: Arrow) -> bool:
        if arrow.arm and arrow.arm.needed:
            return True
        others = (each for each in armed if each is not arrow)
        return dist(pivot, frame.foot(arrow)) >= least and not any(_parallel(arrow, each) for each in others)

    return begins_there


def _parallel(one: Arrow, other: Arrow) -> bool:
    return abs((one.direction - other.direction + 90.0) % 180.0 - 90.0) < _PARALLEL


def _armed(arrow: Arrow, frame: Frame, at_joint: bool) -> Armed:
    start, along, pivot, foot = frame.spot(arrow.at), unit(arrow.direction), frame.spot(frame.pivot), frame.foot(arrow)
    reached: Spot | None = None
    ends, shapes, wanted = list[float](), list[Shape](), list[Wanted]()
    if arrow.toward:
        ends.append(dist(start, frame.spot(arrow.toward)))
        shapes.append(Disc(step(start, along, ends[0]), 2.6, _POINT))
    if arrow.arm and at_joint and dist(pivot, foot) > RIM:
        reached = foot
        ends.append(_far(start, along, foot))
        side = along if ends[-1] <= 0.0 else (-along[0], -along[1])
        shapes += [Line(step(pivot, toward(pivot, foot), RIM), foot, ARM), *square(foot, toward(foot, pivot), side)]
        wanted.append(Wanted(letters(arrow.arm.label, _SIZE), _INK, _beside(pivot, foot)))
    return Armed(arrow, start, tuple(ends), reached, tuple(shapes), tuple(wanted))


def square(foot: Spot, one: Spot, other: Spot) -> tuple[Line, Line]:
    """The mark of a right angle."""
    corner = step(step(foot, one, _CORNER), other, _CORNER)
    return Line(step(foot, one, _CORNER), corner, _SQUARE), Line(step(foot, other, _CORNER), corner, _SQUARE)


def _beside(pivot: Spot, foot: Spot) -> tuple[Anchor, ...]:
    """Beside the middle of an arm, or past its foot."""
    along = toward(pivot, foot)
    middle, side = step(pivot, along, (RIM + dist(pivot, foot)) / 2), (-along[1], along[0])
    return Anchor(middle, side), Anchor(middle, (-side[0], -side[1])), Anchor(foot, along, 3.0)


def _far(start: Spot, along: Spot, spot: Spot) -> float:
    return (spot[0] - start[0]) * along[0] + (spot[1] - start[1]) * along[1]
