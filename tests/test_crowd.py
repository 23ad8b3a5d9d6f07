"""Figures of very many forces: numbers in place of letters, a key, and still no label that touches anything."""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest
from drawings import limb, mark_touches, touches

from explain.document.passage import Drawing
from explain.write.figure.crowd import MANY, crowd
from explain.write.figure.outlines import letters
from explain.write.figure.free_body import layout
from explain.formula.plain import plain


def hung(count: int, direction: float = 20.0, seed: int = 0) -> Drawing:
    """A forearm that is hung with so many weights, all at places of their own; at random ones where there is a seed."""
    places = (
        sorted(Random(seed).sample(range(1, 1000), count))
        if seed
        else [1000 * each // count for each in range(1, count + 1)]
    )
    weights = ";".join(f"load W_{number} {place / 3000:.6f} 270" for number, place in enumerate(places, 1))
    return limb("elbow", 0.3333, direction, f"muscle F_B 0.04 130;{weights}")


@pytest.mark.parametrize(
    "drawing",
    [hung(count) for count in (13, 14, 25, 50, 100)]
    + [hung(Random(seed).randint(2, 100), Random(seed).uniform(-80.0, 80.0), seed) for seed in range(1, 9)],
    ids=lambda each: str(len(each.arrows)),
)
def test_no_label_of_many_touches_anything(drawing: Drawing) -> None:
    laid = layout(drawing)
    assert touches(laid) + mark_touches(laid) == []


def test_few_forces_keep_their_letters() -> None:
    few = hung(MANY - 1)
    assert crowd(few).drawing == few


def test_every_force_of_a_crowd_stands_once_in_the_key_with_its_distance() -> None:
    listed = [
        (each.number, plain(each.arrow.letter), plain(each.distance.label) if each.distance else "")
        for each in crowd(hung(25)).entries
    ]
    assert listed == [(number, f"W_{number}", f"d_{number}") for number in range(1, 26)]


def test_a_short_row_is_numbered_throughout_and_a_longer_one_more_seldom() -> None:
    numbered = [
        [plain(each.letter) for each in crowd(hung(count)).drawing.arrows if each.kind == "load" and each.letter]
        for count in (25, 26, 27, 53, 54, 100, 134, 267, 534)
    ]
    assert numbered == [
        [str(number) for number in range(every, count + 1, every)]
        for every, count in (
            (1, 25),
            (1, 26),
            (2, 27),
            (2, 53),
            (5, 54),
            (5, 100),
            (10, 134),
            (20, 267),
            (50, 534),
        )
    ]


def test_the_forces_are_counted_as_they_stand_and_not_as_they_are_told() -> None:
    told = hung(25)
    turned = replace(told, arrows=told.arrows[::-1])
    assert [plain(each.arrow.letter) for each in crowd(turned).entries] == [
        plain(each.arrow.letter) for each in crowd(told).entries
    ]


@pytest.mark.parametrize(
    ("bone", "way", "heading", "first"),
    [
        (90.0, 0.0, "Counted upwards", 1),
        (90.0, 180.0, "Counted upwards", 1),
        (90.0, 179.5, "Counted upwards", 1),
        (90.0, 0.5, "Counted upwards", 1),
        (-90.0, 180.0, "Counted upwards", 20),
        (0.0, 270.0, "Counted from left to right", 1),
        (180.0, 90.0, "Counted from left to right", 20),
    ],
)
def test_the_key_says_from_where_the_forces_are_counted(bone: float, way: float, heading: str, first: int) -> None:
    """Force 1 is the nearest to the pivot, and 20 the farthest from it."""
    forces = ";".join(f"force F_{number} {number / 20:.2f} {way}" for number in range(1, 21))
    found = crowd(limb("toe", 1.0, bone, forces, joint=False))
    assert (heading, f"F_{first}") == (found.heading, plain(found.entries[0].arrow.letter))


def test_every_letter_of_a_crowd_is_written_once() -> None:
    drawing = hung(100)
    written = [label.outline for label in layout(drawing).labels]
    wanted = [letters(each.letter, 11.0) for each in drawing.arrows if each.kind == "load"] + [
        letters(each.label, 11.0) for each in drawing.spans if plain(each.label) != "d_B"
    ]
    assert [written.count(each) for each in wanted] == [1] * 200


def test_two_forces_on_one_line_keep_their_own_distances() -> None:
    drawing = hung(25)
    twin = replace(drawing.arrows[5], name="twin")
    entries = crowd(replace(drawing, arrows=(*drawing.arrows, twin))).entries
    assert [each.distance for each in entries if each.arrow.at == twin.at] == [None, None]
