"""A rough surface at the pivot: the least friction that holds, a check, and a body about to slip."""

from __future__ import annotations

from collections.abc import Mapping
from math import cos, radians, sin, tan
from typing import Any

import pytest
from every_course import COURSES, same_in

from worked import ladder

from explain import work
from explain.errors import Fault
from explain.write.figure.frame import framed
from explain.write.figure.ground import ground

MIRRORED = {"right": "left", "left": "right"}


def value(problem: Mapping[str, Any], name: str) -> float:
    return float(work(problem).answers[name].value)


def finding(problem: Mapping[str, Any]) -> tuple[str, str]:
    found = dict(work(problem).checks)["friction"]
    return found.result, found.says


# ---------------------------------------------------------------------- the least friction
def test_a_ladder_of_an_open_text() -> None:
    """OpenStax, University Physics, volume 1, section 12.2, the ladder of 5.0 m and 400 N at 53 degrees against a
    slippery wall: wall 150.7 N, coefficient of friction 0.377, push of the floor 427.4 N. From memory.
    """
    bars = [
        {"name": "ladder", "length": "5.0 m", "weight": "400.0 N", "com": "50 %", "direction": "53 deg above right"}
    ]
    problem = ladder({"friction": "?"}, segment=bars, load=[], ask=["wall", "reaction.friction", "reaction"])
    found = {name: answer.value for name, answer in work(problem).answers.items()}
    assert found["wall"] == pytest.approx(150.7, abs=0.05)
    assert found["reaction.friction"] == pytest.approx(0.377, abs=0.0005)
    assert found["reaction"] == pytest.approx(427.4, abs=0.06)


def test_by_hand() -> None:
    """The push along is what the wall pushes; the push across carries both weights."""
    wall = (12 * 2.5 + 70 * 3.5) * 9.81 / 5 / tan(radians(65))
    assert value(ladder({"friction": "?"}), "reaction.friction") == pytest.approx(wall / (82 * 9.81))
    answer = work(ladder({"friction": "?"})).answers["reaction.friction"]
    assert (answer.unit, answer.shown) == ("", "0.313")


@pytest.mark.parametrize(("surface", "degrees"), [("20 deg above right", 20), ("12 deg below right", -12)])
def test_on_a_slope(surface: str, degrees: float) -> None:
    """The push turned back by the slope: its tangent is that of the difference of the two angles."""
    wall, weight = (12 * 2.5 + 70 * 3.5) * 9.81 / 5 / tan(radians(65)), 82 * 9.81
    c, s = cos(radians(degrees)), sin(radians(degrees))
    expected = abs(wall * c + weight * s) / (weight * c - wall * s)
    assert value(ladder({"friction": "?", "surface": surface}), "reaction.friction") == pytest.approx(expected)


def test_where_nothing_is_pushed_along_no_friction_is_needed() -> None:
    bars = [{"name": "post", "length": "2 m", "mass": "9 kg", "com": "1 m", "direction": "up"}]
    problem = ladder({"friction": "?"}, segment=bars, load=[], force=[], ask=["reaction.friction"])
    assert value(problem, "reaction.friction") == 0


def test_no_friction_holds_what_lifts_off() -> None:
    balloon = {"name": "balloon", "at": "2.5 m", "direction": "up", "force": "900 N"}
    problem = ladder({"friction": "?"})
    problem["force"].append(balloon)
    with pytest.raises(Fault, match="no friction that holds"):
        work(problem)


# ---------------------------------------------------------------------- a check
@pytest.mark.parametrize(("friction", "result"), [("0.40", "holds"), ("0.313", "holds"), ("0.312", "fails")])
def test_a_given_friction_is_checked(friction: str, result: str) -> None:
    assert finding(ladder({"friction": friction}))[0] == result


def test_what_is_to_spare_is_told() -> None:
    said = finding(ladder({"friction": "0.40"}))[1]
    assert said == (
        "At the foot of the ladder 252 N of friction are needed, and there are up to 322 N (0.40 times the normal "
        "force of 804 N): it holds, with 70.2 N to spare."
    )


def test_what_slips_is_told_and_needs_a_person() -> None:
    walkthrough = work(ladder({"friction": "0.20"}))
    assert walkthrough.needs_a_person
    assert "the body slips" in dict(walkthrough.checks)["friction"].says


def test_what_lifts_off_is_told() -> None:
    problem = ladder({"friction": "0.40", "surface": "left"})
    result, said = finding(problem)
    assert (result, "it can only push: the body lifts off" in said) == ("fails", True)


# ---------------------------------------------------------------------- about to slip
def test_how_far_up_the_ladder() -> None:
    """All friction is used, so the wall pushes with 0.35 of both weights; the moments give the painter's place."""
    wall = 0.35 * 82 * 9.81
    far = (wall * 5 * tan(radians(65)) / 9.81 - 12 * 2.5) / 70
    problem = ladder({"friction": "0.35", "slips": "left"}, "?")
    assert value(problem, "wall") == pytest.approx(wall)
    assert value(problem, "painter.at") == pytest.approx(far)
    assert finding(problem)[0] == "holds"


def test_a_mirror_image_is_no_different() -> None:
    problem = ladder({"friction": "0.35", "slips": "right"}, "?")
    problem["segment"][0]["direction"] = "65 deg above left"
    problem["force"][0]["direction"] = "right"
    assert value(problem, "painter.at") == pytest.approx(
        value(ladder({"friction": "0.35", "slips": "left"}, "?"), "painter.at")
    )


