"""What a free-body diagram shows, that no label of it touches anything, and that it stands alone."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from dataclasses import replace
from itertools import pairwise
from math import dist, hypot
from xml.etree import ElementTree

import pytest
from drawings import (
    DRAWINGS,
    PIVOT,
    ROCK,
    SHANK,
    dashed,
    degrees,
    drawings,
    letter,
    limb,
    mark_touches,
    polar,
    reach,
    touches,
)
from hypothesis import given, settings

from explain.document.passage import Arrow, Bone, Drawing, Opening, Picture, Turn
from explain.write.figure.body import THIN
from explain.write.figure.cells import Ground
from explain.write.figure.forces import forces
from explain.write.figure.frame import framed
from explain.write.figure.outlines import Outline, letters
from explain.write.figure.shapes import Arc, Capsule, Line, capsules
from explain.write.figure.free_body import figure, layout, parted
from explain.write.figure.labels import place
from explain.write.figure.places import Anchor, Wanted

SVG = "{http://www.w3.org/2000/svg}"


def drawn(drawing: Drawing, ident: str = "figure") -> ElementTree.Element:
    return ElementTree.fromstring(figure(Picture(drawing, "title", "description"), ident))


@pytest.mark.parametrize("name", DRAWINGS)
def test_no_label_touches_anything(name: str) -> None:
    laid = layout(DRAWINGS[name])
    assert touches(laid) + mark_touches(laid) == []


@settings(max_examples=15, deadline=None, derandomize=True)
@given(drawings)
def test_no_label_touches_anything_whatever_is_drawn(drawing: Drawing) -> None:
    laid = layout(drawing)
    assert touches(laid) + mark_touches(laid) == []


@pytest.mark.parametrize("name", DRAWINGS)
def test_every_letter_and_the_name_of_the_joint_are_written_once(name: str) -> None:
    drawing = DRAWINGS[name]
    arms = sum(each.arm is not None for each in drawing.arrows)
    written = (
        len(drawing.arrows)
        + arms
        + len(drawing.turns)
        + len(drawing.openings)
        + len(drawing.spans)
        + len(drawing.axes)
        + 1
    )
    assert len(layout(drawing).labels) == written


@pytest.mark.parametrize("name", DRAWINGS)
def test_a_figure_is_no_larger_than_a_page_has_room_for(name: str) -> None:
    svg = drawn(DRAWINGS[name])
    assert float(svg.attrib["width"]) <= 560 and float(svg.attrib["height"]) <= 440


def test_a_figure_with_very_many_distances_is_shrunk_as_a_whole() -> None:
    many = limb("p", 1.0, 0, ";".join(f"force W_{at} {at / 24} {240 + 3 * at}" for at in range(1, 21)), joint=False)
    svg = drawn(many)
    width, height = float(svg.attrib["width"]), float(svg.attrib["height"])
    across, down = (float(each) for each in svg.attrib["viewBox"].split()[2:])
    assert (height <= 440, down > 440, round(width / across, 2)) == (True, True, round(height / down, 2))


def test_a_body_with_long_arrows_at_both_ends_is_drawn_smaller_and_its_letters_are_not() -> None:
    upright = limb("hip", 0.6, 90, "muscle F_E 0.6 90; load W_L 0 270", joint=False)
    assert (layout(upright).view.height <= 440.5, layout(upright).view.height > 390) == (True, True)


@pytest.mark.parametrize("hostile", ["<script>alert(1)</script>", "a & b", "\"'><b>", "]]>", "{{7*7}}"])
def test_title_and_description_come_through_as_they_are(hostile: str) -> None:
    svg = ElementTree.fromstring(figure(Picture(replace(ROCK, pivot_name=hostile), hostile, hostile)))
    assert [svg.findtext(f"{SVG}title"), svg.findtext(f"{SVG}desc")] == [hostile, hostile]


def test_what_no_document_may_hold_is_replaced() -> None:
    svg = ElementTree.fromstring(figure(Picture(ROCK, "a\x00b\ud800", "")))
    assert svg.findtext(f"{SVG}title") == "a\ufffdb\ufffd"


def test_a_figure_holds_shapes_and_words_about_itself_alone() -> None:
    svg = drawn(DRAWINGS["leg-raise"])
    assert {each.tag.removeprefix(SVG) for each in svg.iter()} == {
        "svg",
        "title",
        "desc",
        "g",
        "rect",
        "line",
        "circle",
        "path",
    }


def test_nothing_is_fetched_from_anywhere() -> None:
    text = figure(Picture(DRAWINGS["leg-raise"], "title", "description"))
    assert [word for word in ("href", "url(", "@import", "font-family", "style=", "onload") if word in text] == []


def test_two_figures_of_a_page_share_no_identifier() -> None:
    names = [
        each.attrib["id"] for ident in ("one", "two 2") for each in drawn(ROCK, ident).iter() if "id" in each.attrib
    ]
    assert names == ["one-title", "one-desc", "two-2-title", "two-2-desc"]


def test_the_picture_is_named_by_its_title_and_description() -> None:
    svg = drawn(ROCK, "rock")
    assert (svg.attrib["role"], svg.attrib["aria-labelledby"]) == ("img", "rock-title rock-desc")


def test_the_same_drawing_gives_the_same_bytes_in_every_process() -> None:
    program = (
        "from explain.document.passage import Picture\nfrom explain.write.figure.free_body import figure\nfrom "
        "drawings import DRAWINGS\n"
        "for each in DRAWINGS.values():\n    print(figure(Picture(each, 't', 'd')))"
    )
    surroundings = os.environ | {"PYTHONPATH": os.pathsep.join(sys.path)}
    one, other = (
        subprocess.run(
            [sys.executable, "-c", program],
            capture_output=True,
            check=True,
            env=surroundings | {"PYTHONHASHSEED": seed},
        ).stdout
        for seed in ("1", "2")
    )
    assert one == other != b""


def test_a_weight_starts_at_its_point_and_points_straight_down() -> None:
    frame = framed(ROCK, 420, 350)
    weight = next(each for each in forces(ROCK, frame, (), ()) if each.arrow.kind == "weight")
    aside, down = weight.tip[0] - weight.tail[0], weight.tip[1] - weight.tail[1]
    assert (weight.tail, round(aside, 6), down > 40) == (frame.spot((0.16, 0.0)), 0.0, True)


def test_the_level_part_of_the_reaction_ends_at_the_rim_of_the_joint_and_leaves_the_bone_free() -> None:
    bone = capsules((Line((0.0, 0.0), (420.0, 0.0), THIN),))
    level = next(each for each in forces(ROCK, framed(ROCK, 420, 350), bone, ()) if each.arrow.name == "J_x")
    assert (level.into, -12 <= level.tip[0] <= -7, level.tail[0] < -50) == (True, True, True)


def test_two_equal_pulls_at_one_point_are_both_seen() -> None:
    pull = Arrow("a", "muscle", letter("F_A"), (0.1, 0.0), 120)
    one, other = forces(
        Drawing(PIVOT, "p", (Bone("b", PIVOT, (0.3, 0.0)),), (pull, pull)), framed(ROCK, 420, 350), (), ()
    )
    assert dist(one.tail, other.tail) >= 10


def test_the_kinds_of_force_differ_without_colour() -> None:
    kinds = ("muscle", "weight", "load", "force", "joint")
    arrows = tuple(Arrow(kind, kind, letter("F"), (0.1 * i, 0.0), 90) for i, kind in enumerate(kinds, 1))
    drawing = Drawing(PIVOT, "p", (), arrows)
    looks = {
        (each.look.width, each.look.dash, each.look.tip) for each in forces(drawing, framed(drawing, 420, 350), (), ())
    }
    assert len(looks) == len(kinds)


def test_points_a_fraction_of_a_pixel_apart_are_drawn_apart() -> None:
    frame = framed(limb("p", 1.0, 30, "muscle F_A 0.002 90; muscle F_B 0.004 90; load W 1.0 270"), 420, 350)
    places = [hypot(*frame.spot(polar(far, 30))) for far in (0.0, 0.002, 0.004)]
    assert [round(high - low, 3) for low, high in pairwise(places)] == [20.0, 20.0]


def test_a_bone_keeps_its_length_and_direction_when_its_points_are_spread() -> None:
    frame = framed(limb("p", 1.0, 0, "muscle F_A 0.002 90; load W 1.0 270"), 420, 350)
    assert [round(value, 6) for value in frame.spot((1.0, 0.0))] == [420.0, 0.0]


def test_a_side_of_an_angle_that_is_not_drawn_is_dashed() -> None:
    lines = dashed(layout(replace(SHANK, openings=(Opening(PIVOT, 270, 310, degrees("40")),))).shapes)
    assert [(abs(round(line.start[0], 6)), abs(round(line.end[0], 6)), line.end[1] > 30) for line in lines] == [
        (0.0, 0.0, True)
    ]


def test_an_angle_between_bone_and_tendon_needs_no_dashed_line() -> None:
    assert dashed(layout(DRAWINGS["rock-oblique"]).shapes) == []


def test_the_plus_of_the_mark_has_its_arc_turn_the_way_that_counts_as_positive() -> None:
    arcs = [
        next(shape for shape in layout(replace(ROCK, sense=sense)).mark if isinstance(shape, Arc)) for sense in (1, -1)
    ]
    assert [arc.sweep > 0 for arc in arcs] == [True, False]


@pytest.mark.parametrize("sense", [1, -1])
def test_a_couple_turns_the_way_it_is_said_to(sense: int) -> None:
    couple = Drawing(PIVOT, "p", turns=(Turn("t", letter("M"), PIVOT, sense),))
    written = [
        each.attrib["d"].split("A")[1].split()[4]
        for each in drawn(couple).iter(f"{SVG}path")
        if "A" in each.attrib["d"]
    ]
    drawn_arcs = [shape.sweep > 0 for shape in layout(couple).shapes if isinstance(shape, Arc)]
    assert (drawn_arcs, written) == ([sense > 0], ["01"[sense < 0]])


def test_numbers_written_with_unequal_figures_have_labels_of_their_own() -> None:
    assert letters(degrees("70"), 16.0) != letters(degrees("70.0"), 16.0)


@pytest.mark.parametrize("text", ["P_W", "P_B", "F_E", "P_SF⊥", "T_B"])
def test_a_subscript_does_not_slip_under_its_letter(text: str) -> None:
    behind = [
        letters(letter(each), 16.0).width - letters(letter(each[0]), 16.0).width for each in (text, "d" + text[1:])
    ]
    assert behind[0] > behind[1]


def test_a_label_that_is_walled_in_goes_outside_on_a_thin_line() -> None:
    wall = [Capsule(-60.0, y, 60.0, y, 2.0) for y in range(-30, 31, 6)]
    lettering = place(
        [Wanted(Outline("M0 0L20 12Z", 20.0, 12.0), "#000000", (Anchor((0.0, 0.0), (1.0, 0.0)),))], Ground(wall)
    )
    assert (min(reach(stroke, lettering.labels[0].box) for stroke in wall) > 0, len(lettering.leaders)) == (True, 1)


@pytest.mark.parametrize("name", DRAWINGS)
def test_a_figure_in_parts_is_the_same_figure(name: str) -> None:
    drawing = DRAWINGS[name]
    found = parted(Picture(drawing, "title", "description"))
    plain = re.sub(r'<g data-name="[^"]*" data-kind="[a-z]+">(.*?)</g>', r"\1", found.svg)
    assert figure(Picture(drawing, "title", "description")) == plain
    bones = [("bone", bone.name) for bone in drawing.bones]
    assert sorted([*bones, *((arrow.kind, arrow.name) for arrow in drawing.arrows)]) == sorted(
        (part.kind, part.name) for part in found.parts
    )
    inside = [
        0 <= x <= found.width and 0 <= y <= found.height for part in found.parts for x, y in (part.about, part.end)
    ]
    assert all(inside)


def test_a_part_has_the_name_that_it_was_given_as_text() -> None:
    hostile = replace(ROCK, arrows=tuple(replace(each, name='"><script>\x00') for each in ROCK.arrows))
    groups = ElementTree.fromstring(parted(Picture(hostile, "title", "")).svg).iter(f"{SVG}g")
    assert {each.attrib["data-name"] for each in groups if "data-kind" in each.attrib} >= {'"><script>\ufffd'}
