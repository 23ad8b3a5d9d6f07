"""Notes about people's arms, muscles, segments and joints: they inform, name a source, and are silent where nothing
is known.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from explain.reference.body_ranges import (
    Note,
    arm_note,
    bite_note,
    com_note,
    disc_note,
    hip_load_note,
    joint_moment_note,
    muscle_force_note,
    segment_mass_note,
    stress_note,
)
from explain.reference.segment_tables import PUBLISHED, plain_name

DATA = Path(__file__).parents[1] / "explain" / "reference"


def rows(table: str) -> list[dict[str, str]]:
    with (DATA / f"{table}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def inside(note: Note | None) -> bool | None:
    return None if note is None else note.inside


@pytest.mark.parametrize(
    ("muscle", "joint", "arm", "expected"),
    [
        ("elbow flexors", "elbow", 0.015, True),
        ("elbow flexors", "elbow", 0.07, True),
        ("elbow flexors", "elbow", 0.0149, False),
        ("Biceps", "elbow joint", 0.04, True),
        ("biceps", "elbow", 4.0, False),
        ("triceps", "elbow", 0.023, True),
        ("calf", "ankle", 0.045, True),
        ("Achilles tendon", "ankle axis", 0.45, False),
        ("patellar tendon", "knee", 0.055, True),
        ("hip abductors", "hip", 0.058, True),
        ("back muscles", "L5/S1", 0.05, True),
        ("neck extensors", "top of the neck", 0.036, True),
        ("masseter", "jaw joint", 0.034, True),
        ("hamstrings", "hip", 0.07, True),
        ("hamstrings", "knee", 0.07, False),
    ],
)
def test_a_moment_arm_is_compared_with_its_muscle_at_its_joint(
    muscle: str, joint: str, arm: float, expected: bool
) -> None:
    assert inside(arm_note(muscle, joint, arm)) == expected


@pytest.mark.parametrize(("muscle", "joint"), [("flexors", "elbow"), ("extensors", "knee"), ("abductors", "hip")])
def test_a_muscle_named_by_what_it_does_is_known_at_its_joint(muscle: str, joint: str) -> None:
    assert inside(arm_note(muscle, joint, 0.045)) is True


@pytest.mark.parametrize(
    ("muscle", "joint"),
    [("rope", "elbow"), ("biceps", "rudder post"), ("biceps", "knee"), ("", ""), ("flexors", "rudder post")],
)
def test_nothing_is_said_of_a_muscle_or_a_joint_that_is_not_known(muscle: str, joint: str) -> None:
    assert arm_note(muscle, joint, 0.04) is None


def test_a_long_arm_is_told_its_range_and_asked_for_its_unit() -> None:
    note = arm_note("calf", "ankle", 0.5)
    expected = (
        "A moment arm of 50.0 cm is longer than the 3.0 to 6.5 cm found for the triceps surae at the ankle in adults: "
        "is the unit right, and is it this distance that was meant?"
    )
    assert note is not None and note.says == expected


@pytest.mark.parametrize(
    ("muscle", "force", "expected"),
    [
        ("biceps", 842, True),
        ("biceps", 1060, True),
        ("biceps", 1061, False),
        ("quadriceps", 7500, True),
        ("quadriceps", 12000, False),
        ("masseter", 273, False),
        ("erector spinae", 4200, True),
    ],
)
def test_a_pull_is_compared_with_the_greatest_that_models_allow(muscle: str, force: float, expected: bool) -> None:
    assert inside(muscle_force_note(muscle, force)) == expected


def test_a_pull_beyond_every_model_is_statically_right_but_no_one_could_hold_it() -> None:
    note = muscle_force_note("biceps", 1236)
    expected = (
        "A pull of 1240 N is larger than models of the biceps brachii (both heads) allow, at most 842 to 1060 N: "
        "statically right, but no one could hold it."
    )
    assert note == (
        expected,
        "the greatest forces set in published musculoskeletal models",
        False,
        ("biceps", "pull"),
        True,
    )


def test_a_pull_beyond_one_muscle_of_a_group_asks_the_others_to_help() -> None:
    note = muscle_force_note("hip abductors", 2900)
    assert note is not None and note.says.endswith("statically right, but other muscles would have to help.")


@pytest.mark.parametrize(("muscle", "force"), [("rope", 500), ("neck extensors", 500), ("biceps", -1)])
def test_nothing_is_said_of_a_pull_with_no_limit_to_compare(muscle: str, force: float) -> None:
    assert muscle_force_note(muscle, force) is None


@pytest.mark.parametrize(
    ("segment", "share", "expected"),
    [
        ("forearm", 1.2, True),
        ("forearm", 2.3, False),
        ("shank", 4.65, True),
        ("Right thigh", 20, False),
        ("head", 8.26, True),
        ("forearm and hand", 2.2, True),
        ("plank", 5, None),
    ],
)
def test_a_segment_s_share_is_compared_with_the_tables(segment: str, share: float, expected: bool | None) -> None:
    assert inside(segment_mass_note(segment, share)) == expected


def test_every_share_that_a_published_table_prints_is_inside() -> None:
    printed = [
        (table, row["segment"], float(row["mass_percent"]))
        for table in sorted(set(PUBLISHED.values()))
        for row in rows(f"segments/{table}")
    ]
    assert [each for each in printed if inside(segment_mass_note(*each[1:])) is False] == []


@pytest.mark.parametrize(
    ("joint", "moment", "expected"),
    [("elbow", -80, True), ("elbow", 81, False), ("knee axis", 299, True), ("L4/L5", 401, False), ("toes", 10, None)],
)
def test_a_joint_moment_is_compared_with_what_adults_reach(joint: str, moment: float, expected: bool | None) -> None:
    assert inside(joint_moment_note(joint, moment)) == expected


@pytest.mark.parametrize(
    ("joint", "reaction", "expected"),
    [("hip", 1638, True), ("hip", 1038, False), ("hip", 3000, False), ("hip", 300, None), ("knee", 1638, None)],
)
def test_a_hip_load_is_told_in_body_weights(joint: str, reaction: float, expected: bool | None) -> None:
    assert inside(hip_load_note(joint, reaction, 726)) == expected


def test_nothing_is_said_of_a_hip_without_a_body_weight() -> None:
    assert hip_load_note("hip", 1638, 0) is None


@pytest.mark.parametrize(("load", "where"), [(3400, "below both"), (3460, "between the two"), (6401, "above both")])
def test_a_disc_s_load_is_placed_beside_the_two_limits_and_decides_nothing(load: float, where: str) -> None:
    note = disc_note("lowest disc", load)
    shown = {3400: "3400", 3460: "3460", 6401: "6401"}[int(load)]
    expected = (
        f"The disc is pressed with {shown} N along the trunk, {where} limits of a lifting guide of 1981 for pressing, "
        "3400 N for action and 6400 N at most. A sum like this one decides nothing about lifting."
    )
    assert note is not None and note.says == expected


def test_nothing_is_said_of_a_disc_at_another_joint_or_pulled_apart() -> None:
    assert disc_note("hip", 5000) is None
    assert disc_note("lowest disc", -5000) is None


@pytest.mark.parametrize(
    ("segment", "share", "expected"),
    [
        ("forearm", 43, True),
        ("forearm", 39, True),
        ("forearm", 60, True),
        ("forearm", 61, False),
        ("forearm", -43, False),
        ("right forearm and hand", 68, True),
        ("forearm and hand", 69, True),
        ("forearm and hand", 70, False),
        ("shank", 37, True),
        ("plank", 90, None),
    ],
)
def test_a_centre_of_mass_is_compared_with_the_tables(segment: str, share: float, expected: bool | None) -> None:
    assert inside(com_note(segment, share)) == expected


def test_every_centre_of_mass_that_a_published_table_prints_is_inside() -> None:
    printed = [
        (row["segment"], float(row["com_percent"]))
        for table in sorted(set(PUBLISHED.values()))
        for row in rows(f"segments/{table}")
    ]
    assert len(printed) > 40 and [each for each in printed if not inside(com_note(*each))] == []


@pytest.mark.parametrize(
    ("joint", "bitten", "force", "expected"),
    [
        ("jaw joint", "toffee", 500, True),
        ("jaw", "toffee", 910, False),
        ("jaw", "incisors", 383, False),
        ("jaw", "incisors", 300, True),
        ("elbow", "toffee", 500, None),
        ("jaw", "toffee", -1, None),
    ],
)
def test_a_bite_is_compared_with_the_greatest_measured(
    joint: str, bitten: str, force: float, expected: bool | None
) -> None:
    assert inside(bite_note(joint, bitten, force)) == expected


@pytest.mark.parametrize(("stress", "expected"), [(27, True), (73, True), (74, False), (141, False), (-1, None)])
def test_a_stress_is_compared_with_what_was_measured(stress: float, expected: bool | None) -> None:
    assert inside(stress_note(["biceps"], stress)) == expected


@pytest.mark.parametrize(
    "table",
    [
        "muscles/moment-arms",
        "muscles/force-limits",
        "muscles/joint-limits",
        "muscles/joint-loads",
        "segments/mass-shares",
    ],
)
def test_every_range_has_a_source(table: str) -> None:
    assert [row for row in rows(table) if not row["source"]] == []


@pytest.mark.parametrize("table", ["muscles/names", "muscles/joint-names"])
def test_every_name_stands_once_and_as_names_are_compared(table: str) -> None:
    names = [row["name"] for row in rows(table)]
    assert names == list(dict.fromkeys(map(plain_name, names)))


def test_every_muscle_that_a_range_is_about_has_a_name_that_finds_it() -> None:
    known = {row["stands_for"] for row in rows("muscles/names")}
    about = {row["muscle"] for table in ("moment-arms", "force-limits") for row in rows(f"muscles/{table}")}
    assert about <= known


def test_every_range_runs_upwards() -> None:
    arms = [(float(row["low_mm"]), float(row["high_mm"])) for row in rows("muscles/moment-arms")]
    assert [pair for pair in arms if not 0 < pair[0] < pair[1]] == []
