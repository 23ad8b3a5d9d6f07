"""Workings that nobody meant: each line is answered, the lines around it are still judged, and the work stays
bounded.
"""

from __future__ import annotations

from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from explain import work
from explain.api import Walkthrough
from explain.marking.reading import read_working

PROBLEM = {
    "title": "jug",
    "pivot": {"name": "elbow"},
    "segment": [{"name": "forearm", "mass": "1.6 kg", "com": "15 cm"}],
    "ask": ["biceps", "reaction"],
    "muscle": [{"name": "biceps", "at": "4.0 cm", "direction": "70 deg from back toward up"}],
    "load": [{"name": "jug", "mass": "3.0 kg", "at": "33 cm"}, {"name": "cup", "mass": "0.5 kg", "at": "30 cm"}],
}
ODD = (
    "F" * 100_000,
    "(" * 10_000 + "F" + ")" * 10_000,
    "F = 9**9**9",
    "F = 1e999999999",
    "F = 1/0",
    "F = tan 90 = 4",
    "Ғ = 242",
    "F = 242\u202eN",
    "\x00\x07",
    "__import__('os').system('ls')",
    "=",
    "= = =",
    "F = = 3",
    "1 = 2 = 3 = 4 = 5",
    "sqrt(-4) = 2",
    "asin(7) = 3",
    "F/0 = 3",
    "d = d",
    "x = x + 1",
    "M = d F T x r l s a b",
    "T*d + T*x - M*r + F*l = W*s + N*b",
    "F = {F} {__class__}",
    "%s %d",
    "\\frac{\\frac{1}{0}}{0} = F",
    "W" + "=1" * 3000,
)


@cache
def jug() -> Walkthrough:
    return work(PROBLEM)


@pytest.mark.parametrize("line", ODD, ids=range(len(ODD)))
def test_an_odd_line_is_answered_and_the_others_are_still_judged(line: str) -> None:
    first, *_, last = jug().mark(f"W_jug = 3.0*9.81 = 29.43 N\n{line}\nW_jug = 3.0*9.81 = 92.43 N").lines
    assert ["holds", "slips"] == [first.verdict, last.verdict]


def test_the_working_of_another_problem_is_not_called_right() -> None:
    found = jug().mark(
        "about the log: 47(1.20) = 15(0.20) + m(1.45)\nm = 53.4/1.45 = 36.8 kg\nR = (47 + 15 + 36.8)*9.81 = 969 N, up"
    )
    assert found.needs_a_person and not any(each.right for each in found.answers)


def test_an_empty_working_has_no_verdict_but_words() -> None:
    assert {"aside"} >= {each.verdict for each in jug().mark("\n\n   \n").lines}


@settings(max_examples=60, deadline=None)
@given(
    st.lists(
        st.one_of(
            st.text(max_size=60),
            st.sampled_from(
                ("F = 242 N", "d = 4", "R = F - W", "T*4 = 29.43*33", "q = F/2", "θ = 30° below horizontal")
            ),
        ),
        max_size=6,
    ).map("\n".join)
)
def test_any_text_gets_a_verdict_for_each_line(text: str) -> None:
    found = jug().mark(text)
    assert len(read_working(text)) == len(found.lines)
    assert {each.verdict for each in found.lines} <= {"holds", "carried", "slips", "unclear", "aside"}


def test_what_costs_too_much_is_told_and_what_was_judged_before_is_kept() -> None:
    """Work is counted in steps, so the verdicts are the same on every machine."""
    wrong = [f"F{n} = {n + 1.37:.2f}*{n + 2.71:.2f}/3.19 = {n + 7.3:.1f} N" for n in range(40, 390)]
    found = jug().mark("\n".join(wrong)).lines
    told = ["work that is put into" in each.says for each in found]
    first = told.index(True)
    assert 50 < first < len(wrong) and all(told[first:]) and all(each.question for each in found[first:])
    assert sum("slips" == each.verdict for each in found[:50]) > 45
    assert [each.verdict for each in found] == [each.verdict for each in jug().mark("\n".join(wrong)).lines]
