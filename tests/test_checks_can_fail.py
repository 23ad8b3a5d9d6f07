"""Checks on answers at the edge of what they allow: how far a number may be off, and what is said word for word.

Sources: the inequality of the triangle (Euclid, Elements I.20); the classes of lever (any textbook of statics); the
moment of a weight on a sloping bone goes as the cosine of the slope (from r × F).
"""

from __future__ import annotations

from math import hypot

import pytest
from test_checks_on_answers import (
    BICEPS,
    JUG,
    LEANING_JOINT,
    SEESAW,
    SLOPING,
    TIPTOE,
    WITH_JOINT,
    Problem,
    arm,
    look,
    reach,
)

from explain import work
from explain.solve.outcome import Outcome

IN_REACH = "Force is gained, reach is the price."
IN_FORCE = "Reach and speed are gained, force is the price."


def _drawn_out(by: float) -> Outcome:
    """A joint force that points as the longest side of its triangle would, longer than it by a share."""
    outcome = work(LEANING_JOINT).outcome
    (pulled,) = (outcome.components[each.name] for each in outcome.muscles)
    others = [parts for name, parts in outcome.components.items() if name != outcome.muscles[0].name]
    longest = hypot(*pulled) + hypot(sum(each[0] for each in others), sum(each[1] for each in others))
    outcome.__dict__["values"] = {**outcome.values, "reaction.right": longest * (1 + by), "reaction.up": 0.0}
    return outcome


@pytest.mark.parametrize(("by", "result"), [(1e-8, "fails"), (1e-5, "fails"), (1e-10, "holds"), (-0.01, "holds")])
def test_a_triangle_closes_to_what_floats_lose_and_no_further(by: float, result: str) -> None:
    assert [result] == [each.result for each in look("triangle", _drawn_out(by))]


@pytest.mark.parametrize(("by", "result"), [(1.001, "fails"), (0.999, "fails"), (1 + 1e-12, "holds")])
def test_a_moment_that_is_not_that_of_its_slope_fails(by: float, result: str) -> None:
    outcome = work(SLOPING).outcome
    outcome.__dict__["moments"] = {name: value * by for name, value in outcome.moments.items()}
    (found,) = look("limits", outcome)
    assert (result, result == "fails") == (found.result, "not in between" in found.says)


@pytest.mark.parametrize(
    ("slope", "end"),
    [("30 deg above right", "vertical"), ("30 deg below right", "hanging straight down")],
)
def test_the_end_where_a_weight_turns_nothing_is_the_one_the_bone_slopes_to(slope: str, end: str) -> None:
    segment = {**SLOPING["segment"][0], "direction": slope}
    (found,) = look("limits", work({**SLOPING, "segment": [segment]}).outcome)
    said = f"With the forearm {end} the weights would turn nothing; with it horizontal they would turn with 1030 N·cm."
    assert found.says.startswith(said)


@pytest.mark.parametrize(
    ("problem", "said"),
    [
        (
            arm(),
            "Effort and load on one side, the effort nearer: third class about the elbow; mechanical advantage 0.14 "
            f"(4.00 cm against 28.0 cm for the jug). {IN_FORCE}",
        ),
        (
            TIPTOE,
            "Effort and load on one side, the load nearer: second class about the ball of the foot; mechanical "
            f"advantage 1.3 (16.0 cm against 12.0 cm for the body). {IN_REACH}",
        ),
        (
            SEESAW,
            "The neck lies between effort and load: first class about the neck; mechanical advantage 2.5 (5.00 cm "
            f"against 2.00 cm for the head). {IN_REACH}",
        ),
        (
            {**SEESAW, "load": [{"name": "head", "weight": "45 N", "point": ["10 cm", "0 cm"]}]},
            "The neck lies between effort and load: first class about the neck; mechanical advantage 0.50 (5.00 cm "
            f"against 10.0 cm for the head). {IN_FORCE}",
        ),
        (
            {**SEESAW, "load": [{"name": "head", "weight": "45 N", "point": ["5 cm", "0 cm"]}]},
            "The neck lies between effort and load: first class about the neck; mechanical advantage 1.0 (5.00 cm "
            "against 5.00 cm for the head). Neither force nor reach is gained.",
        ),
    ],
    ids=["third", "second", "first that gains force", "first that gains reach", "first that gains nothing"],
)
def test_a_lever_is_told_its_class_its_advantage_and_its_price(problem: Problem, said: str) -> None:
    assert [said] == [each.says for each in look("lever", work(problem).outcome)]


def test_the_load_of_a_lever_is_the_one_that_turns_most() -> None:
    light = {**JUG, "name": "cup", "mass": "0.1 kg"}
    (found,) = look("lever", work(arm(load=[light, JUG])).outcome)
    assert "for the jug" in found.says


