"""Small systems of linear conditions in floats: their rank, and their one solution by elimination. Knows no
mechanics.
"""

from __future__ import annotations

from collections.abc import Sequence

NOTHING = 1e-9


def solved(conditions: Sequence[Sequence[float]]) -> list[float]:
    """The solution of a square system, right sides last, by elimination; empty where there is none or more than one."""
    rows = [list(row) for row in conditions]
    size = len(rows)
    if rank(rows) < size or not rows:
        return []
    for k in range(size):
        best = max(range(k, size), key=lambda i: abs(rows[i][k]))
        rows[k], rows[best] = rows[best], rows[k]
        for i in range(size):
            if i != k:
                ratio = rows[i][k] / rows[k][k]
                rows[i] = [a - ratio * b for a, b in zip(rows[i], rows[k], strict=True)]
    return [row[-1] / row[k] for k, row in enumerate(rows)]


def rank(conditions: Sequence[Sequence[float]]) -> int:
    """How many of the conditions are independent, coefficients only."""
    left = [list(row[:-1]) for row in conditions]
    left = [[each / (max(map(abs, row)) or 1.0) for each in row] for row in left]
    found = 0
    for k in range(len(left[0]) if left else 0):
        best = max(range(found, len(left)), key=lambda i: abs(left[i][k]), default=None)
        if best is None or abs(left[best][k]) < NOTHING:
            continue
        left[found], left[best] = left[best], left[found]
        for i in range(found + 1, len(left)):
            ratio = left[i][k] / left[found][k]
            left[i] = [a - ratio * b for a, b in zip(left[i], left[found], strict=True)]
        found += 1
    return found
