"""Muscles that share by their cross-sections: equal pull for each square centimetre."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest
from every_course import COURSES, same_in

from explain import work
from explain.errors import Fault

AREAS = {"biceps": "4.6 cm^2", "brachialis": "7.0 cm^2", "brachioradialis": "1.5 cm^2"}
ARMS = {"biceps": "4.6 cm", "brachialis": "3.4 cm", "brachioradialis": "7.5 cm"}


def elbow(*names: str, **more: Any) -> dict[str, Any]:
    """A level forearm with a jug, held by these muscles, each known by its moment arm."""
    return {
        "title": "Flexors of the elbow",
        "pivot": {"name": "elbow", "bone": "humerus"},
        "segment": [{"name": "forearm and hand", "mass": "1.6 kg", "com": "15 cm"}],
        "load": [{"name": "jug", "mass": "3.0 kg", "at": "33 cm"}],
        "muscle": [flexor(name) for name in names],
        **more,
    }


def flexor(name: str, **keys: str) -> dict[str, Any]:
    arm = {} if {"at", "point"} & keys.keys() else {"moment_arm": ARMS[name], "turns": "counter-clockwise"}
    return {"name": name, "area": AREAS[name], "share": "area", **arm, **keys}


def values(problem: Mapping[str, Any]) -> dict[str, float]:
    return {name: answer.value for name, answer in work(problem).answers.items()}


def test_three_flexors_as_a_text_of_biomechanics_shares_them() -> None:
    """N. Özkaya, M. Nordin: Fundamentals of Biomechanics, chapter on statics of the body, the elbow with three
    muscles of equal stress: k_21 = A_2/A_1, k_31 = A_3/A_1, F_M1 = (b W + c W_0) / (a_1 + a_2 k_21 + a_3 k_31),
    F_M2 = k_21 F_M1, F_M3 = k_31 F_M1. From memory.
    """
    found = values(elbow(*AREAS))
    (one, two, three), (a, b, c) = ([float(each.split()[0]) for each in of.values()] for of in (AREAS, ARMS))
    first = (15 * 1.6 + 33 * 3.0) * 9.81 / (a + b * two / one + c * three / one)
    assert found["biceps"] == pytest.approx(first)
    assert found["brachialis"] == pytest.approx(two / one * first)
    assert found["brachioradialis"] == pytest.approx(three / one * first)


def test_every_pull_and_the_one_stress_are_answers() -> None:
    found = values(elbow(*AREAS))
    assert [*AREAS, *(f"{name}.stress" for name in AREAS)] == [*found]
    assert found["biceps.stress"] == pytest.approx(found["brachialis.stress"])
    assert found["biceps.stress"] == pytest.approx(found["brachioradialis.stress"])


def test_by_hand_with_one_oblique_pull() -> None:
    """Two alike in area: pull (4.0 cm + 8.0 cm sin 30 deg) is twice 4.0 cm times one pull."""
    muscles = [
        {"name": "biceps", "at": "4.0 cm", "direction": "up", "area": "5 cm^2", "share": "area"},
        {"name": "brachialis", "at": "8.0 cm", "direction": "30 deg above left", "area": "500 mm^2", "share": "area"},
    ]
    found = values(elbow(muscle=muscles))
    assert found["biceps"] == pytest.approx((15 * 1.6 + 33 * 3.0) * 9.81 / 8)
    assert found["biceps"] == pytest.approx(found["brachialis"])


def test_beside_another_muscle_of_known_pull() -> None:
    other = {"name": "pronator", "moment_arm": "2.0 cm", "turns": "counter-clockwise", "force": "50 N"}
    problem = elbow("biceps", "brachialis")
    problem["muscle"].append(other)
    found = values(problem)
    assert found["biceps"] * (4.6 + 3.4 * 7 / 4.6) == pytest.approx((15 * 1.6 + 33 * 3.0) * 9.81 - 100)


def test_the_joint_force_has_all_pulls() -> None:
    muscles = [flexor(name, at=ARMS[name], direction="up") for name in ("biceps", "brachialis")]
    found = values(elbow(muscle=muscles, ask=["biceps", "brachialis", "reaction.up"]))
    assert found["reaction.up"] == pytest.approx(4.6 * 9.81 - found["biceps"] - found["brachialis"])


@pytest.mark.parametrize("course", COURSES)
def test_in_every_class(course: str) -> None:
    oblique = flexor("biceps", at="4.6 cm", direction="75 deg from back toward up")
    same_in(course, elbow(muscle=[oblique, flexor("brachialis"), flexor("brachioradialis")]))


# ---------------------------------------------------------------------- where the rule does not hold
def test_muscles_against_each_other_do_not_share() -> None:
    problem = elbow("biceps", "brachialis")
    problem["muscle"][1]["turns"] = "clockwise"
    with pytest.raises(Fault) as fault:
        work(problem)
    assert "the biceps turns counter-clockwise and the brachialis turns clockwise" in fault.value.found
    assert "brachialis.share" == fault.value.key
    assert "all turn the same way" in fault.value.expected


def test_nor_do_they_where_only_the_place_says_which_way_they_turn() -> None:
    muscles = [
        flexor("biceps", at="4.0 cm", direction="up"),
        flexor("brachialis", at="-4.0 cm", direction="up"),
    ]
    with pytest.raises(Fault, match="turns clockwise"):
        work(elbow(muscle=muscles))


def test_nor_does_one_whose_line_passes_through_the_pivot() -> None:
    muscles = [flexor("biceps", at="4.0 cm", direction="up"), flexor("brachialis", at="4.0 cm", direction="back")]
    with pytest.raises(Fault, match="the brachialis turns neither way"):
        work(elbow(muscle=muscles))


# ---------------------------------------------------------------------- what the page says
def test_the_page_says_how_they_share() -> None:
    text = " ".join(work(elbow("biceps", "brachialis")).text(200).split())
    assert "Equal pull for each square centimetre" in text and "together they are one unknown" in text
    assert "k_Br = A_Br / A_Bi = 7.0 cm² / 4.6 cm² = 1.5217" in text
    assert "each square centimetre of the biceps and the brachialis pulls equally hard" in text
    assert "How hard do the biceps and the brachialis pull" in text


RIGHT = """\
15.696*15 + 29.43*33 = 1206.6
s*4.6*4.6 + s*7.0*3.4 = 1206.6
s = 1206.6/44.96 = 26.84 N/cm2
F biceps = 26.84*4.6 = 123 N
F brachialis = 26.84*7.0 = 188 N
"""


def test_a_right_working_holds() -> None:
    marking = work(elbow("biceps", "brachialis")).mark(RIGHT)
    assert (None, {"holds"}) == (marking.first_wrong, {each.verdict for each in marking.lines})
    assert {("biceps", True), ("brachialis", True)} == {(each.name, each.right) for each in marking.answers}
