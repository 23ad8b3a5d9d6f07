"""The second opinion: a value that the checker lets pass and the balances do not give stops the program; right ones
never do, however they are rounded.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from pathlib import Path
from random import Random
from typing import Any

import pytest
import statics
from degenerate_problems import degenerate
from test_properties import differences, wanted
from worked import CONTRACT, SAMPLES

import rules
from explain.check.checker import Checker
from explain.equation.terms import Equation, Quantity, Shown, Term
from explain.errors import Fault, NoWay
from explain.problem.reader import read_problem
from explain.mechanics.free_body import cut_free
from explain.check.roundings import Roundings
from explain.solve.rule import Step
from explain.solve.second_opinion import SecondOpinion
from explain.solve.engine import Broken, Working, work_through
from explain.solve.true_letters import TrueLetters
from explain.formula.plain import plain
from rules.numbers import work_out

CASES = Path(__file__).parent / "cases" / "engine"
JUG = next(path for path in CONTRACT if path.stem == "jug-level")
COURSES: Mapping[str, tuple[Any, ...]] = {
    "method": ("perpendicular distance", "turning component"),
    "carry": ("unrounded", "as shown"),
    "order": ("multiply first", "divide first", "letters first"),
    "figures": (1, 2, 3, 4),
    "working_figures": (2, 3, 4, 5, 7),
    "lengths": ("as given", "metres", "cm", "in"),
    "forces": ("N", "lb"),
    "ties": ("up", "even"),
}


def worked(path: Path, **course: Any) -> Working:
    return work_through(cut_free(read_problem(path, course=course)), rules.MOVES)


@pytest.fixture
def credulous(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """A checker that believes every line."""
    monkeypatch.setattr(Checker, "_hold", lambda *_: None)
    monkeypatch.setattr(Roundings, "hold", lambda *_: None)
    yield


def lying(by: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """A rule that works quotients out too large by this factor."""
    honest = work_out.do

    def do(board: Any, sight: Any) -> Step:
        step = honest(board, sight)
        return Step(Equation(step.after.left, tuple(_times(each, by) for each in step.after.right)), step.claim)

    monkeypatch.setattr(work_out, "do", do)


def _times(term: Term, by: str) -> Term:
    number = term.factors[0]
    if not isinstance(number, Shown | Quantity):
        return term
    value = number.value if isinstance(number, Shown) else number
    more = Quantity(value.number * Quantity.of(by).number, value.unit)
    return replace(term, factors=(more,))


@pytest.mark.parametrize("carry", ["unrounded", "as shown"])
@pytest.mark.parametrize("by", ["2", "1.001", "0.999"])
def test_a_wrong_value_that_was_certified_stops_the_program_with_the_last_line_that_agreed(
    by: str, carry: str, credulous: None, monkeypatch: pytest.MonkeyPatch
) -> None:
    lying(by, monkeypatch)
    with pytest.raises(Broken, match=r"F_B = .* is not what|F_B = ") as caught:
        worked(JUG, carry=carry)
    assert "the last line that agreed: F_B = 1206.6 N·cm / 4.0 cm" in str(caught.value)


def test_the_same_working_passes_where_nothing_lies(credulous: None) -> None:
    assert worked(JUG).moves


def test_a_number_rounded_more_coarsely_than_the_class_does_stops_the_program(
    credulous: None, monkeypatch: pytest.MonkeyPatch
) -> None:
    honest = work_out.do

    def do(board: Any, sight: Any) -> Step:
        step = honest(board, sight)
        (term,) = step.after.right
        return Step(
            Equation(step.after.left, (Term(1, (Shown(Quantity.of("300", "N"), Term(1, term.factors)),)),)), step.claim
        )

    monkeypatch.setattr(work_out, "do", do)
    with pytest.raises(Broken, match="F_B = 300 N"):
        worked(JUG)


@pytest.mark.parametrize("name", ["sloped-plank", "crash-diving"])
def test_one_letter_with_two_values_leads_to_no_wrong_answer(name: str) -> None:
    problem = read_problem(CASES / f"{name}.toml", course={"method": "perpendicular distance"})
    stated = {**_tables(name), "course": {"method": "perpendicular distance"}}
    try:
        found = work_through(cut_free(problem), rules.MOVES)
    except Broken as stopped:
        assert "the last line that agreed" in str(stopped)
        return
    assert differences(stated, found, statics.solved(stated)) == {}


@pytest.mark.parametrize(
    ("bone", "across"),
    [
        ("left", "down"),
        ("right", "down"),
        ("30 deg above left", "60 deg above right"),
        ("17.3 deg below right", "72.7 deg above right"),
    ],
)
@pytest.mark.parametrize("carry", ["unrounded", "as shown"])
def test_a_part_of_the_joint_force_that_vanishes_but_for_what_floats_lose_stops_nothing(
    bone: str, across: str, carry: str
) -> None:
    segment = {"name": "forearm", "length": "30 cm", "direction": bone}
    push = {"name": "push", "force": "23 N", "on": "forearm", "at": "20 cm", "direction": across}
    biceps = {"name": "biceps", "force": "?", "on": "forearm", "at": "4 cm", "direction": across}
    stated = {
        "title": "Nothing along the bone",
        "pivot": {"name": "elbow"},
        "course": {"axes": "along and across the forearm", "carry": carry},
        "segment": [segment],
        "force": [push],
        "muscle": [biceps],
        "ask": ["reaction.along", "reaction.across", "reaction"],
    }
    found = work_through(cut_free(read_problem(stated)), rules.MOVES)
    assert "J_along = 0" in {plain(move.line.equation) for move in found.moves}


@pytest.mark.parametrize("number", [400195, 400447, 400619, 401170, 401363, 401838, 402023, 402572, 403301])
def test_what_a_search_at_the_edge_found_stops_nothing(number: int) -> None:
    """Arms and parts of a millionth of a degree, distances of nothing, and tangents of nearly ninety degrees."""
    stated = degenerate(Random(number))
    bone = stated["segment"][-1]["name"] if stated["segment"] else ""
    axes, carry = f"along and across the {bone}" if bone else "level and upright", ("unrounded", "as shown")[number % 2]
    course = {**stated.get("course", {}), "axes": axes, "carry": carry}
    parts = ["reaction.along", "reaction.across"] if bone else []
    ask = [each for each in stated["ask"] if not each.startswith("reaction")] + ["reaction", *parts]
    assert work_through(cut_free(read_problem({**stated, "course": course, "ask": ask})), rules.MOVES).moves


def test_a_pull_that_is_a_little_wrong_is_not_taken_for_what_floats_lose() -> None:
    """A thousandth of a newton in some hundreds."""
    found = worked(JUG)
    truth = TrueLetters(
        found.body,
        found.truth,
        {**found.settled.values, "biceps.force": found.settled.values["biceps.force"] + 1e-3},
        1,
    )
    opinion = SecondOpinion(truth, found.body.problem.course)
    assert not all([opinion.agrees(move) for move in found.moves])


def _tables(name: str) -> dict[str, Any]:
    import tomllib

    return tomllib.loads((CASES / f"{name}.toml").read_text("utf-8"))


@pytest.mark.parametrize("path", [*CONTRACT, *SAMPLES], ids=lambda path: path.stem)
def test_no_right_working_is_stopped_however_a_class_counts(path: Path) -> None:
    draw = Random(path.stem)
    for _ in range(4):
        course = {key: draw.choice(values) for key, values in COURSES.items()}
        course["working_figures"] = max(course["figures"], course["working_figures"])
        try:
            assert worked(path, **course).moves
        except (Fault, NoWay):
            continue


def test_the_wanted_values_of_a_sample_are_numpys() -> None:
    """The floats that lines are held against are right themselves."""
    stated = _tables("level-plank")
    assert differences(stated, worked(CASES / "level-plank.toml"), wanted(stated)) == {}
