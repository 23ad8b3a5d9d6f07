"""A free-body diagram for a board: its letters a thirtieth of the board's height or more, as many of its parts as are
shown, each always in one place.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

from ...document.figure_parts import parts
from ...document.passage import Drawing, Picture, Plot
from .free_body import Layout, Sheet, layout
from .plot import plotted

BOARD = Sheet(404.0, 366.0, 16.0)  # pixels, of which letters and words are 16 high: the room beside the words


class Grown(NamedTuple):
    """A figure as far as it is drawn, with what is said to those who do not see it."""

    layout: Layout
    title: str
    description: str


def grown(picture: Picture, shown: Sequence[str] | None) -> Grown:
    """The picture with these parts alone, or with all of them."""
    laid, whole = _laid(picture.drawing), parts(picture.drawing)
    if shown is None or set(shown) >= set(whole):
        return Grown(laid, picture.title, picture.description)
    title = f"{picture.title}, so far with {len(shown)} of {len(whole)} parts"
    return Grown(laid.only(frozenset(shown)), title, "The words on this page tell what is new.")


def charted(of: Picture | Plot) -> Layout:
    """A plot, or a whole diagram, that has a board to itself."""
    return plotted(of, low=True) if isinstance(of, Plot) else _laid(of.drawing)


@lru_cache(maxsize=64)
def _laid(drawing: Drawing) -> Layout:
    return layout(drawing, BOARD)
