"""Problem files met in use that went wrong once: worked as numpy works them, or refused with what to change.

What is right comes from `statics.py`, which reads the files in floats and shares nothing with the program.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping
from itertools import product
from pathlib import Path
from typing import Any

import pytest
import statics
from click.testing import CliRunner, Result
from test_properties import differences

from explain import Fault, work
from explain.cli.main import main
from explain.api import Walkthrough

CASES = Path(__file__).parent / "cases" / "engine"
CARRIES, METHODS, ORDERS = (
    ("unrounded", "as shown"),
    ("perpendicular distance", "turning component"),
    ("multiply first", "divide first", "letters first"),
)
CRASHES = ("crash-angle-moment", "crash-diving", "crash-ropes", "crash-turning", "crash-zero-percent")


def stated(name: str) -> dict[str, Any]:
    return tomllib.loads((CASES / f"{name}.toml").read_text("utf-8"))


def conventions(name: str) -> Iterator[Mapping[str, Any]]:
    """A case as several classes would count it."""
    for carry, method, order, working in product(CARRIES, METHODS, ORDERS, (4, 5)):
        course = {"carry": carry, "method": method, "order": order, "working_figures": working}
        yield {**stated(name), "course": {**course, **stated(name).get("course", {})}}


def run(*arguments: object) -> Result:
    return CliRunner().invoke(main, [str(each) for each in arguments])


def said(walkthrough: Walkthrough) -> str:
    """The words of a page, without its lines and boxes."""
    return " ".join(walkthrough.text().replace("│", " ").split())


@pytest.mark.parametrize("name", CRASHES)
def test_a_problem_that_stopped_the_program_is_worked_as_numpy_works_it(name: str) -> None:
    for problem in conventions(name):
        found = {key: value for key, value in statics.solved(problem).items()}
        body = statics.Statics(problem, values=found)
        found |= {f"{key}.moment": push[0] for key, push in body.pushes().items()}
        walkthrough = work(problem)
        assert walkthrough.text()
        assert differences(problem, walkthrough.outcome.working, found) == {}


def test_the_cosine_of_a_small_angle_stays_on_the_board_where_it_is_written_as_one() -> None:
    problem = {**stated("crash-ropes"), "course": {"working_figures": 4}}
    assert "1.000 F_LR" in work(problem).text()


def test_a_turning_part_that_comes_out_negative_is_explained() -> None:
    assert "The turning part of the triceps comes out negative: it points against its stated direction." in said(
        work(CASES / "crash-turning.toml")
    )


@pytest.mark.parametrize(
    ("name", "found"),
    [
        ("tiny-angle", "finer than a millionth of a degree"),
        ("huge-length", "1e+99 cm, above what can be worked with"),
        ("longcourse", "but its name does not end in .toml"),
    ],
)
def test_what_is_beyond_all_measure_is_refused_with_the_limit(name: str, found: str) -> None:
    result = run("work", CASES / f"{name}.toml")
    assert (result.exit_code, found in result.stderr) == (2, True)


def test_an_infinite_mass_is_refused_with_what_a_number_is() -> None:
    text = (CASES / "crash-ropes.toml").read_text("utf-8").replace('"4.0 kg"', '"∞ kg"')
    with pytest.raises(Exception, match="does not begin with a number") as caught:
        work(text)
    assert getattr(caught.value, "exit_code", 0) == 2


def test_a_name_that_the_system_does_not_take_is_the_callers_fault() -> None:
    assert run("work", CASES / "level-plank.toml", "-o", "x" * 300 + ".md").exit_code == 2


@pytest.mark.parametrize(
    ("name", "what"),
    [
        ("negative-mass", "The jug cannot have a mass below nothing"),
        ("negative-com", "The centre of mass of the forearm and hand cannot lie outside of it"),
        ("negative-arm", "A moment arm is a distance and cannot be negative"),
    ],
)
def test_an_impossible_answer_fails_a_check_that_says_what_to_look_at(name: str, what: str) -> None:
    result = run("work", CASES / f"{name}.toml")
    text = " ".join(result.stdout.split())
    assert (result.exit_code, what in text, "Look again at" in text) == (1, True, True)


def test_a_centre_of_mass_beyond_the_end_of_its_segment_fails_the_check() -> None:
    problem = stated("negative-com")
    problem["segment"][0]["length"], problem["muscle"][0]["force"] = "40 cm", "600 N"
    assert "cannot lie beyond its end: 88.1 cm is more than its length of 40.0 cm" in said(work(problem))


@pytest.mark.parametrize("name", ["negative-mass", "negative-com", "negative-arm"])
def test_no_lever_has_a_negative_advantage(name: str) -> None:
    assert "advantage −" not in work(CASES / f"{name}.toml").text()


def test_a_lever_with_a_negative_arm_has_no_advantage_told() -> None:
    problem = stated("negative-arm")
    problem["muscle"][0]["direction"] = "up"
    assert "mechanical advantage" not in work(problem).text()


def test_where_the_rest_balances_no_pull_is_needed() -> None:
    text = said(work(CASES / "zero-pull.toml"))
    assert ("No pull of the biceps is needed: 0 N." in text, "came out positive" in text) == (True, False)


def test_a_pull_that_is_too_strong_at_every_angle_is_told_so() -> None:
    result = run("work", CASES / "too-strong.toml")
    assert (result.exit_code, "a smaller pull, or a larger load" in result.stderr) == (2, True)


def test_a_pull_that_is_too_weak_at_every_angle_is_told_so() -> None:
    problem = stated("crash-angle-moment")
    problem["muscle"][0]["force"] = "20 N"
    with pytest.raises(Fault, match="a larger pull, or a smaller load"):
        work(problem)


def test_a_force_against_its_direction_is_told_with_one_negation() -> None:
    assert "Each cable acts with 40.7 N against the stated direction: 40° above the horizontal, to the right." in said(
        work(CASES / "f-against.toml")
    )


def test_what_pushes_at_a_hinge_that_is_no_joint_is_a_support() -> None:
    assert "The support at the hinge pushes on the bar with 67.6 N" in said(work(CASES / "g-other-bone.toml"))


def test_parts_that_are_asked_beside_the_whole_are_told() -> None:
    assert "(in parts: 34.0 N to the right and 43.2 N down)" in said(work(CASES / "c-asked-parts.toml"))


def test_an_exact_answer_has_the_figures_of_the_class() -> None:
    assert work(CASES / "k-exact-figures.toml").answers["biceps"].shown == "28.000 N"


def test_a_class_that_calls_distances_s_has_another_letter_for_a_line() -> None:
    problem = stated("d-letter-s")
    assert differences(problem, work(problem).outcome.working, statics.solved(problem)) == {}


def test_a_class_that_calls_distances_by_any_letter_gets_a_working() -> None:
    for letter in "slmxLWFgpq":
        problem = {**stated("d-letter-s"), "course": {"distance_letter": letter}}
        assert work(problem).text()
