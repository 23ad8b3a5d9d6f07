"""Slips that show in the form of a line: what holds once a unit, a sign or a term is put right. Knows worlds, no
account of a slip.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from decimal import Decimal

from ..reading import Call, Chain, Measured, Name, Negative, Number, Sum, within
from .arithmetic import bare
from .unit_slips import wrong_unit
from .piece_verdict import Found
from .unit_frames import FORCE, kind_of
from .piece_test import Holds, alone, unsigned
from .slip_search import FINE
from .student import Student
from .sides import terms
from .alternatives import World

ZERO = Number(Decimal(0), 0, 1, "0")


@dataclass(frozen=True, slots=True)
class Forms:
    """`unknowns` are the keys that a balance gives; `true` gives the truth, by the student's own g first."""

    holds: Holds
    student: Student
    unknowns: tuple[str, ...]
    true: Callable[[], tuple[World, ...]]

    @property
    def truths(self) -> tuple[World, ...]:
        return self.true()

    def slip(self, chain: Chain) -> Found | None:
        """The slip that the form of a line shows, None where it shows none."""
        for way in (
            self._inverted,
            self._stopped,
            self._unequal,
            self._kilograms,
            self._unit,
            self._turned_over,
            self._joint_in_moments,
        ):
            found = way(chain)
            if found is not None:
                return found
        return None

    def _inverted(self, chain: Chain) -> Found | None:
        """A sine or cosine above one: its fraction is upside down."""
        side, value = (
            chain.sides[0],
            self.holds.value_of(chain.sides[-1], self.holds.scales(self.truths[0], chain, {}), self.holds.frames[0]),
        )
        if (
            not isinstance(side, Call)
            or side.function not in ("sin", "cos")
            or bare(side)
            or value is None
            or abs(value[0]) <= 1
        ):
            return None
        return Found("slips", ("inverse-ratio",), chain=chain)

    def _kilograms(self, chain: Chain) -> Found | None:
        """A force in kilograms, and right as such."""
        last = chain.sides[-1]
        if not isinstance(last, Measured) or last.unit not in ((("kg", 1),), (("g", 1),)):
            return None
        meant = replace(chain, sides=(*chain.sides[:-1], Measured(last.of, (("kgf", 1),))), otherwise=())
        for world in (*self.truths, *self.student.live[:1]):
            holding = self.holds.holds(meant, self.holds.scales(world, meant, self.holds.own))
            if holding is not None:
                return Found(
                    "slips", ("kilogram-answer", "mass-for-weight"), states=holding.states, holding=holding, chain=meant
                )
        return None

    def _stopped(self, chain: Chain) -> Found | None:
        """A force that is given the value of the moment that it ought to balance: the division by its arm is
        missing.
        """
        name = alone(chain.sides[0])
        if not isinstance(name, Name) or not any(key in self.unknowns and kind_of(key) == FORCE for key in name.keys):
            return None
        total = replace(chain, sides=(Name(("total",), name.text), *chain.sides[1:]), otherwise=())
        for world in (*self.truths[:1], *self.student.live[:1]):
            holding = self.holds.holds(total, self.holds.scales(world, total, {}, units=False, close=FINE))
            if holding is not None and holding.fits[0].meanings[name.text].value != 0:  # type: ignore[union-attr]
                return Found("slips", ("stopped-at-moment",), states=name.keys[:1], chain=chain)
        return None

    def _unequal(self, chain: Chain) -> Found | None:
        """Moments that are set equal to a number where they add to zero."""
        if len(chain.sides) != 2 or bare(chain.sides[0]) == bare(chain.sides[1]):
            return None
        moments, number = chain.sides if bare(chain.sides[1]) else chain.sides[::-1]
        if not isinstance(moments, Sum) or not isinstance(unsigned(number), Number):
            return None
        zero = replace(chain, sides=(moments, ZERO), otherwise=())
        for world in (*self.truths, *self.student.live[:1]):
            holding = self.holds.holds(zero, self.holds.scales(world, zero, self.holds.own))
            if holding is not None:
                return Found("slips", ("unequal-net",), states=("total",), chain=chain)
        return None

    def _unit(self, chain: Chain) -> Found | None:
        """A line that is right in its numbers and wrong in a unit."""
        for world in (*self.truths, *self.student.live):
            holding = self.holds.holds(chain, self.holds.scales(world, chain, self.holds.own, units=False))
            if holding is not None:
                return Found("slips", wrong_unit(chain), states=holding.states, holding=holding, chain=chain)
        return None

    def _turned_over(self, chain: Chain) -> Found | None:
        """A pull that comes out below zero and is left so: muscles do not push."""
        name, last = alone(chain.sides[0]), chain.sides[-1]
        if (
            not isinstance(name, Name)
            or not isinstance(last, Negative)
            or not any(key.endswith(".force") for key in name.keys)
        ):
            return None
        over = replace(chain, sides=(Negative(name), *chain.sides[1:]), otherwise=())
        for world in (*self.truths, *self.student.live[:1]):
            holding = self.holds.holds(over, self.holds.scales(world, over, self.holds.own))
            if holding is not None:
                return Found(
                    "slips",
                    ("negative-muscle", "sign-of-a-term", "term-moved-sign-kept"),
                    states=holding.states,
                    holding=holding,
                    chain=over,
                )
        return None

    def _joint_in_moments(self, chain: Chain) -> Found | None:
        """A moment balance that holds once the term with the joint force is taken out: at the pivot it has no arm."""
        for place, side in enumerate(chain.sides[:2]):
            kept = tuple(
                each
                for each in terms(side)
                if not any(isinstance(part, Name) and part.keys[0].startswith("reaction") for part in within(each))
            )
            if len(chain.sides) != 2 or not kept or len(kept) == len(terms(side)):
                continue
            left = kept[0] if len(kept) == 1 else Sum(kept)
            short = replace(
                chain, sides=tuple(left if at == place else each for at, each in enumerate(chain.sides)), otherwise=()
            )
            if self.holds.holds(short, self.holds.scales(self.truths[0], short, self.holds.own)) is not None:
                return Found("slips", ("reaction-in-moment-equation",), states=("total",), chain=chain)
        return None
