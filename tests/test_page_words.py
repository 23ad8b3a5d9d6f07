"""What a page says of small problems, word for word: answers, the sentence at its end, its sheet, "
"its lines as data."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

import pytest
from worked import EXTRA

from explain import Walkthrough, work
from explain.document.passage import Maths, Space
from explain.formula.plain import plain
from explain.walkthrough.answer_sentences import answer_line, minus_line, parts_line
from explain.walkthrough.as_json import as_object, json_text
from explain.walkthrough.closing_sentence import in_a_sentence
from explain.walkthrough.diagram import picture
from explain.walkthrough.exercise_sheet import checklist, student_sheet
from explain.write.text.pages import text

# a forearm of 30 cm at the elbow; by hand: 40 N at 20 cm are 800 N cm
SAID: Mapping[str, tuple[dict[str, Any], list[str], str]] = {
    "weight sought": (
        {
            "load": [{"name": "jug", "weight": "?", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "200 N"}],
        },
        ["The jug weighs 40.0 N."],
        "",
    ),
    "weights sought": (
        {
            "load": [{"name": "bricks", "weight": "?", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "200 N"}],
        },
        ["The bricks weigh 40.0 N."],
        "",
    ),
    "weight below": (
        {
            "load": [{"name": "jug", "weight": "?", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "down", "force": "200 N"}],
        },
        ["The jug would have to weigh −40.0 N, which nothing does."],
        "",
    ),
    "no moment": (
        {
            "ask": ["cord.moment", "biceps"],
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
            "force": [{"name": "cord", "at": "10 cm", "direction": "out", "force": "12 N"}],
        },
        ["The cord does not turn the body: 0 N·cm.", "The biceps pulls with 200 N, straight up."],
        "to hold the jug, 40.0 N, the biceps pulls with 200 N, 5.0 times that.",
    ),
    "no force": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "200 N"}],
            "force": [{"name": "rope", "at": "30 cm", "direction": "up", "force": "?"}],
        },
        ["No force of the rope is needed: 0 N."],
        "",
    ),
    "at behind": (
        {
            "load": [{"name": "bag", "weight": "10 N", "at": "?"}, {"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "100 N"}],
        },
        ["The bag would have to be 40.0 cm from the elbow, on its other side."],
        "with the biceps pulling 100 N, the bag balances 40.0 cm from the elbow, on its other side.",
    ),
    "limit sought": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "limit", "limit": "?"}],
        },
        ["The biceps pulls with 200 N, straight up."],
        "to hold the jug, 40.0 N, the biceps pulls with 200 N, 5.0 times that.",
    ),
    "large": (
        {
            "load": [{"name": "crate", "weight": "40000 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        ["The biceps pulls with 200\u202f000 N, straight up."],
        "to hold the crate, 40\u202f000 N, the biceps pulls with 200\u202f000 N, 5.0 times that.",
    ),
    "couples held": (
        {
            "couple": [{"name": "spring", "moment": "150 N cm", "turns": "clockwise"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        ["The biceps pulls with 37.5 N, straight up."],
        "to hold out against the spring, 150 N·cm, the biceps pulls with 37.5 N.",
    ),
    "couples held2": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "couple": [{"name": "spring", "moment": "1.5 N m", "turns": "clockwise"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        ["The biceps pulls with 238 N, straight up."],
        "to hold out against the jug and the spring, 950 N·cm together, the biceps pulls with 238 N.",
    ),
    "couple and force": (
        {
            "couple": [{"name": "spring", "moment": "1.5 N m", "turns": "clockwise"}],
            "force": [{"name": "wind", "at": "10 cm", "direction": "down", "force": "12 N"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        ["The biceps pulls with 67.5 N, straight up."],
        "to hold out against the wind and the spring, 270 N·cm together, the biceps pulls with 67.5 N.",
    ),
    "force held": (
        {
            "force": [{"name": "wind", "at": "10 cm", "direction": "down", "force": "12 N"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        ["The biceps pulls with 30.0 N, straight up."],
        "to hold out against the wind, 12.0 N, the biceps pulls with 30.0 N, 2.5 times that.",
    ),
    "force and load": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "force": [{"name": "wind", "at": "10 cm", "direction": "down", "force": "12 N"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        ["The biceps pulls with 230 N, straight up."],
        "to hold out against the wind and the jug the biceps pulls with 230 N.",
    ),
    "helped": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "force": [{"name": "wind", "at": "10 cm", "direction": "up", "force": "12 N"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        ["The biceps pulls with 170 N, straight up."],
        "to hold the jug, 40.0 N, the biceps pulls with 170 N, helped by the wind.",
    ),
    "many": (
        {
            "load": [
                {"name": "jug a", "weight": "10 N", "at": "10 cm"},
                {"name": "jug b", "weight": "11 N", "at": "11 cm"},
                {"name": "jug c", "weight": "12 N", "at": "12 cm"},
                {"name": "jug d", "weight": "13 N", "at": "13 cm"},
                {"name": "jug e", "weight": "14 N", "at": "14 cm"},
            ],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        ["The biceps pulls with 183 N, straight up."],
        "above all to hold the jug e, 14.0 N, the biceps pulls with 183 N.",
    ),
    "nothing against": (
        {
            "force": [{"name": "wind", "at": "10 cm", "direction": "up", "force": "12 N"}],
            "load": [{"name": "bag", "weight": "12 N", "at": "0 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "down"}],
        },
        ["The biceps pulls with 30.0 N, straight down."],
        "to hold out against the wind, 12.0 N, the biceps pulls with 30.0 N, 2.5 times that.",
    ),
    "parts both": (
        {
            "ask": ["biceps", "reaction"],
            "course": {"resultant": ["parts", "size and direction"]},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "70 deg from back toward up"}],
        },
        [
            "The biceps pulls with 213 N, 70° above the horizontal, to the left.",
            "The elbow pushes on the forearm with 176 N, 65.5° below the horizontal, to the right (in "
            "parts: 72.8 N to the right and 160 N down).",
        ],
        "to hold the jug, 40.0 N, the biceps pulls with 213 N, 5.3 times that, and the elbow carries 176 N.",
    ),
    "other bone": (
        {
            "ask": ["biceps", "reaction"],
            "course": {"reaction_on": "the other bone"},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "70 deg from back toward up"}],
        },
        [
            "The biceps pulls with 213 N, 70° above the horizontal, to the left.",
            "The forearm pushes on the other bone at the elbow with 176 N, 65.5° above the horizontal, to "
            "the left. Action and reaction: the other bone at the elbow pushes back on the forearm as "
            "hard, 65.5° below the horizontal, to the right.",
        ],
        "to hold the jug, 40.0 N, the biceps pulls with 213 N, 5.3 times that, and the elbow carries 176 N.",
    ),
    "parts bone": (
        {
            "ask": ["reaction.along", "reaction.across"],
            "course": {"axes": "along and across the forearm"},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "70 deg from back toward up"}],
        },
        [
            "<J_along> is 72.8 N.",
            "<J_across> is −160 N.",
        ],
        "to hold the jug, 40.0 N, the biceps pulls with 213 N, 5.3 times that, and the elbow carries 176 N.",
    ),
    "balanced total": (
        {
            "ask": ["total.moment", "jug.moment"],
            "balanced": False,
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "200 N"}],
        },
        ["The moments add to 0 N·cm.", "The jug turns the body with 800 N·cm, clockwise."],
        "",
    ),
    "total": (
        {
            "ask": ["total.moment", "jug.moment"],
            "balanced": False,
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "100 N"}],
        },
        [
            "The moments add to 400 N·cm, clockwise. The body begins to turn clockwise.",
            "The jug turns the body with 800 N·cm, clockwise.",
        ],
        "",
    ),
    "couple sought below": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "couple": [{"name": "brakes", "moment": "?", "turns": "clockwise"}],
        },
        ["The brakes turn the body with 800 N·cm, counter-clockwise."],
        "",
    ),
    "hung": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "force": [{"name": "cable", "at": "30 cm", "direction": "up", "hung": "?"}],
        },
        ["What hangs at the other end of the cable has a mass of 2.72 kg."],
        "2.72 kg at the other end of the cable hold the balance.",
    ),
    "hung below": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "force": [{"name": "cable", "at": "30 cm", "direction": "down", "hung": "?"}],
        },
        ["The cable would need a mass at its other end of −2.72 kg, which nothing has."],
        "",
    ),
    "arm below": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "moment_arm": "?", "turns": "clockwise", "force": "100 N"}],
        },
        ["The biceps would need a moment arm of −8.00 cm, which cannot be."],
        "",
    ),
    "arm": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "moment_arm": "?", "turns": "counter-clockwise", "force": "100 N"}],
        },
        ["The biceps has a moment arm of 8.00 cm."],
        "",
    ),
    "com": (
        {
            "segment": [{"name": "forearm", "mass": "2 kg", "com": "?"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "100 N"}],
        },
        ["The centre of mass of the forearm is 20.4 cm from the elbow."],
        "",
    ),
    "mass": (
        {
            "load": [{"name": "jugs", "mass": "?", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "100 N"}],
        },
        ["The jugs have a mass of 2.04 kg."],
        "with the biceps pulling 100 N, the jugs can have a mass of 2.04 kg.",
    ),
    "each": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "force": [{"name": "hand", "count": 2, "at": "20 cm", "direction": "up", "force": "?"}],
        },
        ["Each hand pushes up with 20.0 N."],
        "to hold the jug, 40.0 N, each hand lifts with 20.0 N.",
    ),
    "each left": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "force": [{"name": "rope", "count": 2, "at": "20 cm", "direction": "30 deg left of up", "force": "?"}],
        },
        ["Each rope pulls with 23.1 N, 60° above the horizontal, to the left."],
        "to hold the jug, 40.0 N, each rope pulls with 23.1 N.",
    ),
    "acts": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "force": [{"name": "pin", "at": "20 cm", "direction": "30 deg left of up", "force": "?"}],
        },
        ["The force of the pin is 46.2 N, 60° above the horizontal, to the left."],
        "to hold the jug, 40.0 N, the force of the pin is 46.2 N.",
    ),
    "acts up": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "force": [{"name": "pin", "at": "20 cm", "direction": "up", "force": "?"}],
        },
        ["The pin pushes up with 40.0 N."],
        "to hold the jug, 40.0 N, the pin pushes with 40.0 N.",
    ),
    "muscle negative": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "down"}],
        },
        [
            "The biceps would need a force of −200 N: the minus sign says that it would have to push, and "
            "a muscle cannot."
        ],
        "",
    ),
    "force negative": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "force": [{"name": "rope", "at": "20 cm", "direction": "30 deg left of down", "force": "?"}],
        },
        ["The rope acts with 46.2 N against the stated direction: 60° above the horizontal, to the right."],
        "",
    ),
    "segments at": (
        {
            "segment": [{"name": "arm", "length": "30 cm", "direction": "down"}, {"name": "hand", "length": "10 cm"}],
            "load": [{"name": "jug", "weight": "20 N", "at": "?", "on": "hand"}],
            "muscle": [{"name": "flexors", "moment_arm": "4 cm", "turns": "counter-clockwise", "force": "30 N"}],
        },
        ["The jug is 6.00 cm from the near end of the hand."],
        "with the flexors pulling 30.0 N, the jug balances 6.00 cm from the near end of the hand.",
    ),
    "angle pull": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "? above left", "force": "300 N"}],
        },
        ["The biceps pulls 41.8° above the horizontal, to the left."],
        "",
    ),
    "angle bones": (
        {
            "segment": [{"name": "forearms", "direction": "? above right"}],
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "flexors", "moment_arm": "4 cm", "turns": "counter-clockwise", "force": "100 N"}],
        },
        ["The forearms are at rest 60.0° above the horizontal, to the right."],
        "with the flexors pulling 100 N, the forearms are at rest 60.0° above the horizontal, to the right.",
    ),
    "turns with": (
        {
            "segment": [{"name": "forearm", "direction": "? above right"}],
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "20 deg from back toward up", "force": "300 N"}],
        },
        ["The forearm is at rest 59.1° above the horizontal, to the right."],
        "with the biceps pulling 300 N, the forearm is at rest 59.1° above the horizontal, to the right.",
    ),
}


def worked(problem: dict[str, Any]) -> Walkthrough:
    start = {"title": "-", "pivot": {"name": "elbow"}, "segment": [{"name": "forearm", "length": "30 cm"}]}
    return work({**start, **problem} if "title" not in problem else problem)


def of(name: str) -> Walkthrough:
    return worked(SAID[name][0])


@pytest.mark.parametrize("name", SAID)
def test_answers_and_the_last_sentence_are_said_word_for_word(name: str) -> None:
    outcome = of(name).outcome
    lines = [answer_line(outcome, each) for each in outcome.answers if each in dict(outcome.working.asked)]
    said = ["".join(plain_text(each) for each in line) for line in lines]
    assert (SAID[name][1], SAID[name][2]) == (said, in_a_sentence(outcome))


def plain_text(each: Any) -> str:
    return f"<{plain(each.of)}>" if isinstance(each, Maths) else str(each.text)


# ---------------------------------------------------------------------- the parts of the joint force
PARTS: Mapping[str, tuple[dict[str, Any], str, list[str]]] = {
    "parts alone": (
        {
            "ask": ["biceps", "reaction"],
            "course": {"resultant": ["parts"]},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "70 deg from back toward up"}],
        },
        "The elbow pushes the forearm with 72.8 N to the right and 160 N down.",
        ["", "The minus sign says that the elbow pushes the forearm down."],
    ),
    "parts, and the push on the other bone": (
        {
            "ask": ["biceps", "reaction"],
            "course": {"resultant": ["parts"], "reaction_on": "the other bone"},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "70 deg from back toward up"}],
        },
        (
            "The other bone at the elbow pushes the forearm with 72.8 N to the right and 160 N down. On the other"
            " bone at the elbow the forearm presses as hard, the opposite way."
        ),
        ["", "The minus sign says that the other bone at the elbow pushes the forearm down."],
    ),
    "parts along a bone": (
        {
            "ask": ["reaction.along", "reaction.across"],
            "course": {"axes": "along and across the forearm"},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "70 deg from back toward up"}],
        },
        (
            "The elbow pushes the forearm with 72.8 N along the forearm, away from the elbow, and 160 N across "
            "it, straight down."
        ),
        ["", "The minus sign says that this part of the force points across the forearm, straight down."],
    ),
    "bone below": (
        {
            "segment": [{"name": "forearm", "direction": "30 deg below left"}],
            "ask": ["reaction.along", "reaction.across"],
            "course": {"axes": "along and across the forearm"},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "70 deg from back toward up"}],
        },
        (
            "The elbow pushes the forearm with 43.0 N along the forearm, away from the elbow, and 139 N across "
            "it, 60° below the horizontal, to the right."
        ),
        ["", ""],
    ),
    "bone level": (
        {
            "ask": ["reaction.right"],
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "70 deg from out toward up"}],
        },
        "The elbow pushes the forearm with 72.8 N to the left.",
        ["The minus sign says that the elbow pushes the forearm to the left."],
    ),
    "level parts of other": (
        {
            "ask": ["reaction.up", "reaction.right"],
            "course": {"reaction_on": "the other bone"},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "70 deg from out toward up"}],
        },
        (
            "The other bone at the elbow pushes the forearm with 160 N down and 72.8 N to the left. On the other "
            "bone at the elbow the forearm presses as hard, the opposite way."
        ),
        [
            "The minus sign says that the other bone at the elbow pushes the forearm down.",
            "The minus sign says that the other bone at the elbow pushes the forearm to the left.",
        ],
    ),
    "forearms": (
        {
            "segment": [{"name": "forearms"}],
            "ask": ["reaction.up", "reaction.right"],
            "course": {"reaction_on": "the other bone"},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "70 deg from out toward up"}],
        },
        (
            "The other bone at the elbow pushes the forearms with 160 N down and 72.8 N to the left. On the other"
            " bone at the elbow the forearms press as hard, the opposite way."
        ),
        [
            "The minus sign says that the other bone at the elbow pushes the forearms down.",
            "The minus sign says that the other bone at the elbow pushes the forearms to the left.",
        ],
    ),
}


@pytest.mark.parametrize("name", PARTS)
def test_the_parts_of_the_joint_force_are_said_with_their_ways_and_signs(name: str) -> None:
    outcome = worked(PARTS[name][0]).outcome
    parts = [each for each in outcome.answers if each.startswith("reaction.")]
    assert PARTS[name][1:] == (
        "".join(plain_text(each) for each in parts_line(outcome)),
        [minus_line(outcome, each) for each in parts],
    )


# ---------------------------------------------------------------------- the diagram in words
DRAWN: Mapping[str, tuple[dict[str, Any], str, str]] = {
    "turns with": (
        {
            "segment": [{"name": "forearm", "direction": "? above right"}],
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "20 deg from back toward up", "force": "300 N"}],
        },
        (
            "The body is cut free at the elbow, marked by a circle. The forearm points at an angle that is "
            "sought, counted from the horizontal, to the right, toward straight up. The biceps pulls at an angle "
            "that turns with the forearm, 4 cm from the elbow. The weight of the jug pulls straight down, 20 cm "
            "from the elbow. The joint force acts at the elbow, drawn in two parts, to the right and upwards. "
            "Counter-clockwise counts as positive."
        ),
        (
            "The forces on the forearm. Thick red arrow: muscle. Blue arrow, solid head: weight. Dashed green "
            "arrow: joint force, drawn the way that counts as positive. Arrows are not to scale. Line with a "
            "right-angle mark: lever arm, the perpendicular distance from the elbow."
        ),
    ),
    "spread": (
        {
            "load": [
                {"name": "sand", "weight": "1 N/cm", "spread": ["5 cm", "10 cm"]},
                {"name": "snow", "weight": "10 N", "spread": ["-5 cm", "10 cm"], "spread_to": "one end"},
            ],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        (
            "The body is cut free at the elbow, marked by a circle. The forearm points straight to the right. The"
            " biceps pulls straight up, 4 cm from the elbow. The weight of the sand pulls straight down, spread "
            "evenly between 5 cm and 10 cm from the elbow. The weight of the snow pulls straight down, growing "
            "evenly from nothing at 5 cm on the other side of the elbow to its heaviest at 10 cm from the elbow. "
            "The joint force acts at the elbow, drawn upwards. Counter-clockwise counts as positive."
        ),
        (
            "The forces on the forearm. Thick red arrow: muscle. Blue arrow, solid head: weight. Dashed green "
            "arrow: joint force, drawn the way that counts as positive. Arrows are not to scale. Row of thin blue"
            " arrows: how a load is spread; its whole weight is the one arrow."
        ),
    ),
    "points": (
        {
            "title": "-",
            "pivot": {"name": "hip"},
            "load": [
                {"name": "trunk", "weight": "400 N", "point": ["10 cm", "5 cm"]},
                {"name": "my weight", "weight": "4 N", "point": ["0 cm", "5 cm"]},
            ],
            "muscle": [{"name": "abductors", "point": ["-5 cm", "-3 cm"], "direction": "80 deg below left"}],
            "force": [
                {"name": "push", "point": ["-5 cm", "-3 cm"], "direction": "left", "force": "12 N"},
                {"name": "rope", "point": ["-5 cm", "0 cm"], "toward": ["0 cm", "-3 cm"], "force": "3 N"},
            ],
        },
        (
            "The body is cut free at the hip, marked by a circle. The abductors pull 80° below the horizontal, to"
            " the left, 5 cm to the left of the hip and 3 cm below the hip. The push acts straight to the left, 5"
            " cm to the left of the hip and 3 cm below the hip. The rope pulls from a point 5 cm to the left of "
            "the hip toward one 3 cm below the hip. The weight of the trunk pulls straight down, 10 cm to the "
            "right of the hip. My weight pulls straight down, in line with the hip. The joint force acts at the "
            "hip, drawn in two parts, to the right and upwards. Counter-clockwise counts as positive."
        ),
        (
            "The forces on the body. Thick red arrow: muscle. Blue arrow, solid head: weight. Brown arrow, open "
            "head: other force. Dashed green arrow: joint force, drawn the way that counts as positive. Arrows "
            "are not to scale. Line with a right-angle mark: lever arm, the perpendicular distance from the hip."
        ),
    ),
    "behind": (
        {
            "segment": [{"name": "forearm", "direction": "20 deg above right"}],
            "load": [{"name": "jug", "weight": "40 N", "at": "-20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "80 deg below left"}],
            "couple": [{"name": "spring", "moment": "1 N m", "turns": "counter-clockwise"}],
        },
        (
            "The body is cut free at the elbow, marked by a circle. The forearm points 20° above the horizontal, "
            "to the right. The biceps pulls 80° below the horizontal, to the left, 4 cm from the elbow. The "
            "weight of the jug pulls straight down, 20 cm from the elbow, on the other side. The spring turns the"
            " body counter-clockwise. The joint force acts at the elbow, drawn in two parts, to the right and "
            "upwards. Counter-clockwise counts as positive."
        ),
        (
            "The forces on the forearm. Thick red arrow: muscle. Blue arrow, solid head: weight. Dashed green "
            "arrow: joint force, drawn the way that counts as positive. Purple arc, open head: a couple. Arrows "
            "are not to scale. Line with a right-angle mark: lever arm, the perpendicular distance from the "
            "elbow."
        ),
    ),
    "count": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "force": [
                {"name": "rope", "count": 2, "at": "20 cm", "direction": "up", "force": "?"},
                {"name": "peg", "count": 7, "at": "20 cm", "direction": "back", "force": "2 N"},
            ],
        },
        (
            "The body is cut free at the elbow, marked by a circle. The forearm points straight to the right. The"
            " rope, two alike, acts straight up, 20 cm from the elbow. The peg, 7 alike, acts back along the "
            "forearm, straight to the left, 20 cm from the elbow. The weight of the jug pulls straight down, 20 "
            "cm from the elbow. The joint force acts at the elbow, drawn in two parts, to the right and upwards. "
            "Counter-clockwise counts as positive."
        ),
        (
            "The forces on the forearm. Blue arrow, solid head: weight. Brown arrow, open head: other force. "
            "Dashed green arrow: joint force, drawn the way that counts as positive. Arrows are not to scale."
        ),
    ),
    "arm only": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [
                {"name": "biceps", "moment_arm": "?", "turns": "clockwise", "force": "100 N", "direction": "back"}
            ],
        },
        (
            "The body is cut free at the elbow, marked by a circle. The forearm points straight to the right. The"
            " biceps pulls back along the forearm, straight to the left, on a line whose distance from the elbow "
            "is sought. The weight of the jug pulls straight down, 20 cm from the elbow. The joint force acts at "
            "the elbow, drawn in two parts, to the right and upwards. Counter-clockwise counts as positive."
        ),
        (
            "The forces on the forearm. Thick red arrow: muscle. Blue arrow, solid head: weight. Dashed green "
            "arrow: joint force, drawn the way that counts as positive. Arrows are not to scale. Line with a "
            "right-angle mark: lever arm, the perpendicular distance from the elbow."
        ),
    ),
    "arm only2": (
        {
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "flexors", "moment_arm": "4 cm", "turns": "counter-clockwise"}],
        },
        (
            "The body is cut free at the elbow, marked by a circle. The forearm points straight to the right. The"
            " flexors pull on a line 4 cm from the elbow and turn the body counter-clockwise. The weight of the "
            "jug pulls straight down, 20 cm from the elbow. The joint force acts at the elbow, drawn in two "
            "parts, to the right and upwards. Counter-clockwise counts as positive."
        ),
        (
            "The forces on the forearm. Blue arrow, solid head: weight. Dashed green arrow: joint force, drawn "
            "the way that counts as positive. Thick red arc: a muscle known only by its moment arm. Arrows are "
            "not to scale."
        ),
    ),
    "com pct": (
        {
            "segment": [{"name": "forearm", "length": "30 cm", "mass": "2 kg", "com": "40 %"}],
            "load": [{"name": "jug", "mass": "1 kg", "at": "?"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up", "force": "300 N"}],
        },
        (
            "The body is cut free at the elbow, marked by a circle. The forearm points straight to the right. The"
            " biceps pulls straight up, 4 cm from the elbow. The weight of the forearm pulls straight down, at "
            "its centre of mass. The weight of the jug pulls straight down, at a distance that is sought. The "
            "joint force acts at the elbow, drawn upwards. Counter-clockwise counts as positive."
        ),
        (
            "The forces on the forearm. Thick red arrow: muscle. Blue arrow: weight (hollow head: of a segment; "
            "solid: of a load). Dashed green arrow: joint force, drawn the way that counts as positive. Arrows "
            "are not to scale."
        ),
    ),
    "pct at": (
        {
            "load": [{"name": "jug", "mass": "1 kg", "at": "40 %"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        (
            "The body is cut free at the elbow, marked by a circle. The forearm points straight to the right. The"
            " biceps pulls straight up, 4 cm from the elbow. The weight of the jug pulls straight down, on the "
            "forearm. The joint force acts at the elbow, drawn upwards. Counter-clockwise counts as positive."
        ),
        (
            "The forces on the forearm. Thick red arrow: muscle. Blue arrow, solid head: weight. Dashed green "
            "arrow: joint force, drawn the way that counts as positive. Arrows are not to scale."
        ),
    ),
    "second": (
        {
            "segment": [
                {"name": "arm", "length": "30 cm", "direction": "down"},
                {"name": "hand", "length": "10 cm", "direction": "30 deg from out toward right"},
            ],
            "load": [{"name": "jug", "weight": "20 N", "at": "6 cm", "on": "hand"}],
            "muscle": [{"name": "flexors", "moment_arm": "4 cm", "turns": "counter-clockwise"}],
        },
        (
            "The body is cut free at the elbow, marked by a circle. The arm points straight down. The hand points"
            " 60° below the horizontal, to the right. The flexors pull on a line 4 cm from the elbow and turn the"
            " body counter-clockwise. The weight of the jug pulls straight down, 6 cm along the hand. The joint "
            "force acts at the elbow, drawn in two parts, to the right and upwards. Counter-clockwise counts as "
            "positive."
        ),
        (
            "The forces on the arm and the hand. Blue arrow, solid head: weight. Dashed green arrow: joint force,"
            " drawn the way that counts as positive. Thick red arc: a muscle known only by its moment arm. Arrows"
            " are not to scale. Line with a right-angle mark: lever arm, the perpendicular distance from the "
            "elbow."
        ),
    ),
    "many arms": (
        {
            "segment": [{"name": "forearm", "direction": "40 deg above right"}],
            "load": [
                {"name": "jug a", "weight": "10 N", "at": "10 cm"},
                {"name": "jug b", "weight": "11 N", "at": "12 cm"},
                {"name": "jug c", "weight": "12 N", "at": "14 cm"},
                {"name": "jug d", "weight": "13 N", "at": "16 cm"},
                {"name": "jug e", "weight": "14 N", "at": "18 cm"},
                {"name": "jug f", "weight": "15 N", "at": "20 cm"},
                {"name": "jug g", "weight": "16 N", "at": "22 cm"},
            ],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
        },
        (
            "The body is cut free at the elbow, marked by a circle. The forearm points 40° above the horizontal, "
            "to the right. The biceps pulls straight up, 4 cm from the elbow. The weight of the jug a pulls "
            "straight down, 10 cm from the elbow. The weight of the jug b pulls straight down, 12 cm from the "
            "elbow. The weight of the jug c pulls straight down, 14 cm from the elbow. The weight of the jug d "
            "pulls straight down, 16 cm from the elbow. The weight of the jug e pulls straight down, 18 cm from "
            "the elbow. The weight of the jug f pulls straight down, 20 cm from the elbow. The weight of the jug "
            "g pulls straight down, 22 cm from the elbow. The joint force acts at the elbow, drawn upwards. "
            "Counter-clockwise counts as positive."
        ),
        (
            "The forces on the forearm. Thick red arrow: muscle. Blue arrow, solid head: weight. Dashed green "
            "arrow: joint force, drawn the way that counts as positive. Arrows are not to scale. Left out for "
            "want of room: the lever arms of 8 forces."
        ),
    ),
    "few arms": (
        {
            "segment": [{"name": "forearm", "direction": "40 deg above right"}],
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "0.5 cm", "direction": "up"}],
        },
        (
            "The body is cut free at the elbow, marked by a circle. The forearm points 40° above the horizontal, "
            "to the right. The biceps pulls straight up, 0.5 cm from the elbow. The weight of the jug pulls "
            "straight down, 20 cm from the elbow. The joint force acts at the elbow, drawn upwards. "
            "Counter-clockwise counts as positive."
        ),
        (
            "The forces on the forearm. Thick red arrow: muscle. Blue arrow, solid head: weight. Dashed green "
            "arrow: joint force, drawn the way that counts as positive. Arrows are not to scale. Line with a "
            "right-angle mark: lever arm, the perpendicular distance from the elbow. Left out for want of room: "
            "the lever arm of the biceps."
        ),
    ),
    "rough": (
        {
            "pivot": {"name": "heel", "friction": "0.4"},
            "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
            "muscle": [{"name": "biceps", "at": "4 cm", "direction": "up"}],
            "ask": ["biceps", "reaction"],
        },
        (
            "The body is cut free at the heel, marked by a circle. The forearm points straight to the right. The "
            "biceps pulls straight up, 4 cm from the heel. The weight of the jug pulls straight down, 20 cm from "
            "the heel. The support force acts at the heel, drawn upwards. The surface at the heel is rough, with "
            "a coefficient of friction of 0.4. Counter-clockwise counts as positive."
        ),
        (
            "The forces on the forearm. Thick red arrow: muscle. Blue arrow, solid head: weight. Dashed green "
            "arrow: support force, drawn the way that counts as positive. Arrows are not to scale. Line with "
            "short strokes: the rough surface."
        ),
    ),
}


@pytest.mark.parametrize("name", DRAWN)
def test_a_diagram_is_described_and_its_arrows_are_explained(name: str) -> None:
    drawn = picture(worked(DRAWN[name][0]).outcome)
    assert DRAWN[name][1:] == (drawn.description, "".join(plain_text(each) for each in drawn.caption))


# ---------------------------------------------------------------------- the sheet
@pytest.mark.parametrize(
    ("problem", "items"),
    [
        (
            EXTRA["mirror images"],
            [
                "the body, cut free at the ring",
                "the force of the left rope",
                "the force of the right rope",
                "the force of the support at the ring on it, at the ring",
                "each distance that you use, both its ends marked",
                "each angle, between two named lines",
                "which way counts as positive for moments",
            ],
        ),
        (
            EXTRA["pulls by cross-sections"],
            [
                "the forearm, cut free at the elbow",
                "the pull of the biceps",
                "the pull of the brachialis",
                "the force of the wrist strap",
                "the weight of the forearm, at the centre of mass",
                "the weight of the jug",
                "the force of the elbow on it, at the elbow",
                "each distance that you use, both its ends marked",
                "each angle, between two named lines",
                "which way counts as positive for moments",
            ],
        ),
        (
            {
                "load": [{"name": "jug", "weight": "40 N", "at": "20 cm"}],
                "couple": [{"name": "brakes", "moment": "?", "turns": "clockwise"}],
                "force": [{"name": "hand", "count": 2, "at": "4 cm", "direction": "up", "force": "3 N"}],
                "course": {"word": "torque"},
            },
            [
                "the forearm, cut free at the elbow",
                "the force of each hand",
                "the weight of the jug",
                "the torque of the brakes, as an arc arrow",
                "the force of the elbow on it, at the elbow",
                "each distance that you use, both its ends marked",
                "which way counts as positive for torques",
            ],
        ),
        (
            EXTRA["a line of five"],
            [
                "the jug, cut free at the elbow",
                "the force of the rope",
                "the weight of the jug",
                "the force of the elbow on it, at the elbow",
                "each distance that you use, both its ends marked",
                "each angle, between two named lines",
                "which way counts as positive for moments",
            ],
        ),
        (
            EXTRA["moments alone"],
            [
                "the board, cut free at the hinge",
                "the force of the left",
                "the force of the right",
                "each distance that you use, both its ends marked",
                "each angle, between two named lines",
                "which way counts as positive for moments",
            ],
        ),
    ],
)
def test_a_sheet_lists_what_belongs_on_the_diagram(problem: Mapping[str, Any], items: list[str]) -> None:
    outcome = worked(dict(problem)).outcome
    assert items == list(checklist(outcome))


def test_a_sheet_has_its_parts_in_order_and_the_room_that_was_asked_for() -> None:
    outcome = of("large").outcome
    assert (
        "-\n=\n\n"
        "A crate weighing 40000 N rests 20 cm from the elbow. The forearm (30 cm long) is horizontal and at\n"
        "rest. The biceps meets it 4 cm from the elbow and pulls straight up. Leave out the weight of the\n"
        "forearm. How hard does the biceps pull on the forearm?\n\n"
        "Given\n\n"
        "Letter  Meaning                 Value\n"
        "------  -------------------  --------\n"
        "W_C     Weight of the crate  40\u202f000 N\n"
        "d_C     Elbow to crate          20 cm\n"
        "d_B     Elbow to biceps          4 cm\n\n"
        "Find F_B, the pull of the biceps.\n"
    ) == text(student_sheet(outcome, 0, 0), 100)
    rooms = [each for each in student_sheet(outcome).passages if isinstance(each, Space)]
    assert [("Your free-body diagram", 62), ("Your working", 60)] == [(each.title, each.height) for each in rooms]
    own = [each for each in student_sheet(outcome, 30, 0).passages if isinstance(each, Space)]
    assert [("Your free-body diagram", 30)] == [(each.title, each.height) for each in own]


# ---------------------------------------------------------------------- the walkthrough as data
def test_answers_lines_and_checks_are_data() -> None:
    page = of("angle bones")
    found = as_object(page.outcome, page.checks[4:5] + page.checks[-1:])
    assert {
        "forearms.direction": {
            "value": pytest.approx(60.0),
            "unit": "deg",
            "shown": "60.0 deg",
            "direction": pytest.approx(60.0),
            "words": "60° above the horizontal, to the right",
            "others": [300.0],
            "set_aside": [
                "60° below the horizontal, to the right, balances too; the problem counts its angle the other way from "
                "there"
            ],
        }
    } == found["answers"]
    assert ["title", "answers", "lines", "checks"] == list(found)
    assert {
        "move": "moments",
        "equation": "F_Fl d_Fl⊥ − W_J d_J cos θ = 0",
        "latex": r"F_{\mathrm{Fl}}\, d_{\mathrm{Fl}\perp} - W_{\mathrm{J}}\, d_{\mathrm{J}}\, \cos \theta = 0",
        "what": "each moment is a force times its perpendicular distance: the flexors turn counter-clockwise (+), the "
        "jug clockwise (−)",
        "why": "the lever arm of a vertical force is horizontal, here with the cosine of the angle from the "
        "horizontal: the whole distance at 0°, nothing at 90°",
        "certified": True,
    } == found["lines"][2]
    assert "a term that crosses the equals sign changes its sign" == found["lines"][5]["watch"]
    assert [
        {
            "name": "put_back",
            "result": "holds",
            "says": "About the elbow 400 N·cm turn counter-clockwise and 400 N·cm clockwise: they balance.",
        },
        {
            "name": "plausible",
            "result": "holds",
            "says": "A moment of 4.00 N·m is within the roughly 80 N·m that a strong adult reaches at the elbow when "
            "bending or straightening the arm.",
            "source": "common practice for adults, from memory",
        },
    ] == found["checks"]
    assert found == json.loads(json_text(page.outcome, page.checks[4:5] + page.checks[-1:]))


def test_of_an_answer_without_a_direction_none_is_named_but_of_the_joint_force() -> None:
    resting = work(EXTRA["nothing at the joint"])
    found = as_object(resting.outcome, ())["answers"]
    assert {"value": 0.0, "unit": "N", "shown": "0 N", "direction": None} == found["reaction"]
    assert {"value", "unit", "shown"} == found["reaction.up"].keys()


def test_half_a_letter_does_not_spoil_the_data() -> None:
    loads = SAID["weight sought"][0]
    page = work({"title": "a\ud800b", "pivot": {"name": "elbow"}, "segment": [{"name": "arm"}], **loads})
    assert "a\ufffdb" == json.loads(json_text(page.outcome, ()))["title"]
