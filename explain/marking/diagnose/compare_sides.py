"""Whether two sides of a student's line come to the same: under which units, meanings of letters and signs. Knows
values by key, no mechanics.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import islice
from typing import NamedTuple

from ..reading import Expr, Name, Number, Sigma, Undefined, UnknownName, evaluate
from .unit_frames import FORCE, LENGTH, MOMENT, NONE, Dimension, Frame, kind_of
from .letter_meanings import Meaning, together
from .sides import Kept, Worth, has_units, states_units

CLOSE = 0.01  # of the largest term: the class's figures on the way (trade knowledge, 3 figures kept)
MOST = 0.06  # what rounding to two figures on the way mostly does (trade knowledge: 95 % of 3000 data sets)
_TRIES = 96  # meanings of the letters of two sides, in one frame
ZERO = "*zero"  # a sum that is nothing: of any kind
_SUMS = ("*moment ", "total")
_PARTS = ("reaction", "*alone ", "*level ", "*upright ")


class Unlike(Undefined):
    """Terms or sides of kinds that cannot be added or set equal, whatever the values: a force and a length."""


class Own(NamedTuple):
    """What a student's own letter stands for: its SI value, what its figures leave open, and its kind; the keys it
    may be, the line it comes from.
    """

    value: float
    spread: float
    kind: Dimension
    keys: tuple[str, ...] = ()
    wrong: bool = False


class Fit(NamedTuple):
    """How two sides agree: the units, what the letters stood for, the gap as a share of the largest term, what rounding
    would leave open.

    `implied` is the value, in the frame's units, of the one letter that had none.
    """

    frame: Frame
    meanings: Mapping[str, Meaning]
    gap: float
    open: float = 0.0
    implied: float | None = None


@dataclass(slots=True)
class Scales:
    """The weighing of one working: values by key, the student's own letters, what counts as exact, how angles are
    taken.
    """

    values: Mapping[str, float]
    own: Mapping[str, Own]
    frames: Sequence[Frame]
    exact: Callable[[Number], bool]
    use_own: bool = False
    close: float = CLOSE
    units: bool = True
    turn: float = math.pi / 180
    angles: Callable[[str], tuple[float, ...]] | None = None
    kept: Kept = field(default_factory=lambda: Kept())

    def names(self, *sides: Expr) -> tuple[Name | UnknownName | Sigma, ...]:
        """The letters of two sides, each once."""
        if len(sides) == 1:
            return self.kept.side(sides[0]).letters
        return tuple({each.text: each for side in sides for each in self.kept.side(side).letters}.values())

    def agree(self, left: Expr, right: Expr, frames: Sequence[Frame] | None = None) -> Fit | None:
        """The first way in which two sides agree, None where there is none.

        With one letter unknown it is worked out instead: the first way that makes it a quantity of the problem, else
        the first.
        """
        names = self.names(left, right)
        open_ones = [each.text for each in names if isinstance(each, UnknownName) and each.text not in self.own]
        if len(open_ones) > 1:
            return None
        first: Fit | None = None
        lettered = not (self.kept.side(left).numbers or self.kept.side(right).numbers)  # the same in all units
        for frame in (frames or self.frames)[: 1 if lettered else None]:
            for meanings in islice(self._meanings(names), _TRIES * (10 if lettered else 1)):
                mark = (id(left), id(right), self.units, tuple(each.kind for each in meanings.values()))
                if mark in self.kept.unlike:
                    continue
                self.kept.spend()
                try:
                    fit = (
                        self._implied(left, right, frame, meanings, open_ones[0])
                        if open_ones
                        else self._compare(left, right, frame, meanings)
                    )
                except Unlike:
                    self.kept.unlike.add(mark)
                    continue
                if fit is not None and (not open_ones or self.is_quantity(fit)):
                    return fit
                first = first or fit
            if not names and not has_units(left, right):
                break
        return first

    def is_quantity(self, fit: Fit) -> bool:
        """Whether a letter that was worked out is a force, a moment or a length of the problem."""
        if fit.implied is None:
            return False
        return any(
            abs(abs(each) - abs(fit.implied) * fit.frame.scale(kind)) <= (self.close + fit.open) * abs(each)
            for key, each in self.values.items()
            if (kind := kind_of(key)) in (FORCE, MOMENT, LENGTH)
        )

    # ------------------------------------------------------------------ what letters mean
    def _meanings(self, names: Sequence[Name | UnknownName | Sigma]) -> Iterator[dict[str, Meaning]]:
        modes = ("size", "turns", "back") if any(self._sums(each) for each in names) else ("size",)
        for mode in modes:
            choices = [[(each.text, meaning) for meaning in self._each(each, mode)] for each in names]
            for chosen in together(choices):
                yield {text: meaning for text, meaning in chosen if meaning is not None}

    def _sums(self, name: Name | UnknownName | Sigma) -> bool:
        return isinstance(name, Name) and any(key.startswith(_SUMS) for key in name.keys)

    def _each(self, name: Name | UnknownName | Sigma, mode: str) -> list[Meaning | None]:
        own = self.own.get(name.text)
        mine = [Meaning(own.value, own.kind, own.keys[0] if own.keys else name.text, own.spread)] if own else []
        if isinstance(name, UnknownName):
            known = [
                Meaning(self.values[key], kind_of(key), key)
                for key in (own.keys if own and not self.use_own else ())
                if key in self.values
            ]
            return [*known, *mine] or [None]
        if isinstance(name, Sigma):
            return [Meaning(0.0, NONE, ZERO), *self._variants("total", mode)]
        if self.use_own and mine:
            return [*mine, *(each for key in name.keys for each in self._variants(key, mode))]
        return [each for key in name.keys for each in self._variants(key, mode)] or [*mine] or [None]

    def sizes(self, key: str) -> tuple[float, ...]:
        """The values that may stand for a quantity."""
        return tuple(each.value for each in self._variants(key, "size"))

    def _variants(self, key: str, mode: str) -> list[Meaning]:
        if key not in self.values:
            return []
        value, kind = self.values[key], kind_of(key)
        if key.startswith("*angle "):
            return [Meaning(each, kind, key) for each in (self.angles(key) if self.angles else (value,))]
        if key.startswith(_SUMS):
            return [Meaning({"size": abs(value), "turns": value, "back": -value}[mode], kind, key)]
        if key.startswith(_PARTS) and value:
            return [Meaning(abs(value), kind, key), Meaning(-abs(value), kind, key)]
        return [Meaning(value, kind, key)]

    # ------------------------------------------------------------------ comparing
    def value(self, side: Expr, frame: Frame, meanings: Mapping[str, Meaning]) -> tuple[float, float, Dimension | None]:
        """A side in the units of a frame, what its figures leave open, its kind. Raises Undefined."""
        known = self.kept.side(side)
        if not known.letters:
            key = (frame, self.units, self.turn)
            if key not in known.values:
                known.values[key] = self._number(side, frame)
            worth = known.values[key]
            if worth is None:
                raise Undefined("no value")
            return worth
        values, spreads, kinds = {}, {}, {}
        for each in known.letters:
            meaning = meanings.get(each.text)
            if meaning is not None:
                size = frame.scale(meaning.kind)
                values[each.text], spreads[each.text] = meaning.value / size, meaning.spread / size
                if meaning.key != ZERO:
                    kinds[each.text] = meaning.kind
        if self.units and len(known.terms) > 1:
            self._like(known.terms, frame, meanings)
        found = evaluate(
            known.lettered,
            values,
            spreads=spreads,
            dimensions=kinds,
            scale=frame.scale,
            exact=self.exact,
            units=self.units,
            turn=self.turn,
        )
        return found.value, found.widest, found.dimension

    def _like(self, inner: Sequence[Expr], frame: Frame, meanings: Mapping[str, Meaning]) -> None:
        """Raises Undefined where terms of a sum are of kinds that cannot be added: a force and a length."""
        kinds = {kind for each in inner if (kind := self.value(each, frame, meanings)[2]) is not None}
        if len(kinds) > 1:
            raise Unlike("terms of different kinds")

    def _number(self, side: Expr, frame: Frame) -> Worth | None:
        try:
            found = evaluate(side, {}, scale=frame.scale, exact=self.exact, units=self.units, turn=self.turn)
        except Undefined:
            return None
        return found.value, found.widest, found.dimension

    def _compare(self, left: Expr, right: Expr, frame: Frame, meanings: Mapping[str, Meaning]) -> Fit | None:
        try:
            a, open_a, kind_a = self.value(left, frame, meanings)
            b, open_b, kind_b = self.value(right, frame, meanings)
        except Unlike:
            raise
        except Undefined:
            return None
        if self.units and kind_a is not None and kind_b is not None and kind_a != kind_b and states_units(left, right):
            raise Unlike("sides of different kinds")
        big = max(abs(a), abs(b))
        if (
            abs(a - b) > self.close * big + min(open_a + open_b, MOST * big)
            or len(self.terms(left)) + len(self.terms(right)) > 2
        ):
            big = max(big, self.largest(left, frame, meanings), self.largest(right, frame, meanings))
        if big == 0.0:
            return Fit(frame, meanings, 0.0)
        open_ = min(open_a + open_b, MOST * big)
        if abs(a - b) <= self.close * big + open_:
            return Fit(frame, meanings, abs(a - b) / big, open_ / big)
        return None

    def largest(self, side: Expr, frame: Frame, meanings: Mapping[str, Meaning]) -> float:
        """The largest term of a side, by size."""
        inner = self.terms(side)
        if len(inner) < 2:
            return 0.0
        try:
            return max(abs(self.value(each, frame, meanings)[0]) for each in inner)
        except Undefined:
            return 0.0

    def terms(self, side: Expr) -> tuple[Expr, ...]:
        return self.kept.side(side).terms

    def _implied(
        self, left: Expr, right: Expr, frame: Frame, meanings: Mapping[str, Meaning], letter: str
    ) -> Fit | None:
        """The value of the one unknown letter, where it enters by its first power."""

        def gap(value: float) -> float:
            with_it = {**meanings, letter: Meaning(value, NONE, letter)}
            return self.value(left, frame, with_it)[0] - self.value(right, frame, with_it)[0]

        try:
            zero, one, two = gap(0.0), gap(1.0), gap(2.0)
            with_one = {**meanings, letter: Meaning(1.0, NONE, letter)}
            spread = self.value(left, frame, with_one)[1] + self.value(right, frame, with_one)[1]
        except Undefined:
            return self._inverse(left, right, frame, meanings, letter)
        slope = one - zero
        if abs(slope) < 1e-12 or abs(two - one - slope) > 1e-6 * abs(slope):
            return None
        return Fit(frame, meanings, 0.0, abs(spread / zero) if zero else 0.0, -zero / slope)

    def _inverse(
        self, left: Expr, right: Expr, frame: Frame, meanings: Mapping[str, Meaning], letter: str
    ) -> Fit | None:
        """A letter alone over a product: W/X = 3."""

        def gap(value: float) -> float:
            with_it = {**meanings, letter: Meaning(1 / value, NONE, letter)}
            return self.value(left, frame, with_it)[0] - self.value(right, frame, with_it)[0]

        try:
            one, two, three = gap(1.0), gap(2.0), gap(3.0)
        except Undefined:
            return None
        slope = two - one
        if abs(slope) < 1e-12 or abs(three - two - slope) > 1e-6 * abs(slope):
            return None
        return Fit(frame, meanings, 0.0, 0.0, 1 / (1 - one / slope))
