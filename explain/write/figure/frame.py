"""From metres to pixels: one scale, and points that lie too close on a bone drawn a little apart. Knows no forces."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Mapping, Sequence
from itertools import pairwise
from math import dist, hypot
from types import MappingProxyType
from typing import NamedTuple

from ...document.passage import Arm, Arrow, Drawing, Point
from .shapes import Spot, step, toward, unit

APART = 20.0  # pixels between neighbouring points of a bone, where there is room
ARM = 34.0  # pixels from the joint to a line of pull at least
SAME = 0.3  # points nearer than this many pixels are one point


class Rail(NamedTuple):
    """A bone on the page, with the places of its points: by scale (`true`) and as drawn, both in rising order."""

    start: Spot
    along: Spot
    length: float
    true: tuple[float, ...]
    drawn: tuple[float, ...]

    def share(self, spot: Spot) -> tuple[float, float]:
        """How far along the bone's line and how far across it a spot lies, in pixels."""
        right, down = spot[0] - self.start[0], spot[1] - self.start[1]
        return right * self.along[0] + down * self.along[1], down * self.along[0] - right * self.along[1]

    def moved(self, far: float) -> float:
        """The place that is drawn for a place by scale."""
        if far <= self.true[0]:
            return far + self.drawn[0] - self.true[0]
        if far >= self.true[-1]:
            return far + self.drawn[-1] - self.true[-1]
        at = bisect_right(self.true, far)
        low, high = self.true[at - 1], self.true[at]
        return self.drawn[at - 1] + (far - low) / (high - low) * (self.drawn[at] - self.drawn[at - 1])

    def off(self, spot: Spot) -> float:
        """How far a spot is from the bone itself, which ends at its ends."""
        far, across = self.share(spot)
        return hypot(far - min(max(far, 0.0), self.length), across)


class Frame(NamedTuple):
    """Pixels to the metre, the point that is drawn at (0, 0), the bones as rails, and where points are held: those on
    a line of pull, and all that are known already.
    """

    scale: float
    pivot: Point
    rails: tuple[Rail, ...] = ()
    held: Mapping[Point, Spot] = MappingProxyType({})

    def plain(self, point: Point) -> Spot:
        return (point[0] - self.pivot[0]) * self.scale, (self.pivot[1] - point[1]) * self.scale

    def spot(self, point: Point) -> Spot:
        """Where a point is drawn."""
        if point in self.held:
            return self.held[point]
        plain = self.plain(point)
        rail = _rail_of(plain, self.rails)
        if rail:
            return step(rail.start, rail.along, rail.moved(rail.share(plain)[0]))
        far = hypot(*plain)
        if self.rails or far <= SAME or far >= APART:
            return plain
        return step((0.0, 0.0), toward((0.0, 0.0), plain), APART)

    def foot(self, arrow: Arrow) -> Spot:
        """Where the lever arm of a force is drawn to end: square to its line as that is drawn."""
        along, at, pivot = unit(arrow.direction), self.spot(arrow.at), self.spot(self.pivot)
        return step(at, along, (pivot[0] - at[0]) * along[0] + (pivot[1] - at[1]) * along[1])

    def on_bone(self, spot: Spot) -> bool:
        """Whether a spot of the page lies on the axis of a bone."""
        return any(rail.off(spot) < 1.0 for rail in self.rails)


def points_of(drawing: Drawing) -> tuple[Point, ...]:
    """Every point that a drawing speaks of, the pivot first."""
    return (
        drawing.pivot,
        *(end for bone in drawing.bones for end in (bone.start, bone.end)),
        *(arrow.at for arrow in drawing.arrows),
        *(arrow.arm.foot for arrow in drawing.arrows if arrow.arm),
        *(arrow.toward for arrow in drawing.arrows if arrow.toward),
        *(turn.at for turn in drawing.turns),
        *(opening.at for opening in drawing.openings),
        *(end for span in drawing.spans for end in (span.start, span.end)),
        *(end for band in drawing.bands for end in (band.start, band.end)),
        *drawing.points,
    )


