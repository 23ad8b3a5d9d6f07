"""Whether two lines agree in size whatever the letters that are still sought: tried with values that no rule can
know. Believed by the checker.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal
from itertools import cycle, product
from random import Random

from ..equation import key as keys
from .comparison import alike
from ..equation.terms import Equation, Factor, Inverse, Quantity, Root, Shown, Term, flipped
from ..exact.interval import Sizes, middle, sign

MOST_TRIED = 4  # letters of which each value is tried with each of the others


class Trials:
    """The values of one working: one of each sign, and of an angle one in each quarter of a turn, and the one that
    the balances settle.
    """

    def __init__(self, sizes: Sizes, angles: Mapping[str, float], draw: Random) -> None:
        self.sizes, self.angles, self.draw = sizes, angles, draw
        self._rooted: dict[int, tuple[Equation | Shown, bool]] = {}

    def agree(self, after: Equation, new: Term, before: Equation, old: Term) -> bool:
        """Whether the lines agree, each times its multiplier, with every value tried."""
        here = sorted(after.letters | before.letters)
        return all(alike(after, new, before, old, sizes) for sizes in self._tried(here))

    def apart_by_roundings(self, line: Equation, figures: int) -> bool:
        """Whether the sides differ, but with every value tried by no more than so many figures may be off."""
        share = min(0.01, 10.0 ** (2 - figures))
        sides, off = (*line.left, *flipped(line.right)), False
        for sizes in self._tried(sorted(line.letters)):
            apart = abs(middle(sizes.sum(sides)))
            if apart > max(abs(middle(sizes.sum((each,)))) for each in sides) * share:
                return False
            off = off or sign(sizes.sum(sides)) != 0
        return off

    def rooted(self, what: Equation | Factor) -> bool:
        """Whether a root or an angle is worked out in a line, or in what a number of it stands for."""
        if not isinstance(what, Equation | Shown):
            return isinstance(what, Root | Inverse)
        known = self._rooted.get(id(what))
        if known is None or known[0] is not what:
            within = what.of if isinstance(what, Shown) else what
            known = self._rooted[id(what)] = (what, any(map(self.rooted, within.leaves)))
        return known[1]

    def _tried(self, names: Sequence[str]) -> Iterator[Sizes]:
        values = {name: self._any_values(name) for name in names}
        for places in product(*(range(len(values[name])) for name in names[:MOST_TRIED])):
            sizes = Sizes(
                {
                    name: (values[name][place % len(values[name])],)
                    for name, place in zip(names, cycle(places), strict=False)
                }
            )
            sizes.adopt(self.sizes)
            yield sizes

    def _any_values(self, name: str) -> tuple[Term, ...]:
        some = Decimal(self.draw.randrange(10**9, 10**10)).scaleb(-8)
        own = (Decimal(repr(self.angles[name])),) if name in self.angles else ()
        found = (*(some + quarter for quarter in (0, 90, 180, 270)), *own) if keys.of(name).is_angle else (some, -some)
        return tuple(Term(1, (Quantity(each),)) for each in found)
