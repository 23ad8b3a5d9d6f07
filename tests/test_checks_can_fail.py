"""Checks on answers at the edge of what they allow: how far a number may be off, and what is said word for word.

Sources: the inequality of the triangle (Euclid, Elements I.20); the classes of lever (any textbook of statics); the
moment of a weight on a sloping bone goes as the cosine of the slope (from r × F).
"""

from __future__ import annotations

from math import hypot

import pytest
from test_checks_on_answers import JUG, LEANING_JOINT, SEESAW, SLOPING, TIPTOE, Problem, arm, look

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
    [("30 deg above right", "Upright the weights"), ("30 deg below right", "Hanging straight down the weights")],
)
def test_the_end_where_a_weight_turns_nothing_is_the_one_the_bone_slopes_to(slope: str, end: str) -> None:
    segment = {**SLOPING["segment"][0], "direction": slope}
    (found,) = look("limits", work({**SLOPING, "segment": [segment]}).outcome)
    assert found.says.startswith(f"{end} would turn nothing; with the forearm level they would turn with 1030 N·cm.")


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
