"""A line spoilt by one slip is refused wherever an evaluation to fifty digits finds it false.

Every line of the contract, the samples and a few problems of other conventions is spoilt in every way that `spoiling`
knows, and
certified with the same ground by a checker that has certified all the lines before. The steady run takes a share of the
slips of each
kind; HYPOTHESIS_PROFILE=search takes them all.
"""

from __future__ import annotations

import os
import random
from collections import Counter
from collections.abc import Iterator
from functools import cache
from typing import Any, NamedTuple

import pytest
from fifty_digits import true
from spoiling import spoil
from true_values import TrueValues, both
from worked import CONTRACT, EXTRA, SAMPLES, extra, replayed, worked

from explain.check.checker import Refused
from explain.check.claim import Rounded
from explain.equation.terms import Equation
from explain.equation.terms import settled
from explain.solve.engine import Working
from explain.formula.plain import plain

SHARE = 1.0 if os.environ.get("HYPOTHESIS_PROFILE") == "search" else 0.12
PROBLEMS = (*(path.stem for path in (*CONTRACT, *SAMPLES)), *EXTRA)


class Tried(NamedTuple):
    """One spoilt line: the ground of the true one, the slip, both lines, whether it is false, whether it was
    certified.
    """

    ground: str
    slip: str
    line: str
    spoilt: str
    false: bool
    certified: bool


def _working(name: str) -> Working:
    found = {path.stem: path for path in (*CONTRACT, *SAMPLES)}
    return worked(found[name]) if name in found else extra(name)


def _values(working: Working, values: TrueValues, place: int, ledger: Any) -> dict[str, Any]:
    """What the letters are worth at a line: for a class that carries what is shown, what its numbers so far say."""
    move = working.moves[place]
    if working.body.problem.course.carry != "as shown" or move.before is None:
        return values.letters()
    before = Equation(settled(move.before.equation.left), settled(move.before.equation.right))
    return values.carried(ledger, None if isinstance(move.line.claim, Rounded) else before, move.goal.sought)


def _lines(working: Working) -> Iterator[tuple[int, dict[str, Any], dict[str, Any]]]:
    """Each line's place, and the letters' values at it in both bases."""
    si, odd = both(working)
    for place, move in enumerate(working.moves):
        si.named(move)
        odd.named(move)
        ledger = replayed(working, place)[0].ledger if working.body.problem.course.carry == "as shown" else {}
        yield place, _values(working, si, place, ledger), _values(working, odd, place, ledger)


@cache
def tried(name: str) -> tuple[Tried, ...]:
    """Every spoilt line of the share, tried."""
    working, draw, out = _working(name), random.Random(name), []
    for place, in_si, in_odd in _lines(working):
        move, course = working.moves[place], working.body.problem.course
        checker, lines = replayed(working, place)
        for slip, line in spoil(move.line.equation):
            if draw.random() > SHARE:
                continue
            before = next(
                (new for new, old in zip(lines, working.moves, strict=False) if old.line is move.before), None
            )
            try:
                checker.certify(line, move.line.claim, before)
                certified = True
            except Refused:
                certified = False
            if certified:
                checker, lines = replayed(working, place)
            false = not true(line, in_si, in_odd, course.ties)
            out.append(
                Tried(type(move.line.claim).__name__, slip, plain(move.line.equation), plain(line), false, certified)
            )
    return tuple(out)


@pytest.mark.parametrize("name", PROBLEMS)
def test_the_evaluation_finds_every_certified_line_true(name: str) -> None:
    working = _working(name)
    ties = working.body.problem.course.ties
    found = [
        plain(working.moves[place].line.equation)
        for place, si, odd in _lines(working)
        if not true(working.moves[place].line.equation, si, odd, ties)
    ]
    assert found == []


@pytest.mark.parametrize("name", PROBLEMS)
def test_no_false_line_is_certified(name: str) -> None:
    assert [each for each in tried(name) if each.false and each.certified] == []


def test_the_spoilt_lines_are_many_and_nearly_all_of_them_false() -> None:
    found = [each for name in PROBLEMS for each in tried(name)]
    assert sum(each.false for each in found) > 3000
    assert sum(each.false for each in found) > 0.9 * len(found)


def test_every_kind_of_slip_was_made_in_lines_of_every_ground() -> None:
    slips = Counter(each.slip for name in PROBLEMS for each in tried(name) if each.false)
    grounds = {each.ground for name in PROBLEMS for each in tried(name) if each.false}
    assert set(slips) == {
        "a sign flipped",
        "a term dropped",
        "a term doubled",
        "a digit changed",
        "a unit changed",
        "another function",
        "another power",
        "top and bottom swapped",
        "two letters swapped",
        "a root left out",
    }
    assert grounds == {
        "Follows",
        "Put",
        "Scaled",
        "Arm",
        "Turning",
        "Moment",
        "Between",
        "Balance",
        "Converted",
        "Pythagoras",
        "Rooted",
        "Inverted",
        "Tangent",
        "Divided",
        "Stress",
        "Rounded",
    }


def test_a_true_line_written_otherwise_is_sometimes_certified() -> None:
    """The checker is no parrot: it takes another line on the same ground where that holds too."""
    assert [each for name in PROBLEMS for each in tried(name) if not each.false and each.certified] != []
