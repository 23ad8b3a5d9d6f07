"""Drawings for tests: the problems of the contract by hand, awkward ones, random ones; and what of a layout touches
what.
"""

from __future__ import annotations

from dataclasses import replace
from math import atan2, cos, dist, hypot, pi, radians, sin

from hypothesis import strategies as some

from explain.equation.terms import Letter, Quantity, Terms, term
from explain.document.passage import Arm, Arrow, Bone, Drawing, Opening, Point, Span, Turn
from explain.write.figure.body import THIN
from explain.write.figure.shapes import Box, Capsule, Line, Shape, capsules, gap
from explain.write.figure.free_body import Layout

PIVOT: Point = (0.0, 0.0)


def letter(text: str) -> Terms:
    return (term(Letter(text, text)),)


def degrees(number: str) -> Terms:
    return (term(Quantity.of(number, "deg")),)


def polar(far: float, direction: float) -> Point:
    return far * cos(radians(direction)), far * sin(radians(direction))


def limb(pivot: str, long: float, direction: float, acting: str, joint: bool = True, first: float = 0.0) -> Drawing:
    """A bone with forces along it: "muscle F_B 0.04 90; ..." is kind, letter, place from the pivot, direction."""
    written = [each.split() for each in acting.split(";")]
    arrows = [
        Arrow(name, kind, letter(name), polar(float(at), direction), float(way)) for kind, name, at, way in written
    ]
    if joint:
        arrows += [
            Arrow(name, "joint", letter(name), PIVOT, first + way) for name, way in (("J_x", 0.0), ("J_y", 90.0))
        ]
    spans = tuple(Span(PIVOT, polar(float(at), direction), letter(f"d_{name[2:]}")) for _, name, at, _ in written)
    return Drawing(PIVOT, pivot, (Bone("bone", PIVOT, polar(long, direction)),), tuple(arrows), spans=spans)


def two_links() -> Drawing:
    elbow = polar(0.3, -55)
    on = {far: (elbow[0] + far, elbow[1]) for far in (0.11, 0.25, 0.31, 0.33)}
    weights = [("W_U", polar(0.13, -55)), ("W_F", on[0.11]), ("W_H", on[0.31]), ("W_T", on[0.33])]
    bones = (Bone("upper arm", PIVOT, elbow), Bone("forearm", elbow, on[0.25]))
    arrows = tuple(Arrow(name, "weight", letter(name), at, 270) for name, at in weights)
    spans = tuple(Span(elbow, at, letter(f"d_{name}")) for name, at in weights[1:])
    return Drawing(
        PIVOT,
        "shoulder",
        bones,
        arrows,
        (Turn("flexors", letter("M_S"), PIVOT, 1),),
        (Opening(PIVOT, 270, 305, degrees("35")),),
        spans,
    )


def dancer() -> Drawing:
    grip, load = (-0.06134, 0.0), (0.1, 0.0)
    arrows = (
        Arrow("abductors", "muscle", letter("F_A"), grip, 251),
        Arrow("body", "load", letter("W_B"), load, 270),
        Arrow("J_x", "joint", letter("J_x"), PIVOT, 0),
        Arrow("J_y", "joint", letter("J_y"), PIVOT, 90),
    )
    spans = (Span(PIVOT, grip, letter("d_A")), Span(PIVOT, load, letter("d_B")))
    return Drawing(PIVOT, "hip", (), arrows, openings=(Opening(grip, 180, 251, degrees("71")),), spans=spans)


def trunk() -> Drawing:
    """A muscle known by its arm and direction, along a leaning bone."""
    bare = limb("lowest disc", 0.5, 35, "weight W_T 0.29 270; load W_C 0.46 270")
    foot = polar(0.053, 125)
    at = foot[0] + 0.25 * cos(radians(35)), foot[1] + 0.25 * sin(radians(35))
    back = Arrow("erector", "muscle", letter("F_E"), at, 215, Arm(foot, letter("d_E⊥")))
    return replace(bare, arrows=(*bare.arrows, back), openings=(Opening(PIVOT, 90, 35, degrees("55")),), sense=1)


