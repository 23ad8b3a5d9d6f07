"""Where the labels of a figure go: the nearest place that no stroke and no other label touches. Knows rectangles and
strokes.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from heapq import heappop, heappush
from itertools import chain, islice
from math import atan2, cos, degrees, hypot, inf, radians, sin
from typing import NamedTuple

from .cells import Ground, Spots
from .outlines import Outline
from .shapes import Box, Capsule, Line, Patch, Pen, Spot, capsules, covers, toward

CLEAR = 2.5  # pixels kept free around a label
LEADER = Pen("#6a6a6a", 0.8)
_NEAR = (3.0, 5.0, 8.0, 12.0, 17.0, 23.0, 31.0)
_FAR = (40.0, 52.0, 66.0, 82.0, 100.0, 122.0, 150.0, 185.0, 230.0, 290.0, 360.0)
_BEYOND = 34.0  # pixels past its arc that an angle's label may stand
_SEEN = 20.0
_CHOICE = 40  # so many free places are compared where a leader is needed
_CLAIM = 12.0  # what it costs to stand near another label's spot, in pixels
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
            and _away(box, self.centre) < self.radius + _BEYOND
        )


class Wanted(NamedTuple):
    """A label that has to find its place beside one of its anchors; the one of an angle inside it, or with a leader."""

    outline: Outline
    ink: str
    anchors: tuple[Anchor, ...]
    leads: float = 18.0  # farther off than this it is tied to its spot by a thin line
    sector: Sector | None = None


class Label(NamedTuple):
    """A label in its place; `box` holds its ink."""

    box: Box
    outline: Outline
    ink: str


class _Placed(NamedTuple):
    label: Label
    leader: tuple[Line, ...]


class Lettering(NamedTuple):
    """Labels that stood where they are before, and those that found their places, in order."""

    settled: tuple[Label, ...]
    placed: tuple[_Placed, ...]

    @property
    def labels(self) -> tuple[Label, ...]:
        return (*self.settled, *(each.label for each in self.placed))

    @property
    def leaders(self) -> tuple[Line, ...]:
        return tuple(line for each in self.placed for line in each.leader)

    @property
    def room(self) -> tuple[Capsule, ...]:
        """What the lettering takes up, as strokes: boxes by their edges."""
        boxes = (label.box for label in self.labels)
        edges = (
            Patch(((b.left, b.top), (b.right, b.top), (b.right, b.bottom), (b.left, b.bottom)), LEADER) for b in boxes
        )
        return capsules((*edges, *self.leaders))


class _Try(NamedTuple):
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


def place(
    wanted: Sequence[Wanted], drawn: Ground, settled: Sequence[Label] = (), before: Lettering | None = None
) -> Lettering:
    """Places labels in order; the ones already settled stay. No label touches a stroke, a leader or another label.

    `before` is where the first of them stood while there was less on the sheet: those that can stay there do.
    """
    placed, ground = list[_Placed](), drawn.plus()
    for label in settled:
        ground.write(label.box)
    old = before.placed if before else ()
    rivals, new = (
        Spots(each.anchors[0].spot for each in wanted),
        Spots(each.anchors[0].spot for each in wanted[len(old) :]),
    )
    for number, each in enumerate(wanted):
        stays = number < len(old) and _stays(old[number], ground, new)
        placed.append(old[number] if stays else _settle(each, ground, rivals))
        ground.write(placed[-1].label.box)
        for line in placed[-1].leader:
            ground.draw(Capsule(*line.start, *line.end, line.pen.width / 2))
    return Lettering(tuple(settled), tuple(placed))


def guessed(wanted: Iterable[Wanted]) -> Lettering:
    """About where labels will go: at their best spots, whatever lies there."""
    placed = []
    for each in wanted:
        spot, away, _ = each.anchors[0]
        box = _beside(each.outline, spot, _side(each.outline, atan2(away[1], away[0])), _NEAR[1])
        placed.append(_Placed(Label(box, each.outline, each.ink), ()))
    return Lettering((), tuple(placed))


def _stays(placed: _Placed, ground: Ground, rivals: Spots) -> bool:
    """Whether a label may stand where it stood, with its leader and with the spots of new labels near by."""
    box = placed.label.box
    if not ground.free(box, CLEAR) or any(_away(box, spot) < _NEAR[2] for spot in rivals.within(box.grown(_NEAR[2]))):
        return False
    leaders = [Capsule(*line.start, *line.end, line.pen.width / 2) for line in placed.leader]
    return not any(covers(leader, other, 1.0) for leader in leaders for other in ground.along(leader)[1])


def centred(outline: Outline, centre: Spot) -> Box:
    """The box of an outline around a centre."""
    return Box(
        centre[0] - outline.width / 2,
        centre[1] - outline.height / 2,
        centre[0] + outline.width / 2,
        centre[1] + outline.height / 2,
    )


def _settle(wanted: Wanted, ground: Ground, rivals: Spots) -> _Placed:
    """The first free try, near ones before far ones; far ones get a leader, which crosses no label."""
    tied = tuple(gap for gap in _NEAR if gap <= wanted.leads)
    for each in _tries(wanted, tied, rivals, ground, wanted.sector):
        return _Placed(Label(each.box, wanted.outline, wanted.ink), ())
    # what stands outside its angle needs a leader that can be seen; of other places those so near are all taken
    led = tuple(gap for gap in _NEAR if (gap >= _SEEN if wanted.sector else gap > wanted.leads))
    near, far = (_tries(wanted, gaps, each, ground) for gaps, each in ((led, rivals), (_FAR, Spots(()))))
    best = _led(chain(near, far), ground)
    if best is None:
        return _Placed(Label(_outside(wanted, ground), wanted.outline, wanted.ink), ())
    leader = _leader(best)
    return _Placed(
        Label(best.box, wanted.outline, wanted.ink), (Line((leader.ax, leader.ay), (leader.bx, leader.by), LEADER),)
    )


def _led(tries: Iterable[_Try], ground: Ground) -> _Try | None:
    """The try that costs least with the strokes that its leader crosses, among those whose leader crosses no label."""
    best, least = None, inf
    for each in islice(tries, _CHOICE):
        if each.price >= least + _CLAIM:
            break  # the near ones come in the order of their prices, and then the far ones
        if each.price >= least:
            continue
        leader = _leader(each)
        strokes, boxes = ground.along(leader)
        price = each.price + 8.0 * sum(_meets(leader, stroke) for stroke in strokes)
        if price < least and not any(covers(leader, box, 1.0) for box in boxes):
            best, least = each, price
    return best


def _meets(one: Capsule, other: Capsule) -> bool:
    """Whether two straight pieces cross."""
    sides = [
        _turn(one, (other.ax, other.ay)) * _turn(one, (other.bx, other.by)),
        _turn(other, (one.ax, one.ay)) * _turn(other, (one.bx, one.by)),
    ]
    return max(sides) < 0


def _turn(piece: Capsule, spot: Spot) -> float:
    """Positive on one side of a straight piece, negative on the other."""
    return (piece.bx - piece.ax) * (spot[1] - piece.ay) - (piece.by - piece.ay) * (spot[0] - piece.ax)


def _tries(
    wanted: Wanted, gaps: tuple[float, ...], rivals: Spots, ground: Ground, sector: Sector | None = None
) -> Iterator[_Try]:
    """Every free place at these distances, in a sector, the cheapest first; none is looked at before it is asked for."""
    waiting: list[_Try] = []  # those that rivals have made dearer than what is still to come may be
    anchors, near = wanted.anchors, _near(wanted, gaps, rivals)
    bases = [degrees(atan2(anchor.away[1], anchor.away[0])) for anchor in anchors]
    sides: dict[tuple[int, int], _Side] = {}
    taken: dict[tuple[int, int], Capsule | Box | None] = {}  # what was in the way on a side, and may be farther on too
    for price, number, turn, far in _ways(tuple(anchor.price for anchor in anchors), gaps):
        while waiting and waiting[0].price < price:
            yield heappop(waiting)
        spot = anchors[number].spot
        if far == gaps[0]:  # the first place on its side
            sides[number, turn] = _side(wanted.outline, radians(bases[number] + turn))
        box = _beside(wanted.outline, spot, sides[number, turn], far)
        last = taken.get((number, turn))
        if (sector and not sector.holds(box)) or (isinstance(last, Capsule) and covers(last, box, CLEAR)):
            continue
        taken[number, turn] = ground.in_the_way(box, CLEAR)
        if taken[number, turn] is None:
            claimed = _claimed(box, far, near) if near else 0.0
            heappush(waiting, _Try(price + claimed, box, far, spot))
    while waiting:
        yield heappop(waiting)


def _side(outline: Outline, turn: float) -> _Side:
    """The side of a spot that lies in a direction, for an outline."""
    across, down = cos(turn), sin(turn)
    reach = min(outline.width / 2 / max(abs(across), 1e-9), outline.height / 2 / max(abs(down), 1e-9))
    return _Side(across, down, reach)


def _beside(outline: Outline, spot: Spot, side: _Side, far: float) -> Box:
    """The box of an outline so far from a spot."""
    across, down, reach = side
    return centred(outline, (spot[0] + across * (reach + far), spot[1] + down * (reach + far)))


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
    return _CLAIM * sum(_away(box, spot) < far + 2.0 for spot in rivals)


def _least_left(box: Box, centre: Spot, turn: float, sense: float) -> float:
    """How far a box lies to the left of the line that leaves the centre in a direction, or to its right where
    `sense` is -1: its nearest corner.
    """
    across, down = sense * cos(radians(turn)), sense * sin(radians(turn))
    return across * (centre[1] - (box.bottom if across > 0 else box.top)) - down * (
        (box.right if down > 0 else box.left) - centre[0]
    )


def _away(box: Box, spot: Spot) -> float:
    return hypot(max(box.left - spot[0], 0.0, spot[0] - box.right), max(box.top - spot[1], 0.0, spot[1] - box.bottom))


def _leader(each: _Try) -> Capsule:
    """A thin line from the spot to just short of the label."""
    box = each.box.grown(CLEAR)
    end = (min(max(each.spot[0], box.left), box.right), min(max(each.spot[1], box.top), box.bottom))
    along = toward(each.spot, end)
    return Capsule(each.spot[0] + along[0] * 3, each.spot[1] + along[1] * 3, *end, LEADER.width / 2)


def _outside(wanted: Wanted, ground: Ground) -> Box:
    """Below everything: there is always room there."""
    return centred(wanted.outline, (wanted.anchors[0].spot[0], ground.bottom + 4 * CLEAR + wanted.outline.height / 2))
