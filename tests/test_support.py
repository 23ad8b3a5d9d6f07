"""What pushes at the pivot: a bone, or a support; and the words of statics where no muscle pulls."""

from __future__ import annotations

from typing import Any

import pytest
from every_course import COURSES, same_in

from explain import work

PLANK: dict[str, Any] = {
    "title": "A plank",
    "ask": ["rope", "reaction"],
    "pivot": {"name": "left end"},
    "segment": [{"name": "plank", "length": "2.0 m", "mass": "12 kg", "com": "50 %"}],
    "load": [{"name": "crate", "mass": "20 kg", "at": "0.50 m"}],
    "force": [{"name": "rope", "at": "2.0 m", "direction": "65 deg above right", "force": "?"}],
}


def text(**more: Any) -> str:
    return " ".join(work({**PLANK, **more}).text(300).split())


def test_a_named_support_pushes() -> None:
    said = text(pivot={"name": "left end", "support": "trestle"})
    assert "The trestle pushes on the plank with" in said
    assert "The force of the trestle acts at the left end" in said
    assert "how hard and which way does the trestle push on the plank" in said


@pytest.mark.parametrize("name", ["left end", "knee of the bracket"])
def test_where_no_bone_is_named_a_support_pushes(name: str) -> None:
    said = text(pivot={"name": name})
    assert f"The support at the {name} pushes on the plank with" in said
    assert "bone" not in said


@pytest.mark.parametrize("pivot", [{"name": "left end"}, {"name": "left end", "support": "trestle"}])
def test_statics_knows_no_joint_force_and_no_class_of_lever(pivot: dict[str, str]) -> None:
    walkthrough = work({**PLANK, "pivot": pivot})
    page = walkthrough.html().casefold()
    assert "support force" in page
    assert [] == [word for word in ("joint force", "the joint", "bone", "lever:", "class about") if word in page]
    assert "does not apply" == dict(walkthrough.checks)["lever"].result


def test_a_muscle_at_a_joint_has_a_joint_force_and_a_class_of_lever() -> None:
    muscle = {"name": "biceps", "at": "4.0 cm", "direction": "up"}
    problem = {**PLANK, "pivot": {"name": "elbow", "bone": "humerus"}, "force": [], "muscle": [muscle]}
    said = " ".join(work({**problem, "ask": ["biceps", "reaction"]}).text(300).split())
    assert "joint force" in said and "third class about the elbow" in said and "The humerus pushes" in said


def test_the_force_on_the_support_is_told_where_the_class_asks_for_it() -> None:
    said = text(pivot={"name": "left end", "support": "trestle"}, course={"reaction_on": "the other bone"})
    assert "pushes on the trestle with" in said and "the trestle pushes back on the plank" in said


@pytest.mark.parametrize("course", COURSES)
def test_in_every_class(course: str) -> None:
    same_in(course, {**PLANK, "pivot": {"name": "left end", "support": "trestle"}})
