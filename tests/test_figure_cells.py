"""What is found by cells of a sheet is what a look at all of it finds."""

from __future__ import annotations

from random import Random

import pytest

from explain.write.figure.cells import Ground, Halo
from explain.write.figure.shapes import Box, Capsule, covers, gap


def strokes(draw: Random) -> list[Capsule]:
    """Slanted, level and upright strokes, dots, and two of a pair on each other."""
    found = []
    for _ in range(12):
        x, y, right, down = (draw.uniform(-90.0, 90.0) for _ in range(4))
        ends = draw.choice([(x, y, right, down), (x, y, right, y), (x, y, x, down), (x, y, x, y)])
        found += [Capsule(*ends, half) for half in draw.sample([0.5, 1.5, 4.0, 9.0], draw.randint(1, 2))]
    return found


@pytest.mark.parametrize("seed", range(20))
def test_a_halo_holds_the_spots_that_are_near_a_stroke(seed: int) -> None:
    draw = Random(seed)
    drawn, far = strokes(draw), draw.choice([3.0, 7.0])
    halo = Halo(far, drawn)
    spots = [(draw.uniform(-120.0, 120.0), draw.uniform(-120.0, 120.0)) for _ in range(200)]
    near = [any(gap(spot, stroke) < far for stroke in drawn) for spot in spots]
    assert [halo.holds(spot) for spot in spots] == near
    assert {True, False} == set(near)


@pytest.mark.parametrize("seed", range(20))
def test_a_place_is_free_where_no_stroke_and_no_label_is_near(seed: int) -> None:
    draw = Random(seed)
    drawn = strokes(draw)

    def box() -> Box:
        left, top = draw.uniform(-140.0, 140.0), draw.uniform(-140.0, 140.0)
        return Box(left, top, left + draw.uniform(1.0, 50.0), top + draw.uniform(1.0, 20.0))

    written, places = [box() for _ in range(3)], [box() for _ in range(200)]
    ground = Ground(drawn[:5]).plus(drawn[5:])
    for each in written:
        ground.write(each)
    free = [
        not any(covers(stroke, place.grown(2.5)) for stroke in drawn)
        and not any(place.grown(5.0).meets(other) for other in written)
        for place in places
    ]
    assert [ground.free(place, 2.5) for place in places] == free
    assert {True, False} == set(free)


def test_what_is_drawn_on_a_copy_is_not_on_the_first() -> None:
    first = Ground([Capsule(0.0, 0.0, 9.0, 0.0, 1.0)])
    more = first.plus([Capsule(100.0, 0.0, 109.0, 0.0, 1.0)])
    place = Box(98.0, -3.0, 111.0, 3.0)
    assert [first.free(place, 1.0), more.free(place, 1.0), len(first.strokes), len(more.strokes)] == [True, False, 1, 2]
