"""What misled the judge in workings that others wrote, each cause once, with numbers worked out by hand."""

from __future__ import annotations

from functools import cache
from typing import Any

import pytest

from explain import work
from explain.api import Walkthrough
from explain.marking.slips.verdict import Marking

# Moments about the hinge in kN m: 1.5 x 2.0 + 2.0 x 3.0 = 9.0; arm 4.0 sin 30 = 2.0 m; cable 4.5 kN;
# hinge 4.5 cos 30 = 3.90 kN to the right, 3.5 - 2.25 = 1.25 kN up.
BEAM = {
    "title": "A beam over the quay",
    "pivot": {"name": "hinge", "bone": "wall"},
    "ask": ["cable", "reaction.right", "reaction.up"],
    "course": {"forces": "N"},
    "segment": [{"name": "beam", "length": "4.0 m", "direction": "right", "weight": "1.5 kN", "com": "2.0 m"}],
    "load": [{"name": "bell", "weight": "2.0 kN", "at": "3.0 m"}],
    "force": [{"name": "cable", "at": "4.0 m", "direction": "30 deg above left", "force": "?"}],
}
# Forearm and hand in one line 20 deg below the level; weights 9.81 N at 12 cm, 4.905 N at 26 + 9 = 35 cm along it:
# moments 9.81 x 11.28 + 4.905 x 32.89 = 110.6 + 161.3 = 272.0 N cm; biceps upright at 4.0 cm: arm 3.759 cm, 72.4 N.
CHAIN = {
    "title": "Pouring",
    "pivot": {"name": "elbow", "bone": "humerus"},
    "ask": ["biceps"],
    "segment": [
        {"name": "forearm", "length": "26 cm", "direction": "20 deg below right", "mass": "1.0 kg", "com": "12 cm"},
        {"name": "hand", "length": "18 cm", "direction": "20 deg below right", "mass": "0.5 kg", "com": "9 cm"},
    ],
    "muscle": [{"name": "biceps", "on": "forearm", "at": "4.0 cm", "direction": "up"}],
}
# 0.84 x 60 x 9.81 = 494.4 N at 10 cm, abductors upright at 5.0 cm: 988.8 N; on the hip 1483 N.
HIP = {
    "title": "On one leg",
    "pivot": {"name": "hip", "bone": "femur"},
    "person": {"mass": "60 kg"},
    "ask": ["abductors", "reaction"],
    "load": [{"name": "body above the hip", "mass": "84 %", "point": ["10 cm", "0 cm"]}],
    "muscle": [{"name": "abductors", "point": ["-5.0 cm", "0 cm"], "direction": "down"}],
}
# 2.5 x 9.81 = 24.53 N at 32 cm: 784.8 N cm; two pulls, the second 0.5 times the first, at 5.0 and 3.0 cm:
# 5.0 F + 1.5 F = 6.5 F, 120.7 N and 60.4 N; humerus 156.6 N.
TWO = {
    "title": "Two flexors",
    "pivot": {"name": "elbow", "bone": "humerus"},
    "ask": ["biceps", "brachialis", "reaction"],
    "segment": [{"name": "forearm", "length": "36 cm"}],
    "load": [{"name": "tin", "mass": "2.5 kg", "at": "32 cm"}],
    "muscle": [
        {"name": "biceps", "at": "5.0 cm", "direction": "up"},
        {"name": "brachialis", "at": "3.0 cm", "direction": "up", "force": "0.5 * biceps"},
    ],
}
# 40 N at 30 cm: 1200 N cm; 15 sin 13 = 3.374 cm: 355.6 N. With the sine as 0.22: 15 x 0.22 = 3.30 cm, 363.6 N; its
# parts 363.6 cos 13 = 354.3 N and 363.6 sin 13 = 81.8 N, less 40 N: 41.8 N.
SHALLOW = {
    "title": "An arm held out",
    "pivot": {"name": "shoulder", "bone": "scapula"},
    "ask": ["deltoid", "reaction"],
    "segment": [{"name": "arm", "length": "60 cm"}],
    "load": [{"name": "melon", "weight": "40 N", "at": "30 cm"}],
    "muscle": [{"name": "deltoid", "at": "15 cm", "direction": "13 deg from back toward up"}],
}
NAMED: dict[str, dict[str, Any]] = {"beam": BEAM, "chain": CHAIN, "hip": HIP, "two": TWO, "shallow": SHALLOW}


@cache
def problem(name: str) -> Walkthrough:
    return work(NAMED[name])


def marked(name: str, *lines: str) -> Marking:
    return problem(name).mark("\n".join(lines))


def kinds(name: str, *lines: str) -> list[str]:
    return [each.verdict for each in marked(name, *lines).lines]


