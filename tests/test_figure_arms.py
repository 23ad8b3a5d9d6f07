"""Lever arms, angles and distances of a diagram, measured in its layout: every force that has an arm shows it square to
its line, or the caption says that there was no room.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from itertools import combinations, pairwise
from math import cos, dist, hypot, radians, sin

import pytest
from drawings import PIVOT, dashed, letter, limb, polar, touches
from worked import CONTRACT, SAMPLES

from explain import Walkthrough, work
from explain.document.passage import Arm, Drawing, Opening, Text, Turn
from explain.write.figure.arms import ARM
from explain.write.figure.forces import LOOKS
from explain.write.figure.frame import framed
from explain.write.figure.free_body import Layout, layout
from explain.write.figure.outlines import letters
from explain.write.figure.shapes import Arc, Line, Spot, gap, capsules, on_arc

FILES = {path.stem: path for path in (*SAMPLES, *CONTRACT)}


@lru_cache(maxsize=64)
def worked(name: str) -> Walkthrough:
    return work(FILES[name])


@lru_cache(maxsize=64)
def laid_out(name: str) -> Layout:
    return layout(worked(name).picture().drawing)


def caption(name: str) -> str:
    return "".join(each.text for each in worked(name).picture().caption if isinstance(each, Text))


def arms_of(laid: Layout) -> list[Line]:
    return [shape for shape in laid.shapes if isinstance(shape, Line) and shape.pen == ARM]


def armed(direction: float, *forces: tuple[float, float], sort: str = "load") -> Drawing:
    """A bone with forces at places on it, each with its direction and its lever arm."""
    bare = limb("p", 0.4, direction, ";".join(f"{sort} W_{n} {far} {way}" for n, (far, way) in enumerate(forces)))
    arrows = []
    for each in bare.arrows:
        if each.kind == "joint":
            arrows.append(each)
            continue
        run, rise = cos(radians(each.direction)), sin(radians(each.direction))
        along = each.at[0] * run + each.at[1] * rise
        foot = each.at[0] - along * run, each.at[1] - along * rise
        arrows.append(replace(each, arm=Arm(foot, letter(f"d_{each.name}⊥"), needed=False)))
    return replace(bare, arrows=tuple(arrows), spans=())


def off(spot: Spot, start: Spot, direction: float) -> float:
    """How far a spot of the page lies beside a line through another one."""
    along = cos(radians(direction)), -sin(radians(direction))
    return abs((spot[0] - start[0]) * along[1] - (spot[1] - start[1]) * along[0])


# ---------------------------------------------------------------------- which arms there are
@pytest.mark.parametrize("name", FILES)
def test_every_force_that_turns_shows_its_arm_or_is_told_to_have_no_room(name: str) -> None:
    """The arm is reckoned here from place and direction; a distance as long and as directed shows it as well."""
    drawing = worked(name).picture().drawing
    silent = []
    for arrow in drawing.arrows:
        run, rise = cos(radians(arrow.direction)), sin(radians(arrow.direction))
        far = arrow.at[0] * rise - arrow.at[1] * run
        shown = any(
            abs((span.end[0] - span.start[0]) * run + (span.end[1] - span.start[1]) * rise) < 1e-6
            and abs((span.end[0] - span.start[0]) * rise - (span.end[1] - span.start[1]) * run - far) < 1e-6
            for span in drawing.spans
        )
        if abs(far) > 1e-6 and not arrow.arm and not shown and arrow.name not in caption(name).partition("Left out")[2]:
            silent.append(arrow.name)
    assert silent == []


@pytest.mark.parametrize("name", FILES)
def test_every_arm_of_a_drawing_is_on_the_sheet_with_its_letter(name: str) -> None:
    drawing, laid = worked(name).picture().drawing, laid_out(name)
    wanted = [letters(each.arm.label, 16.0) for each in drawing.arrows if each.arm]
    written = [label.outline for label in laid.labels]
    assert [written.count(each) for each in wanted] == [1] * len(wanted)


def test_arms_of_parallel_muscles_close_to_the_joint_are_left_out_and_named() -> None:
    said = caption("16-slipway-stretch").partition("Left out for want of room: ")[2]
    assert said == "the lever arms of the inner hamstrings and the outer hamstrings."


def test_a_row_of_very_many_forces_has_no_arms() -> None:
    loads = [{"name": f"jar {n}", "mass": "1.5 kg", "at": f"{2 * n} cm"} for n in range(1, 16)]
    crowded = work(
        {
            "title": "Jars",
            "pivot": {"name": "elbow"},
            "segment": [{"name": "forearm", "direction": "20 deg above right", "mass": "2 kg", "com": "15 cm"}],
            "muscle": [{"name": "biceps", "at": "4.0 cm", "direction": "70 deg from back toward up"}],
            "load": loads,
        }
    ).picture()
    said = "".join(each.text for each in crowded.caption if isinstance(each, Text))
    assert ([each.name for each in crowded.drawing.arrows if each.arm], said.partition("room: ")[2]) == (
        ["biceps"],
        "the lever arms of 16 forces.",
    )


def test_a_distance_that_is_the_arm_already_is_not_drawn_twice() -> None:
    assert [each.name for each in worked("01-treacle-tin").picture().drawing.arrows if each.arm] == []


@pytest.mark.parametrize("name", FILES)
def test_a_caption_says_that_arrows_are_not_to_scale(name: str) -> None:
    assert ("Arrows are not to scale." in caption(name)) != ("Neither arrows nor" in caption(name))


# ---------------------------------------------------------------------- where arms run
@pytest.mark.parametrize("direction", [-60.0, -30.0, 20.0, 50.0])
def test_the_arm_of_a_lone_weight_runs_level_from_the_joint_to_its_line(direction: float) -> None:
    drawing = armed(direction, (0.3, 270.0))
    (line,) = arms_of(layout(drawing))
    grip = polar(0.3, direction)
    scale = framed(drawing, 400, 280).scale
    assert (round(line.start[1], 6), round(line.end[1], 6), round(line.end[0] - grip[0] * scale, 6)) == (0.0, 0.0, 0.0)


def test_the_arm_of_an_oblique_pull_ends_square_on_its_line() -> None:
    drawing = armed(0.0, (0.2, 130.0), sort="muscle")
    (line,) = arms_of(layout(drawing))
    grip = framed(drawing, 400, 280).spot((0.2, 0.0))
    far = off((0.0, 0.0), grip, 130.0)
    assert (round(off(line.end, grip, 130.0), 6), round(hypot(*line.end) - far, 6)) == (0.0, 0.0)


@pytest.mark.parametrize("direction", [-45.0, 35.0, 160.0])
def test_arms_of_parallel_weights_stand_under_each_other_each_as_long_as_it_is(direction: float) -> None:
    drawing = armed(direction, (0.15, 270.0), (0.25, 270.0), (0.4, 270.0))
    laid = layout(drawing)
    lines = [(abs(x), round(y, 3)) for line in arms_of(laid) for x, y in (line.start, line.end)]
    heights = sorted({y for _, y in lines})
    reached = sorted(max(x for x, height in lines if height == y) for y in heights)
    assert [round(each / reached[-1], 3) for each in reached] == [0.375, 0.625, 1.0]
    assert (touches(laid), [high - low >= 20.0 for low, high in pairwise(heights)]) == ([], [True, True])


def test_the_line_of_a_weight_is_thought_on_to_its_arm() -> None:
    laid = layout(armed(-45.0, (0.2, 270.0), (0.4, 270.0)))
    upright = [line for line in dashed(laid.shapes) if abs(line.start[0] - line.end[0]) < 1e-6]
    ends = {(round(line.end[0]), round(line.end[1])) for line in upright}
    feet = {(round(x), round(y)) for line in arms_of(laid) for x, y in (line.start, line.end)}
    assert (len(ends), ends <= feet) == (2, True)


def test_a_right_angle_stands_at_the_end_of_every_arm() -> None:
    for drawing in (armed(-45.0, (0.2, 270.0), (0.4, 270.0)), armed(0.0, (0.2, 130.0), sort="muscle")):
        laid = layout(drawing)
        marks = [each for each in laid.shapes if isinstance(each, Line) and each.pen.width == 0.9]
        corners = [line.end for line in marks]
        assert len(marks) == 2 * sum(each.arm is not None for each in drawing.arrows)
        feet = {(round(x, 3), round(y, 3)) for line in arms_of(laid) for x, y in (line.start, line.end)}
        near = [min(dist(corner, foot) for foot in feet) for corner in corners]
        assert [round(each, 2) for each in near] == [11.31] * len(near)  # the diagonal of a square of 8 pixels


def test_a_short_arm_keeps_out_of_the_way_of_a_couple_about_the_joint() -> None:
    drawing = armed(-80.0, (0.3, 270.0))
    turned = replace(drawing, turns=(Turn("t", letter("M"), PIVOT, 1),))
    assert [round(arms_of(layout(each))[0].start[1]) == 0 for each in (drawing, turned)] == [True, False]


def test_no_arrowhead_lies_on_the_right_angle_of_its_own_arm() -> None:
    """A push whose plain length would end just there."""
    drawing = armed(75.0, (0.4, 180.0), sort="force")
    assert abs(framed(drawing, 400, 280).spot(polar(0.4, 75.0))[0] - LOOKS["force"].length) < 6.0
    laid = layout(drawing)
    (line,) = arms_of(laid)
    strokes = [each for each in laid.shapes if isinstance(each, Line) and each.pen.ink == LOOKS["force"].ink]
    assert min(dist(end, line.end) for each in strokes for end in (each.start, each.end)) >= 12.0


# ---------------------------------------------------------------------- angles
def sides(laid: Layout, arc: Arc) -> Iterator[float]:
    """How far either end of an arc is from the nearest other stroke or the axis of a bone."""
    rest = capsules(each for each in laid.shapes if each is not arc and each not in laid.mark)
    for share in (0.0, 1.0):
        yield min(gap(on_arc(arc, share), piece) for piece in rest)


@pytest.mark.parametrize("name", [name for name in FILES if worked(name).picture().drawing.openings])
def test_the_arc_of_an_angle_touches_both_its_lines(name: str) -> None:
    laid = laid_out(name)
    arcs = [each for each in laid.shapes if isinstance(each, Arc) and each.pen.width == 1.1]
    assert len(arcs) == len(worked(name).picture().drawing.openings)
    assert [round(max(sides(laid, arc)), 1) <= 3.5 for arc in arcs] == [True] * len(arcs)  # a dash may begin so far on


def test_a_side_shorter_than_its_arc_is_thought_on_to_it() -> None:
    bare = limb("p", 0.4, 0, "muscle F_B 0.05 168;load W 0.4 270", joint=False)
    laid = layout(replace(bare, openings=(Opening((0.05, 0.0), 180.0, 168.0, letter("α")),)))
    (arc,) = (each for each in laid.shapes if isinstance(each, Arc) and each.pen.width == 1.1)
    on = [line for line in dashed(laid.shapes) if abs(line.start[1]) < 1e-6 and abs(line.end[1]) < 1e-6]
    assert [min(line.start[0], line.end[0]) < arc.centre[0] - arc.radius for line in on] == [True]


# ---------------------------------------------------------------------- distances
@pytest.mark.parametrize("name", FILES)
def test_lines_of_distances_keep_apart(name: str) -> None:
    """Parallel dimension lines and arms that run beside each other are at least 11 pixels apart."""
    lines = [
        each
        for each in laid_out(name).shapes
        if isinstance(each, Line) and (each.pen == ARM or (each.pen.width == 1.0 and not each.pen.dash))
    ]
    assert [(one, other) for one, other in combinations(lines, 2) if _beside(one, other) < 11.0] == []


def _beside(one: Line, other: Line) -> float:
    """How far apart two parallel lines are where they run beside each other; far for any others."""
    length = dist(one.start, one.end)
    run, fall = (one.end[0] - one.start[0]) / length, (one.end[1] - one.start[1]) / length
    spots = [(x - one.start[0], y - one.start[1]) for x, y in (other.start, other.end)]
    along = sorted(x * run + y * fall for x, y in spots)
    across = [x * fall - y * run for x, y in spots]
    if abs(across[0] - across[1]) > 0.5 or along[1] <= 1.0 or along[0] >= length - 1.0 or abs(across[0]) < 0.5:
        return 99.0
    return abs(across[0])


@pytest.mark.parametrize("direction", [20.0, 40.0, 60.0])
def test_the_letter_of_a_distance_along_a_slanted_bone_stands_in_its_line(direction: float) -> None:
    laid = layout(limb("p", 0.4, direction, "load W_C 0.4 270", joint=False))
    outline = letters(letter("d_C"), 16.0)
    box = next(label.box for label in laid.labels if label.outline == outline)
    middle = (box.left + box.right) / 2, (box.top + box.bottom) / 2
    lines = [each for each in laid.shapes if isinstance(each, Line) and each.pen.width == 1.0 and not each.pen.dash]
    assert min(off(middle, each.start, direction) for each in lines) < 0.5
