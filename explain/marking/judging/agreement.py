"""How well the sides of a clause agree as they were read: tells apart two readings of one line. Knows no mechanics."""

from __future__ import annotations

import numpy as np

from .clauses import Clause
from .formula import Expr, value

_TRIED = (1.37, 2.91)  # values for a letter: sides that agree for both have the same factor before it
_NEAR = 0.02  # roundings on the way


def agreement(clause: Clause, letter: str) -> int:
    """2: the sides come to the same number, whatever the letter; 1: an equation that may hold; 0: it cannot hold."""
    exprs = clause.exprs
    names = {name for each in exprs for name in each.names}
    if len(exprs) < 2 or names - {letter}:
        return 1
    if all(_same(exprs, {letter: at}) for at in _TRIED):
        return 2
    with_letter = [each for each in exprs if each.names]
    return int(0 < len(with_letter) < len(exprs))


def _same(exprs: list[Expr], letters: dict[str, float]) -> bool:
    made = [abs(float(value(each.node, [token.share for token in each.leaves], letters))) for each in exprs]
    largest = max(made)
    return bool(np.isfinite(made).all()) and any(
        all(abs(each * scale - largest) <= _NEAR * largest or abs(each - largest) <= _NEAR * largest for each in made)
        for scale in (1.0, 100.0, 1000.0)
    )
