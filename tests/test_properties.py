"""Random problems of every kind under every convention: certified to the last line, and numpy's answers.

The steady run draws the same problems each time; HYPOTHESIS_PROFILE=search draws new ones and many more.
"""

from __future__ import annotations

import os
from collections import Counter
from collections.abc import Mapping
from decimal import Decimal
from math import hypot
from typing import Any

import pytest
import statics
from hypothesis import assume, given, settings
from random_problems import KINDS, courses, problems

import rules
from explain.solve.answers import Answer, answers
from explain.errors import Fault, NoWay
from explain.problem.reader import read_problem
from explain.mechanics.free_body import cut_free
from explain.solve.engine import Working, work_through
from explain.formula.plain import plain

SEARCH = os.environ.get("HYPOTHESIS_PROFILE") == "search"
EACH = 2000 if SEARCH else 30  # problems of each kind
SET_ASIDE = 0.02  # the share of problems that numpy can do and the program may give up on


def worked(stated: Mapping[str, Any]) -> Working:
    return work_through(cut_free(read_problem(stated)), rules.MOVES)


def wanted(stated: Mapping[str, Any]) -> dict[str, float]:
    """What numpy says, in kg, m, s and degrees. Raises ArithmeticError where the problem is not well posed."""
    if stated.get("balanced", True):
        return statics.solved(stated)
    body = statics.Statics(stated)
    sense = -1 if stated["course"].get("positive") == "clockwise" else 1
    moments = {name: sense * push[0] for name, push in body.pushes().items()}
    return {"total.moment": sum(moments.values())} | {f"{name}.moment": moment for name, moment in moments.items()}


def in_si(answer: Answer) -> float:
    pound = "mass" if answer.name.endswith(".mass") else "force"
    unit = " ".join(each for each in answer.unit.split())
    return answer.value * statics.value(f"1 {unit}", pound)


def scale(stated: Mapping[str, Any], name: str, values: Mapping[str, float], answer: Answer) -> float:
    """What a difference is measured against: the largest force, for other quantities what that force makes of them."""
    body = statics.Statics(stated)
    body.values = {key: values[key] for key in body.unknown}
    pushes = [part for push in body.pushes().values() for part in push[1:] if part == part]
    force = max(
        [
            1.0,
            *map(abs, pushes),
            *(
                abs(value)
                for key, value in values.items()
                if key in ("reaction.right", "reaction.up") and value == value
            ),
        ]
    )
    if answer.unit == "deg":
        return 100.0
    return (
        force
        if answer.unit in ("N", "lb") and not name.endswith(".mass")
        else max(force / statics.value("9.8 m/s^2"), abs(values[name]), 1.0)
    )


def differences(
    stated: Mapping[str, Any], working: Working, values: Mapping[str, float]
) -> dict[str, tuple[float, float]]:
    """The answers that are not numpy's."""
    out = {}
    for name, answer in answers(working).items():
        if abs(in_si(answer) - values[name]) > 1e-9 * scale(stated, name, values, answer):
            out[name] = (in_si(answer), values[name])
        if name == "reaction" and answer.direction is not None:
            apart = (answer.direction - values["reaction.direction"] + 180) % 360 - 180
            if abs(apart) * values["reaction"] > 1e-6 * scale(stated, name, values, answer):
                out["reaction.direction"] = (answer.direction, values["reaction.direction"])
    return out


def outcome(stated: Mapping[str, Any]) -> str:
    """What became of a problem; fails where a line is not vouched for or an answer is not numpy's."""
    try:
        values = wanted(stated)
    except ArithmeticError:
        values = {}
    try:
        working = worked(stated)
        given_back = answers(working)
    except (Fault, NoWay) as refusal:
        return f"{type(refusal).__name__}: {refusal}" if values else "not well posed"
    assert given_back
    assert [plain(move.line.equation) for move in working.moves if not working.checker.vouches_for(move.line)] == []
    if not values:
        return "not well posed"
    assert differences(stated, working, values) == {}
    return "right"


