"""Places beside the spots that labels belong to: which of them are free, the cheapest first. Knows rectangles and
strokes.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from heapq import heappop, heappush
from math import atan2, cos, degrees, hypot, radians, sin
from typing import NamedTuple

from .cells import Ground, Spots
from .outlines import Outline
from .shapes import Box, Capsule, Spot, covers

CLEAR = 2.5  # pixels kept free around a label
CLAIM = 12.0  # what it costs to stand near another label's spot, in pixels
_OWN = 9.0  # pixels around the spot of a label that are its own
_BEYOND = 34.0  # pixels past its arc that an angle's label may stand
_ROUND = (0, 25, -25, 50, -50, 75, -75, 90, -90, 112, -112, 135, -135, 158, -158, 180)


class Anchor(NamedTuple):
    """A spot that a label may stand beside: best in the direction `away` (a unit vector), at a price in pixels."""

    spot: Spot
    away: Spot
    price: float = 0.0


class Sector(NamedTuple):
    """The inside of an angle on the page: from the direction `first` on through `sweep` degrees, with the radius of
    its arc.
    """

    centre: Spot
    radius: float
    first: float
    sweep: float

    def holds(self, box: Box) -> bool:
        """Whether a box lies between the sides and not far from the arc."""
        sense = 1.0 if self.sweep > 0 else -1.0
        return (
            _least_left(box, self.centre, self.first, sense) > -1.0
            and _least_left(box, self.centre, self.first + self.sweep, -sense) > -1.0
            and apart(box, self.centre) < self.radius + _BEYOND
        )


class Wanted(NamedTuple):
    """A label that has to find its place beside one of its anchors; the one of an angle inside it, or with a leader."""

    outline: Outline
    ink: str
    anchors: tuple[Anchor, ...]
    leads: float = 18.0  # farther off than this it is tied to its spot by a thin line
    sector: Sector | None = None


class Try(NamedTuple):
    price: float
    box: Box
    far: float
    spot: Spot


class _Way(NamedTuple):
    """An anchor, by its number, a turn from its best direction and a distance, before what else the place may cost."""

    price: float
    anchor: int
    turn: int
    far: float


class _Side(NamedTuple):
    """A direction on the page, and how far a label that stands there reaches from its centre back to its spot."""

    across: float
    down: float
    reach: float


def tries(
    wanted: Wanted, gaps: tuple[float, ...], rivals: Spots, ground: Ground, sector: Sector | None = None
) -> Iterator[Try]:
    """Every free place at these distances, the cheapest first, in a sector alone where one is given; none is looked at
    before it is asked for.
    """
    waiting: list[Try] = []  # those that rivals have made dearer than what is still to come may be
    anchors, near = wanted.anchors, _near(wanted, gaps, rivals)
    bases = [degrees(atan2(anchor.away[1], anchor.away[0])) for anchor in anchors]
    sides: dict[tuple[int, int], _Side] = {}
    taken: dict[tuple[int, int], Capsule] = {}  # what was in the way on a side, and may be farther on too
    for price, number, turn, far in _ways(tuple(anchor.price for anchor in anchors), gaps):
        while waiting and waiting[0].price < price:
            yield heappop(waiting)
        spot, way = anchors[number].spot, (number, turn)
        if far == gaps[0]:  # the first place on its side
            sides[way] = _side(wanted.outline[1:], bases[number] + turn)
        box = _beside(wanted.outline, spot, sides[way], far)
        last = taken.get(way)
        if (last and covers(last, box, CLEAR)) or (sector and not sector.holds(box)):
            continue
        other = ground.in_the_way(box, CLEAR)
        if isinstance(other, Capsule):
            taken[way] = other
        if other is None:
            claimed = _claimed(box, far, near) if near else 0.0
            heappush(waiting, Try(price + claimed, box, far, spot))
    while waiting:
        yield heappop(waiting)


@lru_cache(maxsize=4096)
def _side(size: tuple[float, float], turn: float) -> _Side:
    """The side of a spot that lies in a direction, in degrees, for an outline so wide and high."""
    across, down = cos(radians(turn)), sin(radians(turn))
    reach = min(size[0] / 2 / max(abs(across), 1e-9), size[1] / 2 / max(abs(down), 1e-9))
    return _Side(across, down, reach)


def _beside(outline: Outline, spot: Spot, side: _Side, far: float) -> Box:
    """The box of an outline so far from a spot."""
    (x, y), (across, down, reach), (_, width, height) = spot, side, outline
    left, top = x + across * (reach + far) - width / 2, y + down * (reach + far) - height / 2
    return Box(left, top, left + width, top + height)


def _near(wanted: Wanted, gaps: tuple[float, ...], rivals: Spots) -> list[Spot]:
    """The spots of other labels that a try could come near to."""
    farthest = max(gaps, default=0.0)
    spots = [anchor.spot for anchor in wanted.anchors]
    area = Box(min(x for x, _ in spots), min(y for _, y in spots), max(x for x, _ in spots), max(y for _, y in spots))
    near = list(rivals.within(area.grown(2 * farthest + 2.0 + wanted.outline.width + wanted.outline.height)))
    if spots[0] in near:
        near.remove(spots[0])  # its own, once: another label may have the same
    return near


@lru_cache(maxsize=64)
def _ways(prices: tuple[float, ...], gaps: tuple[float, ...]) -> tuple[_Way, ...]:
    """The ways to stand beside anchors of these prices, the cheapest first."""
    return tuple(
        sorted(
            _Way(price + far + abs(turn) * 0.07, number, turn, far)
            for number, price in enumerate(prices)
            for turn in _ROUND
            for far in gaps
        )
    )


def _claimed(box: Box, far: float, rivals: Sequence[Spot]) -> float:
    """The price of standing so near another label's spot that a reader could take it for that one's."""
    return CLAIM * sum(apart(box, spot) < max(far + 2.0, _OWN) for spot in rivals)


def _least_left(box: Box, centre: Spot, turn: float, sense: float) -> float:
    """How far a box lies to the left of the line that leaves the centre in a direction, or to its right where
    `sense` is -1: its nearest corner.
    """
    across, down = sense * cos(radians(turn)), sense * sin(radians(turn))
    return across * (centre[1] - (box.bottom if across > 0 else box.top)) - down * (
        (box.right if down > 0 else box.left) - centre[0]
    )


def apart(box: Box, spot: Spot) -> float:
    """How far a spot is from a box, 0 within it."""
    return hypot(max(box.left - spot[0], 0.0, spot[0] - box.right), max(box.top - spot[1], 0.0, spot[1] - box.bottom))


def centred(outline: Outline, centre: Spot) -> Box:
    """The box of an outline around a centre."""
    return Box(
        centre[0] - outline.width / 2,
        centre[1] - outline.height / 2,
        centre[0] + outline.width / 2,
        centre[1] + outline.height / 2,
    )


def preferred(wanted: Wanted, far: float) -> Box:
    """The place at a distance that is best, whatever lies there."""
    spot, away, _ = wanted.anchors[0]
    return _beside(wanted.outline, spot, _side(wanted.outline[1:], degrees(atan2(away[1], away[0]))), far)
