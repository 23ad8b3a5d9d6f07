"""Forces as arrows in pixels, not to scale: each kind has its own stroke and head, which tell them apart without
colour.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from math import dist, radians, sin
from typing import NamedTuple

from ...equation.terms import Quantity
from ...document.passage import Arrow, Drawing, Opening, Point
from .arms import Armed
from .body import RIM, Ray
from .frame import Frame
from .cells import Halo
from .outlines import letters
from .shapes import Capsule, Line, Patch, Pen, Shape, Spot, capsules, step, toward, unit
from .places import Anchor, Wanted

NUMBER = 10.0  # of a number in place of a letter
PAPER = "#fdfdfb"
SIZE = 16.0  # of the letters, in pixels
_BESIDE = 12.0  # pixels between arrows that would lie on each other
_SHORT = 40.0  # no arrow is shorter for the sake of the point that its line runs to
_MARKED = 16.0  # pixels from an arrowhead to the end of its own arm
_TIGHT = 7.0  # closer than this two arrows look like one


class Look(NamedTuple):
    """How one kind of force is drawn: ink, stroke and dashes, length of the arrow, of its head, half its head's
    width, head.
    """

    ink: str
    width: float
    dash: str
    length: float
    head: float
    half: float
    tip: str  # full | hollow | open


LOOKS: Mapping[str, Look] = {
    "muscle": Look("#a3123c", 3.2, "", 104.0, 14.0, 5.6, "full"),
    "weight": Look("#0b4a8f", 2.0, "", 56.0, 12.0, 4.6, "hollow"),
    "load": Look("#0b4a8f", 2.2, "", 70.0, 12.0, 4.6, "full"),
    "force": Look("#6a3a00", 2.2, "", 78.0, 12.0, 5.2, "open"),
    "joint": Look("#1b6338", 2.4, "7 3", 66.0, 12.0, 4.8, "full"),
}


_LENGTHS: Mapping[float, float] = {1.0: 0.0, 1.3: 3.0, 0.78: 2.0, 0.5: 3.5}  # shares of the length, with their prices
_ASIDES = (0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6, -6)  # places beside an arrow's own line


class Drawn(NamedTuple):
    """An arrow in its place: from `tail` to `tip`; `into` where it ends at the body, not starts there."""

    arrow: Arrow
    look: Look
    tail: Spot
    tip: Spot
    into: bool
    shapes: tuple[Shape, ...]

    @property
    def room(self) -> tuple[Capsule, ...]:
        return capsules(self.shapes)


class _Try(NamedTuple):
    price: float
    tail: Spot
    tip: Spot
    into: bool = False


def forces(
    drawing: Drawing, frame: Frame, bones: Sequence[Capsule], joint: Sequence[Capsule], arms: Sequence[Armed] = ()
) -> tuple[Drawn, ...]:
    """Every force of a drawing, once; the ones at the joint last, because they may choose their side."""
    pivot = frame.spot(drawing.pivot)
    drawn, ground, taken = list[Drawn](), Halo(_TIGHT), set[Point]()
    on_bones, on_joint = Halo(_TIGHT, bones), Halo(_TIGHT, joint)
    for arrow in sorted(drawing.arrows, key=lambda arrow: dist(frame.spot(arrow.at), pivot) <= RIM):
        if numbered(arrow) and arrow.at not in taken:  # in a crowd there is no better place than its own
            drawn.append(_placed(arrow, next(_ways(arrow, drawing, frame, _look(arrow).length))))
        else:
            lines = (piece for armed in arms if armed.arrow is not arrow for piece in (*armed.room, armed.line))
            at_joint = dist(frame.spot(arrow.at), pivot) <= RIM
            own = next((armed for armed in arms if armed.arrow is arrow), None)
            grounds = (ground, Halo(_TIGHT, lines), on_bones if at_joint else on_joint)
            drawn.append(_drawn(arrow, drawing, frame, grounds, own))
        taken.add(arrow.at)
        ground.draw(*drawn[-1].room)
    return tuple(drawn)


def _look(arrow: Arrow) -> Look:
    return LOOKS.get(arrow.kind, LOOKS["force"])


def lettered(drawn: Sequence[Drawn]) -> tuple[Wanted, ...]:
    """The letters of the arrows, near their free ends; numbers are smaller."""
    return tuple(
        Wanted(letters(each.arrow.letter, NUMBER if numbered(each.arrow) else SIZE), each.look.ink, _anchors(each))
        for each in drawn
        if each.arrow.letter
    )


def numbered(arrow: Arrow) -> bool:
    """Whether a force stands in a crowd, with a number in place of its letter or nothing."""
    return all(isinstance(factor, Quantity) for each in arrow.letter for factor in each.factors)


def rays_of(drawn: Sequence[Drawn]) -> tuple[Ray, ...]:
    """The lines on which the arrows lie."""
    return tuple(Ray(each.tail, each.tip) for each in drawn)


def _drawn(arrow: Arrow, drawing: Drawing, frame: Frame, grounds: Sequence[Halo], arm: Armed | None) -> Drawn:
    """An arrow beside others and, last of the grounds, what it may not lie on itself; one with an arm from the joint
    stays on its line, its head off the end of that arm.
    """
    at_joint = dist(frame.spot(arrow.at), frame.spot(drawing.pivot)) <= RIM
    ways = list(_ways(arrow, drawing, frame, _look(arrow).length))
    hidden = _crowding(ways[0].tail, ways[0].tip, grounds[:-1]) > 0.1 * dist(ways[0].tail, ways[0].tip)
    asides = _ASIDES if at_joint or (hidden and not arm) else _ASIDES[:1]
    best: _Try | None = None
    dear = 6.0 if at_joint else 2.0
    for aside, way in ((aside, way) for aside in asides for way in ways):
        if best is None or way.price + abs(aside) * dear < best.price:
            each = _moved(way, aside, dear)
            each = each._replace(price=each.price + _crowding(each.tail, each.tip, grounds) + _hiding(each.tip, arm))
            best = each if best is None or each.price < best.price else best
    assert best is not None
    return _placed(arrow, best)


def _hiding(tip: Spot, arm: Armed | None) -> float:
    """What it costs that an arrowhead covers the mark of a right angle."""
    return 4.0 if arm and arm.foot and dist(tip, arm.foot) < _MARKED else 0.0


def _placed(arrow: Arrow, way: _Try) -> Drawn:
    look = _look(arrow)
    return Drawn(arrow, look, way.tail, way.tip, way.into, _arrow(way.tail, way.tip, look))


def _seen(arrow: Arrow, drawing: Drawing) -> float:
    """How long an arrow must be to reach past the arc of an angle at its point."""
    spans = [abs((each.second - each.first + 180) % 360 - 180) for each in _faced(arrow, drawing)]
    return max((opened(span) + 46.0 for span in spans), default=0.0)


def _faced(arrow: Arrow, drawing: Drawing) -> list[Opening]:
    """The angles that are measured from the very direction of an arrow."""
    return [
        each
        for each in drawing.openings
        if each.at == arrow.at
        and any(abs((side - arrow.direction + 180.0) % 360.0 - 180.0) < 0.5 for side in (each.first, each.second))
    ]


def opened(span: float) -> float:
    """The radius at which the arc of an angle of so many degrees can be read, if possible with its label between its
    sides.
    """
    chord = max(0.02, sin(radians(min(span, 180.0)) / 2))
    return min(92.0, max(34.0, 13.0 / chord, min(64.0, 24.0 / chord - 14.0)))


def _ways(arrow: Arrow, drawing: Drawing, frame: Frame, length: float) -> Iterator[_Try]:
    """The ways to draw an arrow on its line, each with its price, the plain one first; at the joint it may end at
    the rim.
    """
    spot, along = frame.spot(arrow.at), unit(arrow.direction)
    at_joint = dist(spot, frame.spot(drawing.pivot)) <= RIM
    start = RIM + 2.0 if at_joint else 0.0
    seen, hidden = max(length, _seen(arrow, drawing)), 1.5 if _faced(arrow, drawing) else 0.0
    if arrow.toward:
        seen = min(seen, max(_SHORT, 0.62 * dist(spot, frame.spot(arrow.toward))))
    for factor, price in _LENGTHS.items():
        yield _Try(price, step(spot, along, start), step(spot, along, start + seen * factor))
        if at_joint and arrow.kind not in ("weight", "load", "muscle"):
            yield _Try(
                price + 1.0 + hidden, step(spot, along, -start - length * factor), step(spot, along, -start), True
            )


def _moved(way: _Try, aside: int, dear: float) -> _Try:
    """The same arrow so many places beside its line."""
    along = toward(way.tail, way.tip)
    tail, tip = (step(spot, along, 0.0, aside * _BESIDE) for spot in (way.tail, way.tip))
    return _Try(way.price + abs(aside) * dear, tail, tip, way.into)


def _crowding(tail: Spot, tip: Spot, grounds: Sequence[Halo]) -> float:
    """How much of an arrow lies too close to what is drawn, 1.6 for every 6 pixels; where it starts does not count."""
    length, along = dist(tail, tip), toward(tail, tip)
    count = max(2, int(length / 6))
    spots = [step(tail, along, length * number / count) for number in range(2, count + 1)]
    return 1.6 * sum(any(ground.holds(spot) for ground in grounds) for spot in spots)


def _arrow(tail: Spot, tip: Spot, look: Look) -> tuple[Shape, ...]:
    along = toward(tail, tip)
    left, right = step(tip, along, -look.head, -look.half), step(tip, along, -look.head, look.half)
    pen = Pen(look.ink, look.width, look.dash)
    match look.tip:
        case "open":
            barb = Pen(look.ink, look.width, round=True)
            return Line(tail, step(tip, along, -1.0), pen), Line(left, tip, barb), Line(right, tip, barb)
        case "hollow":
            return Line(tail, step(tip, along, -look.head), pen), Patch(
                (tip, left, right), Pen(look.ink, 1.5, fill=PAPER)
            )
    return Line(tail, step(tip, along, -look.head + 2.0), pen), Patch(
        (tip, left, right), Pen(look.ink, 0.0, fill=look.ink)
    )


def _anchors(each: Drawn) -> tuple[Anchor, ...]:
    """Beyond the free end, or beside the arrow just short of it."""
    along = unit(each.arrow.direction)
    far = dist(each.tail, each.tip)
    free, away = (each.tail, (-along[0], -along[1])) if each.into else (each.tip, along)
    side = (-away[1], away[0])
    near, middle = step(free, away, -far * 0.2), step(free, away, -far * 0.42)
    return (
        Anchor(free, away),
        Anchor(near, side, 4.0),
        Anchor(near, (-side[0], -side[1]), 4.0),
        Anchor(middle, side, 10.0),
        Anchor(middle, (-side[0], -side[1]), 10.0),
    )
