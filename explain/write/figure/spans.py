"""Distances as dimension lines with their letters and the thin ties to what they measure. Knows no lengths in
metres.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import dist
from typing import NamedTuple

from .arms import ARM, square
from .body import BAR, RIM, THIN, Ray
from .frame import Frame
from .cells import Ground
from .rows import HEAD, TIGHT, Row
from .shapes import Box, Capsule, Line, Patch, Pen, Shape, Spot, capsules, coordinates, covers, step, toward
from .labels import Label
from .places import CLEAR, Anchor, Wanted, centred

_INK = "#4a4a4a"
_LINE = Pen(_INK, 1.0)
_TIE = Pen(_INK, 0.7)
_HEAD = Pen(_INK, 0.0, fill=_INK)
_GAP = 5.0  # pixels that a tie keeps from a force that it crosses


class Spanned(NamedTuple):
    """What the dimension lines draw, the labels that sit in gaps of their lines, and those that still need a place."""

    shapes: tuple[Shape, ...]
    settled: tuple[Label, ...]
    wanted: tuple[Wanted, ...]


class _Tie(NamedTuple):
    """From a measured spot to a dimension line: the way there and how far it is."""

    spot: Spot
    away: Spot
    far: float


def spans(rows: Sequence[Row], frame: Frame, drawn: Ground, forces: Sequence[Ray]) -> Spanned:
    """The rows drawn, with letters in a gap of the line where that is free."""
    ties = list(_ties(rows, frame, drawn.strokes, forces))
    shapes: list[Shape] = list(ties)
    settled, wanted = list[Label](), list[Wanted]()
    lines = [capsules(_dimension(row, None)) for row in rows]
    ground = drawn.plus(capsules(ties))
    for number, row in enumerate(rows):
        box = _gap(row, ground, [piece for line in lines[:number] + lines[number + 1 :] for piece in line])
        shapes += _dimension(row, box)
        if box:
            settled.append(Label(box, row.of.outline, _INK))
            ground.write(box)
        else:
            wanted.append(Wanted(row.of.outline, _INK, _anchors(row)))
    return Spanned(tuple(shapes), tuple(settled), tuple(wanted))


def _ties(rows: Sequence[Row], frame: Frame, room: Sequence[Capsule], forces: Sequence[Ray]) -> Iterator[Line]:
    """One tie for each measured point and side, to its farthest line; an arrow on the way serves as a tie."""
    longest: dict[tuple[float, ...], _Tie] = {}
    for row in rows:
        for spot, end in zip((row.of.start, row.of.end), row.ends, strict=True):
            tie = _Tie(spot, toward(spot, end), abs(row.aside))
            key = _key(tie.spot, tie.away)
            if row.aside and tie.far > longest.get(key, tie._replace(far=0.0)).far:
                longest[key] = tie
    feet = {_key(tie.spot, tie.away) for row in rows for tie in _to_pull(row)}
    for key, tie in longest.items():
        if key in feet:
            continue
        start, on_bone = _marked(tie, frame, forces)
        start = _past(tie, start + (BAR / 2 + 3.0 if on_bone else 4.0), room)
        for near, far in _parted(tie, start, tie.far + 5.0, forces):
            yield Line(step(tie.spot, tie.away, near), step(tie.spot, tie.away, far), _TIE)


def _key(spot: Spot, away: Spot) -> tuple[float, ...]:
    return tuple(round(value, 1) for value in (*spot, *away))


def _to_pull(row: Row) -> Iterator[_Tie]:
    """The tie of an arm at its line of pull."""
    for spot, end in zip((row.of.start, row.of.end), row.ends, strict=True):
        if row.of.pull and abs(_across(spot, row.of.pull)) < 1.5:
            yield _Tie(spot, toward(spot, end), abs(row.aside))


def _across(spot: Spot, ray: Ray) -> float:
    return coordinates(Capsule(*spot, *spot, 0.0), ray.start, ray.along)[0][1]


def _squared(row: Row) -> Iterator[Line]:
    """The line of pull thought on to an arm's end, and the mark of the right angle there."""
    assert row.of.pull is not None
    for tie in _to_pull(row):
        foot = step(tie.spot, tie.away, tie.far)
        inward = _back(row.of.along) if tie.spot == row.of.end else row.of.along
        ends = [(each, coordinates(Capsule(*each, *each, 0.0), foot, tie.away)[0][0]) for each in row.of.pull[:2]]
        near, far = min(ends, key=lambda each: abs(each[1]))
        if ends[0][1] * ends[1][1] > 0.0 and abs(far) > 3.0:
            yield Line(near, foot, THIN)
        back = _back(tie.away) if far <= 0.0 else tie.away
        yield from square(foot, inward, back)


def _back(along: Spot) -> Spot:
    return -along[0], -along[1]


