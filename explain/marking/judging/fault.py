"""Follows a wrong answer back to the first line that is no true quantity, and accuses it; asks where none can be
shown.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from .evidence import copied_for, miscopied, near_truth, of_another, worlds_of
from .kinds import KILOGRAMS
from .known import True_, is_bare
from .patterns import pattern
from .mending import undone
from .state import State
from .values import Claim, Suspect

MOST_COPIED = 12  # numbers from nowhere that are tried in place of data
_NO_EXCUSE = ("*away", "*turn ", "*ratio")  # true of another point than the pivot


class Fault:
    """The search for the fault behind a wrong answer. `sure`: lines that a right answer rests on."""

    def __init__(self, state: State, sure: frozenset[int]) -> None:
        self.state, self.known, self.sure = state, state.known, sure
        self.questions: set[int] = set()  # lines that are asked about

    def find(self, wrong: Claim) -> None:
        """The first line that the answer rests on whose formula is no true quantity; else a question."""
        excused, (names, worlds) = self.excused(), worlds_of(self.state, wrong)
        path = wrong.value.deps | {wrong.line}
        if (
            wrong.value.free
            or len(path) == 1
            or any(
                each.value.free and each.formula and each.meaning.kinds for line in path for each in self.state.on(line)
            )
        ):
            path = frozenset(range(1, wrong.line + 1))
        path = frozenset(line for line in path if line <= wrong.line)
        if (
            self._complement(path, names, worlds)
            or self._without_g(wrong, path)
            or self._in_place_of_a_datum(wrong, path)
        ):
            return
        for line in sorted(path):
            if (line not in excused or line == wrong.line) and self._at(line, wrong, names, worlds):
                return
        if not (self._alone(wrong, names, worlds) or self._from_nowhere(wrong, path, excused, names, worlds)):
            self.questions.add(wrong.line)

    def _without_g(self, wrong: Claim, path: frozenset[int]) -> bool:
        """A working that never multiplies by g: the first line with a moment or a force made of masses."""
        if not all(each.form == "kg" for each in self.keys_of(wrong)) or not self.keys_of(wrong):
            return False
        for claim in sorted(self.state.claims, key=lambda each: each.line):
            keys = self.known.true_of(claim.value.f) if claim.line in path and not claim.value.free else []
            if keys and all(each.form == "kg" for each in keys) and claim.unit not in KILOGRAMS:
                self.accuse(
                    claim.line,
                    ["mass-for-weight", "kilogram-answer", "g-in-one-term-only"],
                    frozenset(),
                    "masses for weights",
                    claim,
                )
                return True
        return False

    def _complement(self, path: frozenset[int], names: list[str], worlds: frozenset[int]) -> bool:
        """An asked angle counted from the other line."""
        for claim in sorted(self.state.claims, key=lambda each: each.line):
            keys = self.keys_of(claim) if claim.line in path and not claim.value.free else []
            if keys and all(each.form == "complement" and each.key in self.state.hints.asked for each in keys):
                slips = ["sine-cosine-swap-load", "angle-wrong-reference"]
                if not re.search(r"sin|cos", self.state.raw_of(claim.line)):
                    slips.reverse()
                self.accuse(
                    claim.line,
                    [*slips, *(name for name in names if name not in slips)],
                    worlds,
                    "true of another thing",
                    claim,
                )
                return True
        return False

    def _at(self, line: int, wrong: Claim, names: list[str], worlds: frozenset[int]) -> bool:
        """Whether something on this line is at fault."""
        for each in self.state.suspects:
            if (
                each.state != "open"
                or line not in (each.at, each.line)
                or each.soft
                and not self._soft_counts(each, line, wrong, worlds)
            ):
                continue
            each.state, each.strong = "guilty", True
            each.slips += [name for name in names if name not in each.slips]
            return True
        for claim in self.state.on(line):
            if claim.status == "none" and not claim.value.free and claim.value.source != "trig" and claim.unit != "deg":
                self.accuse(line, names, worlds, "no true quantity", claim)
                return True
            if (
                claim.status == "none"
                and line < wrong.line
                and line not in self.sure
                and self._comes_from(claim, wrong)
            ):
                self.accuse(line, names, worlds, "the answer comes from here", claim)
                return True
        for claim in self.state.on(line):
            copied = miscopied(self.state, claim, wrong)
            if copied:
                self.accuse(line, copied, frozenset(), "a datum copied wrongly", claim)
                return True
        for claim in self.state.on(line):
            other = [] if claim.value.free else of_another(self.state, claim, worlds)
            if other:
                self.accuse(
                    line,
                    [*other, *(name for name in names if name not in other)],
                    worlds,
                    "true of another thing",
                    claim,
                )
                return True
        return False

    def _soft_counts(self, suspect: Suspect, line: int, wrong: Claim, worlds: frozenset[int]) -> bool:
        if line == wrong.line:
            return True
        if suspect.axis:
            things = self.state.hints.item_of(suspect.key)
            return any(self.known.slips[place].item in things for place in worlds)
        mine = [claim for claim in self.state.on(line) if self.state.places([suspect]) & claim.value.blames]
        return not any(claim.meaning.items - self.state.hints.pulls for claim in mine) and any(
            pattern(claim.value.f) == pattern(wrong.value.f) for claim in mine
        )

    def _comes_from(self, claim: Claim, wrong: Claim) -> bool:
        """A line that already gives the wrong answer's number, though it cannot be traced."""
        number = claim.value.number
        return (
            bool(number)
            and abs(abs(number) / abs(wrong.value.number) - 1) < 0.006
            and not near_truth(self.state, number)
        )

    def _in_place_of_a_datum(self, wrong: Claim, path: frozenset[int]) -> bool:
        """A number from nowhere that gives this very answer, put in place of a datum."""
        tried = 0
        for claim in sorted(self.state.claims, key=lambda each: each.line):
            if claim.line not in path or not claim.value.free or claim.formula or not claim.value.number:
                continue
            tried += 1
            copied = copied_for(self.state, claim, wrong) if tried <= MOST_COPIED else []
            if copied:
                self.accuse(claim.line, copied, frozenset(), "a datum copied wrongly", claim)
                return True
        return False

    def _alone(self, wrong: Claim, names: list[str], worlds: frozenset[int]) -> bool:
        """What one force alone asks of the pull, given as the pull."""
        keys = self.keys_of(wrong)
        if (
            not worlds
            or wrong.value.free
            or not keys
            or not all(each.key.startswith("*alone") for each in keys)
            or not self.known.wrong_of(wrong.value.f, wrong.unit)
        ):
            return False
        same = pattern(wrong.value.f)
        first = next(
            (
                each
                for each in sorted(self.state.claims, key=lambda each: each.line)
                if each.line <= wrong.line
                and each.line not in self.sure
                and not each.value.free
                and pattern(each.value.f) == same
            ),
            None,
        )
        if first is None:
            return False
        self.accuse(first.line, names, worlds, "the answer of a slip", first)
        return True

    def _from_nowhere(
        self, wrong: Claim, path: frozenset[int], excused: frozenset[int], names: list[str], worlds: frozenset[int]
    ) -> bool:
        """A number that comes from nothing, where the answer is a slip's."""
        for line in sorted(path) if worlds else []:
            for claim in self.state.on(line) if line not in excused or line == wrong.line else []:
                if (
                    claim.status == "none"
                    and claim.value.free
                    and claim.unit
                    and not near_truth(self.state, claim.value.number)
                ):
                    self.accuse(line, names, worlds, "a number that comes from nowhere", claim)
                    return True
        return False

    def excused(self) -> frozenset[int]:
        """Lines on whose value something true rests."""
        out = set(self.sure)
        for claim in self.state.claims:
            if (
                claim.status == "true"
                and not claim.value.free
                and (
                    not claim.meaning.role
                    or any(self.state.hints.speaks(each.key, claim.meaning) for each in claim.keys)
                )
                and not all(is_bare(each.key) or each.key.startswith(_NO_EXCUSE) for each in claim.keys)
            ):
                out |= claim.value.deps - {claim.line}
        return frozenset(out)

    def accuse(self, line: int, names: Sequence[str], worlds: frozenset[int], why: str, claim: Claim) -> None:
        names = names or undone(self.state, claim.case)
        if not names:  # nothing but a wrong answer speaks against it: a question
            self.questions.add(line)
            return
        place = self.state.suspect(
            Suspect(line, list(names), "", True, why, worlds, claim.value.deps, state="guilty"), claim.value
        )
        self.state.suspects[place].at = line

    def keys_of(self, claim: Claim) -> list[True_]:
        return self.known.true_of(claim.value.f, claim.unit)