def framed(drawing: Drawing, wide: float, high: float) -> Frame:
    """The frame in which the points of a drawing span at most `wide` by `high` pixels."""
    points = points_of(drawing)
    across, up = _spread(x for x, _ in points), _spread(y for _, y in points)
    scale = min(wide / across if across else 1e9, high / up if up else 1e9)
    plain = Frame(scale if across or up else 1.0, drawing.pivot)
    ends = [(plain.plain(bone.start), plain.plain(bone.end)) for bone in drawing.bones]
    bare = [Rail(start, toward(start, end), dist(start, end), (), ()) for start, end in ends]
    spots = [plain.plain(point) for point in points]
    railed = plain._replace(rails=tuple(_spaced(rail, bare, spots) for rail in bare))
    held = {each.at: _held(each, each.arm, railed) for each in drawing.arrows if each.arm and each.arm.needed}
    for each in drawing.arrows:
        held |= _aimed(each.at, each.direction, each.toward, railed) if each.toward else {}
    known = railed._replace(held=held)
    return railed._replace(held={point: known.spot(point) for point in points})  # each is asked for many times


def _aimed(at: Point, direction: float, toward: Point, frame: Frame) -> dict[Point, Spot]:
    """A point that a pull aims at, true to its direction from where that is drawn to begin, and the corner between
    the two.
    """
    start = frame.spot(at)
    aim = step(start, unit(direction), dist(at, toward) * frame.scale)
    return {toward: aim, (toward[0], at[1]): (aim[0], start[1])}


def _held(arrow: Arrow, arm: Arm, frame: Frame) -> Spot:
    """Where a force known by its arm is drawn to begin: its line is moved away from the joint where it would pass
    too near.
    """
    pivot, along, foot = frame.spot(frame.pivot), unit(arrow.direction), frame.plain(arm.foot)
    at = frame.plain(arrow.at)
    far = (at[0] - foot[0]) * along[0] + (at[1] - foot[1]) * along[1]
    long = hypot(*foot)
    return step(step(pivot, toward((0.0, 0.0), foot), max(long, ARM) if long > SAME else 0.0), along, far)


def _spread(values: Iterable[float]) -> float:
    held = list(values)
    return max(held) - min(held)


def _rail_of(spot: Spot, rails: Sequence[Rail]) -> Rail | None:
    """The nearest bone on whose line the spot lies, its prolongation counted."""
    fitting = [rail for rail in rails if abs(rail.share(spot)[1]) < SAME]
    return min(fitting, key=lambda rail: rail.off(spot), default=None)


def _spaced(rail: Rail, rails: Sequence[Rail], spots: Sequence[Spot]) -> Rail:
    mine = sorted([0.0, rail.length] + [rail.share(spot)[0] for spot in spots if _rail_of(spot, rails) is rail])
    true = [mine[0]]
    for far in mine[1:]:
        if far - true[-1] >= SAME:
            true.append(far)
    gaps = [high - low for low, high in pairwise(true)]
    inner = [number for number, low in enumerate(true[:-1]) if low >= -SAME and true[number + 1] <= rail.length + SAME]
    widened = _widened([gaps[number] for number in inner])
    for number, far in zip(inner, widened, strict=True):
        gaps[number] = far
    drawn, zero = [0.0], min(range(len(true)), key=lambda number: abs(true[number]))
    for number, far in enumerate(gaps):
        drawn.append(drawn[-1] + (far if number in inner else max(far, APART)))
    return rail._replace(true=tuple(true), drawn=tuple(far - drawn[zero] for far in drawn))


def _widened(gaps: Sequence[float]) -> list[float]:
    """The gaps with none below 20 pixels, as far as their sum (which stays) allows."""
    if not gaps:
        return []
    least = min(APART, sum(gaps) / len(gaps))
    spare = sum(max(0.0, far - least) for far in gaps)
    lack = sum(max(0.0, least - far) for far in gaps)
    return [least + max(0.0, far - least) * (1.0 - lack / spare if spare else 1.0) for far in gaps]
