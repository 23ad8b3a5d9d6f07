"""Which rows of a derivation begin at the margin whatever stands in the others. Knows no widths."""

from __future__ import annotations

from ..document.passage import Row


def at_margin(row: Row) -> bool:
    """Whether a row says that a sum is zero: such rows are long as a rule, and would push the equals signs of all
    others aside.
    """
    return bool(row.left and row.right) and not row.right[-1][1]