def gangway() -> Drawing:
    """A body of points, one of them pulled toward a second point."""
    grip, aim, load = (-0.035, 0.09), (-0.065, -0.025), (0.105, 0.1)
    turn = 360 - degrees_of_line(grip, aim)
    far = grip[0] * cos(radians(turn)) + grip[1] * sin(radians(turn))
    foot = grip[0] - far * cos(radians(turn)), grip[1] - far * sin(radians(turn))
    arrows = (
        Arrow("abductors", "muscle", letter("F_H"), grip, turn, Arm(foot, letter("d_H⊥"), False), aim),
        Arrow("body", "load", letter("W_B"), load, 270),
        Arrow("J_x", "joint", letter("J_x"), PIVOT, 0),
        Arrow("J_y", "joint", letter("J_y"), PIVOT, 90),
    )
    spans = (
        Span(PIVOT, (grip[0], 0.0), letter("x_H")),
        Span((grip[0], 0.0), grip, letter("y_H")),
        Span(PIVOT, (load[0], 0.0), letter("x_B")),
        Span(grip, (aim[0], grip[1]), letter("Δx_H")),
        Span((aim[0], grip[1]), aim, letter("Δy_H")),
    )
    return Drawing(PIVOT, "hip", (), arrows, spans=spans, axes=(("x", 0.0), ("y", 90.0)), sense=1)


def degrees_of_line(start: Point, end: Point) -> float:
    """How far below the level, clockwise from right, a line runs."""
    return -atan2(end[1] - start[1], end[0] - start[0]) * 180 / pi


SHANK = limb("knee", 0.4, -50, "muscle F_Q 0.065 108; weight W_S 0.23 270; load W_C 0.36 270", first=-50.0)
ROCK = limb("elbow", 0.35, 0, "muscle F_B 0.045 110; weight W_F 0.16 270; load W_R 0.35 270")
DRAWINGS = {
    "beam": limb("near trestle", 3.2, 0, "weight W_P 1.6 270; load W_M 1.1 270; force F_T 2.9 90"),
    "dancer": dancer(),
    "how-far-out": limb("elbow", 0.5, 0, "muscle F_B 0.042 90; weight W_F 0.155 270; load W_D 0.4 270", joint=False),
    "how-steep": replace(
        limb("knee", 0.42, -60, "weight W_S 0.22 270; load W_C 0.36 270", joint=False),
        turns=(Turn("quadriceps", letter("F_Q"), PIVOT, 1, "muscle"),),
        sense=1,
        openings=(Opening(PIVOT, 270, 300, letter("theta")),),
    ),
    "jug-level": replace(
        limb("elbow", 0.33, 0, "muscle F_B 0.04 90; weight W_F 0.15 270; load W_J 0.33 270"),
        axes=(("x", 0.0), ("y", 90.0)),
    ),
    "leg-raise": replace(
        SHANK,
        axes=(("along", 310.0), ("across", 40.0)),
        openings=(Opening(PIVOT, 270, 310, degrees("40")), Opening(polar(0.065, -50), 130, 108, degrees("22"))),
    ),
    "rock-oblique": replace(ROCK, openings=(Opening((0.045, 0.0), 180, 110, degrees("70")),)),
    "scale-push": limb("elbow", 0.29, 0, "muscle F_T -0.023 90; weight W_F 0.13 270; force F_S 0.29 90"),
    "shopping-us": replace(
        limb("ankle", 0.157, 0, "weight W_F 0.053 270; load W_B 0.157 270", joint=False),
        turns=(Turn("tibialis", letter("F_T"), PIVOT, 1),),
    ),
    "two-flexors": limb(
        "elbow", 0.32, 0, "muscle F_B 0.046 90; muscle F_R 0.032 90; weight W_F 0.145 270; load W_T 0.32 270"
    ),
    "two-links": two_links(),
    "trunk": trunk(),
    "gangway": gangway(),
    "ten forces": limb(
        "ankle",
        0.25,
        180,
        "weight F_1 0.02 270; load F_2 0.04 250; force F_3 0.06 100; muscle F_4 0.08 90;"
        "weight F_5 0.1 270; load F_6 0.12 80; force F_7 0.14 120; muscle F_8 0.16 10",
    ),
    "upright": replace(
        limb("hip", 0.6, 90, "muscle F_E 0.5 260; weight W_T 0.3 270; load W_L 0.6 270"),
        openings=(Opening((0.0, 0.5), 270, 260, degrees("10")),),
    ),
    "one centimetre": limb("toe", 0.01, 0, "muscle F_A 0.0002 90; load W 0.01 270"),
}

