"""Where the labels of a figure go: each to the nearest place that is free, far ones with a thin line to their spot."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import chain, islice
from math import inf
from typing import NamedTuple

from .cells import Ground, Spots
from .outlines import Outline
from .places import CLAIM, CLEAR, Try, Wanted, apart, centred, preferred, tries
from .shapes import Box, Capsule, Line, Patch, Pen, Spot, capsules, covers, toward

LEADER = Pen("#6a6a6a", 0.8)
_NEAR = (3.0, 5.0, 8.0, 12.0, 17.0, 23.0, 31.0)
_FAR = (40.0, 52.0, 66.0, 82.0, 100.0, 122.0, 150.0, 185.0, 230.0, 290.0, 360.0)
_ROUGH = 4  # so many of the near distances are tried for a first look
_SEEN = 20.0
_CHOICE = 24  # so many free places are compared where a leader is needed


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


def place(
    wanted: Sequence[Wanted],
    drawn: Ground,
    settled: Sequence[Label] = (),
    before: Lettering | None = None,
    roughly: bool = False,
) -> Lettering:
    """Places labels in order; the ones already settled stay. No label touches a stroke, a leader or another label.

    What is `drawn` stays as it is; `before` is where the first of them stood while there was less on the sheet: those
    that can stay there do. `roughly` leaves a label that finds no place near by at its best spot, whatever lies there.
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
        placed.append(old[number] if stays else _settle(each, ground, rivals, roughly))
        ground.write(placed[-1].label.box)
        for line in placed[-1].leader:
            ground.draw(Capsule(*line.start, *line.end, line.pen.width / 2))
    return Lettering(tuple(settled), tuple(placed))


def guessed(wanted: Iterable[Wanted]) -> Lettering:
    """About where labels will go: at their best spots, whatever lies there."""
    return Lettering((), tuple(map(_guessed, wanted)))


def _guessed(wanted: Wanted) -> _Placed:
    return _Placed(Label(preferred(wanted, _NEAR[1]), wanted.outline, wanted.ink), ())


def _stays(placed: _Placed, ground: Ground, rivals: Spots) -> bool:
    """Whether a label may stand where it stood, with its leader and with the spots of new labels near by."""
    box = placed.label.box
    if not ground.free(box, CLEAR) or any(apart(box, spot) < _NEAR[2] for spot in rivals.within(box.grown(_NEAR[2]))):
        return False
    leaders = [Capsule(*line.start, *line.end, line.pen.width / 2) for line in placed.leader]
    return not any(covers(leader, other, 1.0) for leader in leaders for other in ground.along(leader)[1])


def _settle(wanted: Wanted, ground: Ground, rivals: Spots, roughly: bool) -> _Placed:
    """The first free try, near ones before far ones; far ones get a leader, which crosses no label."""
    tied = _NEAR[:_ROUGH] if roughly else tuple(gap for gap in _NEAR if gap <= wanted.leads)
    for each in tries(wanted, tied, rivals, ground, wanted.sector):
        return _Placed(Label(each.box, wanted.outline, wanted.ink), ())
    if roughly:
        return _guessed(wanted)
    # what stands outside its angle needs a leader that can be seen; of other places those so near are all taken
    led = tuple(gap for gap in _NEAR if (gap >= _SEEN if wanted.sector else gap > wanted.leads))
    near, far = (tries(wanted, gaps, each, ground) for gaps, each in ((led, rivals), (_FAR, Spots(()))))
    best = _led(chain(near, far), ground)
    if best is None:
        return _Placed(Label(_outside(wanted, ground), wanted.outline, wanted.ink), ())
    leader = _leader(best)
    return _Placed(
        Label(best.box, wanted.outline, wanted.ink), (Line((leader.ax, leader.ay), (leader.bx, leader.by), LEADER),)
    )


def _led(found: Iterable[Try], ground: Ground) -> Try | None:
    """The try that costs least with the strokes that its leader crosses, among those whose leader crosses no label."""
    best, least = None, inf
    for each in islice(found, _CHOICE):
        if each.price >= least + CLAIM:
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


def _leader(each: Try) -> Capsule:
    """A thin line from the spot to just short of the label."""
    box = each.box.grown(CLEAR)
    end = (min(max(each.spot[0], box.left), box.right), min(max(each.spot[1], box.top), box.bottom))
    along = toward(each.spot, end)
    return Capsule(each.spot[0] + along[0] * 3, each.spot[1] + along[1] * 3, *end, LEADER.width / 2)


def _outside(wanted: Wanted, ground: Ground) -> Box:
    """Below everything: there is always room there."""
    return centred(wanted.outline, (wanted.anchors[0].spot[0], ground.bottom + 4 * CLEAR + wanted.outline.height / 2))
