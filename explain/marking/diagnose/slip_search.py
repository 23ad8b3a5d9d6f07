"""Which slip explains a line: the worlds with one more slip in which it holds, ranked. Knows no particular slip."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from ..reading import Chain, Name, Sigma
from .arithmetic import bare
from .piece_verdict import Found
from .unit_frames import kind_of
from .piece_test import Holding, Holds, alone
from .student import MOST, Student
from .term_match import structure
from .sides import letters_of
from .label_words import label_keys
from .alternatives import World, Worlds

_FAR = 0.08  # more than all rounding on the way can do
NAMES = 8  # more that give the same number tell nothing
_NEAR = 0.003  # of the largest term: gaps that are alike
FINE = 0.005  # how close a line must be to a slip's world, beside its figures
Match = tuple[Chain, World, Holding]


@dataclass(frozen=True, slots=True)
class Search:
    worlds: Worlds
    holds: Holds
    student: Student

    def slip(self, chain: Chain) -> Found | None:
        """The slips in whose worlds a line holds; one that was made before is carried on. None where no slip
        explains it.
        """
        keys, live = self._spoken(chain), self.student.live
        wanted = self._wanted(chain)
        for worlds in self._groups(live):
            matched = [
                (each, world, holding)
                for world in worlds
                if world.changed & keys and (wanted is None or wanted(world))
                for each in (chain, *(other for other in chain.otherwise if other.choice != "letter"))
                if (holding := self.in_world(each, world, False, FINE)) is not None
            ]
            if matched:
                return self._again(matched) or self._named(matched)
        return None

    def _wanted(self, chain: Chain) -> Callable[[World], bool] | None:
        """Whether a world can give a letter the number that a line gives it; None for a line of another form. Saves
        weighing it in the others.
        """
        name, last = alone(chain.sides[0]), chain.sides[-1]
        if (
            not isinstance(name, Name)
            or len(chain.sides) < 2
            or not bare(last)
            or any(key.startswith("*angle ") for key in name.keys)
        ):
            return None
        sizes: list[tuple[str, float]] = []
        for units in (True, False):
            scales = self.holds.scales(self.student.truth, chain, {}, units=units)
            found = [(frame, self.holds.value_of(last, scales, frame)) for frame in self.holds.frames]
            sizes += [
                (key, abs(worth[0]) * frame.scale(kind_of(key)))
                for key in name.keys
                for frame, worth in found
                if worth is not None
            ]
        return lambda world: any(abs(abs(world.values.get(key, math.inf)) - size) <= _FAR * size for key, size in sizes)

    def _groups(self, live: Sequence[World]) -> Iterator[Sequence[World]]:
        """Worlds to look through, the likeliest first: one more slip on the student's own, one on the truth, one on
        the truth by another g.
        """
        if live:
            yield self.worlds.further(live)
        yield self.worlds.after(self.student.truth)
        if not live:
            yield from (self.worlds.after(each) for each in self.worlds.truths() if each is not self.student.truth)

    def in_world(self, chain: Chain, world: World, use_own: bool, close: float) -> Holding | None:
        """How a chain holds in a world, with its units or by its numbers alone."""
        for units in (True, False):
            holding = self.holds.holds(chain, self.holds.scales(world, chain, self.holds.own, use_own, units, close))
            if holding is not None:
                return holding
        return None

    def _again(self, matched: Sequence[Match]) -> Found | None:
        """The same slip once more."""
        before = self.worlds.names(self.student.live)
        kept = [each for each in matched if self.worlds.names([each[1]._replace(slips=each[1].slips[-1:])]) & before]
        if not kept:
            return None
        self.student.live = [world for _, world, _ in kept][:MOST]
        chain, _, holding = kept[0]
        return Found("carried", states=holding.states, holding=holding, chain=chain, why="again")

    def _spoken(self, chain: Chain) -> frozenset[str]:
        """Every key that a chain may speak of."""
        out: set[str] = set()
        for each in (chain, *chain.otherwise):
            for name in letters_of(*each.sides):
                out |= {"total"} if isinstance(name, Sigma) else set(name.keys) if isinstance(name, Name) else set()
                if name.text in self.holds.own:
                    out |= set(self.holds.own[name.text].keys)
            if each.label:
                out |= set(label_keys(each.label, self.worlds.account, self.student.truth.values))
        return frozenset(out)

    def _named(self, matched: Sequence[Match]) -> Found:
        """Slips ranked: those whose terms are the line's own first, then those that are common."""
        made = [(structure(*each, self.holds), each) for each in matched]
        best = max(score for score, _ in made)
        closest = min(each[2].loose for score, each in made if score == best)
        same = [
            (score, each) for score, each in made if (score == best or best != 2) and each[2].loose <= closest + _NEAR
        ]
        kept = [
            each for _, each in sorted(same, key=lambda each: (-each[0], -self._common(each[1][1]), each[1][2].loose))
        ]
        chain, _, holding = kept[0]
        names = tuple(
            dict.fromkeys(
                name
                for _, world, _ in kept
                for name in (world.slips[-1].slip, *(each.slip for each in world.slips[-1].also))
            )
        )
        worlds = tuple({id(world): world for _, world, _ in kept}.values())[:MOST]
        return Found("slips", names[:NAMES], worlds, states=holding.states, holding=holding, chain=chain)

    def _common(self, world: World) -> int:
        rule = next((each for each in self.worlds.rules if world.slips[-1].slip == each.SLIP), None)
        return rule.COMMON if rule else 0