def test_numbers_drift_by_what_each_rounding_took_and_no_more() -> None:
    """By hand: 206.01 and 824.04 are exact; 1030.05 is written 1030.1, and 1030.1/4 = 257.525 is written 257.53."""
    drift = work(arm(), course={"carry": "as shown"}).outcome.moved
    assert drift == pytest.approx((1 + 0.05 / 1030.05) * (1 + 0.005 / 257.525) - 1 + 1e-9, rel=1e-9)


def test_nothing_drifts_where_all_figures_are_carried() -> None:
    assert work(arm()).outcome.moved == 1e-9


@pytest.mark.parametrize(("by", "result"), [(1.001, "fails"), (1.00002, "holds")])
def test_a_pull_that_is_off_by_more_than_the_roundings_is_noticed(by: float, result: str) -> None:
    outcome = work(arm(), course={"carry": "as shown"}).outcome
    outcome.__dict__["values"] = {**outcome.values, "biceps.force": outcome.values["biceps.force"] * by}
    assert [result] == [each.result for each in look("put_back", outcome)]


ONE_WEIGHT = arm(segment={"name": "forearm"})
SEVEN = "The lever arm of the biceps is 4.00 cm, that of the jug 28.0 cm: 7.0 times as long."
TWO_WAYS = "All forces are parallel: {} N one way and {} N the other, and the joint"
BALANCE = "Every term of the balance is a force times a length, and the answer comes out in"


# By hand: the jug 3 x 9.81 = 29.43 N, the forearm 14.715 N, the biceps (29.43 x 28 + 14.715 x 14)/4 = 257.5 N; about
# the jug 257.5 x 24 = 6180 and 14.715 x 14 = 206 N cm.
@pytest.mark.parametrize(
    ("name", "problem", "off", "said"),
    [
        (
            "second_pivot",
            WITH_JOINT,
            {},
            "About the point where the jug acts, counter-clockwise positive: biceps −6180, forearm +210, joint force "
            "+5970 N·cm, together 0.",
        ),
        (
            "size_against_load",
            ONE_WEIGHT,
            {},
            f"{SEVEN} So the pull must be 7.0 times the weight of the jug, and it is.",
        ),
        (
            "size_against_load",
            ONE_WEIGHT,
            {"biceps.force": 1.1},
            f"{SEVEN} So the pull must be 7.0 times the weight of the jug, but it is 7.7 times.",
        ),
        (
            "size_against_load",
            arm(),
            {},
            f"{SEVEN} So the pull must be more than 7.0 times the weight of the jug; with the rest it is 8.8 times.",
        ),
        ("size_against_load", arm(), {"biceps.force": 0.5}, f"{SEVEN} But the pull is only 4.4 times its weight."),
        (
            "size_against_load",
            SEESAW,
            {},
            "The pull of the neck extensors has the longer arm (5.00 cm against 2.00 cm), so less than the weight it "
            "holds will do: 18.0 N against 45.0 N.",
        ),
        (
            "size_against_load",
            SEESAW,
            {"neck extensors.force": 3},
            "The pull of the neck extensors has the longer arm (5.00 cm against 2.00 cm), so it should be less than "
            "the weight it holds, but it is 54.0 N against 45.0 N.",
        ),
        ("parallel", WITH_JOINT, {}, f"{TWO_WAYS.format(257.5, 44.1)} makes up the difference, 213.4 N."),
        (
            "parallel",
            WITH_JOINT,
            {"reaction.up": 1.02},
            f"{TWO_WAYS.format(258, 44)} should make up the difference, but its force is 218 N.",
        ),
        ("parallel", SEESAW, {}, "All the other forces act the same way, so the joint carries their sum, 63.0 N."),
        (
            "parallel",
            SEESAW,
            {"reaction.up": 1.02},
            "All the other forces act the same way, so 63.0 N should be the joint force, and it came out as 64.3 N.",
        ),
        ("units", arm(course={"forces": "lb"}), {}, f"{BALANCE} pounds."),
        (
            "units",
            arm(load=[{**JUG, "mass": "?"}], muscle=[{**BICEPS, "force": "200 N"}]),
            {},
            f"{BALANCE} kilograms.",
        ),
        ("units", reach("200 N"), {}, f"{BALANCE} centimetres."),
    ],
)
def test_what_is_said_word_for_word(name: str, problem: Problem, off: dict[str, float], said: str) -> None:
    outcome = work(problem).outcome
    outcome.__dict__["values"] = {key: value * off.get(key, 1.0) for key, value in outcome.values.items()}
    assert [said] == [each.says for each in look(name, outcome)]
