"""What is known of one student's world: letters of their own, and the worlds that their wrong lines leave. Judges
nothing.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from math import acos, asin, atan, copysign, degrees

from ..slips.account import Account
from ..reading import Call, Chain, Name, UnknownName
from .arithmetic import bare
from .piece_verdict import Found
from .unit_frames import FORCE, LENGTH, MASS, MOMENT, NONE, Dimension, Frame, kind_of
from .piece_test import Holds, alone, unsigned
from .sides import letters_of, lettered
from .compare_sides import CLOSE, Fit, Own, Scales
from .alternatives import World, with_own

_BACK = {"sin": asin, "cos": acos, "tan": atan}
MOST_DRIFT = 0.03  # of a value: rounding on the way leads no further
MOST = 16  # worlds that are kept in mind


@dataclass(slots=True)
class Student:
    """`live` are the worlds that the wrong lines leave, none before the first; the letters are kept in `holds.own`."""

    account: Account
    holds: Holds
    truth: World
    live: list[World] = field(default_factory=list)
    drift: float = 0.0  # how far rounding has led a right line from the truth, as a share of its largest term

    def learn(self, chain: Chain, found: Found) -> None:
        """Keep what a line says: the values of its letters, and after a wrong one the worlds that go on."""
        wrong = found.verdict != "holds"
        frame = found.holding.frame if found.holding else self.holds.frames[0]
        if found.holding:
            self.drift = self.drift if wrong else max(self.drift, found.holding.loose)
            self._prefer(frame)
            for fit in found.holding.fits:
                self._learn_implied(fit, found)
        values = self._values(chain, frame, wrong, found)
        if found.verdict == "slips":
            self._live(found, values)

    def contradicts(self, world: World) -> bool:
        """Whether a right line has given a value that another world does not have: another g, another table."""
        return any(
            abs(abs(world.values[each.keys[0]]) - abs(each.value)) > CLOSE * abs(each.value) + each.spread
            for each in self.holds.own.values()
            if not each.wrong and len(each.keys) == 1 and each.keys[0] in world.values
        )

    def rounded(self) -> World | None:
        """The truth with the values that right lines have given, each near the true one: what follows from these is
        right as well.
        """
        own = {
            each.keys[0]: copysign(each.value, self.truth.values[each.keys[0]])
            for each in self.holds.own.values()
            if not each.wrong and len(each.keys) == 1 and each.keys[0] in self.truth.values
        }
        near = {
            key: value for key, value in own.items() if abs(value - self.truth.values[key]) <= MOST_DRIFT * abs(value)
        }
        return with_own(self.truth, near) if near else None

    def _prefer(self, frame: Frame) -> None:
        if self.holds.frames[0] != frame:
            self.holds.frames.remove(frame)
            self.holds.frames.insert(0, frame)

    def _learn_implied(self, fit: Fit | None, found: Found) -> None:
        """A new letter that a line gives its value."""
        if fit is None or fit.implied is None or found.chain is None:
            return
        world = (
            found.worlds[0]
            if found.worlds
            else self.live[0]
            if found.verdict == "carried" and self.live
            else self.truth
        )
        for each in letters_of(*found.chain.sides):
            if isinstance(each, UnknownName) and each.text not in self.holds.own:
                self._bind(
                    each.text, fit.implied, fit.open * abs(fit.implied), fit.frame, world, found.verdict != "holds"
                )

    def _bind(self, text: str, value: float, open_: float, frame: Frame, world: World, wrong: bool) -> None:
        found = self.keys_of(value, open_, frame, world)
        kind, keys = found if found else (FORCE, ())
        self.holds.own[text] = Own(value * frame.scale(kind), open_ * frame.scale(kind), kind, keys, wrong)

    def keys_of(
        self, value: float, open_: float, frame: Frame, world: World
    ) -> tuple[Dimension, tuple[str, ...]] | None:
        """What a number may be in a world: the first kind that has quantities of this size, and these."""
        for kind in (FORCE, MOMENT, LENGTH, NONE, MASS):
            size = frame.scale(kind)
            keys = tuple(
                key
                for key, each in world.values.items()
                if kind_of(key) == kind
                and not key.endswith("%")
                and abs(abs(each) - abs(value * size)) <= CLOSE * abs(each) + open_ * size
            )
            if keys:
                return kind, keys
        return None

    def _values(self, chain: Chain, frame: Frame, wrong: bool, found: Found) -> dict[str, float]:
        """The value that a letter standing alone is given, kept as the student's own; by key for a known letter."""
        name = alone(chain.sides[0])
        last = chain.sides[-1]
        out: dict[str, float] = {}
        if len(chain.sides) < 2 or not bare(last):
            return out
        scales = self.holds.scales(self.truth, chain, self.holds.own)
        got = self.holds.value_of(last, scales, frame)
        if got is None:
            return out
        value, open_, _ = got
        if name is None:
            return (
                self._turned(chain, found, value, open_)
                if isinstance(chain.sides[0], Call)
                else self._solved(chain, frame, value, wrong)
            )
        fits = found.holding.fits if found.holding else (scales.agree(name, each) for each in chain.sides[1:-1])
        fit = next((each for each in fits if each and name.text in each.meanings), None)
        keys: tuple[str, ...] = (
            (fit.meanings[name.text].key,) if fit else name.keys[:1] if isinstance(name, Name) else ()
        )
        kind = kind_of(keys[0]) if keys else self.holds.own[name.text].kind if name.text in self.holds.own else FORCE
        size = frame.scale(kind)
        known = keys or (self.holds.own[name.text].keys if name.text in self.holds.own else ())
        self.holds.own[name.text] = Own(value * size, open_ * size, kind, known, wrong)
        if keys:
            out[keys[0]] = value * size
        return out

    def _turned(self, chain: Chain, found: Found, value: float, open_: float) -> dict[str, float]:
        """The angle whose sine, cosine or tangent is given: sin A = 0.994."""
        side = chain.sides[0]
        assert isinstance(side, Call)
        name = unsigned(side.argument)
        fit = found.holding.fits[0] if found.holding else None
        if (
            side.function not in _BACK
            or not isinstance(name, Name | UnknownName)
            or fit is None
            or name.text not in fit.meanings
        ):
            return {}
        ends = [
            degrees(_BACK[side.function](each if side.function == "tan" else max(-1.0, min(1.0, each))))
            for each in (value - open_, value, value + open_)
        ]
        key = fit.meanings[name.text].key
        self.holds.own[name.text] = Own(ends[1], abs(ends[2] - ends[0]) / 2, NONE, (key,), found.verdict != "holds")
        return {key: ends[1]}

    def _solved(self, chain: Chain, frame: Frame, value: float, wrong: bool) -> dict[str, float]:
        """The unknown pull that an equation of one known letter comes to: F x 4 = 971."""
        scales = self.holds.scales(self.truth, chain, self.holds.own)
        names = letters_of(*chain.sides)
        first = names[0] if len(names) == 1 else None
        if not isinstance(first, Name) or first.keys[0] not in self.account.unknowns:
            return {}
        free = Scales(scales.values, {}, scales.frames, self.holds.exact)
        fit = free.agree(lettered(chain.sides[0]), chain.sides[-1], (frame,))
        if fit is None or fit.implied is None:
            return {}
        size = frame.scale(kind_of(first.keys[0]))
        self.holds.own[first.text] = Own(
            fit.implied * size, fit.open * size, kind_of(first.keys[0]), first.keys[:1], wrong
        )
        return {first.keys[0]: fit.implied * size}

    def _live(self, found: Found, values: dict[str, float]) -> None:
        """The worlds that go on after a wrong line."""
        base = self.live[0] if self.live else self.truth
        worlds = list(found.worlds)
        if not worlds and values:
            own = with_own(base, values)
            worlds = [own] if own is not None else []
        elif not worlds and not self.live:
            worlds = []
        if found.slips and not found.worlds and found.why == "sense":
            worlds = list(self.live)
        self.live = (worlds or self.live)[:MOST]
