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

from explain import work
from explain.cli import main
from explain.join import Walkthrough

CASES = Path(__file__).parent / "cases" / "engine"
CARRIES, METHODS, ORDERS = ("unrounded", "as shown"), ("perpendicular distance", "turning component"), ("multiply first", "divide first", "letters first")
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
    return " ".join(walkthrough.text().split())


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
    assert "The turning part of the triceps comes out negative: it points against its stated direction." in said(work(CASES / "crash-turning.toml"))


@pytest.mark.parametrize(("name", "found"), [
    ("tiny-angle", "finer than a millionth of a degree"), ("huge-length", "1e+99 cm, above what can be worked with"),
    ("longcourse", "but there is no such file")])
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


def test_a_full_disk_is_no_fault_of_the_program() -> None:
    import subprocess
    import sys

    full = Path("/dev/full")
    if not full.exists():
        pytest.skip("this system has no device that is always full")
    with full.open("w") as stream:
        done = subprocess.run([sys.executable, "-c", "from explain.cli import main; main()", "work", str(CASES / "level-plank.toml")],
                              stdout=stream, stderr=subprocess.PIPE, check=False, timeout=60)
    assert (done.returncode, b"report it" in done.stderr) == (2, False)
