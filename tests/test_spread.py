"""Loads that are spread along a segment: evenly, or growing evenly from nothing."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest
from every_course import COURSES, same_in

from explain import work
from explain.write.figure.bands import bands
from explain.write.figure.frame import framed


def plank(*loads: Mapping[str, Any], long: str = "80 cm", **more: Any) -> dict[str, Any]:
    """A level plank on a trestle at its left end, held up by a rope at its right end."""
    return {
        "title": "A plank",
        "ask": ["rope", "reaction.up"],
        "pivot": {"name": "left trestle"},
        "segment": [{"name": "plank", "length": long}],
        "load": list(loads),
        "force": [{"name": "rope", "at": long, "direction": "up", "force": "?"}],
        **more,
    }


def sand(first: str, second: str, **keys: str) -> dict[str, Any]:
    return {"name": "sand", "spread": [first, second], **keys}


def value(problem: Mapping[str, Any], name: str) -> float:
    return float(work(problem).answers[name].value)


# ---------------------------------------------------------------------- against what is published
def test_a_beam_with_an_even_and_a_growing_load_of_a_text_of_statics() -> None:
    """J. L. Meriam, L. G. Kraige: Engineering Mechanics, Statics, the sample problem of a simply supported beam of
    10 ft with 120 lb/ft that grow to 280 lb/ft over its last 6 ft (5/11 in several editions): 1200 lb at 5 ft and
    480 lb at 8 ft, R_B = 984 lb and R_A = 696 lb. From memory.
    """
    problem = plank(
        {"name": "even load", "weight": "120 lb/ft", "spread": ["0 ft", "10 ft"]},
        {"name": "growing load", "weight": "160 lb/ft", "spread": ["4 ft", "10 ft"], "spread_to": "one end"},
        long="10 ft",
        ask=["rope", "reaction.up", "even load.at", "growing load.at"],
    )
    answers = work(problem).answers
    found = {name: (round(each.value, 6), each.unit) for name, each in answers.items()}
    assert found == {
        "rope": (984.0, "lb"),
        "reaction.up": (696.0, "lb"),
        "even load.at": (5.0, "ft"),
        "growing load.at": (8.0, "ft"),
    }


@pytest.mark.parametrize(("a", "b", "c"), [(1.0, 2.0, 3.0), (0.0, 4.0, 2.0), (2.5, 0.5, 0.25)])
def test_part_of_a_beam_under_an_even_load(a: float, b: float, c: float) -> None:
    """AISC Steel Construction Manual, table of shears, moments and deflections, "simple beam, uniform load partially
    distributed": R1 = w b (2c + b) / 2l, R2 = w b (2a + b) / 2l, with the load b long, a from the left. From memory.
    """
    long, w = a + b + c, 3.0
    problem = plank(sand(f"{a} m", f"{a + b} m", weight=f"{w} N/m"), long=f"{long} m")
    assert value(problem, "reaction.up") == pytest.approx(w * b * (2 * c + b) / (2 * long))
    assert value(problem, "rope") == pytest.approx(w * b * (2 * a + b) / (2 * long))


@pytest.mark.parametrize(("ends", "near"), [(("0 m", "6 m"), 3), (("6 m", "0 m"), 1.5)])
def test_a_load_that_grows_over_a_whole_beam(ends: tuple[str, str], near: float) -> None:
    """The same table, "simple beam, load increasing uniformly to one end": W/3 at the light end, 2W/3 at the heavy one.
    From memory.
    """
    problem = plank(sand(*ends, weight="90 N", spread_to="one end"), long="6 m")
    assert value(problem, "reaction.up") == pytest.approx(90 / near)
    assert value(problem, "rope") == pytest.approx(90 - 90 / near)


# ---------------------------------------------------------------------- by hand
@pytest.mark.parametrize(
    ("ends", "keys", "place", "weight"),
    [
        (("10 cm", "40 cm"), {"weight": "36 N"}, 25, 36),
        (("40 cm", "10 cm"), {"weight": "36 N"}, 25, 36),
        (("10 cm", "40 cm"), {"mass": "2 kg"}, 25, 19.62),
        (("10 cm", "0.4 m"), {"weight": "1.2 N/cm"}, 25, 36),
        (("-10 cm", "40 cm"), {"weight": "1.2 N/cm"}, 15, 60),
        (("-40 cm", "10 cm"), {"weight": "60 N"}, -15, 60),
        (("-40 cm", "-10 cm"), {"weight": "1.2 N/cm"}, -25, 36),
        (("10 cm", "40 cm"), {"weight": "1.2 N/cm", "spread_to": "one end"}, 30, 18),
        (("40 cm", "10 cm"), {"weight": "1.2 N/cm", "spread_to": "one end"}, 20, 18),
        (("-10 cm", "50 cm"), {"weight": "30 N", "spread_to": "one end"}, 30, 30),
        (("30 cm", "-30 cm"), {"weight": "1 N/cm", "spread_to": "one end"}, -10, 30),
        (("0 cm", "60 cm"), {"weight": "1 N/cm", "spread_to": "one end"}, 40, 30),
        (("60 cm", "0 cm"), {"weight": "1 N/cm", "spread_to": "one end"}, 20, 30),
    ],
)
def test_a_spread_load_turns_as_one_force_at_its_place(
    ends: tuple[str, str], keys: dict[str, str], place: float, weight: float
) -> None:
    problem = plank(sand(*ends, **keys))
    assert value(problem, "rope") == pytest.approx(weight * place / 80)
    assert value(problem, "reaction.up") == pytest.approx(weight * (1 - place / 80))


def test_a_load_spread_as_far_to_both_sides_of_the_pivot_turns_nothing() -> None:
    problem = plank(sand("-20 cm", "20 cm", weight="60 N"), {"name": "tin", "weight": "8 N", "at": "40 cm"})
    assert value(problem, "rope") == pytest.approx(4)


def test_the_mass_of_a_spread_load_may_be_sought() -> None:
    problem = plank(sand("10 cm", "40 cm", mass="?"), ask=["sand.mass"])
    problem["force"][0]["force"] = "30.65625 N"
    assert value(problem, "sand.mass") == pytest.approx(10)


def test_along_a_sloping_segment_behind_another() -> None:
    """Upright forces on a line through the pivot: every arm has the same cosine, so the slope drops out."""
    problem = plank(sand("10 cm", "40 cm", weight="36 N"))
    problem["segment"] = [
        {"name": "arm", "length": "20 cm", "direction": "25 deg above right"},
        {"name": "plank", "length": "60 cm", "direction": "out"},
    ]
    problem["force"][0]["at"] = "60 cm"
    assert value(problem, "rope") == pytest.approx(36 * (20 + 25) / 80)


# ---------------------------------------------------------------------- in every class
@pytest.mark.parametrize("course", COURSES)
@pytest.mark.parametrize("growing", [False, True])
def test_in_every_class(course: str, growing: bool) -> None:
    keys = {"spread_to": "one end"} if growing else {}
    loads = sand("15 cm", "55 cm", weight="1.7 N/cm", **keys), {"name": "tin", "mass": "2.3 kg", "at": "33 cm"}
    same_in(course, plank(*loads))


# ---------------------------------------------------------------------- what the page says
def test_the_page_shows_how_the_place_comes_out_and_why() -> None:
    text = work(plank(sand("10 cm", "40 cm", mass="12 kg"))).text()
    assert "d_S = (a_S + b_S) / 2 = (10 cm + 40 cm) / 2 = 50 cm / 2 = 25 cm" in text
    assert "weighs as much before its middle as behind it" in " ".join(text.split())
    assert "is spread evenly between 10 cm and 40 cm from the left trestle" in " ".join(text.split())


def test_the_page_shows_two_thirds_of_the_way() -> None:
    text = " ".join(work(plank(sand("20 cm", "50 cm", weight="1.2 N/cm", spread_to="one end"))).text(200).split())
    assert "d_S = a_S + (2 (b_S − a_S)) / 3 = 20 cm + (2 (50 cm − 20 cm)) / 3" in text
    assert "W_S = (w_S (b_S − a_S)) / 2" in text
    assert "grows evenly from nothing at 20 cm to 1.2 N/cm at 50 cm from the left trestle" in text


def test_a_load_that_lies_beyond_its_segment_is_told() -> None:
    walkthrough = work(plank(sand("50 cm", "90 cm", weight="10 N")))
    said = [finding.says for _, finding in walkthrough.checks if finding.result == "warns"]
    assert ["The sand is spread as far as 90.0 cm along the plank, which is only 80.0 cm long"] == [
        each.partition(". The working")[0] for each in said
    ]


# ---------------------------------------------------------------------- the figure
def test_the_figure_has_arrows_of_one_height_or_growing() -> None:
    even, growing = (
        work(plank(sand("10 cm", "60 cm", weight="10 N", **keys))).picture().drawing
        for keys in ({}, {"spread_to": "one end"})
    )
    heights = []
    for drawing in (even, growing):
        assert [(0.1, 0.6)] == [(round(band.start[0], 9), round(band.end[0], 9)) for band in drawing.bands]
        shapes = bands(drawing, framed(drawing, 400, 280))
        heights.append([abs(each.start[1] - each.end[1]) for each in shapes[1::2]])  # type: ignore[union-attr]
    assert len(heights[0]) >= 3 and max(heights[0]) - min(heights[0]) < 1e-9
    assert len(heights[1]) >= 3 and heights[1] == sorted(heights[1]) and heights[1][0] < heights[1][-1] / 2


def test_the_figure_tells_in_words_how_a_load_is_spread() -> None:
    picture = work(plank(sand("10 cm", "60 cm", weight="10 N"))).picture()
    assert "spread evenly between 10 cm and 60 cm from the left trestle" in picture.description


# ---------------------------------------------------------------------- marking
RIGHT = """\
Ws = 12*9.81 = 117.72 N
ds = (10+40)/2 = 25 cm
F*80 - 117.72*25 = 0
F = 2943/80 = 36.8 N
"""


def test_a_right_working_holds() -> None:
    marking = work(plank(sand("10 cm", "40 cm", mass="12 kg"), ask=["rope"])).mark(RIGHT)
    assert (None, {"holds"}) == (marking.first_wrong, {each.verdict for each in marking.lines})


def test_a_load_put_at_its_near_end_is_not_taken_for_right() -> None:
    wrong = "Ws = 12*9.81 = 117.72 N\nF*80 - 117.72*10 = 0\nF = 1177.2/80 = 14.7 N\n"
    marking = work(plank(sand("10 cm", "40 cm", mass="12 kg"), ask=["rope"])).mark(wrong)
    assert ["holds", "unclear", "unclear"] == [each.verdict for each in marking.lines]
    assert [("rope", False)] == [(each.name, each.right) for each in marking.answers]
