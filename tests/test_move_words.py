"""What moves say of their lines, word for word, where a word that was wrong would still read well."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest

from explain import work

PLANK: Mapping[str, Any] = {
    "title": "A gangway",
    "pivot": {"name": "first post", "reaction": False},
    "segment": [{"name": "gangway", "length": "3.3 m", "mass": "28 kg", "com": "50 %"}],
    "load": [{"name": "crate", "mass": "12 kg", "at": "2.1 m"}],
    "force": [
        {"name": "bow rope", "at": "0.7 m", "direction": "up", "force": "?"},
        {"name": "stern rope", "at": "1.9 m", "direction": "36 deg left of up", "force": "?"},
        {"name": "fender", "at": "0.5 m", "direction": "right", "force": "?"},
    ],
}


def page(problem: Mapping[str, Any], **course: str) -> str:
    return " ".join(work({**problem, "course": course}).text(5000).split())


def test_one_line_passes_and_several_pass() -> None:
    said = page(PLANK)
    assert (
        "the line of the bow rope and the line of the fender pass through the point where the bow rope acts, have no "
        "lever arm, and drop out" in said
    )
    assert "the line of the fender passes through the first post, has no lever arm, and drops out" in said


@pytest.mark.parametrize(
    ("course", "note"),
    (
        ({}, "each moment by its own letter, with its sign in it"),
        ({"balance": "two sides"}, "each moment by its own letter, a size"),
    ),
)
def test_letters_of_moments_say_whether_a_sign_is_in_them(course: dict[str, str], note: str) -> None:
    elbow = {
        "title": "A jug",
        "pivot": {"name": "elbow"},
        "segment": [{"name": "forearm", "mass": "1.6 kg", "com": "15 cm"}],
        "load": [{"name": "jug", "mass": "3 kg", "at": "33 cm"}],
        "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
    }
    assert note in page(elbow, first="moments", **course)


@pytest.mark.parametrize(
    ("to", "reason"),
    (
        ({}, "the weight of each length, times how long the load is"),
        (
            {"spread_to": "one end"},
            "a load that grows evenly from nothing has on the average half the weight per length of its heavy end",
        ),
    ),
)
def test_a_weight_per_length_says_how_the_load_lies(to: dict[str, str], reason: str) -> None:
    plank = {
        "title": "A plank",
        "pivot": {"name": "trestle"},
        "segment": [{"name": "plank", "length": "4 m"}],
        "load": [{"name": "sand", "weight": "30 N/m", "spread": ["1 m", "3 m"], **to}],
        "force": [{"name": "rope", "at": "4 m", "direction": "up", "force": "?"}],
    }
    assert reason.lower() in page(plank).lower()


def test_parts_along_and_across_a_sloping_bone_are_those_of_its_own_axes() -> None:
    """Worked by hand: 40 N straight down on a bone 30° above the horizontal has 20 N along it and 34.64 N across."""
    bone = {
        "title": "A bone",
        "pivot": {"name": "elbow"},
        "segment": [{"name": "forearm", "direction": "30 deg above right"}],
        "load": [{"name": "jug", "weight": "40 N", "at": "30 cm"}],
        "muscle": [{"name": "biceps", "at": "30 cm", "direction": "up"}],
        "force": [{"name": "hand", "at": "10 cm", "direction": "30 deg above right", "force": "20 N"}],
        "ask": ["biceps", "reaction.along", "reaction.across"],
        "course": {"axes": "along and across the forearm"},
    }
    answers = work(bone).answers
    assert (40.0, -20.0, 0.0) == tuple(
        pytest.approx(answers[name].value, abs=1e-9) for name in ("biceps", "reaction.along", "reaction.across")
    )
