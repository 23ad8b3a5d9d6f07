"""Ways in which classes write, for tests that a kind of problem is worked in each of them, with one answer."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import pytest

from explain import work

COURSES: Mapping[str, Mapping[str, Any]] = {
    "two sides": {"balance": "two sides"},
    "moments first": {"first": "moments"},
    "two sides, moments first": {"balance": "two sides", "first": "moments"},
    "signs with the numbers": {"signs": "with the numbers"},
    "clockwise": {"positive": "clockwise"},
    "as shown": {"carry": "as shown", "working_figures": 7},
    "divide first": {"order": "divide first"},
    "letters first": {"order": "letters first"},
    "turning component": {"method": "turning component"},
    "metres": {"lengths": "metres"},
    "torque, brief": {"word": "torque", "detail": "brief", "person": "you", "reaction_on": "the other bone"},
}


def same_in(course: str, problem: Mapping[str, Any]) -> None:
    """Assert that a class that writes so gets the answers of any other, each line of it certified, and a whole page."""
    plain, worked = work(problem), work(problem, course=COURSES[course])
    assert [each.name for each in plain.answers.values()] == [each.name for each in worked.answers.values()]
    for name, answer in plain.answers.items():
        scale = 100 if worked.answers[name].unit == "m" and answer.unit == "cm" else 1
        assert worked.answers[name].value * scale == pytest.approx(answer.value, rel=2e-5, abs=1e-4), name
    assert len(worked.moves) > 3
    assert worked.html().count("<svg") == 1
