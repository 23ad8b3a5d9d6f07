"""Every sample in the words, signs and order of every class: no answer and no verdict of a check changes."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest

from explain import Fault, work
from explain.document.passage import Answer as Boxed
from explain.document.passage import Derivation
from explain.equation.terms import letters

SAMPLES = sorted((Path(__file__).parents[1] / "samples").glob("[0-9]*.toml"))
CLASSES: dict[str, dict[str, Any]] = {
    "two sides": {"balance": "two sides", "signs": "in the equation"},
    "moments first": {"first": "moments"},
    "signs with the numbers": {"signs": "with the numbers", "balance": "sum is zero", "positive": "counter-clockwise"},
    "moments on two sides": {"balance": "two sides", "first": "moments", "signs": "in the equation"},
    "clockwise": {"positive": "clockwise"},
    "turning component": {"method": "turning component"},
    "divide first": {"order": "divide first"},
    "letters first": {"order": "letters first"},
    "American": {"spelling": "American"},
    "level and upright": {"level_words": "level and upright"},
    "comma": {"decimal": "comma"},
    "up, and letters with signs": {"positive": "up", "signs": "with the numbers", "balance": "sum is zero"},
}
UNFIT = ("course.positive", "course.signs")  # where up cannot be positive, or a force has no one sign


@pytest.mark.parametrize("name", CLASSES)
def test_no_answer_and_no_verdict_changes(name: str) -> None:
    tried = 0
    for path in SAMPLES:
        plain = work(path)
        try:
            here = work(path, course=CLASSES[name])
        except Fault as fault:
            assert CLASSES[name].get("positive") == "up" and fault.key in UNFIT or "sizes on two sides" in str(fault)
            continue
        tried += 1
        moments = [each for each in plain.answers if each.endswith(".moment")]  # their sign is the class's
        assert {key: (each.value, each.direction) for key, each in plain.answers.items() if key not in moments} == {
            key: (pytest.approx(each.value, rel=1e-9, abs=1e-9), each.direction and pytest.approx(each.direction))
            for key, each in here.answers.items()
            if key not in moments
        }, path.stem
        failing = [[key for key, found in each.checks if found.result == "fails"] for each in (plain, here)]
        assert failing[0] == failing[1], path.stem
    assert tried >= (8 if CLASSES[name].get("positive") == "up" else 33)


def test_a_page_with_commas_has_no_other_decimal() -> None:
    for path in SAMPLES:
        page = work(path, course={"decimal": "comma"}).text(400).partition("Discussion")[0]
        assert [] == re.findall(r"(?<![\w.])\d+\.\d+ (?:N|cm|m|kg|lb|in)\b", page.partition("Given")[2]), path.stem


@pytest.mark.parametrize("name", ("moments first", "signs with the numbers", "up, and letters with signs"))
def test_an_answer_stands_behind_the_line_that_gives_it(name: str) -> None:
    """Above a box stand numbers alone, and above that of an angle the angle's own: "T_A + T_B = 0" gives none."""
    boxes = 0
    for path in SAMPLES:
        try:
            passages = work(path, course={**CLASSES[name], "first": "moments"}).page.passages
        except Fault:
            continue
        for place, each in enumerate(passages):
            if isinstance(each, Boxed):
                boxes += 1
                rows = next(above.rows for above in passages[place::-1] if isinstance(above, Derivation))
                found = letters(rows[-1].left), letters(rows[-1].right[-1][1])
                assert (1, 0) == tuple(map(len, found)), path.stem
    assert boxes > 5
