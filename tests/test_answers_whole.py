"""Answers of small problems: value, unit, what is shown, direction and words; further roots and why they are set aside;
and what an outcome tells of forces, arms and moments. Values checked by hand.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest

from explain import Walkthrough, work
from explain.formula.plain import plain

FOREARM = {"name": "forearm", "length": "30 cm"}
ANSWERS: Mapping[str, tuple[dict[str, Any], list[tuple[Any, ...]]]] = {
    "signs in the letters": (
        {
            "ask": ["biceps", "cord", "jug.weight", "reaction"],
            "course": {"positive": "up", "signs": "with the numbers"},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
            "force": [{"name": "cord", "at": "10 cm", "direction": "down", "force": "0.5 * jug"}],
        },
        [
            ("biceps", 250.0, "N", "250 N", 90.0, "straight up"),
            ("cord", 20.0, "N", "20.0 N", 270.0, "straight down"),
            ("jug.weight", 40.0, "N", "40.0 N", 270.0, "straight down"),
            ("reaction", 190.0, "N", "190 N", 270.0, "straight down"),
            ("reaction.right", 0.0, "N", "0 N"),
            ("reaction.up", -190.0, "N", "-190 N"),
        ],
    ),
    "signs, what is down is sought": (
        {
            "ask": ["triceps"],
            "course": {"positive": "up", "signs": "with the numbers"},
            "force": [{"name": "push", "at": "20 cm", "direction": "up", "force": "30 N"}],
            "muscle": [{"name": "triceps", "at": "2 cm", "direction": "down"}],
        },
        [("triceps", 300.0, "N", "300 N", 270.0, "straight down")],
    ),
    "a root outside its range": (
        {
            "segment": [{"name": "forearm", "direction": "? above right", "range": ["30 deg", "80 deg"]}],
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "flexors", "moment_arm": "4 cm", "turns": "counter-clockwise", "force": "100 N"}],
        },
        [("forearm.direction", 60.0, "deg", "60.0 deg", 60.0, "60° above the horizontal, to the right")],
    ),
    "both roots in the range": (
        {
            "segment": [{"name": "forearm", "direction": "? above right", "range": ["0 deg", "180 deg"]}],
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "left", "force": "400 N"}],
        },
        [("forearm.direction", 26.5651, "deg", "26.6 deg", 26.5651, "26.6° above the horizontal, to the right")],
    ),
    "both pulls in the range": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [
                {
                    "name": "biceps",
                    "at": "4 cm",
                    "direction": "? above right",
                    "force": "400 N",
                    "range": ["0 deg", "180 deg"],
                }
            ],
        },
        [("biceps.direction", 30.0, "deg", "30.0 deg", 30.0, "30° above the horizontal, to the right")],
    ),
    "a grip at a share of the length": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "force": [{"name": "rope", "at": "50 %", "toward": ["0 cm", "20 cm"], "force": "?"}],
        },
        [("rope", 66.6667, "N", "66.7 N", 126.8699, "53.1° above the horizontal, to the left")],
    ),
    "the bone hangs aslant": (
        {
            "segment": [{"name": "forearm", "length": "30 cm", "direction": "20 deg right of down"}],
            "ask": ["biceps", "reaction"],
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "60 deg from back toward right"}],
        },
        [
            ("biceps", 78.9862, "N", "79.0 N", 50.0, "50° above the horizontal, to the right"),
            ("reaction", 54.7564, "N", "54.8 N", 201.9941, "22.0° below the horizontal, to the left"),
            ("reaction.right", -50.7713, "N", "-50.8 N"),
            ("reaction.up", -20.5069, "N", "-20.5 N"),
        ],
    ),
    "the bone is raised": (
        {
            "segment": [{"name": "forearm", "length": "30 cm", "direction": "25 deg above right"}],
            "ask": ["biceps", "reaction"],
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "70 deg from back toward up"}],
        },
        [
            ("biceps", 192.895, "N", "193 N", 135.0, "45° above the horizontal, to the left"),
            ("reaction", 167.023, "N", "167 N", 324.7497, "35.3° below the horizontal, to the right"),
            ("reaction.right", 136.397, "N", "136 N"),
            ("reaction.up", -96.397, "N", "-96.4 N"),
        ],
    ),
    "a stay that is sought from the bone": (
        {
            "pivot": {"name": "hook", "reaction": False},
            "segment": [{"name": "plank", "length": "2 m", "direction": "20 deg right of up"}],
            "ask": ["stay", "stay.direction"],
            "load": [{"name": "sack", "weight": "50 N", "at": "1 m"}],
            "force": [
                {"name": "rope", "at": "2 m", "direction": "up", "force": "?"},
                {"name": "wind", "at": "1 m", "direction": "right", "force": "30 N"},
                {"name": "stay", "at": "0 m", "direction": "? from back toward left", "force": "?"},
            ],
        },
        [
            ("stay", 34.1004, "N", "34.1 N", 208.387, "28.4° below the horizontal, to the left"),
            ("stay.direction", 41.613, "deg", "41.6 deg", 208.387, "28.4° below the horizontal, to the left"),
        ],
    ),
    "two roots of a sine": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "? above right", "force": "400 N"}],
        },
        [("biceps.direction", 30.0, "deg", "30.0 deg", 30.0, "30° above the horizontal, to the right")],
    ),
    "pounds": (
        {
            "ask": ["brake", "jug.moment", "reaction"],
            "load": [{"name": "jug", "weight": "9 lb", "at": "8 in"}],
            "couple": [{"name": "brake", "moment": "?", "turns": "counter-clockwise"}],
        },
        [
            ("brake", 72.0, "in lb", "72.0 in lb"),
            ("jug.moment", -72.0, "in lb", "-72.0 in lb"),
            ("reaction", 9.0, "lb", "9.00 lb", 90.0, "straight up"),
            ("reaction.right", 0.0, "lb", "0 lb"),
            ("reaction.up", 9.0, "lb", "9.00 lb"),
        ],
    ),
    "a mass in grams": (
        {
            "segment": [{"name": "forearm", "mass": "900 g", "com": "10 cm"}],
            "load": [{"name": "jug", "mass": "?", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "60 N"}],
        },
        [("jug.mass", 773.242, "g", "773 g")],
    ),
    "a moment in newton metres": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "couple": [
                {"name": "brake", "moment": "2 N m", "turns": "counter-clockwise"},
                {"name": "spring", "moment": "?", "turns": "counter-clockwise"},
            ],
        },
        [("spring", 600.0, "N cm", "600 N cm")],
    ),
    "a stress": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "area": "9 cm^2"}],
        },
        [("biceps", 200.0, "N", "200 N", 90.0, "straight up"), ("biceps.stress", 22.2222, "N/cm^2", "22.2 N/cm^2")],
    ),
    "a stress in inches": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "area": "2 in^2"}],
        },
        [("biceps", 200.0, "N", "200 N", 90.0, "straight up"), ("biceps.stress", 100.0, "N/in^2", "100 N/in^2")],
    ),
    "nothing, and 180 degrees": (
        {
            "ask": ["biceps", "reaction"],
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "20 cm", "direction": "up"}],
            "force": [{"name": "push", "at": "20 cm", "direction": "right", "force": "5 N"}],
        },
        [
            ("biceps", 40.0, "N", "40.0 N", 90.0, "straight up"),
            ("reaction", 5.0, "N", "5.00 N", 180.0, "straight to the left"),
            ("reaction.right", -5.0, "N", "-5.00 N"),
            ("reaction.up", 0.0, "N", "0 N"),
        ],
    ),
    "carried as shown": (
        {
            "segment": [{"name": "forearm", "mass": "1.37 kg", "com": "11.3 cm"}],
            "course": {"carry": "as shown", "working_figures": 3},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "67 deg from back toward up"}],
            "ask": ["biceps", "reaction"],
        },
        [
            ("biceps", 258.518, "N", "258 N", 113.0, "67° above the horizontal, to the left"),
            ("reaction", 210.365, "N", "210 N", 298.6965, "61.2° below the horizontal, to the right"),
            ("reaction.right", 101.011, "N", "101 N"),
            ("reaction.up", -184.527, "N", "-184 N"),
        ],
    ),
    "nothing along the bone, but for what floats lose": (
        {
            "ask": ["biceps", "reaction"],
            "course": {"axes": "along and across the forearm", "carry": "as shown"},
            "segment": [{"name": "forearm", "length": "30 cm", "direction": "17.3 deg below right"}],
            "force": [{"name": "push", "at": "20 cm", "direction": "72.7 deg above right", "force": "23 N"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "72.7 deg above right", "force": "?"}],
        },
        [
            ("biceps", -115.0, "N", "-115 N", 72.7, "72.7° above the horizontal, to the right"),
            ("reaction", 92.0, "N", "92.0 N", 72.7, "72.7° above the horizontal, to the right"),
            ("reaction.along", 0.0, "N", "0 N"),
            ("reaction.across", 92.0, "N", "92.0 N"),
        ],
    ),
    "two figures": (
        {
            "course": {"figures": 2},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "3 cm", "direction": "up"}],
        },
        [("biceps", 266.667, "N", "270 N", 90.0, "straight up")],
    ),
    "toward": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "force": [{"name": "rope", "at": "20 cm", "toward": ["0 cm", "20 cm"], "force": "?"}],
        },
        [("rope", 56.5685, "N", "56.6 N", 135.0, "45° above the horizontal, to the left")],
    ),
    "moments where nothing rests": (
        {
            "ask": ["total.moment", "jug.moment", "biceps.moment"],
            "balanced": False,
            "course": {"positive": "clockwise", "carry": "as shown"},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "30 N"}],
        },
        [
            ("total.moment", 680.0, "N cm", "680 N cm"),
            ("jug.moment", 800.0, "N cm", "800 N cm"),
            ("biceps.moment", -120.0, "N cm", "-120 N cm"),
        ],
    ),
    "a percentage of a length": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "?"}],
            "muscle": [{"name": "biceps", "at": "20 %", "direction": "up", "force": "100 N"}],
        },
        [("jug.at", 15.0, "cm", "15.0 cm")],
    ),
    "length asked in metres": (
        {
            "course": {"lengths": "metres"},
            "load": [{"name": "jug", "weight": "40 N", "at": "?"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "100 N"}],
        },
        [("jug.at", 0.1, "m", "0.100 m")],
    ),
    "pounds beside kilograms": (
        {
            "segment": [{"name": "forearm", "mass": "1 kg", "com": "10 cm"}],
            "load": [{"name": "jug", "weight": "9 lb", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        [("biceps", 224.695, "N", "225 N", 90.0, "straight up")],
    ),
    "kilonewtons": (
        {
            "load": [{"name": "jug", "weight": "0.04 kN", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        [("biceps", 200.0, "N", "200 N", 90.0, "straight up")],
    ),
    "a mass beside a person in pounds": (
        {
            "segment": [{"name": "forearm", "mass": "2 %", "com": "10 cm"}],
            "person": {"mass": "150 lb"},
            "load": [{"name": "jug", "mass": "?", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "200 N"}],
        },
        [("jug.mass", 7.48929, "lb", "7.49 lb")],
    ),
    "inches before centimetres": (
        {
            "segment": [{"name": "forearm"}],
            "load": [{"name": "jug", "weight": "40 N", "at": "?"}],
            "muscle": [{"name": "biceps", "at": "2 in", "direction": "up", "force": "100 N"}],
            "force": [{"name": "cord", "at": "5.08 cm", "direction": "down", "force": "20 N"}],
        },
        [("jug.at", 4.0, "in", "4.00 in")],
    ),
    "a share of the body weight": (
        {
            "person": {"mass": "70 kg"},
            "load": [{"name": "trunk", "weight": "10 %", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
            "force": [{"name": "push", "at": "10 cm", "direction": "down", "force": "5 %"}],
        },
        [("biceps", 429.188, "N", "429 N", 90.0, "straight up")],
    ),
    "a place behind": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "-20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "down"}],
        },
        [("biceps", 200.0, "N", "200 N", 270.0, "straight down")],
    ),
    "loads at the pivot": (
        {
            "ask": ["biceps", "reaction"],
            "load": [{"name": "jug", "weight": "40 N", "at": "0 cm"}, {"name": "tin", "weight": "10 N", "at": "8 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        [
            ("biceps", 20.0, "N", "20.0 N", 90.0, "straight up"),
            ("reaction", 30.0, "N", "30.0 N", 90.0, "straight up"),
            ("reaction.right", 0.0, "N", "0 N"),
            ("reaction.up", 30.0, "N", "30.0 N"),
        ],
    ),
    "two on two segments": (
        {
            "segment": [
                {"name": "arm", "length": "30 cm", "mass": "2 kg", "com": "40 %", "direction": "60 deg below right"},
                {
                    "name": "forearm",
                    "length": "25 cm",
                    "mass": "1 kg",
                    "com": "10 cm",
                    "direction": "45 deg from out toward up",
                },
            ],
            "ask": ["flexors", "reaction"],
            "load": [{"name": "jug", "weight": "20 N", "at": "20 cm"}],
            "muscle": [{"name": "flexors", "on": "arm", "at": "10 cm", "direction": "80 deg above left"}],
        },
        [
            ("flexors", 305.829, "N", "306 N", 100.0, "80° above the horizontal, to the left"),
            ("reaction", 257.293, "N", "257 N", 281.9118, "78.1° below the horizontal, to the right"),
            ("reaction.right", 53.1067, "N", "53.1 N"),
            ("reaction.up", -251.753, "N", "-252 N"),
        ],
    ),
    "a slip on a wall": (
        {
            "pivot": {"name": "end", "support": "wall", "surface": "up", "friction": "0.4", "slips": "down"},
            "ask": ["cord", "push", "reaction"],
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "force": [
                {"name": "cord", "at": "30 cm", "direction": "35 deg above right", "force": "?"},
                {"name": "push", "at": "30 cm", "direction": "right", "force": "?"},
            ],
        },
        [
            ("cord", 46.4919, "N", "46.5 N", 35.0, "35° above the horizontal, to the right"),
            ("push", -4.75061, "N", "-4.75 N", 0.0, "straight to the right"),
            ("reaction", 35.9011, "N", "35.9 N", 158.1986, "21.8° above the horizontal, to the left"),
            ("reaction.right", -33.3333, "N", "-33.3 N"),
            ("reaction.up", 13.3333, "N", "13.3 N"),
        ],
    ),
}


def worked(name: str) -> Walkthrough:
    return work({"title": "-", "pivot": {"name": "elbow"}, "segment": [FOREARM], **ANSWERS[name][0]})


@pytest.mark.parametrize("name", ANSWERS)
def test_every_answer_has_its_value_its_unit_and_its_words(name: str) -> None:
    found = worked(name).answers
    wanted = {each[0]: (*each[1:], *(None, "")[: 6 - len(each)]) for each in ANSWERS[name][1]}
    assert wanted == {
        each.name: (
            pytest.approx(each.value, rel=1e-5, abs=1e-9),
            each.unit,
            each.shown,
            None if each.direction is None else pytest.approx(each.direction, abs=1e-4),
            each.words,
        )
        for each in found.values()
    }
    assert [each[0] for each in ANSWERS[name][1] if not each[1]] == [
        each.name for each in found.values() if not each.value
    ]


@pytest.mark.parametrize(
    ("name", "other", "reason"),
    [
        (
            "a root outside its range",
            300.0,
            "60° below the horizontal, to the right (a turn of 300°), balances too, but lies outside the range that "
            "was given (30° to 80°)",
        ),
        (
            "both pulls in the range",
            150.0,
            "30° above the horizontal, to the left (a turn of 150°), balances too, and lies in the range that was "
            "given as well",
        ),
        (
            "two roots of a sine",
            150.0,
            "30° above the horizontal, to the left, balances too; of the two the smaller turn is taken",
        ),
    ],
)
def test_a_further_root_is_set_aside_with_a_reason(name: str, other: float, reason: str) -> None:
    (found,) = worked(name).answers.values()
    assert ([pytest.approx(other)], (reason,)) == (list(found.others), found.reasons)


@pytest.mark.parametrize(
    ("name", "lines"),
    [
        (
            "the bone hangs aslant",
            ["α_B = 90° + 20° − 60°", "α_B = 50°", "J_x + F_B cos 50° = 0", "J_y + F_B sin 50° − W_J = 0"],
        ),
        (
            "the bone is raised",
            ["α_B = 70° − 25°", "α_B = 45°", "J_x − F_B cos 45° = 0", "J_y + F_B sin 45° − W_J = 0"],
        ),
        (
            "a stay that is sought from the bone",
            ["F_W − F_St cos(70° − θ) = 0", "F_R − F_St sin(70° − θ) − W_Sa = 0"],
        ),
    ],
)
def test_an_angle_that_was_not_stated_is_put_together_from_those_that_were(name: str, lines: list[str]) -> None:
    first = [
        move.line.equation
        for move in worked(name).moves
        if move.goal.kind == "fold" or (move.goal.kind == "forces" and move.before is None)
    ]
    assert lines == list(map(plain, first))


# ---------------------------------------------------------------------- what an outcome tells
def test_a_working_tells_its_forces_and_moments() -> None:
    """By hand: 40 N at 20 cm are held by 40 · 20 / 3 = 266.67 N at 3 cm."""
    page = worked("two figures")
    outcome = page.outcome
    assert {"biceps": pytest.approx(8.0), "jug": pytest.approx(-8.0)} == outcome.moments
    assert {"biceps": (0.0, pytest.approx(266.6667)), "jug": (0.0, pytest.approx(-40.0))} == {
        name: (pytest.approx(right, abs=1e-9), up) for name, (right, up) in outcome.components.items()
    }
    assert (pytest.approx(0.0, abs=1e-9), pytest.approx(-226.6667)) == outcome.joint
    assert (False, True, True) == (outcome.joint_asked, outcome.possible, outcome.directed)
    assert (pytest.approx(266.6667), pytest.approx(306.6667)) == (outcome.largest_force, outcome.all_forces)
    assert (["biceps"], ["jug"]) == ([each.name for each in outcome.muscles], [each.name for each in outcome.weights])
    assert 0.3 == outcome.values["forearm.length"]
    assert [
        "<Outcome of '-': biceps 270 N>",
        "<Working of '-': 9 lines>",
        "<Move moments: F_B d_B − W_J d_J = 0>",
    ] == [repr(outcome), repr(outcome.working), repr(page.moves[2])]


def test_arms_reaches_and_pulls_of_an_oblique_force() -> None:
    """By hand: 4 cm · sin 67° = 3.682 cm; 258 N and 13.4 N are carried on as they are shown."""
    outcome = worked("carried as shown").outcome
    biceps, forearm, jug = outcome.body.forces
    assert [pytest.approx(each, rel=1e-4) for each in (0.03682, 0.04, 0.04, 258.0)] == [
        outcome.arm(biceps),
        outcome.reach(biceps),
        outcome.way(biceps),
        outcome.pull(biceps),
    ]
    assert [pytest.approx(0.113), pytest.approx(0.2)] == [outcome.arm(forearm), outcome.arm(jug)]
    assert pytest.approx(13.4) == outcome.size(forearm)
    assert 0.001 < outcome.moved < 0.05  # a few roundings to three figures, each of half a per cent at most
    assert outcome.is_given(jug.size) and not outcome.is_given(biceps.size)


@pytest.mark.parametrize(
    ("name", "written"),
    [
        ("carried as shown", ["1230 N", "12.3 cm", "−1230 N·cm", "8.3 times"]),
        ("pounds", ["278 lb", "4.86 in", "−109 in·lb", "8.3 times"]),
        ("length asked in metres", ["1230 N", "0.123 m", "−12.3 N·m", "8.3 times"]),
        ("two figures", ["1200 N", "12 cm", "−1200 N·cm", "8.3 times"]),
    ],
)
def test_a_class_writes_forces_lengths_and_moments_in_its_units(name: str, written: list[str]) -> None:
    outcome = worked(name).outcome
    assert written == [
        outcome.force(1234.5),
        outcome.length(0.123456),
        outcome.moment(-12.3456),
        outcome.times(8.26),
    ]
