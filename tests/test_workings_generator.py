"""The maker of students' workings is fair: right ones are true and are read, wrong ones are untrue where it says so.
It knows nothing of marking.
"""

from __future__ import annotations

import ast
from pathlib import Path
from random import Random

import pytest
from workings.figures import problem, right_cases
from workings.problems import KINDS, random_problem
from workings.spoil import base, double_case, fitted, shows, spoilt_case
from workings.style import random_style
from workings.working import Truth, gap, stated

from explain.marking.judging.reading import read_working
from explain.marking.slips.slip import SlipRule
from rules.slips import SLIPS

HERE = Path(__file__).parent / "workings"
ROUNDING = 0.04  # of a value; sines cut to two decimals go that far
NEVER_UNTRUE = {  # slips that leave every line true, or that no working here comes to
    "reaction-in-moment-equation",
    "inverse-ratio",
    "angle-reference-not-stated",
    "moment-balance-for-reaction",
    "negative-muscle",
    "rounded-too-early",
    "unit-missing",
    "figures-overstated",
    "direction-missing",
    "percent-of-wrong-base",
}


def test_right_workings_state_what_is_true() -> None:
    """Every value that a right working states is that of the account, but for the student's rounding."""
    stated = 0
    for name, worked, case in right_cases(300):
        truth = Truth(base(worked, random_style(Random(name))))
        for line in case.working.lines:
            for claim in line.claims:
                stated += 1
                assert gap(claim, truth) < ROUNDING, (name, line.text, claim)
    assert stated > 3000


def test_lines_are_read() -> None:
    """At least 98 in a hundred lines with numbers in them come out with an expression; here it is every one but a
    few in a thousand.
    """
    lines = unread = 0
    for _, _, case in right_cases(200):
        read = read_working(case.working.text, inches=False)
        assert len(read) == len(case.working.lines)
        counted = [each for each in read if "=" in each.text]
        lines += len(counted)
        unread += sum(
            not any(clause.exprs for clause in each.clauses) and any(sign.isdigit() for sign in each.text)
            for each in counted
        )
    assert lines > 1000 and unread <= 0.02 * lines


@pytest.mark.parametrize("rule", SLIPS, ids=lambda rule: rule.SLIP)
def test_a_slip_is_put_in_where_it_first_shows(rule: SlipRule) -> None:
    """No line before the expected one states anything that is plainly untrue; the same seed makes the same working."""
    found = 0
    for place in range(60):
        seed = f"generator {rule.SLIP} {place}"
        style = random_style(Random(seed), right=False)
        case = spoilt_case(problem(place), rule, style, seed)
        if case is None:
            continue
        found += 1
        assert case == spoilt_case(problem(place), rule, style, seed)
        ((line, slip),) = case.expected
        assert slip == rule.SLIP and 1 <= line <= len(case.working.lines)
        truth = Truth(base(problem(place), style))
        counts = shows(slip, truth, fitted(problem(place), style).lengths)
        assert all(
            gap(claim, truth) < 0.3
            for before in case.working.lines[: line - 1]
            if counts(before)
            for claim in stated(before)
        )
        if found == 5:
            break
    assert bool(found) == (rule.SLIP not in NEVER_UNTRUE)


def test_two_slips_stand_in_two_lines() -> None:
    seeds = [f"two {place}" for place in range(400)]
    tried = (
        double_case(problem(place % 60), SLIPS, random_style(Random(seed), right=False), seed)
        for place, seed in enumerate(seeds)
    )
    made = [case for case in tried if case]
    assert len(made) > 5
    for case in made:
        (one, _), (two, _) = case.expected
        assert 1 <= one < two <= len(case.working.lines)


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_of_problem_can_be_worked(kind: str) -> None:
    worked = random_problem(Random(kind), (kind,))
    assert worked.kind == kind and all(worked.account.values()[key] > 0 for key in worked.account.unknowns)


def test_the_maker_does_not_know_how_workings_are_marked() -> None:
    """Only the command that measures imports the marking."""
    for path in HERE.glob("*.py"):
        if path.name == "figures.py":
            continue
        names = [
            node.module or "" for node in ast.walk(ast.parse(path.read_text())) if isinstance(node, ast.ImportFrom)
        ]
        assert not any(each.startswith(("explain.marking.judging", "rules")) for each in names), path.name
