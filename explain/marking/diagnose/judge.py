"""The verdict on one piece of a working after another: true, carried from a wrong line, a slip, or not followed.
Judges truth and consequence, not looks.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from decimal import Decimal
from functools import cached_property

from ..reading import Chain, Name, Number, UnknownName
from .arithmetic import bare, equal, runs_on
from .unit_slips import miscounted
from .form_slips import Forms
from .piece_verdict import Found
from .unit_frames import FORCE, kind_of
from .piece_test import Holding, Holds, alone, unsigned
from .carried_on import Meant, claim
from .slip_search import FINE, NAMES, Search
from .direction_words import sensed
from .student import MOST_DRIFT, Student
from .sides import TRIES, TooMany, letters_of, named
from .compare_sides import CLOSE, Own
from .alternatives import World, Worlds

ZERO = Number(Decimal(0), 0, 1, "0")


@dataclass
class Judge:
    """One working being read. `asked` are the keys of what the problem asks; `bone` is the other bone, `flipped`
    where the class gives the force on it.
    """

    worlds: Worlds
    holds: Holds
    asked: tuple[str, ...]
    flipped: bool = False
    bone: str = ""
    g: float | None = None

    @cached_property
    def truths(self) -> tuple[World, ...]:
        return self.worlds.truths(self.g)

    @cached_property
    def student(self) -> Student:
        return Student(self.worlds.account, self.holds, self.truths[0])

    @cached_property
    def meant(self) -> Meant:
        return Meant(self.worlds.account, self.holds)

    @cached_property
    def search(self) -> Search:
        return Search(self.worlds, self.holds, self.student)

    @cached_property
    def forms(self) -> Forms:
        return Forms(self.holds, self.student, self.worlds.account.unknowns, lambda: self._fitting)

    # ------------------------------------------------------------------ one piece
    def piece(self, chain: Chain) -> Found:
        """The verdict on one chain; what it states is kept for the lines after it."""
        self.holds.kept.left = TRIES
        try:
            chain = self.meant.by(chain, self.truths[0])
            found = self._judge(chain)
            found = found.verdict == "holds" and self._asked_for(found) or found
        except TooMany:
            found = Found("unclear", why="too many letters that may mean several things")
        if found.verdict == "holds" and self._from_nowhere(found.chain or chain, found):
            found = Found("unclear", why=f"the letter {getattr(alone(chain.sides[0]), 'text', '')}")
        if found.verdict in ("holds", "carried", "slips"):
            self.student.learn(found.chain or chain, found)
        self.meant.before = (
            found.chain if found.verdict == "holds" and found.chain and found.note != "run-on" else chain
        )
        return found

    def _from_nowhere(self, chain: Chain, found: Found) -> bool:
        """Whether a new letter is given a bare number that is no quantity of the problem."""
        if (
            len(chain.sides) != 2
            or not isinstance(alone(chain.sides[0]), UnknownName)
            or not isinstance(unsigned(chain.sides[1]), Number)
        ):
            return False
        fit = found.holding.fits[0] if found.holding else None
        return (
            fit is not None
            and fit.implied is not None
            and not self.student.keys_of(fit.implied, fit.open * abs(fit.implied), fit.frame, self.truths[0])
        )

    def _asked_for(self, found: Found) -> Found | None:
        """A slip in a balance whose new letter comes to nothing of the problem, and can only be what is asked: Q x
        0.023 = 2.2 + 2.5.
        """
        chain, fits = found.chain, found.holding.fits if found.holding else ()
        pulls = [key for key in self.worlds.account.unknowns if kind_of(key) == FORCE]
        scales = self.holds.scales(self.truths[0], chain, {}) if chain else None
        odd = [fit for fit in fits if fit and fit.implied is not None and scales and not scales.is_quantity(fit)]
        if chain is None or not odd or len(pulls) != 1 or any(alone(side) is not None for side in chain.sides):
            return None
        new = {
            each.text
            for each in letters_of(*chain.sides)
            if isinstance(each, UnknownName) and each.text not in self.holds.own
        }
        sides = tuple(named(each, new, Name((pulls[0],), pulls[0])) for each in chain.sides)
        meant = replace(chain, sides=sides, otherwise=())
        return self.search.slip(meant) if len(new) == 1 and self._true(meant) is None else None

    def _judge(self, chain: Chain) -> Found:
        if len(chain.sides) == 1 and not chain.label:
            return self._lone(chain)
        ways: tuple[Callable[[Chain], Found | None], ...] = (
            self._true,
            self._run_on,
            self._true_by_own,
            self._carried,
            self._formed,
            self.search.slip,
            self._by_numbers,
            lambda each: miscounted(each, self.holds.exact),
        )
        for way in ways:
            found = way(chain)
            if found is not None:
                return found
        return self._unexplained(chain)

    # ------------------------------------------------------------------ true
    @property
    def _fitting(self) -> tuple[World, ...]:
        """The truth, and the truth by another g or table as long as no right line speaks against it."""
        return tuple(each for each in self.truths if each is self.truths[0] or not self.student.contradicts(each))

    @property
    def _right_letters(self) -> dict[str, Own]:
        return {text: each for text, each in self.holds.own.items() if not each.wrong}

    def _true(self, chain: Chain) -> Found | None:
        for each in (chain, *chain.otherwise):
            if self._rests_on_wrong(each):
                continue
            for world in self._fitting:
                scales = self.holds.scales(world, each, self._right_letters)
                holding = self.holds.holds(each, scales)
                if holding is not None and (
                    each is chain
                    or not any(fit and fit.implied is not None and not scales.is_quantity(fit) for fit in holding.fits)
                ):
                    if world is not self.truths[0] and not self.student.live:
                        self.truths = self.worlds.truths(world.account.data["g"])
                        self.student.truth = self.truths[0]
                    return self._with_sense(each, holding, world, "holds", world.note)
        return None

    def _rests_on_wrong(self, chain: Chain) -> bool:
        """Whether a letter that only the student has was given a wrong value, and is not given one anew."""
        names = letters_of(*chain.sides)
        if alone(chain.sides[0]) is not None and len(names) == 1:
            return False
        return any(
            isinstance(each, UnknownName) and each.text in self.holds.own and self.holds.own[each.text].wrong
            for each in names
        )

    def _true_by_own(self, chain: Chain) -> Found | None:
        """True by the student's own rounded values, all from lines that hold."""
        own = self._right_letters
        if any(way.endswith(("horizontal", "vertical")) for each in chain.remarks if each for way in each.directions):
            own = {
                text: each for text, each in own.items() if text != getattr(alone(chain.sides[0]), "text", "")
            }  # an angle told anew
        ways = [each for each in (chain, *chain.otherwise) if own and not self._rests_on_wrong(each)]
        rounded = self.student.rounded() if ways else None
        for world, use_own, close in (
            (self.truths[0], True, self._drifted),
            *(((rounded, False, CLOSE),) if rounded else ()),
        ):
            for each in ways:
                holding = self.holds.holds(each, self.holds.scales(world, each, own, use_own=use_own, close=close))
                if holding is not None:
                    return self._with_sense(each, holding, world, "holds", "rounding")
        return None

    @property
    def _drifted(self) -> float:
        """How close a line must be that goes on from rounded values: as far as these have drifted and a little more,
        never above 3 %.
        """
        return max(CLOSE, min(MOST_DRIFT, 1.3 * self.student.drift))

    def _run_on(self, chain: Chain) -> Found | None:
        """Equals signs written on and on: 3 x 9.81 = 29.43 x 33 = 971.2."""
        first = 0 if bare(chain.sides[0]) else 1
        sides = chain.sides[first:]
        if len(sides) < 2 or not bare(*sides):
            return None
        steps = [
            (equal(a, b, exact=self.holds.exact), runs_on(a, b, self.holds.exact))
            for a, b in zip(sides, sides[1:], strict=False)
        ]
        if all(same for same, _ in steps) or not all(same or on for same, on in steps):
            return None
        short = replace(
            chain,
            sides=(*chain.sides[:first], sides[-1]),
            relations=chain.relations[:first],
            remarks=(*chain.remarks[:first], chain.remarks[-1]),
        )
        found = self._judge(short) if len(short.sides) > 1 or short.label else Found("holds", chain=short)
        return found._replace(note="run-on") if found.verdict == "holds" else found

    # ------------------------------------------------------------------ not true
    def _carried(self, chain: Chain) -> Found | None:
        """What follows in a world that the wrong lines leave, by its values or by the student's own."""
        for use_own in (False, True) if self.student.live else ():
            kept = [
                (world, each, holding)
                for world in self.student.live
                for each in (chain, *chain.otherwise)
                if (holding := self.search.in_world(each, world, use_own, CLOSE)) is not None
            ]
            if kept:
                found = self._with_sense(kept[0][1], kept[0][2], kept[0][0], "carried")
                if found.verdict == "carried":
                    self.student.live = list({id(world): world for world, _, _ in kept}.values())
                return found
        return None

    def _formed(self, chain: Chain) -> Found | None:
        """A slip that the form of a line shows; where that is a unit, with the slips that give the same number."""
        found = self.forms.slip(chain)
        more = self.search.slip(chain) if found is not None and found.slips[-1:] == ("unit-label-wrong",) else None
        if found is None or more is None or more.verdict != "slips":
            return found
        return found._replace(slips=tuple(dict.fromkeys((*found.slips, *more.slips)))[:NAMES])

    def _by_numbers(self, chain: Chain) -> Found | None:
        """A slip in the numbers of a chain whose formula in letters is right: W = m g = 1.5 x 9.81 x 0.5."""
        kept = tuple(place for place, side in enumerate(chain.sides) if not place or bare(side))
        if not 1 < len(kept) < len(chain.sides):
            return None
        short = replace(
            chain,
            sides=tuple(chain.sides[place] for place in kept),
            relations=chain.relations[: len(kept) - 1],
            remarks=tuple(chain.remarks[place] for place in kept),
            otherwise=(),
        )
        return self.search.slip(short)

    def _unexplained(self, chain: Chain) -> Found:
        """A line that holds in no world: wrong where all its letters are known, else not followed."""
        names = letters_of(*chain.sides)
        strange = [each.text for each in names if isinstance(each, UnknownName) and each.text not in self.holds.own]
        if strange or not names and not chain.label:
            return Found("unclear", why=f"the letter {strange[0]}" if strange else "")
        first = chain.remarks[0]
        if first is not None and first.text.casefold().startswith("of "):
            return Found("unclear", why=f'the words "{first.text}"')
        return Found("slips", chain=chain)

    # ------------------------------------------------------------------ a value on its own
    def _lone(self, chain: Chain) -> Found:
        """A number without a letter: an answer, or a quantity of the problem."""
        if not bare(chain.sides[0]):
            return Found("aside")
        for key in self.asked:
            said = claim(chain, Name((key,), key))
            found = self._true(said) or self._carried(said)
            if found is not None:
                return found
        for key in self.truths[0].values:
            said = claim(chain, Name((key,), key))
            if self.holds.holds(said, self.holds.scales(self.truths[0], said, {}, close=FINE)) is not None:
                return Found("holds", states=(key,))
        said = claim(chain, Name(self.asked[:1], self.asked[0]))
        return (
            self.forms.slip(said)
            or self.search.slip(said)
            or Found("unclear" if self.student.live else "slips", chain=said)
        )

    def _with_sense(self, chain: Chain, holding: Holding, world: World, verdict: str, note: str = "") -> Found:
        found = Found(
            "carried" if verdict == "carried" else "holds",
            note=note,
            states=holding.states,
            holding=holding,
            chain=chain,
        )
        return sensed(found, world, self.flipped, self.bone)
