"""The strategy says before the working what is cut free, what is unknown, and where moments are taken and why."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from test_conventions import data, page, work

from explain.walkthrough.strategy import strategy


def told(name: str, more: dict[str, Any] | None = None, **course: Any) -> str:
    return strategy(work({**data(name, **course), **(more or {})}).outcome)


def test_it_stands_between_the_assumptions_and_the_working_in_three_sentences() -> None:
    said = told("rock-oblique", word="moment")
    assert (
        "We cut the forearm and hand free at the elbow. "
        "Unknown are the pull of the biceps and the two parts of the joint force: three unknowns for three "
        "equations of equilibrium (moments, horizontal forces and vertical forces). "
        "We take moments about the elbow, because the joint force, which is unknown, passes through it and has no "
        "moment there; the only unknown left is the pull of the biceps." == said
    )
    whole = page("rock-oblique")
    assert whole.index("Assumptions.") < whole.index("Strategy.") < whole.index("Which way is positive")


def test_one_equation_is_enough_where_no_joint_force_is_asked_for() -> None:
    assert "but the equation of moments is enough for what is asked" in told("leg-raise", {"ask": ["quadriceps"]})


def test_it_speaks_as_the_class_does() -> None:
    said = told("rock-oblique", word="torque", person="you")
    assert said.startswith("Cut the forearm and hand free at the elbow.")
    assert "(torques, horizontal forces and vertical forces). Take torques about the elbow" in said


def test_parts_along_a_bone_are_named() -> None:
    assert "forces along the shank and forces across it" in told("leg-raise", axes="along and across the shank")


def test_a_plank_has_a_support_force_and_no_joint_force() -> None:
    said = told("beam", {"ask": ["reaction"]})
    assert ("support force" in said, "joint" in said) == (True, False)


def test_where_nothing_pushes_at_the_pivot_each_balance_gives_one_unknown() -> None:
    ladder = {
        "title": "-",
        "pivot": {"name": "foot", "reaction": False},
        "segment": [
            {"name": "ladder", "length": "5 m", "direction": "65 deg above right", "mass": "14 kg", "com": "50 %"}
        ],
        "force": [
            {"name": "wall", "at": "5.0 m", "direction": "left", "force": "?"},
            {"name": "normal force", "at": "0 m", "direction": "up", "force": "?"},
            {"name": "friction", "at": "0 m", "direction": "right", "force": "?"},
        ],
        "ask": ["wall", "friction"],
    }
    assert strategy(work(ladder).outcome).startswith(
        "We cut the ladder free from everything that touches it. Unknown are"
    )


@pytest.mark.parametrize("name", ["leg-raise", "beam", "how-steep", "how-far-out", "two-flexors"])
def test_it_gives_no_answer_away_and_is_silent_on_a_brief_page(name: str) -> None:
    assert not any(sign.isdigit() for sign in told(name))
    assert "" == told(name, detail="brief")


def test_where_nothing_is_at_rest_there_is_no_equation() -> None:
    said = told("jug-level", {"balanced": False, "ask": ["total.moment"], "muscle": []})
    assert "there is no equation to solve: the moments about the elbow are added" in said


def test_of_a_body_about_to_slip_the_friction_settles_what_moments_do_not() -> None:
    text = work(Path(__file__).parent.parent / "samples" / "41-wet-quay.toml").text(10000)
    assert "the coefficient of friction, since the body is about to slip, gives the horizontal part" in text
    assert "the moments about the foot of the ladder give the horizontal part" not in text
    assert "The ladder is at rest with Iolo 2.48 m from the foot of the ladder, and about to slip." in text