def _parted(tie: _Tie, start: float, end: float, forces: Sequence[Ray]) -> Iterator[tuple[float, float]]:
    """The pieces of a tie, with a gap where a force crosses it."""
    cuts = []
    for force in forces:
        (a, left), (b, right) = coordinates(Capsule(*force.start, *force.end, 0.0), tie.spot, tie.away)
        if left * right < 0.0 and min(abs(left), abs(right)) > 1.5:
            cuts.append(a + (b - a) * left / (left - right))
    for cut in sorted(cut for cut in cuts if start < cut < end):
        if cut - _GAP - start > 3.0:
            yield start, cut - _GAP
        start = cut + _GAP
    if start < end:
        yield start, end


def _marked(tie: _Tie, frame: Frame, forces: Sequence[Ray]) -> tuple[float, bool]:
    """Where on its way a tie begins, and whether on a bone; for a spot that marks nothing, at the force in its line."""
    if frame.on_bone(tie.spot) or dist(tie.spot, frame.spot(frame.pivot)) < RIM:
        return 0.0, True
    for force in forces:
        (far, across), _ = coordinates(Capsule(*force.start, *force.end, 0.0), tie.spot, tie.away)
        if abs(across) < 1.5 and far < tie.far:
            return far, True
    return 0.0, False


def _past(tie: _Tie, start: float, room: Sequence[Capsule]) -> float:
    """Where a tie begins if it is not to run along what lies there already."""
    for piece in room:
        ends = coordinates(piece, tie.spot, tie.away)
        if max(abs(across) for _, across in ends) < 7.0 and min(far for far, _ in ends) < start + 14.0:
            start = max(start, max(far for far, _ in ends) + 3.0)
    return start


def _gap(row: Row, ground: Ground, lines: Sequence[Capsule]) -> Box | None:
    """The place nearest to the middle of a line where its letter fits between the ends, clear of the other lines
    too.
    """
    middle, half = row.of.length / 2, row.of.half
    spare = middle - half - (1.0 if row.of.outside else HEAD + 4.0)
    (ax, ay), (bx, by) = row.ends
    near = Box(min(ax, bx), min(ay, by), max(ax, bx), max(ay, by)).grown(30.0)
    close = [piece for piece in lines if covers(piece, near)]
    for aside in range(0, int(spare) + 1, 4) if spare >= 0 else ():
        for far in (middle - aside, middle + aside):
            box = centred(row.of.outline, step((ax, ay), row.of.along, far))
            if ground.free(box, CLEAR) and not any(covers(piece, box, CLEAR) for piece in close):
                return box
    return None


def _dimension(row: Row, box: Box | None) -> tuple[Shape, ...]:
    """The line of a row, parted at its letter where that stands in it, with arrowheads inside or outside."""
    (start, end), along = row.ends, row.of.along
    back = _back(along)
    if row.of.pull:
        parts = [(start, end)]
        if box:
            middle = ((box.left + box.right) / 2, (box.top + box.bottom) / 2)
            parts = [(start, step(middle, along, -row.of.half)), (step(middle, along, row.of.half), end)]
        return (*(Line(*part, ARM) for part in parts), *_squared(row))
    if row.of.outside:
        tails = (
            Line(step(start, back, HEAD - 2.0), step(start, back, HEAD + 8.0), _LINE),
            Line(step(end, along, HEAD - 2.0), step(end, along, HEAD + 8.0), _LINE),
        )
        return (*tails, _pointed(start, along), _pointed(end, back))
    heads = (_pointed(start, back), _pointed(end, along))
    first, last = step(start, back, 2.0 - HEAD), step(end, along, 2.0 - HEAD)
    if box is None:
        return (Line(first, last, _LINE), *heads)
    middle = ((box.left + box.right) / 2, (box.top + box.bottom) / 2)
    return (
        Line(first, step(middle, along, -row.of.half), _LINE),
        Line(step(middle, along, row.of.half), last, _LINE),
        *heads,
    )


def _pointed(tip: Spot, along: Spot) -> Patch:
    return Patch((tip, step(tip, along, -HEAD, -2.8), step(tip, along, -HEAD, 2.8)), _HEAD)


def _anchors(row: Row) -> tuple[Anchor, ...]:
    """Beside the middle of the line, the far side from the body first, or past either end of a short one."""
    (start, end), along = row.ends, row.of.along
    back = _back(along)
    middle, side = step(start, along, row.of.length / 2), (-along[1], along[0])
    outward = side if row.aside >= 0 else (-side[0], -side[1])
    beyond = HEAD + 8.0 if row.of.outside else 0.0
    return (
        Anchor(middle, outward, 0.0 if row.of.length >= TIGHT else 3.0),
        Anchor(middle, (-outward[0], -outward[1]), 3.0),
        Anchor(step(end, along, beyond), along, 2.0),
        Anchor(step(start, back, beyond), back, 2.0),
    )
