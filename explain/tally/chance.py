"""How little one number says: how often a number drawn at random would fit some slip by chance. Knows tables of
numbers.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import log

from .explanation import CLOSE
from .asked import Wanted
from .alternatives import Table

DECADE = 10.0  # numbers from a tenth of the true one to ten times it, each ratio as likely


def covered(sizes: Sequence[float], true: float) -> float:
    """The share of that range that lies within half a per cent of some number of a table."""
    low, high = abs(true) / DECADE, abs(true) * DECADE
    if not low:
        return 0.0
    total, end = 0.0, log(low)
    for size in sizes:
        if size > 0 and size * (1 + CLOSE) > low and size * (1 - CLOSE) < high:
            start, stop = max(log(size * (1 - CLOSE)), end), min(log(size * (1 + CLOSE)), log(high))
            total, end = total + max(0.0, stop - start), max(end, stop)
    return total / (log(high) - log(low))


def chances(table: Table, given: Sequence[tuple[int, Wanted]]) -> dict[str, float]:
    """By the name of an answer, how often chance alone fits some entry."""
    return {each.name: covered(table.sizes(place), each.value) for place, each in given if each.value}
