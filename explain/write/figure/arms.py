"""Lever arms from the joint square to a line of pull, and lines of pull thought on. Knows no lengths in metres."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import dist
from typing import NamedTuple

from ...document.passage import Arrow, Drawing
from .body import RIM, THIN, Ray
from .frame import Frame
from .outlines import letters
from .shapes import Capsule, Disc, Line, Pen, Shape, Spot, capsules, gap, step, toward, unit
from .places import Anchor, Wanted

_INK = "#4a4a4a"
_ARM = Pen(_INK, 1.3)
_SQUARE = Pen(_INK, 0.9)
_POINT = Pen(_INK, 1.1, fill="#ffffff")
_LEAST = 24.0  # an arm shorter than this is left out where it can be
_CORNER = 8.0
_SIZE = 16.0


class Armed(NamedTuple):
    """A force on a line that is shown: its arm, and how far its line reaches from its point on, in pixels."""

    arrow: Arrow
    start: Spot
    ends: tuple[float, ...]
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


def arms(drawing: Drawing, frame: Frame, bones: Sequence[Capsule]) -> tuple[Armed, ...]:
    """The forces whose lines are shown; an arm that is not needed is left out where it is short or lies on a bone."""
    return tuple(_armed(arrow, frame, bones) for arrow in drawing.arrows if arrow.arm or arrow.toward)


def _armed(arrow: Arrow, frame: Frame, bones: Sequence[Capsule]) -> Armed:
    start, along, pivot, foot = frame.spot(arrow.at), unit(arrow.direction), frame.spot(frame.pivot), frame.foot(arrow)
    ends, shapes, wanted = list[float](), list[Shape](), list[Wanted]()
    if arrow.toward:
        ends.append(dist(start, frame.spot(arrow.toward)))
        shapes.append(Disc(step(start, along, ends[0]), 2.6, _POINT))
    if arrow.arm and (dist(pivot, foot) > RIM if arrow.arm.needed else _has_room(pivot, foot, bones)):
        ends.append(_far(start, along, foot))
        side = along if ends[-1] <= 0.0 else (-along[0], -along[1])
        shapes += [Line(step(pivot, toward(pivot, foot), RIM), foot, _ARM), *_square(foot, toward(foot, pivot), side)]
        wanted.append(Wanted(letters(arrow.arm.label, _SIZE), _INK, _beside(pivot, foot)))
    return Armed(arrow, start, tuple(ends), tuple(shapes), tuple(wanted))


def _has_room(pivot: Spot, foot: Spot, bones: Sequence[Capsule]) -> bool:
    far, along = dist(pivot, foot), toward(pivot, foot)
    if far < _LEAST + RIM:
        return False
    spots = [step(pivot, along, RIM + (far - RIM) * share / 20) for share in range(1, 21)]
    return sum(any(gap(spot, piece) < 2.0 for piece in bones) for spot in spots) <= 8


def _square(foot: Spot, one: Spot, other: Spot) -> tuple[Line, Line]:
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
