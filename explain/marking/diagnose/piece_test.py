"""Whether one piece of a line holds in a world: all its pairs of sides, what its label says, the value that stands
alone. Knows no slip.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from typing import NamedTuple

from ..slips.account import Account
from ..reading import Chain, Expr, Measured, Name, Negative, Number, Sigma, UnknownName, within
from .arithmetic import counts
from .unit_frames import NONE, Frame, kind_of
from .directions import acute_angles
from .sides import Kept
from .letter_meanings import Meaning
from .compare_sides import CLOSE, Fit, Own, Scales
from .label_words import label_keys
from .alternatives import World


_LENGTHS = frozenset(("m", "cm", "mm", "in", "ft"))


class Holding(NamedTuple):
    """How a piece holds: the units, how each pair agrees, the keys of what it states, and what its own letters come
    to.
    """

    frame: Frame
    fits: tuple[Fit | None, ...]
    states: tuple[str, ...] = ()

    @property
    def loose(self) -> float:
        return max([fit.gap for fit in self.fits if fit] or [0.0])


@dataclass(slots=True)
class Holds:
    """The test of pieces of one working. `own` are the student's letters; `frames` stand with the one that held last
    in front.
    """

    account: Account
    frames: list[Frame]
    own: dict[str, Own] = field(default_factory=dict)
    data: frozenset[Decimal] = frozenset()
    kept: Kept = field(default_factory=Kept)

    def exact(self, number: Number) -> bool:
        return number.value in self.data or counts(number)

    def scales(
        self,
        world: World,
        chain: Chain,
        own: Mapping[str, Own],
        use_own: bool = False,
        units: bool = True,
        close: float = CLOSE,
    ) -> Scales:
        remarks = tuple(way for each in chain.remarks if each for way in each.directions)

        def angles(key: str) -> tuple[float, ...]:
            return acute_angles(key, world, remarks)

        return Scales(world.values, own, self.frames, self.exact, use_own, close, units, world.turn, angles, self.kept)

    def holds(self, chain: Chain, scales: Scales, frames: Sequence[Frame] | None = None) -> Holding | None:
        """How a chain holds, None where it does not; in units that make a new letter a quantity of the problem,
        where there are such.
        """
        pairs = [*zip(chain.sides, chain.sides[1:], strict=False)]
        if not pairs and not chain.label:
            return None
        first: Holding | None = None
        lettered = bool(pairs) and not any(self.kept.side(each).numbers for each in chain.sides)
        known = frames or self.frames
        for frame in (_fitting(known, chain) if scales.units else known)[: 1 if lettered else None]:
            fits = self._pairs(pairs, scales, frame)
            if fits is None:
                if not self._framed(chain):
                    return None
                continue
            states = None if self._unlike(chain, scales, frame, fits) else self._states(chain, scales, frame, fits)
            if states is not None and all(
                fit is None or fit.implied is None or scales.is_quantity(fit) for fit in fits
            ):
                return Holding(frame, fits, states)
            if states is not None:
                first = first or Holding(frame, fits, states)
        return first

    def _pairs(self, pairs: Sequence[tuple[Expr, Expr]], scales: Scales, frame: Frame) -> tuple[Fit | None, ...] | None:
        fits: list[Fit | None] = []
        for left, right in pairs:
            fit = scales.agree(left, right, (frame,))
            if fit is None:
                return None
            fits.append(fit)
        return tuple(fits)

    def _unlike(self, chain: Chain, scales: Scales, frame: Frame, fits: Sequence[Fit | None]) -> bool:
        """Whether a letter that stands alone and a unit further on are of different kinds: a force in newton metres."""
        name, last = alone(chain.sides[0]), chain.sides[-1]
        while isinstance(last, Negative):
            last = last.of
        fit = fits[0] if fits else None
        if (
            not scales.units
            or fit is None
            or name is None
            or name.text not in fit.meanings
            or not isinstance(last, Measured)
        ):
            return False
        found = self.value_of(last, scales, frame)
        return found is not None and found[2] not in (None, NONE) and found[2] != fit.meanings[name.text].kind

    def _framed(self, chain: Chain) -> bool:
        """Whether the units of bare numbers matter: there is a letter, a label or a unit."""
        return bool(chain.label) or any(
            isinstance(each, Name | UnknownName | Sigma | Measured) for side in chain.sides for each in within(side)
        )

    def _states(self, chain: Chain, scales: Scales, frame: Frame, fits: Sequence[Fit | None]) -> tuple[str, ...] | None:
        """The keys of what a piece states; None where its label speaks of a quantity that has another value."""
        stood_for = {text: meaning.key for fit in fits if fit for text, meaning in fit.meanings.items()}
        named = tuple(
            stood_for.get(each.text, key)
            for side in chain.sides
            for each in within(side)
            if isinstance(each, Name)
            for key in each.keys[:1]
        )
        keys = label_keys(chain.label, self.account, scales.values) if chain.label else ()
        if (
            not keys
            or alone(chain.sides[0]) is not None
            or any(isinstance(each, Name) for side in chain.sides for each in within(side))
        ):
            return named
        found = self.value_of(chain.sides[-1], scales, frame)
        if found is None:
            return named
        value, open_, kind = found
        open_ += scales.close * abs(value)
        matched = tuple(
            key
            for key in keys
            if (kind is None or kind == kind_of(key))
            and any(abs(abs(value) - abs(each) / frame.scale(kind_of(key))) <= open_ for each in scales.sizes(key))
        )
        return (*named, *matched) if matched else None

    def value_of(
        self, side: Expr, scales: Scales, frame: Frame
    ) -> tuple[float, float, tuple[int, int, int] | None] | None:
        """The value of a side of numbers, in the units of a frame; None where it has letters or no value."""
        from ..reading import Undefined

        if scales.names(side):
            return None
        try:
            return scales.value(side, frame, {})
        except Undefined:
            return None


def _fitting(known: Sequence[Frame], chain: Chain) -> Sequence[Frame]:
    """The frames that go with the units written in a chain: no centimetres among pounds, no newton centimetres
    beside newton metres.
    """
    units = {each.unit for side in chain.sides for each in within(side) if isinstance(each, Measured)}
    if not units:
        return known
    names = {name for unit in units for name, _ in unit}
    moments = {
        name
        for unit in units
        if len(unit) == 2 and all(power == 1 for _, power in unit)
        for name, _ in unit
        if name in _LENGTHS
    }
    pounds, metric = bool(names & {"lbf", "in", "ft"}), bool(names & {"N", "kN", "m", "cm", "mm"})
    fits = [
        each
        for each in known
        if (pounds == metric or ("lbf" in each.names or "in" in each.names or "ft" in each.names) == pounds)
        and (len(moments) != 1 or each.names[0] in moments)
    ]
    return fits or known


def unsigned(side: Expr) -> Expr:
    """A side without its minus and its unit."""
    while isinstance(side, Negative | Measured):
        side = side.of
    return side


def alone(side: Expr) -> Name | UnknownName | None:
    """The letter that a side is, with or without a minus."""
    inner = side.of if isinstance(side, Negative) else side
    return inner if isinstance(inner, Name | UnknownName) else None


def meaning_of(fit: Fit, text: str) -> Meaning | None:
    return fit.meanings.get(text)
