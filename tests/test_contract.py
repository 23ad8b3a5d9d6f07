"""The files of the contract run as they stand, and their answers come out."""

from __future__ import annotations

import json
from importlib.util import module_from_spec, spec_from_file_location
from math import isclose
from pathlib import Path

import pytest
from worked import CONTRACT, HERE, worked

from explain.solve.answers import Answer, answers

WANTED = json.loads((HERE / "contract" / "answers.json").read_text("utf-8"))["answers"]
EACH = [(file, name) for file, found in WANTED.items() for name in found]


def _answers(file: str) -> dict[str, Answer]:
    return answers(worked(HERE / "contract" / file))


def _largest(file: str) -> float:
    """The largest force of a problem in newtons, to measure forces against that should vanish."""
    values = worked(HERE / "contract" / file).settled.values
    return max(
        abs(value)
        for key, value in values.items()
        if key.endswith((".force", ".weight", "reaction.right", "reaction.up"))
    )


def test_the_answers_that_are_kept_are_those_that_numpy_finds() -> None:
    spec = spec_from_file_location("contract_by_numpy", HERE / "contract" / "solve.py")
    assert spec is not None and spec.loader is not None
    by_numpy = module_from_spec(spec)
    spec.loader.exec_module(by_numpy)
    assert WANTED == dict(by_numpy.answers())


def test_every_file_of_the_contract_has_answers_and_every_answer_a_file() -> None:
    assert {path.name for path in CONTRACT} == set(WANTED)


@pytest.mark.parametrize(("file", "name"), EACH)
def test_the_value_is_the_one_worked_out_by_hand(file: str, name: str) -> None:
    found, wanted = _answers(file)[name], WANTED[file][name]
    assert found.unit == wanted["unit"]
    assert isclose(found.value, wanted["value"], rel_tol=1e-5, abs_tol=1e-6 * _largest(file))


@pytest.mark.parametrize(("file", "name"), [each for each in EACH if "direction" in WANTED[each[0]][each[1]]])
def test_the_direction_is_the_one_worked_out_by_hand(file: str, name: str) -> None:
    found = _answers(file)[name].direction
    assert found is not None
    assert abs((found - WANTED[file][name]["direction"] + 180) % 360 - 180) < 0.01


@pytest.mark.parametrize(("file", "name"), [each for each in EACH if "others" in WANTED[each[0]][each[1]]])
def test_the_other_angles_are_listed_each_with_a_reason(file: str, name: str) -> None:
    found, others = _answers(file)[name], WANTED[file][name]["others"]
    assert [round(each, 2) for each in found.others] == [round(each, 2) for each in others]
    assert len([reason for reason in found.reasons if reason]) == len(others)


@pytest.mark.parametrize("path", CONTRACT, ids=lambda path: str(path.stem))
def test_every_line_is_vouched_for(path: Path) -> None:
    working = worked(path)
    assert [move.line for move in working.moves if not working.checker.vouches_for(move.line)] == []


@pytest.mark.parametrize("path", CONTRACT, ids=lambda path: str(path.stem))
def test_what_is_shown_is_the_value_to_three_figures(path: Path) -> None:
    found = answers(worked(path))
    for answer in (each for each in found.values() if each.value):
        number = float(answer.shown.split()[0])
        assert isclose(number, answer.value, rel_tol=0.006), answer
