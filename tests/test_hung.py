"""Cables over a smooth pulley with a mass at the other end."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest
from every_course import COURSES, same_in

from explain import work


def leg(hung: str, direction: str = "up", at: str = "80.5 cm", **more: Any) -> dict[str, Any]:
    """A level leg in a sling."""
    return {
        "title": "A leg in a sling",
        "pivot": {"name": "hip"},
        "segment": [{"name": "leg", "length": "90 cm", "mass": "15.0 kg", "com": "35.0 cm"}],
        "force": [{"name": "sling", "at": at, "direction": direction, "hung": hung}],
        **more,
    }


def value(problem: Mapping[str, Any], name: str) -> float:
    return float(work(problem).answers[name].value)


def test_the_mass_that_holds_a_leg_in_plaster() -> None:
    """D. C. Giancoli: Physics, chapter on static equilibrium, the problem of the mass that suspends a leg with its
    cast: 15.0 kg, centre of gravity 35.0 cm and sling 80.5 cm from the hip joint, cable over a pulley: 6.52 kg. From
    memory.
    """
    answer = work(leg("?")).answers["sling.hung"]
    assert (answer.shown, answer.unit) == ("6.52 kg", "kg")


def test_the_pull_is_the_weight_of_what_hangs() -> None:
    """6 kg at 9.81 m/s^2 are 58.86 N; what is left of 15.0 kg at 35.0 cm is for the flexors, 5.0 cm from the hip."""
    flexors = {"name": "flexors", "moment_arm": "5.0 cm", "turns": "counter-clockwise"}
    problem = leg("6 kg", muscle=[flexors], ask=["sling", "flexors"])
    assert value(problem, "sling") == pytest.approx(58.86)
    assert value(problem, "flexors") == pytest.approx((15 * 35 - 6 * 80.5) * 9.81 / 5)


def test_each_of_two_cables_has_a_mass_of_its_own() -> None:
    problem = leg("?", "60 deg above right")
    problem["force"][0]["count"] = 2
    assert value(problem, "sling.hung") == pytest.approx(15 * 35 / 80.5 / 0.75**0.5 / 2)


def test_where_the_sling_holds_with_a_given_mass() -> None:
    assert value(leg("7.5 kg", at="?"), "sling.at") == pytest.approx(70)


def test_pounds_hang_too() -> None:
    """In a class of pounds a mass of 12 lb weighs 12 lb where g is the standard one (NIST SP 811, pound-force)."""
    problem = leg("12 lb", ask=["sling"], couple=[BRAKE], course={"g": "9.80665 m/s^2", "forces": "lb"})
    assert value(problem, "sling") == pytest.approx(12)


def test_what_would_have_to_push_fails() -> None:
    walkthrough = work(leg("?", "down"))
    assert ["possible"] == [name for name, finding in walkthrough.checks if finding.result == "fails"]
    assert walkthrough.answers["sling.hung"].value < 0
    assert "would need a mass at its other end of −6.52 kg, which nothing has" in " ".join(walkthrough.text().split())


@pytest.mark.parametrize("course", COURSES)
@pytest.mark.parametrize("hung", ["?", "4.5 kg"])
def test_in_every_class(course: str, hung: str) -> None:
    more: dict[str, Any] = {}
    if hung != "?":
        flexors = {"name": "flexors", "at": "6.0 cm", "direction": "70 deg from back toward up"}
        more = {"muscle": [flexors], "ask": ["sling", "flexors", "reaction"]}
    same_in(course, leg(hung, "75 deg above right", **more))


def test_the_page_says_why() -> None:
    text = " ".join(work(leg("6 kg", ask=["sling", "reaction"], couple=[BRAKE])).text(200).split())
    assert "F_S = m_S g = 6 kg × 9.81 m/s² = 58.86 N" in text
    assert "Over a smooth pulley a cable pulls as hard at one end as at the other" in text
    assert "The sling pulls straight up, over a smooth pulley with 6 kg at its other end, 80.5 cm from the hip" in text
    assert "the pulley turns without friction" in text


BRAKE = {"name": "brake", "moment": "?", "turns": "counter-clockwise"}
RIGHT = """\
W = 15*9.81 = 147.15 N
T*80.5 = 147.15*35
T = 5150.25/80.5 = 63.98 N
m = 63.98/9.81 = 6.52 kg
"""


def test_a_right_working_holds() -> None:
    marking = work(leg("?")).mark(RIGHT)
    assert (None, {"holds"}) == (marking.first_wrong, {each.verdict for each in marking.lines})
    assert [("sling.hung", True)] == [(each.name, each.right) for each in marking.answers]


def test_a_mass_that_was_taken_for_a_pull_does_not_hold() -> None:
    flexors = {"name": "flexors", "moment_arm": "5.0 cm", "turns": "counter-clockwise"}
    wrong = "W = 15*9.81 = 147.15 N\nF*5 + 6*80.5 - 147.15*35 = 0\nF = 933.5 N\n"
    marking = work(leg("6 kg", muscle=[flexors], ask=["flexors"])).mark(wrong)
    assert 2 == marking.first_wrong
    assert "g-in-one-term-only" in [slip.slip for slip in marking.lines[1].slips]
