"""Where the lines of a free-body diagram run: distances, lever arms, outlines, arcs, and the labels of angles."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from math import atan2, cos, dist, hypot, pi, radians, sin

import pytest
from drawings import DRAWINGS, PIVOT, ROCK, SHANK, dancer, dashed, gangway, letter, limb, reach, trunk

from explain.document.passage import Arm, Arrow, Drawing, Turn
from explain.write.figure.body import body
from explain.write.figure.forces import forces, rays_of
from explain.write.figure.frame import framed
from explain.write.figure.outlines import letters
from explain.write.figure.rows import Row, rows
from explain.write.figure.shapes import Arc, Capsule, Line, Patch, capsules
from explain.write.figure.free_body import layout
from explain.write.figure.cells import Ground
from explain.write.figure.labels import LEADER


def stacked(drawing: Drawing) -> Sequence[Row]:
    """The rows of a drawing's distances; below the body is positive."""
    frame = framed(drawing, 420, 350)
    bones = capsules(body(drawing, frame).under)
    placed = forces(drawing, frame, bones, ())
    tips = [piece for each in placed for piece in each.room]
    return rows(drawing, frame, Ground([*bones, *tips]), rays_of(placed), tips)


def degrees_counter_clockwise(right: float, up: float) -> float:
    return atan2(up, right) * 180 / pi


def test_short_distances_lie_nearer_to_the_body() -> None:
    asides = [abs(row.aside) for row in sorted(stacked(SHANK), key=lambda row: row.of.length)]
    assert all(near + 20 <= far for near, far in pairwise(asides)) and len(asides) == 3


def test_distances_are_drawn_on_the_side_without_forces() -> None:
    hanging, lifting = (stacked(limb("p", 0.3, 0, f"force F_A 0.3 {way}", joint=False)) for way in (270, 90))
    assert ([row.aside for row in hanging], [row.aside for row in lifting]) == ([-26.0], [26.0])


def test_a_distance_with_forces_along_it_lies_beyond_their_tips() -> None:
    both = stacked(
        limb(
            "p",
            0.3,
            0,
            "weight W_A 0.1 270; load W_B 0.2 270; force F_C 0.1 90; force F_D 0.2 90; force F_E 0.25 90",
            joint=False,
        )
    )
    assert [row.aside > 70 for row in both] == [True] * 5


def test_a_tie_leaves_a_gap_where_a_force_crosses_it() -> None:
    """The deltoid leans back over the joint, and the distances lie above it."""
    over = limb("shoulder", 0.6, 0, "muscle F_D 0.12 160; weight W_A 0.2 270; load W_F 0.5 270", joint=False)
    frame = framed(over, 400, 280)
    pull = next(each for each in forces(over, frame, (), ()) if each.arrow.kind == "muscle")
    ties = [
        shape
        for shape in layout(over).shapes
        if isinstance(shape, Line) and shape.pen.width == 0.7 and abs(shape.start[0]) < 0.1 and shape.end[1] < -9
    ]
    at = pull.tail[1] + (pull.tip[1] - pull.tail[1]) * pull.tail[0] / (pull.tail[0] - pull.tip[0])
    assert ties and [line for line in ties if (line.start[1] - at - 3) * (line.end[1] - at + 3) <= 0] == []


def test_a_lever_arm_ends_square_on_the_prolonged_line_of_action() -> None:
    (line,) = dashed(layout(trunk()).shapes)
    (x, y), (right, down) = line.end, (line.start[0] - line.end[0], line.start[1] - line.end[1])
    assert (round(x * right + y * down, 6), round(hypot(x, y)) >= 34, hypot(right, down) > 3) == (0.0, True, True)


def test_an_arm_inside_the_joint_cannot_be_drawn() -> None:
    grip = Arrow("biceps", "muscle", letter("F_B"), (0.046, 0.0), 178, Arm((0.0, 0.0016), letter("d_B⊥"), False))
    with_arm = replace(ROCK, arrows=(*ROCK.arrows[1:], grip))
    assert [len(layout(each).labels) for each in (with_arm, ROCK)] == [9, 9]


def test_a_line_of_pull_is_thought_on_to_the_point_it_aims_at() -> None:
    frame = framed(gangway(), 400, 280)
    force = gangway().arrows[0]
    assert force.toward is not None
    aim, along = frame.spot(force.toward), radians(force.direction)
    start = frame.spot(force.at)
    assert [round(aim[0] - start[0], 6), round(aim[1] - start[1], 6)] == [
        round(cos(along) * dist(aim, start), 6),
        round(-sin(along) * dist(aim, start), 6),
    ]


def test_points_on_one_line_without_bones_make_one_bar() -> None:
    bars = body(dancer(), framed(dancer(), 420, 350)).rays
    assert [(round(bar.start[0]), round(bar.end[0])) for bar in bars] == [(-160, 260)]


def test_other_points_without_bones_lie_inside_one_outline() -> None:
    (outline,) = body(gangway(), framed(gangway(), 420, 350)).under
    assert isinstance(outline, Patch)
    spots = [framed(gangway(), 420, 350).spot(each.at) for each in gangway().arrows]
    assert [min(dist(spot, corner) for corner in outline.corners) >= 17.9 for spot in spots] == [True] * 4


def test_a_muscle_as_an_arc_is_told_from_a_couple_without_colour() -> None:
    pens = []
    for kind in ("muscle", "couple"):
        (arc,) = (
            shape
            for shape in layout(Drawing(PIVOT, "p", turns=(Turn("t", letter("M"), PIVOT, 1, kind),))).shapes
            if isinstance(shape, Arc)
        )
        pens.append(arc.pen.width)
    assert pens == [3.2, 1.8]


@pytest.mark.parametrize("name", ["leg-raise", "rock-oblique", "trunk", "how-steep"])
def test_the_label_of_an_angle_stands_inside_it_or_has_a_leader(name: str) -> None:
    laid = layout(DRAWINGS[name])
    frame = framed(DRAWINGS[name], 400, 280)
    for opening in DRAWINGS[name].openings:
        outline = letters(opening.label, 16.0)
        box = next(label.box for label in laid.labels if label.outline == outline)
        middle = (box.left + box.right) / 2, (box.top + box.bottom) / 2
        spot = frame.spot(opening.at)
        turn = degrees_counter_clockwise(middle[0] - spot[0], spot[1] - middle[1])
        inside = 0 <= (turn - min(opening.first, opening.second)) % 360 <= abs(opening.second - opening.first)
        led = any(
            isinstance(shape, Line) and shape.pen == LEADER and reach(Capsule(*shape.end, *shape.end, 0), box) < 4
            for shape in laid.shapes
        )
        assert inside or led
