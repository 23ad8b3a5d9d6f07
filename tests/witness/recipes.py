"""Knows the kinds of problems: a name for each recipe that draws one problem file (perhaps not solvable)."""

from __future__ import annotations

from collections.abc import Callable

from .draw import Draw, Table

Recipe = Callable[[Draw], Table]
KINDS: dict[str, Recipe] = {}


def kind(recipe: Recipe) -> Recipe:
    KINDS[recipe.__name__.replace("_", " ")] = recipe
    return recipe
