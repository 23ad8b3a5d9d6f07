"""Checks on answers at the edge of what they allow: how far a number may be off, and what is said word for word.

Sources: the inequality of the triangle (Euclid, Elements I.20); the classes of lever (any textbook of statics); the
moment of a weight on a sloping bone goes as the cosine of the slope (from r × F).
"""

from __future__ import annotations

from math import asin, degrees, hypot

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

from explain import Fault, work
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
    said = f"With the forearm {end} the weights would have no moment; with it horizontal the moment would be 1030 N·cm."
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


ONE_FIGURE = {"figures": 1, "working_figures": 1, "carry": "as shown"}


def test_a_sine_that_roundings_take_beyond_one_asks_for_more_figures() -> None:
    """By hand: three times 0.46 N at 10 cm are 13.8 N cm, of the 14 N cm that 1.4 N at 10 cm can have at most; written
    with one figure each is 5, together 20, against 10.
    """
    loads = [{"name": name, "weight": "0.46 N", "at": "10 cm"} for name in ("cup", "mug", "jar")]
    turning = [{"name": "biceps", "at": "10 cm", "direction": "? above left", "force": "1.4 N"}]
    problem = arm(segment={"name": "forearm"}, load=loads, muscle=turning, ask=["biceps.direction"])
    assert work(problem).answers["biceps.direction"].value == pytest.approx(degrees(asin(13.8 / 14)))
    with pytest.raises(Fault, match="a sine or cosine beyond one") as refusal:
        work(problem, course=ONE_FIGURE)
    assert ("course.working_figures", "working_figures = 4") == (refusal.value.key, refusal.value.example)


@pytest.mark.parametrize(
    ("up", "down", "more"), (("15.4 cm", "9.6 cm", "5.6 cm"), ("16.5 cm", "8.9 cm", "7.4 cm")), ids=("nothing", "below")
)
def test_an_arm_that_roundings_take_to_nothing_or_below_asks_for_more_figures(up: str, down: str, more: str) -> None:
    """By hand: 0.2 cm are left; in inches, to one figure, 6 − 4 − 2 are nothing and 6 − 4 − 3 are less."""
    problem = {
        "title": "Folded",
        "pivot": {"name": "ankle"},
        "segment": [
            {"name": "foot", "length": up, "direction": "up"},
            {"name": "fin", "length": down, "direction": "down"},
            {"name": "tip", "length": "8 cm", "direction": "down"},
        ],
        "load": [{"name": "tin", "weight": "5 N", "point": ["3 cm", "0 cm"]}],
        "muscle": [{"name": "soleus", "on": "tip", "at": more, "direction": "left"}],
    }
    assert work(problem).answers["soleus"].value == pytest.approx(75)
    with pytest.raises(Fault, match="a lever arm of nothing, or less, comes out") as refusal:
        work({**problem, "course": {**ONE_FIGURE, "lengths": "in"}})
    assert "course.working_figures" == refusal.value.key


def test_a_centre_of_mass_that_only_roundings_put_on_its_segment_is_impossible_all_the_same() -> None:
    """By hand: 20 N at 4.4 cm are 88 N cm, of which 2.6 N at 22 cm take 57.2; what is left, 30.8 N cm by 1.0 N, lies at
    30.8 cm; with one figure 90 less 60 at 30 cm.
    """
    lying = {"name": "forearm", "length": "30.4 cm", "weight": "1.0 N", "com": "?"}
    load = [{"name": "cup", "weight": "2.6 N", "at": "22 cm"}]
    pulled = [{"name": "biceps", "at": "4.4 cm", "direction": "up", "force": "20 N"}]
    outcome = work(arm(segment=lying, load=load, muscle=pulled), course=ONE_FIGURE).outcome
    (found,) = look("possible", outcome)
    assert ("fails", True) == (found.result, "31 cm is more than its length of 30 cm" in found.says)