@pytest.mark.parametrize(
    ("name", "lines"),
    [
        ("beam", ("M = 1.5*2.0 + 2.0*3.0 = 9.0 kNm", "S = 9.0/(4.0 sin 30) = 4.5 kN", "H_x = 4.5 cos 30 = 3.90 kN")),
        ("beam", ("S = 9.0 kNm : (4.0 m · sin 30°) = 4.5 kN",)),
        ("beam", ("S = (1.5(2.0) + 2.0(3.0))/(4.0 sin 30) = 4.50 [kN]", "H_x = 4.50 cos 30 = 3.90 [kN]")),
        ("beam", ("S = 4.5 kN", "H_y = 1.5 + 2.0 − 4.5 sin 30° = 1.25 kN, upwards   (3)")),
        ("chain", ("From the elbow the hand is 26 + 9 = 35 cm away, the forearm 12 cm", "biceps 72.4 N")),
        ("chain", ("the centre of the hand is 9 cm from the wrist", "biceps = 72.4 N")),
        ("hip", ("abductors 988.8 N = 168 % BW", "femur 1483 N = 252 % BW")),
        ("hip", ("abductors = 988.8 N", "that is 988.8/588.6 = 1.68 x body weight")),
        ("hip", ("abductors = 988.8 N = 1.68 BW",)),
        ("two", ("If the biceps pulls with B, the brachialis pulls with 0.5 B.", "B = 784.8/6.5 = 120.7 N")),
        ("two", ("tin 24.53 N, it hangs 32/5.0 = 6.4 times as far out", "biceps 120.7 N, brachialis 60.4 N")),
        ("two", ("B = 120.7 N, Br = 60.4 N", "R⃗ = (0, −156.6) N")),
        ("two", ("force\tup (N)", "biceps\t+120.7", "brachialis\t+60.4", "tin\t-24.53", "humerus\t-156.6")),
    ],
)
def test_right_lines_of_these_kinds_are_never_called_wrong_nor_asked_about(name: str, lines: tuple[str, ...]) -> None:
    found = kinds(name, *lines)
    assert not {"slips", "unclear", "carried"} & {*found} and "holds" in found


@pytest.mark.parametrize(
    ("name", "lines", "first", "slips"),
    [
        (
            "two",
            ("Bi = 0.5·Br", "0.5·Br·5.0 + Br·3.0 = 784.8", "Br = 784.8/5.5 = 142.7 N", "Bi = 71.3 N"),
            1,
            {"share-rule-reversed"},
        ),
        ("two", ("B = 120.7 N", "The humerus must carry the weights: R = 24.53 N"), 2, {"reaction-omits-muscle"}),
        (
            "hip",
            ("W = 0.84*60*9.81 = 494.4 N", "The femur carries what is above it, so R = W = 494.4 N"),
            2,
            {"reaction-omits-muscle"},
        ),
        (
            "hip",
            (
                "body weight = 60 x 9.81 = 588.6 N",
                "moment of the body about the hip = 588.6 x 10 = 5886 N cm",
                "abductors = 5886/5.0 = 1177 N",
            ),
            2,
            {"stance-leg-not-removed"},
        ),
        ("beam", ("beam 1.5 kN, bell 2.0 kN", "S·4.0·sin 30° = 1.5·2.0 + 2.0·3.0 = 3.5"), 2, {"arithmetic-slip"}),
        (
            "beam",
            ("Given: beam 1.5 kN at 2.0 m, bell 2.3 kN at 3.0 m", "cable = (3.0 + 6.9)/2.0 = 4.95 kN"),
            1,
            {"wrong-datum"},
        ),
        (
            "chain",
            (
                "hand 4.905 x 9 cos 20 = 41.5 N cm",
                "forearm 9.81 x 12 cos 20 = 110.6 N cm",
                "biceps = 152.1/3.759 = 40.5 N",
            ),
            1,
            {"chain-distance-not-added"},
        ),
    ],
)
def test_a_slip_is_found_in_lines_of_these_kinds(
    name: str, lines: tuple[str, ...], first: int, slips: set[str]
) -> None:
    found = marked(name, *lines)
    assert first == found.first_wrong
    assert slips & {each.slip for each in found.issues[0].slips[:3]}


def test_a_part_of_the_pull_that_is_said_later_is_not_the_answer() -> None:
    found = marked(
        "beam", "S = 4.5 kN", "H_x = 3.90 kN", "H_y = 1.25 kN", "across the cable pulls with 4.5 cos 30 = 3.90 kN"
    )
    assert {"cable": True} == {each.name: each.right for each in found.answers if each.name == "cable"}


def test_check_about_another_point_accuses_no_distance() -> None:
    found = kinds("two", "biceps 120.7 N, brachialis 60.4 N", "Check about the tin: 120.7*(32 - 5.0) = 3259 N cm")
    assert ["holds", "holds"] == found


def test_kilograms_for_the_joint_force_are_no_answer_but_a_step_to_it() -> None:
    said = "The humerus carries 18.5 - 2.5 = 16.0 kg"
    assert "slips" == kinds("two", "biceps 120.7 N, brachialis 60.4 N", said)[1]
    assert "slips" not in kinds("two", "biceps 120.7 N, brachialis 60.4 N", f"{said}, that is 156.6 N")


def test_a_sine_of_two_figures_carries_its_two_per_cent_to_the_parts() -> None:
    lines = ("sin 13 = 0.22", "3.30 F_d = 1200 N cm", "F_d = 1200/3.30 = 363.6 N", "N_x = 354.3 N")
    found = kinds("shallow", *lines, "N_y = 363.6 sin 13 - 40 = 41.8 N")
    assert ["holds"] * 5 == found
