"""Workings as students hand them in, each line with the verdict that a marker gives it.

Source of workings, verdicts and first wrong lines: a collection of fourteen workings made up from slips that markers
meet, verdicts by hand.
The problems are those of tests/scenarios. "ok" is a line that holds or is an aside; a replaced line is never wrong.
"""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from explain import work
from explain.api import Walkthrough

HERE = Path(__file__).parent
WORKINGS: list[dict[str, Any]] = json.loads((HERE / "workings.json").read_text("utf-8"))
MEANS = {"ok": ("holds", "aside"), "first-wrong": ("slips",), "carried": ("carried",)}


@cache
def problem(name: str) -> Walkthrough:
    return work(HERE / "scenarios" / f"{name}.toml")


def marked(working: dict[str, Any]) -> Any:
    return problem(working["problem"]).mark("\n".join(text for text, _ in working["lines"]))


@pytest.mark.parametrize("working", WORKINGS, ids=lambda each: each["id"])
def test_every_line_has_the_verdict_of_a_marker(working: dict[str, Any]) -> None:
    found = marked(working)
    for line, (text, verdict) in zip(found.lines, working["lines"], strict=True):
        assert line.verdict in MEANS[verdict], f"{text}: {line.verdict}, {line.says}"


@pytest.mark.parametrize("working", WORKINGS, ids=lambda each: each["id"])
def test_the_first_wrong_line_is_found_and_its_slip_named(working: dict[str, Any]) -> None:
    found = marked(working)
    assert working["first_wrong"] == found.first_wrong
    if working["slip"]:
        assert working["slip"] == found.issues[0].slips[0].slip


@pytest.mark.parametrize(
    "working", [each for each in WORKINGS if each["first_wrong"] is None], ids=lambda each: each["id"]
)
def test_a_right_answer_is_called_right(working: dict[str, Any]) -> None:
    given = [each for each in marked(working).answers if abs(each.value - working["answer"]["value"]) < 0.2]
    assert all(each.right for each in given)


ONE_JUG = {
    "title": "jug",
    "pivot": {"name": "elbow"},
    "segment": [{"name": "forearm"}],
    "ask": ["biceps", "reaction"],
    "muscle": [{"name": "biceps", "at": "4.0 cm", "direction": "up"}],
    "load": [{"name": "jug", "mass": "3.0 kg", "at": "33 cm"}],
}


@pytest.mark.parametrize(
    ("text", "verdicts"),
    (
        ("F = 242.8 N down", "slips"),
        ("F = 242.8 N up", "holds"),
        ("R = 213.4 N down", "holds"),
        ("R = 213.4 N up", "slips"),
        ("F*4 = 29.43*33 = 971.2\nF = 971.2*4 = 3884.8 N", "holds slips"),
        ("F = 242.8 N·m", "slips"),
        ("F = 24.75 kg", "slips"),
        ("W = 30 N\nF = 30*33/4 = 247.5 N", "holds holds"),
        ("F = 300 N", "unclear"),
        ("F = 242.8 N\nq = 17.2", "holds holds"),
        ("hello there", "aside"),
        ("W = 29.43 N\nF*4 = 29.43*33\nF*4 = 791.2\nF = 197.8 N\nR = 168.4 N", "holds holds slips carried carried"),
    ),
)
def test_single_lines_are_judged_by_size_sense_and_unit(text: str, verdicts: str) -> None:
    assert verdicts.split() == [each.verdict for each in work(ONE_JUG).mark(text).lines]


@pytest.mark.parametrize(
    ("text", "slip"),
    (
        ("F = -242.8 N", "negative-muscle"),
        ("F*4 + R*2 - 29.43*33 = 0", "reaction-in-moment-equation"),
        ("F = 971.2 N", "stopped-at-moment"),
        ("F*4 - 29.43*33 = 29.43", "unequal-net"),
        ("F = 24.75 kg", "kilogram-answer"),
        ("M_jug = 29.43*33 = 971.2 N m", "torque-in-newton-centimetre-mislabelled"),
        ("F = 29.43*33/4.0 = 224.8 N", "digit-transposed"),
        ("F = 29.43*33/4.0 = 3885 N", "torque-by-division"),
    ),
)
def test_a_slip_that_shows_in_how_a_line_is_written_is_named(text: str, slip: str) -> None:
    found = work(ONE_JUG).mark(text).lines[0]
    assert "slips" == found.verdict and slip in [each.slip for each in found.slips]


