"""What makes one problem as hard as another: what differs is told, each feature with the names it hangs on."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest

from explain.api import work
from explain.vary.settle_only import accounted
from explain.vary.shape import Shape, differences, shape

ELBOW = {
    "title": "A pail at the well",
    "ask": ["biceps", "reaction"],
    "pivot": {"name": "elbow", "bone": "humerus"},
    "segment": [{"name": "forearm", "length": "36 cm", "mass": "1.5 kg", "com": "15 cm"}],
    "load": [{"name": "pail", "mass": "3.0 kg", "at": "30 cm"}],
    "muscle": [{"name": "biceps", "at": "4.0 cm", "direction": "70 deg from back toward up"}],
}


def _shape(**tables: Any) -> Shape:
    outcome = work({**ELBOW, **tables}).outcome
    return shape(outcome, *accounted(outcome))


def _told(**tables: Any) -> Iterator[str]:
    yield from (each.what for each in differences(_shape(**tables), _shape()))


def test_other_numbers_alone_make_no_other_shape() -> None:
    assert [] == list(_told(load=[{**ELBOW["load"][0], "mass": "4.0 kg"}]))


def test_a_load_on_the_other_side_of_the_pivot_turns_the_other_way() -> None:
    """And the joint no longer pushes down, since the pull is so small."""
    assert ["the way that the pail turns", "the sense of the upright part of the joint force"] == list(
        _told(load=[{**ELBOW["load"][0], "at": "-2 cm"}])
    )


def test_a_load_over_the_pivot_turns_no_way() -> None:
    assert "the way that the pail turns" in set(_told(load=[{**ELBOW["load"][0], "at": "0 cm"}]))


def test_a_pull_that_would_have_to_push_has_the_other_sign() -> None:
    down = {**ELBOW["muscle"][0], "direction": "70 deg from back toward down"}
    assert "the sign of the force of the biceps" in set(_told(muscle=[down]))


@pytest.mark.parametrize(
    ("muscle", "part"),
    [
        ({"direction": "110 deg from back toward up"}, "the sense of the level part of the joint force"),
        ({"at": "35 cm"}, "the sense of the upright part of the joint force"),
    ],
)
def test_a_part_of_the_joint_force_that_turns_round_is_told(muscle: dict[str, str], part: str) -> None:
    assert part in set(_told(muscle=[{**ELBOW["muscle"][0], **muscle}]))


def test_a_difference_is_told_once_with_the_names_it_hangs_on() -> None:
    other = _shape(load=[{**ELBOW["load"][0], "at": "-2 cm"}])
    assert [("pail",), ("reaction",)] == [each.of for each in differences(other, _shape())]


def test_what_the_other_has_more_is_told_as_not_there() -> None:
    cup = {"name": "cup", "mass": "0.2 kg", "at": "20 cm"}
    found = {each.what: each.how for each in differences(_shape(), _shape(load=[*ELBOW["load"], cup]))}
    assert "not there" == found["the way that the cup turns"]
