"""Angles as arcs between two lines, couples as arc arrows. Knows where they open and which way they turn, no sizes."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate
from math import degrees, dist, inf, radians
from typing import NamedTuple

from ...document.passage import Drawing, Opening, Turn
from .body import INK, RIM, THIN, Ray
from .forces import LOOKS, SIZE, Look, opened
from .frame import Frame
from .cells import Halo
from .outlines import letters
from .shapes import Arc, Capsule, Line, Patch, Pen, Shape, Spot, capsules, on_arc, step, toward, unit
from .places import Anchor, Sector, Wanted

_ARC = Pen(INK, 1.1)
_COUPLE = Look("#5a1d74", 1.8, "", 0.0, 12.0, 5.2, "open")
_SWEEPS = (250, 205, 165)  # degrees of a couple's arc, the best first
_NEXT = 15.0  # pixels from one arc to the next around the same point
_BARE = 7.0  # pixels at either end of an arc
_PAST = 26.0  # pixels that a side goes on behind its arc
_SPACE, _TURN = 5.0, 5  # pixels and degrees from one look along an arc to the next
_CLOSE = 3.0  # so near to a stroke an arc meets it


class Angled(NamedTuple):
    shapes: tuple[Shape, ...]
    wanted: tuple[Wanted, ...]


def openings(drawing: Drawing, frame: Frame, rays: Sequence[Ray], room: Sequence[Capsule]) -> Angled:
    """Every angle: its arc, its label, and a thin dashed line for each of its sides that is not drawn yet."""
    shapes: list[Shape] = []
    wanted, sides, ground = (
        list[Wanted](),
        dict[tuple[Spot, float], float](),
        Halo(_CLOSE, room if drawing.openings else ()),
    )
    for opening in drawing.openings:
        arc = _arc(opening, frame, ground)
        shapes.append(arc)
        ground.draw(*capsules((arc,)))
        wanted.append(
            Wanted(
                letters(opening.label, SIZE),
                INK,
                _beside(arc),
                40.0,
                Sector(arc.centre, arc.radius, arc.first, arc.sweep),
            )
        )
        for direction in (opening.first, opening.second):
            key = arc.centre, round(direction % 360.0, 3) % 360.0
            sides[key] = max(sides.get(key, 0.0), arc.radius + _PAST)
    pivot = frame.spot(drawing.pivot)
    for (spot, direction), far in sides.items():
        along, start = unit(direction), RIM if dist(spot, pivot) < RIM else 0.0
        drawn = max((_reach(ray, spot, along) for ray in rays), default=0.0)
        if drawn < far - _PAST:
            shapes.append(Line(step(spot, along, max(start, drawn)), step(spot, along, far), THIN))
    return Angled(tuple(shapes), tuple(wanted))


def turns(drawing: Drawing, frame: Frame, bones: Sequence[Capsule], room: Sequence[Capsule]) -> Angled:
    """Every couple, and force known by its arm alone: an arc arrow about its point, its gap as far as can be where
    the bones are.
    """
    shapes, wanted, ground = list[Shape](), list[Wanted](), Halo(_CLOSE, [*bones, *room] if drawing.turns else ())
    for turn in drawing.turns:
        look = LOOKS.get(turn.kind, _COUPLE)
        arc = _arc_arrow(turn, frame.spot(turn.at), ground, Pen(look.ink, look.width))
        shapes += [arc, *_head(arc, look)]
        ground.draw(*capsules((arc, *_head(arc, look))))
        spots = [
            (on_arc(arc, share), price) for share, price in ((0.5, 0.0), (0.2, 2.0), (0.8, 2.0), (1.0, 4.0), (0.0, 4.0))
        ]
        anchors = tuple(Anchor(spot, toward(arc.centre, spot), price) for spot, price in spots)
        wanted.append(Wanted(letters(turn.letter, SIZE), look.ink, anchors))
    return Angled(tuple(shapes), tuple(wanted))


def _arc(opening: Opening, frame: Frame, ground: Halo) -> Arc:
    """The shorter way from the first line to the second, at the first radius where it meets nothing on its way."""
    sweep = (opening.second - opening.first + 180.0) % 360.0 - 180.0
    least, spot = opened(abs(sweep)), frame.spot(opening.at)
    arcs = [Arc(spot, least + more * _NEXT, opening.first, sweep, _ARC) for more in range(5)]
    return _freest(arcs, ground)


def _arc_arrow(turn: Turn, spot: Spot, ground: Halo, pen: Pen) -> Arc:
    """The arc that comes close to least, small and long ones first; each circle is looked at once, all round."""
    sense = 1 if turn.sense > 0 else -1
    priced: list[tuple[float, Arc]] = []
    for radius in (27.0, 27.0 + _NEXT):
        circle = Arc(spot, radius, 0.0, 360.0, pen)
        held = [ground.holds(on_arc(circle, turn / 360.0)) for turn in range(0, 360, _TURN)]
        counted = [0, *accumulate(held * 2)]
        dear = radians(_TURN) * radius / _SPACE
        for first in range(0, 360, 30):
            for sweep in _SWEEPS:
                start = (first if sense > 0 else first - sweep) % 360 // _TURN
                met = counted[start + sweep // _TURN + 1] - counted[start]
                price = radius * 0.1 - sweep * 0.012 + dear * met
                priced.append((price, Arc(spot, radius, float(first), float(sense * sweep), pen)))
    return min(priced, key=lambda each: each[0])[1]


def _freest(arcs: Sequence[Arc], ground: Halo) -> Arc:
    """The arc that meets least on its way; of equal ones the first."""
    best, least = arcs[0], inf
    for arc in arcs:
        met = _met(arc, ground, least)
        if met < least:
            best, least = arc, met
    return best


def _met(arc: Arc, ground: Halo, enough: float) -> int:
    """How many of the spots along an arc come close to something, counted until it is enough; a few pixels at either
    end do not count.
    """
    length = abs(arc.sweep) / 57.3 * arc.radius
    count, met = max(2, int(length / _SPACE)), 0
    for number in range(count + 1):
        if _BARE <= length * number / count <= length - _BARE and ground.holds(on_arc(arc, number / count)):
            met += 1
            if met >= enough:
                break
    return met


def _reach(ray: Ray, spot: Spot, along: Spot) -> float:
    """How far a drawn line goes in a direction from the spot that it passes through or begins at; 0 for others."""
    sense = 1.0 if _dot(ray.along, along) > 0 else -1.0
    if abs(_dot(ray.along, along)) < 0.99996 or abs(_dot((-along[1], along[0]), _from(spot, ray.start))) > 2.0:
        return 0.0
    start, end = sorted((_dot(along, _from(spot, ray.start)), _dot(along, _from(spot, ray.start)) + sense * ray.length))
    return end if start < RIM + 4.0 else 0.0


def _dot(a: Spot, b: Spot) -> float:
    return a[0] * b[0] + a[1] * b[1]


def _from(start: Spot, end: Spot) -> Spot:
    return end[0] - start[0], end[1] - start[1]


def _beside(arc: Arc) -> tuple[Anchor, ...]:
    """Outside the middle of the arc, or inside it where it is wide."""
    anchors = []
    for share, price in ((0.5, 0.0), (0.3, 2.0), (0.7, 2.0)):
        spot = on_arc(arc, share)
        away = toward(arc.centre, spot)
        anchors += [Anchor(spot, away, price), Anchor(spot, (-away[0], -away[1]), price + 5.0)]
    return tuple(anchors)


def _head(arc: Arc, look: Look) -> tuple[Shape, ...]:
    """The arrowhead at the end of an arc."""
    sense = 1.0 if arc.sweep > 0 else -1.0
    lag = degrees(look.head / arc.radius)
    tip = step(arc.centre, unit(arc.first + arc.sweep + sense * lag * 0.6), arc.radius)
    foot = step(arc.centre, unit(arc.first + arc.sweep - sense * lag * 0.4), arc.radius)
    along = toward(foot, tip)
    left, right = step(foot, along, 0.0, -look.half), step(foot, along, 0.0, look.half)
    if look.tip == "full":
        return (Patch((tip, left, right), Pen(look.ink, 0.0, fill=look.ink)),)
    barb = Pen(look.ink, look.width, round=True)
    middle = on_arc(arc, 1.0)
    return Line(middle, tip, barb), Line(left, tip, barb), Line(right, tip, barb)
