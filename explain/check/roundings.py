"""Whether a rounded number is what it stands for, in its unit, as the class rounds and with figures enough. Believed
by the checker.
"""

from __future__ import annotations

from fractions import Fraction

from ..equation.terms import DEGREE, Shown, Term
from ..exact.interval import Sizes, in_unit, rounded
from ..exact.dimensions import kind_of, well_formed

FINEST = -6  # no angle is written finer than a millionth of a degree


class Refused(Exception):
    """A line that does not stand on the ground that was claimed for it."""


class Roundings:
    """The rounded numbers of one working; each is looked at once."""

    def __init__(self, sizes: Sizes, ties: str) -> None:
        self.sizes, self.ties = sizes, ties
        self._known: dict[int, Shown] = {}

    def hold(self, shown: Shown, fewest: int) -> None:
        """Raises Refused for a number that is not so, or that is written with fewer figures."""
        self._is_so(shown)
        self._has_figures(shown, fewest)

    def _is_so(self, shown: Shown) -> None:
        """That a number stands for numbers, that is for no letter, in its unit and rightly rounded; and so do all
        within it.
        """
        if self._known.get(id(shown)) is shown:
            return
        if not well_formed((shown.of,)) or shown.of.letters:
            raise Refused("a rounded number stands for numbers only")
        for leaf in shown.of.leaves:
            if isinstance(leaf, Shown):
                self._is_so(leaf)
        self._is_rounded(shown)
        self._known[id(shown)] = shown

    def _is_rounded(self, shown: Shown) -> None:
        number, unit = shown.value.number, shown.value.unit
        last = number.as_tuple().exponent
        if not isinstance(last, int) or rounded(in_unit(self.sizes.factor(shown), unit), last, self.ties) != number:
            raise Refused(f"{number} is not what it stands for, rounded")
        if kind_of((shown.of,)) != kind_of((Term(1, (shown.value,)),)):
            raise Refused(f"{number} has a unit of another kind than what it stands for")

    def _has_figures(self, shown: Shown, fewest: int) -> None:
        """The class's figures at least, but where fewer say it exactly; angles end at a millionth of a degree."""
        number, unit = shown.value.number, shown.value.unit
        _, digits, last = number.as_tuple()
        fine = isinstance(last, int) and last <= FINEST and unit == DEGREE
        if len(digits) < fewest and not fine and in_unit(self.sizes.factor(shown), unit) != Fraction(number):
            raise Refused(f"{number} has fewer than {fewest} figures")
