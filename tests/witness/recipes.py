"""Knows the kinds of problems there are: a name for each recipe that draws one problem file (not yet known to be solvable)."""
from __future__ import annotations

from collections.abc import Callable

from .draw import Draw, Table

Recipe = Callable[[Draw], Table]
KINDS: dict[str, Recipe] = {}


def kind(recipe: Recipe) -> Recipe:
    KINDS[recipe.__name__.replace("_", " ")] = recipe
    return recipe
