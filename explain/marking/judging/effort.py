"""How much work is put into one working. Counted in steps, never by a clock: the same working gets the same verdicts on
every machine.
"""

from __future__ import annotations

MOST_EFFORT = 400_000  # steps; a working of a class takes some ten thousand
FOR_MORE_PASSES = 3  # a working is gone over again where a pass takes less than this part of all


class EnoughError(Exception):
    """The work that is put into one working is used up."""


class Effort:
    """The steps spent on one working."""

    def __init__(self, most: int = MOST_EFFORT) -> None:
        self.most, self.spent = most, 0

    def spend(self, steps: int) -> None:
        """Count some steps. Raises EnoughError beyond the most."""
        self.spent += steps
        if self.spent > self.most:
            raise EnoughError