def test_where_the_answer_is_right_no_line_is_blamed_without_a_slip_that_explains_it() -> None:
    """Half the load's distance, and half the muscle's: the pull is right, and no slip is known that halves both."""
    found = work(ONE_JUG).mark(
        "W = 3.0*9.81 = 29.43 N\nM_jug = 29.43*16.5 = 485.6 N cm\nM_biceps = F*2.0\nF = 485.6/2.0 = 242.8 N"
    )
    assert "slips" not in {each.verdict for each in found.lines}


def test_the_segments_of_another_published_table_are_a_comment() -> None:
    """The forearm has 1.6 % of the body by Winter's table, 1.38 % for women by de Leva (1996, J. Biomechanics 29,
    1223-1230, Table 4).
    """
    shared = {
        "title": "arm",
        "pivot": {"name": "elbow"},
        "person": {"mass": "70 kg", "table": "winter"},
        "ask": ["biceps"],
        "segment": [{"name": "forearm", "length": "26 cm", "mass": "table", "com": "table"}],
        "load": [{"name": "jug", "mass": "3.0 kg", "at": "33 cm"}],
        "muscle": [{"name": "biceps", "at": "4.0 cm", "direction": "up"}],
    }
    right, wrong = work(shared).mark("W_f = 0.0138*70*9.81 = 9.477 N\nW_f = 0.0200*70*9.81 = 13.73 N").lines
    assert "holds" == right.verdict and "another published table" in right.note
    assert "unclear" == wrong.verdict


# ---------------------------------------------------------------------- what a right answer still wants
SAMPLES = HERE.parent / "samples"


@pytest.mark.parametrize(
    ("sample", "text", "notes"),
    (
        ("02-treacle-tin-again", "J = 196.8 N", ["direction-missing"]),
        ("02-treacle-tin-again", "J = 196.8 N down", [""]),
        ("02-treacle-tin-again", "F = 239.04213877 N", ["figures-overstated"]),
        ("02-treacle-tin-again", "F = 239.0 N", [""]),
        ("25-lantern", "R = 289.3 N\ntheta = 28.6 deg", ["", "angle-reference-not-stated"]),
        ("25-lantern", "R = 289.3 N\ntheta = 28.6 deg below horizontal", ["", ""]),
        ("25-lantern", "R_x = 253.9 N\nR_y = 138.6 N\nR = 289.3 N", ["", "", ""]),
        ("25-lantern", "R = 289.3 N", ["direction-missing"]),
    ),
)
def test_what_a_right_answer_wants_is_said_and_costs_no_verdict(sample: str, text: str, notes: list[str]) -> None:
    from rules.slips import SLIPS

    says = {rule.SLIP: rule.SAYS.says for rule in SLIPS} | {"": ""}
    found = work(SAMPLES / f"{sample}.toml").mark(text).lines
    assert [(each.verdict, each.note) for each in found] == [("holds", says[note]) for note in notes]


def test_a_sine_above_one_is_a_fraction_upside_down() -> None:
    found = problem_of_an_angle().mark("sin(theta) = 1.06").lines[0]
    assert ("slips", "inverse-ratio") == (found.verdict, found.slips[0].slip)


def problem_of_an_angle() -> Walkthrough:
    return work(
        {
            "title": "How steep?",
            "ask": ["shank.direction"],
            "pivot": {"name": "knee", "bone": "femur"},
            "segment": [
                {"name": "shank", "length": "43 cm", "direction": "? right of down", "mass": "3.2 kg", "com": "22 cm"}
            ],
            "load": [{"name": "boot", "mass": "2.2 kg", "at": "36 cm"}],
            "muscle": [
                {
                    "name": "quadriceps",
                    "at": "5.8 cm",
                    "moment_arm": "4.3 cm",
                    "turns": "counter-clockwise",
                    "force": "340 N",
                }
            ],
        }
    )
