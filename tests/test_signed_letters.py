"""A class for which up is positive and each force's letter has its sign: what is down is below nothing.

Checks against numbers by hand, and against the same problem with the signs in the equation.
"""

from __future__ import annotations

from typing import Any

import pytest

from explain import Fault, work

SIGNED = {"positive": "up", "signs": "with the numbers"}
Problem = dict[str, Any]
# By hand: 12 N at 10 cm and 600 N at 12 cm by 16 cm: 7320/16 = 457.5 N; below the ball 12 + 600 - 457.5 = 154.5 N.
TIPTOE: Problem = {
    "title": "On tiptoe on the quay",
    "pivot": {"name": "ball of the foot"},
    "ask": ["calf", "reaction", "body.moment"],
    "segment": [{"name": "foot", "length": "20 cm", "weight": "12 N", "com": "50 %"}],
    "load": [{"name": "body", "weight": "600 N", "at": "12 cm"}],
    "muscle": [{"name": "calf", "at": "16 cm", "direction": "up"}],
}
# The rope up 90 N at 25 cm, the hook down half of it at 20 cm, the triceps down at 2 cm: (2250 - 900)/2 = 675 N.
DOWN: Problem = {
    "title": "Hauling down",
    "pivot": {"name": "elbow", "bone": "humerus"},
    "ask": ["triceps", "triceps.stress", "reaction"],
    "segment": [{"name": "forearm", "length": "30 cm"}],
    "force": [
        {"name": "rope", "at": "25 cm", "direction": "up", "force": "90 N"},
        {"name": "hook", "at": "20 cm", "direction": "down", "force": "0.5 * rope"},
    ],
    "muscle": [{"name": "triceps", "at": "2 cm", "direction": "down", "area": "25 cm^2"}],
}
# 200 N at 4 cm against a bag at 25 cm: 32 N, 32/9.81 = 3.262 kg; all on the left of the elbow.
BAG: Problem = {
    "title": "How heavy a bag",
    "pivot": {"name": "elbow"},
    "ask": ["bag.mass", "reaction"],
    "segment": [{"name": "forearm", "length": "30 cm", "direction": "left"}],
    "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "200 N"}],
    "load": [{"name": "bag", "at": "25 cm", "mass": "?"}],
}
PUSHED: Problem = {**DOWN, "force": [{**DOWN["force"][0], "force": "30 N"}, {**DOWN["force"][1], "force": "90 N"}]}
CRATE: Problem = {**BAG, "ask": ["bag.weight"], "load": [{"name": "bag", "at": "25 cm", "weight": "?"}]}
# Spread 1.2 N/cm from 10 to 40 cm: 36 N at 25 cm; up 2 x 9.81 = 19.62 N at 30 cm, down 9.81 N at 35 cm: the prop at
# 55 cm (900 + 343.35 - 588.6)/55 = 11.90 N.
SHELF: Problem = {
    "title": "A shelf for nets",
    "pivot": {"name": "hinge"},
    "ask": ["prop", "reaction"],
    "segment": [{"name": "shelf", "length": "60 cm"}],
    "load": [{"name": "nets", "spread": ["10 cm", "40 cm"], "weight": "1.2 N/cm"}],
    "force": [
        {"name": "prop", "at": "55 cm", "direction": "up", "force": "?"},
        {"name": "cable", "at": "30 cm", "direction": "up", "hung": "2 kg"},
        {"name": "line", "at": "35 cm", "direction": "down", "hung": "1 kg"},
    ],
}
PROBLEMS = {"shelf": SHELF, "tiptoe": TIPTOE, "down": DOWN, "bag": BAG, "pushed": PUSHED, "crate": CRATE}
COURSES: tuple[dict[str, Any], ...] = (
    {},
    {"first": "moments"},
    {"carry": "as shown", "order": "letters first"},
    {"order": "divide first", "method": "turning component"},
    {"forces": "lb", "lengths": "in"},
)


