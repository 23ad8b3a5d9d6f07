"""The pages of problems that show what no sample does, whole and word for word: friction, angles that are sought,
forces that cancel, loads over a pulley, moments alone, pounds and inches; and of classes that speak otherwise.
"""

from __future__ import annotations

import pytest
from pages_of_samples import OTHERS, TEXTS, text_of


@pytest.mark.parametrize("name", OTHERS)
def test_the_page_is_the_one_that_is_kept(name: str) -> None:
    assert (TEXTS / f"{name}.txt").read_text(encoding="utf-8") == text_of(name)


def test_no_page_is_kept_of_a_problem_that_is_gone() -> None:
    assert set(OTHERS) == {path.stem for path in TEXTS.glob("*.txt")}
