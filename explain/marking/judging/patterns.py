"""What does not change of a quantity with sign and unit: its values in the twins over the value in the problem."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from .quantities import Row

Pattern = tuple[float, ...]


def pattern(row: Row) -> Pattern | None:
    """What does not change with sign and unit; None for nothing, or what has no value."""
    first = row[0]
    if not np.isfinite(row).all() or abs(first) < 1e-300:
        return None
    return tuple(np.round(row[1:] / first, 7).tolist())


def patterns(rows: NDArray[np.float64]) -> list[Pattern | None]:
    """The pattern of each of many rows; None where it has none, or moves with no datum."""
    if not len(rows):
        return []
    with np.errstate(all="ignore"):
        ratios = np.round(rows[:, 1:] / rows[:, :1], 7)
    good = np.isfinite(ratios).all(axis=1) & (np.abs(rows[:, 0]) > 1e-300) & (np.abs(ratios - 1) > 1e-9).any(axis=1)
    return [tuple(each) if fine else None for each, fine in zip(ratios.tolist(), good.tolist(), strict=True)]


def same(one: Row, other: Row, within: float = 1e-9) -> bool:
    """Whether two rows agree in every twin."""
    return bool(np.all(np.abs(one - other) <= within * np.maximum(np.abs(one), np.abs(other)) + 1e-12))