@pytest.mark.parametrize("kind", KINDS)
def test_random_problems_are_certified_and_right(kind: str) -> None:
    seen: Counter[str] = Counter()

    @settings(max_examples=EACH)
    @given(problems(kinds=(kind,)))
    def each(stated: dict[str, Any]) -> None:
        seen[outcome(stated)] += 1

    each()
    well_posed = sum(seen.values()) - seen["not well posed"]
    given_up = {what: count for what, count in seen.items() if what not in ("right", "not well posed")}
    assert well_posed > EACH / 4
    assert sum(given_up.values()) <= SET_ASIDE * well_posed, given_up


@given(problems(), courses())
@settings(max_examples=EACH)
def test_how_a_class_speaks_and_counts_changes_no_answer(stated: dict[str, Any], course: dict[str, Any]) -> None:
    """Word, sense, order, method, units, figures, ties, carrying: all but g, and but the sign of a moment."""
    other = {
        **stated,
        "course": {
            **course,
            **{key: stated["course"][key] for key in ("g", "axes", "positive") if key in stated["course"]},
        },
    }
    if "g" not in stated["course"]:
        other["course"].pop("g", None)
    if "positive" not in stated["course"]:
        other["course"].pop("positive", None)
    try:
        first, second = answers(worked(stated)), answers(worked(other))
    except (Fault, NoWay):
        assume(False)
    largest = max(1.0, *(abs(in_si(each)) for each in first.values()))
    assert {name: pytest.approx(in_si(each), abs=1e-8 * largest) for name, each in first.items()} == {
        name: in_si(each) for name, each in second.items()
    }


@given(problems())
@settings(max_examples=EACH)
def test_the_number_shown_is_the_value_to_its_last_figure(stated: dict[str, Any]) -> None:
    """A class that carries what is shown may end a little beside the value; one that does not ends at it."""
    stated["course"]["carry"] = "unrounded"
    try:
        found = answers(worked(stated))
    except (Fault, NoWay):
        assume(False)
    figures = stated["course"].get("figures", 3)
    for answer in found.values():
        shown = Decimal(answer.shown.split()[0])
        last = Decimal((0, (1,), int(shown.as_tuple().exponent)))
        coarse = Decimal(10) ** (shown.adjusted() - figures + 1)
        assert abs(shown - Decimal(answer.value)) <= max(last, coarse) * Decimal("0.5000001")


@given(problems())
@settings(max_examples=EACH // 2)
def test_the_same_problem_is_worked_the_same_way_again(stated: dict[str, Any]) -> None:
    try:
        first, second = worked(stated), worked(stated)
    except (Fault, NoWay):
        assume(False)
    assert [plain(move.line.equation) for move in first.moves] == [plain(move.line.equation) for move in second.moves]


@given(problems(kinds=("force", "mass", "weight", "moment", "share")))
@settings(max_examples=EACH)
def test_a_problem_seen_in_a_mirror_has_the_same_sizes(stated: dict[str, Any]) -> None:
    """Right and left change places, and turns with them: sizes stay, the level part of the joint force changes its
    sign.
    """
    try:
        first, second = answers(worked(stated)), answers(worked(mirrored(stated)))
    except (Fault, NoWay):
        assume(False)
    largest = max(1.0, *(abs(each.value) for each in first.values()))
    turned = {"reaction.right": -1, "reaction.across": -1}
    assert {
        name: pytest.approx(each.value * turned.get(name, 1), abs=1e-8 * largest) for name, each in first.items()
    } == {name: each.value for name, each in second.items()}
    if "reaction.right" in first and "reaction.up" in first:
        assert hypot(first["reaction.right"].value, first["reaction.up"].value) == pytest.approx(
            hypot(second["reaction.right"].value, second["reaction.up"].value), abs=1e-8 * largest
        )


def mirrored(value: Any, key: str = "") -> Any:
    """A problem with right and left exchanged."""
    if isinstance(value, dict):
        out = {name: mirrored(each, name) for name, each in value.items()}
        return {"direction": "left", **out} if key == "segment" else out
    if isinstance(value, list) and key in ("point", "toward"):
        return [
            value[0].removeprefix("-")
            if value[0].startswith("-")
            else f"-{value[0]}"
            if value[0] != "0 cm"
            else value[0],
            value[1],
        ]
    if isinstance(value, list):
        return [mirrored(each, key) for each in value]
    if key == "turns":
        return {"clockwise": "counter-clockwise", "counter-clockwise": "clockwise"}[value]
    if key == "direction":
        return value.replace("right", "LEFT").replace("left", "right").replace("LEFT", "left")
    return value