@pytest.mark.parametrize(("surface", "side"), [("down", "right"), ("up", "left")])
def test_down_an_upright_wall(surface: str, side: str) -> None:
    """A bracket on a cord, beside a wall on either side: N = F cos 35, F sin 35 + 0.45 N = the weights."""
    pull = (3 * 9.81 + 80) / (sin(radians(35)) + 0.45 * cos(radians(35)))
    place = (pull * sin(radians(35)) * 1.2 - 3 * 9.81 * 0.6) / 80
    problem = {
        "title": "A bracket",
        "pivot": {"name": "wall end", "surface": surface, "friction": "0.45", "slips": "down"},
        "segment": [{"name": "arm", "length": "1.2 m", "mass": "3.0 kg", "com": "50 %", "direction": side}],
        "load": [{"name": "crate", "weight": "80 N", "at": "?"}],
        "force": [{"name": "cord", "at": "1.2 m", "direction": f"35 deg above {MIRRORED[side]}", "force": "?"}],
    }
    assert value(problem, "cord") == pytest.approx(pull)
    assert value(problem, "crate.at") == pytest.approx(place)
    assert finding(problem)[0] == "holds"


def test_about_to_slip_with_nothing_left_to_settle_is_refused() -> None:
    with pytest.raises(Fault, match="no unknown for it to settle"):
        work(ladder({"friction": "0.35", "slips": "left"}))


def test_about_to_slip_with_axes_along_a_segment_is_refused() -> None:
    axes = {"axes": "along and across the ladder"}
    with pytest.raises(Fault, match="slips at the pivot"):
        work(ladder({"friction": "0.35", "slips": "left"}, "?", course=axes))


# ---------------------------------------------------------------------- in every class
@pytest.mark.parametrize("course", COURSES)
@pytest.mark.parametrize("slips", [False, True])
def test_in_every_class(course: str, slips: bool) -> None:
    same_in(course, ladder({"friction": "0.35", "slips": "left"}, "?") if slips else ladder({"friction": "?"}))


def test_with_axes_along_the_ladder() -> None:
    asked = {"ask": ["reaction.friction"], "course": {"axes": "along and across the ladder"}}
    along = value(ladder({"friction": "?"}, **asked), "reaction.friction")
    assert along == pytest.approx(value(ladder({"friction": "?"}), "reaction.friction"))


# ---------------------------------------------------------------------- the page and the figure
def test_the_page_shows_both_lines_and_why() -> None:
    least, slips = (
        " ".join(work(each).text(300).split())
        for each in (ladder({"friction": "?"}), ladder({"friction": "0.35", "slips": "left"}, "?"))
    )
    assert "μ = J_x / J_y" in least and "With a coefficient of friction of 0.313 at the foot of the ladder" in least
    assert "what is the least coefficient of friction at the foot of the ladder that holds the ladder" in least
    assert "J_x = μ J_y = 0.35 × 804.42 N" in slips and "Where a body is about to slip" in slips
    assert "The quay at the foot of the ladder is rough, with a coefficient of friction of 0.35" in slips
    assert "the foot of the ladder is about to slip to the left" in slips


@pytest.mark.parametrize(("surface", "below"), [("right", (0, 1)), ("left", (0, -1)), ("up", (1, 0))])
def test_the_figure_has_the_surface_on_the_side_away_from_the_body(surface: str, below: tuple[int, int]) -> None:
    drawing = work(ladder({"friction": "0.40", "surface": surface})).picture().drawing
    frame = framed(drawing, 400, 280)
    edge, *strokes = ground(drawing, frame)
    x, y = frame.spot(drawing.pivot)
    for shape in (edge, *strokes):
        for spot in (shape.start, shape.end):  # type: ignore[union-attr]
            assert (spot[0] - x) * below[0] + (spot[1] - y) * below[1] > 7
    assert len(strokes) > 4


# ---------------------------------------------------------------------- marking
LEAST = """\
F*5*sin65 = 117.72*2.5*cos65 + 686.7*3.5*cos65
F = 251.6 N
f = 251.6 N
N = 117.72+686.7 = 804.4 N
mu = 251.6/804.4 = 0.313
"""
SLIPS = """\
N = 117.72+686.7 = 804.4 N
f = 0.35*804.4 = 281.5 N
F = 281.5 N
281.5*5*sin65 - 117.72*2.5*cos65 - 686.7*d*cos65 = 0
d = 3.97 m
"""


@pytest.mark.parametrize(
    ("problem", "working"),
    [(ladder({"friction": "?"}), LEAST), (ladder({"friction": "0.35", "slips": "left"}, "?"), SLIPS)],
)
def test_a_right_working_holds(problem: Mapping[str, Any], working: str) -> None:
    marking = work(problem).mark(working)
    assert (None, {"holds"}) == (marking.first_wrong, {each.verdict for each in marking.lines})
    assert all(each.right for each in marking.answers) and len(marking.answers) == 2


def test_a_friction_upside_down_is_not_taken_for_the_answer() -> None:
    marking = work(ladder({"friction": "?"})).mark(LEAST.replace("251.6/804.4 = 0.313", "804.4/251.6 = 3.20"))
    assert ["wall"] == [each.name for each in marking.answers]