number = some.floats(-1, 1).map(lambda value: round(value, 3))
points = some.tuples(number, number)
ways = some.sampled_from([0.0, 90.0, 180.0, 270.0]) | some.floats(-360, 720)
kinds = some.sampled_from(["muscle", "weight", "load", "force", "joint"])
arms = some.none() | some.builds(Arm, points, some.just(letter("d_A⊥")), some.booleans())
arrows = some.builds(Arrow, some.just("f"), kinds, some.just(letter("F_A")), points, ways, arms, some.none() | points)
senses = some.sampled_from([1, -1])
drawings = some.builds(
    Drawing,
    points,
    some.sampled_from(["elbow", "", "the joint that holds all of it up"]),
    some.lists(some.builds(Bone, some.just("b"), points, points), max_size=2).map(tuple),
    some.lists(arrows, max_size=8).map(tuple),
    some.lists(
        some.builds(
            Turn, some.just("t"), some.just(letter("M")), points, senses, some.sampled_from(["couple", "muscle"])
        ),
        max_size=2,
    ).map(tuple),
    some.lists(some.builds(Opening, points, ways, ways, some.just(degrees("25"))), max_size=2).map(tuple),
    some.lists(some.builds(Span, points, points, some.just(letter("d_C"))), max_size=4).map(tuple),
    some.lists(points, max_size=2).map(tuple),
    some.sampled_from([(), (("x", 0.0), ("y", 90.0))]),
    some.sampled_from([0, 1, -1]),
)


def dashed(shapes: tuple[Shape, ...]) -> list[Line]:
    return [shape for shape in shapes if isinstance(shape, Line) and shape.pen == THIN]


def reach(stroke: Capsule, box: Box) -> float:
    """How far a stroke stays from a box, looked at every half pixel: none of the placement's own arithmetic."""
    aside = max(
        box.left - max(stroke.ax, stroke.bx),
        min(stroke.ax, stroke.bx) - box.right,
        box.top - max(stroke.ay, stroke.by),
        min(stroke.ay, stroke.by) - box.bottom,
    )
    if aside > stroke.half:  # wholly to one side: farther away than it is wide
        return aside - stroke.half
    count = max(1, int(dist(stroke[:2], stroke[2:4]) * 2))
    run, fall = stroke.bx - stroke.ax, stroke.by - stroke.ay
    spots = [(stroke.ax + run * i / count, stroke.ay + fall * i / count) for i in range(count + 1)]
    return (
        min(hypot(max(box.left - x, 0, x - box.right), max(box.top - y, 0, y - box.bottom)) for x, y in spots)
        - stroke.half
    )


def touches(laid: Layout) -> list[str]:
    """Every label that lies on another one or on a stroke, or reaches out of the view."""
    boxes = [label.box for label in laid.labels]
    left, top, right, bottom = laid.view
    return (
        [
            f"labels {a} {b}"
            for i, a in enumerate(boxes)
            for b in boxes[i + 1 :]
            if min(a.right, b.right) > max(a.left, b.left) and min(a.bottom, b.bottom) > max(a.top, b.top)
        ]
        + [f"stroke {stroke} {box}" for stroke in capsules(laid.shapes) for box in boxes if reach(stroke, box) < 0]
        + [f"outside {b}" for b in boxes if b.left < left or b.right > right or b.top < top or b.bottom > bottom]
    )


def mark_touches(laid: Layout) -> list[str]:
    """Every stroke that the mark of what counts as positive lies on."""
    mark, rest = capsules(laid.mark), capsules(each for each in laid.shapes if each not in laid.mark)
    near = [(piece, other) for piece in mark for other in rest if _may_meet(piece, other)]
    return [
        f"mark {piece} {other}"
        for piece, other in near
        for share in range(5)
        if gap((piece.ax + (piece.bx - piece.ax) * share / 4, piece.ay + (piece.by - piece.ay) * share / 4), other)
        < piece.half
    ]


def _may_meet(one: Capsule, other: Capsule) -> bool:
    """Whether the boxes around two strokes meet: where they do not, the strokes are apart."""
    reach_of = one.half + other.half
    return (
        max(min(one.ax, one.bx), min(other.ax, other.bx)) - min(max(one.ax, one.bx), max(other.ax, other.bx))
        <= reach_of
        and max(min(one.ay, one.by), min(other.ay, other.by)) - min(max(one.ay, one.by), max(other.ay, other.by))
        <= reach_of
    )