def test_a_pull_that_only_roundings_take_below_nothing_is_no_push() -> None:
    """By hand: three times 16 N at 10 cm against twice 25 N leave 20 N cm for the triceps at 4 cm, 5 N; as shown three
    times 200 N cm against twice 200.
    """
    down = [{"name": name, "at": "10 cm", "direction": "down", "force": "16 N"} for name in ("cup", "mug", "jar")]
    up = [{"name": name, "at": "10 cm", "direction": "up", "force": "25 N"} for name in ("rod", "pole")]
    pulled = [{"name": "triceps", "at": "4 cm", "direction": "down"}]
    problem = arm(segment={"name": "forearm"}, load=[], force=[*down, *up], muscle=pulled)
    outcome = work(problem, course={**ONE_FIGURE, "ties": "even"}).outcome
    assert (5.0, True) == (pytest.approx(outcome.answers["triceps"].value), outcome.values["triceps.force"] < 0)
    assert ["does not apply"] == [each.result for each in look("pulls", outcome)]
    assert ["fails"] == [each.result for each in look("rounded_away", outcome)]


def test_parts_of_the_joint_force_that_roundings_carry_off_are_told() -> None:
    """By hand: three times 1.5 x 9.81 = 14.7 N at 10 cm, the biceps at 20 cm with 22.1 N, 22.1 N left for the humerus
    beside the 100 N of the cord; as shown three times 10 N, 20 N, and 10 N.
    """
    loads = [{"name": name, "mass": "1.5 kg", "at": "10 cm"} for name in ("cup", "mug", "jar")]
    cord = {"name": "cord", "at": "20 cm", "direction": "left", "force": "100 N"}
    pulled = [{"name": "biceps", "at": "20 cm", "direction": "up"}]
    problem = arm(segment={"name": "forearm"}, load=loads, force=[cord], muscle=pulled, ask=["biceps", "reaction"])
    (found,) = look("rounded_away", work(problem, course=ONE_FIGURE).outcome)
    assert "warns" == found.result
    assert "kept, the vertical part of the joint force is 22.1 N, and here it came to 10 N. Show" in found.says
    assert ["does not apply"] == [each.result for each in look("rounded_away", work(problem).outcome)]


ONE_WEIGHT = arm(segment={"name": "forearm"})
SEVEN = "The lever arm of the biceps is 4.00 cm, that of the jug 28.0 cm: 7.0 times as long."
# All along 60° above the horizontal: 50 N at 30 cm against the biceps at 10 cm, so 150 N, and 100 N in the joint.
SLANTING = arm(
    segment={"name": "forearm"},
    load=[],
    force=[{"name": "strap", "at": "30 cm", "direction": "60 deg below left", "force": "50 N"}],
    muscle=[{"name": "biceps", "at": "10 cm", "direction": "60 deg above right"}],
    ask=["biceps", "reaction"],
)
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
            "About the point where the weight of the jug acts, counter-clockwise positive: biceps −6180, forearm +210, "
            "joint force +5970 N·cm, together 0.",
        ),
        (
            "size_against_load",
            ONE_WEIGHT,
            {},
            f"{SEVEN} So the pull must be as many times the weight of the jug, and it is.",
        ),
        (
            "size_against_load",
            ONE_WEIGHT,
            {"biceps.force": 1.1},
            f"{SEVEN} So the pull must be as many times the weight of the jug, but it is 7.7 times.",
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
        ("parallel", SLANTING, {}, f"{TWO_WAYS.format(150, 50)} makes up the difference, 100 N."),
        (
            "arm_not_longer",
            arm(muscle=[{"name": "biceps", "at": "4 cm", "moment_arm": "5 cm", "turns": "counter-clockwise"}]),
            {},
            "The moment arm of the biceps is given as 5.00 cm, but it grips only 4.00 cm from the elbow. A "
            "perpendicular distance cannot be longer than that; check the data.",
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
