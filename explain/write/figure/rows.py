"""Which side of the body a distance is drawn on, and how far off: short ones nearer, nothing in the way. Draws
nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import dist
from typing import NamedTuple

from ...document.passage import Drawing
from .arms import from_joint
from .body import BAR, RIM, Ray
from .forces import SIZE, Drawn
from .frame import Frame
from .cells import Ground
from .outlines import Outline, letters
from .places import CLEAR
from .shapes import Capsule, Spot, coordinates, step, toward, unit

TIGHT = 30.0  # a span shorter than this has its arrowheads outside in any case
HEAD = 9.0  # the length of its arrowheads
ROW = 24.0  # pixels from one line to the next, at most where nothing is in the way
_FIRST = 26.0  # pixels from the marked points to the nearest line
_FORCE = 40.0  # what a force on a row's side costs, in pixels
_CROSSED = 14.0  # what a line costs that a tie crosses
_KEPT = 2  # so many ways to place the groups are followed up
_CLEAR = 11.0  # pixels kept free on both sides of a line
_Interval = tuple[float, float]


@dataclass(frozen=True)
class Length:
    """A span on the page, from left to right, or downwards where it is upright."""

    start: Spot
    end: Spot
    outline: Outline
    pull: Ray | None = None  # of an arm, the arrow to whose line it leads

    @cached_property
    def along(self) -> Spot:
        return toward(self.start, self.end)

    @cached_property
    def length(self) -> float:
        return dist(self.start, self.end)

    @cached_property
    def half(self) -> float:
        """Half of the gap that the letter needs in the line."""
        across, down = (abs(value) for value in self.along)
        return min(
            (self.outline.width / 2 + 4.0) / max(across, 1e-9), (self.outline.height / 2 + 4.0) / max(down, 1e-9)
        )

    @cached_property
    def off(self) -> float:
        """How far beside a bone the letter has room in the line: its box, with a bone's half and what is kept clear
        around it, passes the bone's axis.
        """
        across, down = (abs(value) for value in self.along)
        around = BAR / 2 + CLEAR
        return 1.0 + (self.outline.width / 2 + around) * down + (self.outline.height / 2 + around) * across

    @cached_property
    def outside(self) -> bool:
        """Whether the arrowheads stand outside, pointing at each other, for want of room beside the letter."""
        return self.pull is None and self.length < max(TIGHT, 2 * (self.half + HEAD + 4.0))


class Row(NamedTuple):
    """A span and how far beside its points its line runs: to the right of its direction as seen on the page."""

    of: Length
    aside: float

    @property
    def ends(self) -> tuple[Spot, Spot]:
        along = self.of.along
        return step(self.of.start, along, 0.0, self.aside), step(self.of.end, along, 0.0, self.aside)

    @property
    def room(self) -> Capsule:
        """What other lines have to keep clear of."""
        return Capsule(*self.ends[0], *self.ends[1], _CLEAR)


class _Side(NamedTuple):
    """What stands on one side of a length: how far the forces within it reach, how many forces stand there, and the
    intervals of distance in which a line is in the way of something.
    """

    depth: float
    forces: int
    blocked: tuple[_Interval, ...]


@dataclass(frozen=True)
class _Placed:
    """Rows that are placed, and what they cost together."""

    price: float
    rows: tuple[Row, ...]

    @cached_property
    def ties(self) -> list[Capsule]:
        return _ties(self.rows)


def rows(
    drawing: Drawing,
    frame: Frame,
    sheet: Ground,
    forces: Sequence[Ray],
    tips: Sequence[Capsule],
    arms: Sequence[Length] = (),
) -> tuple[Row, ...]:
    """A row for every span that has a length and for every arm that is not drawn at the joint, stacked by direction
    on the side with fewer forces.

    `tips` are the forces with their letters: a row that has one of them within its length lies beyond them all.
    """
    kept = [_Placed(0.0, ())]
    for group in _groups([*_lengths(drawing, frame), *arms]):
        beside = [_sides(each, sheet.strokes, forces, tips) for each in group]
        tried = [
            _with(group, side, stood, placed, sheet)
            for placed in kept
            for side, stood in zip((1.0, -1.0), zip(*beside, strict=True), strict=True)
        ]
        kept = sorted(tried, key=lambda each: each.price)[:_KEPT]
    return kept[0].rows


def _with(
    group: Sequence[Length],
    side: float,
    beside: Sequence[_Side],
    placed: _Placed,
    sheet: Ground,
) -> _Placed:
    """A group stacked on one side, where that stands, beside what is placed."""
    others = [row.room for row in placed.rows]
    stack = _stacked(group, side, beside, others)
    crossed = sum(_crossings(*row.ends, placed.ties) for row in stack)
    return _Placed(placed.price + _price(stack, beside, sheet, others) + _CROSSED * crossed, (*placed.rows, *stack))


def _ties(placed: Sequence[Row]) -> list[Capsule]:
    """The ways from measured points to their lines, the farthest line of each point and side alone."""
    longest: dict[tuple[float, ...], Capsule] = {}
    for row in sorted(placed, key=lambda row: abs(row.aside)):
        for spot, end in zip((row.of.start, row.of.end), row.ends, strict=True):
            along = toward(spot, end)
            longest[tuple(round(value, 1) for value in (*spot, *along))] = Capsule(*step(spot, along, BAR), *end, 0.0)
    return list(longest.values())


def parallel_arms(drawing: Drawing, frame: Frame, arrows: Sequence[Drawn]) -> list[Length]:
    """The arms that do not begin at the joint, each from there to the line on which its arrow is drawn."""
    pivot, begins_there, lengths = frame.spot(drawing.pivot), from_joint(drawing, frame), list[Length]()
    for each in arrows:
        if each.arrow.arm and not begins_there(each.arrow):
            foot = _nearest(pivot, each.tail, unit(each.arrow.direction))
            if dist(pivot, foot) > RIM:
                lengths.append(
                    Length(*_ordered(pivot, foot), letters(each.arrow.arm.label, SIZE), Ray(each.tail, each.tip))
                )
    return lengths


def _nearest(spot: Spot, start: Spot, along: Spot) -> Spot:
    """The spot of a line that is nearest to another."""
    return step(start, along, (spot[0] - start[0]) * along[0] + (spot[1] - start[1]) * along[1])


def _ordered(one: Spot, other: Spot) -> tuple[Spot, Spot]:
    """From left to right, or downwards."""
    start, end = sorted((one, other), key=lambda spot: (round(spot[0], 3), spot[1]))
    return start, end


def _lengths(drawing: Drawing, frame: Frame) -> list[Length]:
    lengths = []
    for span in drawing.spans:
        start, end = _ordered(frame.spot(span.start), frame.spot(span.end))
        if dist(start, end) > 0.5:
            lengths.append(Length(start, end, letters(span.label, SIZE)))
    return lengths


def _groups(lengths: Sequence[Length]) -> list[list[Length]]:
    """Spans of one direction together, the shortest first; the group with the longest span first."""
    groups: list[list[Length]] = []
    for each in sorted(lengths, key=lambda each: each.length):
        for group in groups:
            if abs(each.along[0] * group[0].along[1] - each.along[1] * group[0].along[0]) < 0.02:
                group.append(each)
                break
        else:
            groups.append([each])
    return sorted(groups, key=lambda group: -group[-1].length)


def _stacked(group: Sequence[Length], side: float, beside: Sequence[_Side], others: Iterable[Capsule]) -> list[Row]:
    """The group on one side, with what stands there and the other rows kept clear of."""
    stack, ground = list[Row](), list(others)
    deepest = max(each.depth for each in beside) + _CLEAR
    for of, stood in zip(group, beside, strict=True):
        blocked = (_mirrored(each) if side < 0 else each for each in _blocked(of, ground))
        least = max(of.off, deepest if stood.depth > BAR else _FIRST)
        stack.append(Row(of, side * _free((*stood.blocked, *blocked), least)))
        ground.append(stack[-1].room)
    return stack


def _sides(of: Length, room: Iterable[Capsule], forces: Sequence[Ray], tips: Iterable[Capsule]) -> tuple[_Side, _Side]:
    """What stands to the right of a length, and to its left."""
    beyond = 4.0 if of.pull is None else -6.0  # what stands at the ends of an arm is what it measures
    reached = [_within(coordinates(piece, of.start, of.along), -beyond, of.length + beyond) for piece in tips]
    ends = [across for held in reached if held for across in held]
    blocked = list(_blocked(of, room))
    return (
        _Side(max([0.0, *ends]), sum(_on_side(of, 1.0, force) for force in forces), tuple(sorted(blocked))),
        _Side(
            -min([0.0, *ends]),
            sum(_on_side(of, -1.0, force) for force in forces),
            tuple(sorted(_mirrored(each) for each in blocked)),
        ),
    )


def _mirrored(interval: _Interval) -> _Interval:
    """An interval as it is on the other side."""
    return -interval[1], -interval[0]


def _free(blocked: Iterable[_Interval], least: float) -> float:
    """The least distance, from `least` on, that lies in no blocked interval."""
    aside = max(least, _FIRST)
    for low, high in sorted(blocked):
        if low < aside < high:
            aside = high
    return aside


def _blocked(of: Length, room: Iterable[Capsule]) -> Iterator[_Interval]:
    """The intervals of distance to the right in which something stands in the way of a line and its arrowheads."""
    margin = -(HEAD + 8.0) if of.outside else 2.0
    for piece in room:
        held = _within(coordinates(piece, of.start, of.along), margin - piece.half, of.length - margin + piece.half)
        if held:
            yield min(held) - piece.half - _CLEAR, max(held) + piece.half + _CLEAR


def _within(ends: Sequence[Spot], low: float, high: float) -> tuple[float, float] | None:
    """The range of the second coordinate of a straight piece where its first lies between low and high."""
    (a, left), (b, right) = ends
    if a > b:
        a, left, b, right = b, right, a, left
    if b <= low or a >= high:
        return None
    if b - a < 1e-9:
        return left, right
    slope = (right - left) / (b - a)
    return left + slope * (max(low, a) - a), left + slope * (min(high, b) - a)


def _price(stack: Sequence[Row], beside: Sequence[_Side], sheet: Ground, others: Sequence[Capsule]) -> float:
    """What a stack costs: how far off it lies, what the ties to its points cross, and the forces on its side."""
    price = sum(abs(row.aside) + _FORCE * stood.forces for row, stood in zip(stack, beside, strict=True))
    crossed = (_crossings((tie.ax, tie.ay), (tie.bx, tie.by), (*sheet.along(tie)[0], *others)) for tie in _ties(stack))
    return price + _CROSSED * sum(crossed)


def _on_side(of: Length, side: float, force: Ray) -> bool:
    """Whether a force stands on a side of a length and within it."""
    ends = coordinates(Capsule(*force.start, *force.end, 0.0), of.start, of.along)
    aside = max(across * side for _, across in ends)
    return aside > BAR and any(-4.0 < far < of.length + 4.0 for far, _ in ends)


def _crossings(start: Spot, end: Spot, pieces: Iterable[Capsule]) -> int:
    """How many pieces lie across a line, not along it."""
    along, length, count = toward(start, end), dist(start, end), 0
    for piece in pieces:
        (first, a), (last, b) = coordinates(piece, start, along)
        if a * b < 0 and min(abs(a), abs(b)) > 1.0 and 0.0 < (first + last) / 2 < length:
            count += 1
    return count