@pytest.mark.parametrize("course", COURSES, ids=str)
@pytest.mark.parametrize("problem", PROBLEMS.values(), ids=PROBLEMS)
def test_no_answer_and_no_check_depends_on_it(problem: Problem, course: dict[str, Any]) -> None:
    plainly, here = work({**problem, "course": course}), work({**problem, "course": {**course, **SIGNED}})
    assert {
        name: (pytest.approx(each.value), each.shown, each.direction) for name, each in plainly.answers.items()
    } == {name: (each.value, each.shown, each.direction) for name, each in here.answers.items()}
    assert plainly.answers
    assert [(name, each.result) for name, each in plainly.checks] == [(name, each.result) for name, each in here.checks]


@pytest.mark.parametrize(
    ("problem", "answers", "lines"),
    [
        (
            TIPTOE,
            {"calf": 457.5, "reaction": 154.5, "body.moment": -7200.0},
            ("F_C d_C + W_F d_F + W_B d_B = 0", "F_C (16 cm) + (−12 N)(10 cm) + (−600 N)(12 cm) = 0"),
        ),
        (
            DOWN,
            {"triceps": 675.0, "triceps.stress": 27.0, "reaction": 630.0},
            ("F_H = −k_H F_R", "F_T (2 cm) + (90 N)(25 cm) + (−45 N)(20 cm) = 0", "σ_T = −F_T / A_T"),
        ),
        (SHELF, {"prop": 11.904}, ("F_L = −m_L g", "W_N = −w_N (b_N − a_N)", "(−36 N)(25 cm)")),
        (BAG, {"bag.mass": 3.262, "reaction": 168.0}, ("F_Bi d_Bi + W_Ba d_Ba = 0", "W_Ba = −m_Ba g")),
    ],
)
def test_every_force_stands_with_plus_and_the_sign_comes_with_its_number(
    problem: Problem, answers: dict[str, float], lines: tuple[str, ...]
) -> None:
    walkthrough = work({**problem, "course": SIGNED})
    assert {name: walkthrough.answers[name].value for name in answers} == pytest.approx(answers, rel=1e-4)
    page = walkthrough.text(400)
    assert [] == [line for line in lines if line not in page]


def test_the_sign_of_what_was_sought_is_put_in_words() -> None:
    assert "The plus sign says that the calf acts upwards." in work({**TIPTOE, "course": SIGNED}).text(400)
    down = work({**DOWN, "course": SIGNED})
    assert "The minus sign says that the triceps acts downwards." in down.text(400)
    assert "The triceps pulls with 675 N, straight down." in down.text(400)
    given = next(line for line in work({**TIPTOE, "course": SIGNED}).text(400).splitlines() if line.startswith("W_B"))
    assert given.endswith(" −600 N")


@pytest.mark.parametrize("given", ({"at": "4 cm", "direction": "70 deg from back toward up"}, {"moment_arm": "4 cm"}))
def test_a_force_that_is_not_vertical_has_no_one_sign(given: dict[str, str]) -> None:
    muscle = {"name": "calf", **given, **({"turns": "counter-clockwise"} if "moment_arm" in given else {})}
    with pytest.raises(Fault, match="calf is not vertical") as refusal:
        work({**TIPTOE, "ask": ["calf"], "muscle": [muscle], "course": SIGNED})
    assert ("course.signs", 'signs = "in the equation"') == (refusal.value.key, refusal.value.example)


def test_a_working_in_signed_numbers_is_judged_as_any_other() -> None:
    marked = work({**TIPTOE, "course": SIGNED}).mark(
        "W_F = -12 N\nF (16) + (-12)(10) + (-600)(12) = 0\nF = 457.5 N\nJ_y + 457.5 - 12 - 600 = 0\nJ_y = 154.5 N"
    )
    assert ["holds"] * 5 == [each.verdict for each in marked.lines]
    slipped = work({**TIPTOE, "course": SIGNED}).mark("F (16) + (-12)(10) + (600)(12) = 0\nF = -442.5 N")
    assert "sign-of-a-term" in {slip.slip for line in slipped.lines for slip in line.slips}
