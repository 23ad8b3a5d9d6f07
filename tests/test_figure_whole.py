"""Figures whole: where each stroke, mark and label of a figure stands, with which pen, and of which part it is."""

from __future__ import annotations

import pytest
from figures_as_text import FIGURES, KEPT, as_text


@pytest.mark.parametrize("name", FIGURES)
def test_the_figure_is_the_one_that_is_kept(name: str) -> None:
    assert (KEPT / f"{name}.txt").read_text(encoding="utf-8") == as_text(FIGURES[name]())


def test_no_figure_is_kept_that_is_gone() -> None:
    assert set(FIGURES) == {path.stem for path in KEPT.glob("*.txt")}
