"""Asks about what stands before a line at fault and is not known to be true: weak evidence is no blame, and no reason
to say that a line holds.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from .answers import Answer
from .state import State
from .values import Claim, Suspect


class Doubts:
    """The questions behind the wrong answers of one pass. `excused`: lines on whose value something true rests."""

    def __init__(self, state: State, answers: Sequence[Answer], excused: frozenset[int]) -> None:
        self.state, self.known, self.answers, self.excused = state, state.known, answers, excused

    def lines(self) -> Iterator[int]:
        """Behind a wrong answer, ask about what stands before the first line at fault and is not known to be true: a
        formula that is no quantity of the problem, or one that is true of another thing than the words say.
        """
        wrong = [each.claim for each in self.answers if each.status in ("wrong", "other")]
        if not wrong:
            return
        guilty = [each.line for each in self.state.guilty()]
        end = min(guilty, default=max(each.line for each in wrong) + 1)
        for each in self.state.guilty():
            if each.slips and each.slips[0].endswith("left-out"):
                yield from (claim.line for claim in self.state.claims if self._may_be_the_sum(claim, each))
        for line in {each.line for each in self.state.claims if each.line < end} - self.excused:
            own = self.state.on(line)
            known = any(each.status == "true" for each in own)
            if not known and any(map(self._is_no_quantity, own)) or any(map(self._is_of_another, own)):
                yield line

    def _may_be_the_sum(self, claim: Claim, left_out: Suspect) -> bool:
        """The moment of one thing, with no name, from which a fault goes on where another that turns the same way is
        left out: perhaps it was meant to be that of all.
        """
        moments = self.known.truth
        without = {f"*moment {self.known.slips[place].item}" for place in left_out.worlds}
        return (
            claim.line in left_out.deps
            and claim.line < left_out.line
            and claim.status == "true"
            and claim.meaning.kinds == {"moment"}
            and not claim.meaning.items
            and any(
                moments[one.key][0] * moments[other][0] > 0
                for one in claim.keys
                for other in without
                if one.key.startswith("*moment ") and other in moments
            )
        )

    @staticmethod
    def _is_no_quantity(claim: Claim) -> bool:
        return (
            claim.status in ("none", "suspect")
            and claim.value.source != "trig"
            and claim.unit != "deg"
            and (claim.formula or claim.solved or bool(claim.unit))
        )

    def _is_of_another(self, claim: Claim) -> bool:
        """Whether what is true of one thing is told of another: neither its thing nor its kind fits the words."""
        meaning, keys = claim.meaning, [each.key for each in claim.keys]
        if claim.status != "true" or not claim.formula or not meaning.kinds or not keys:
            return False
        if meaning.role:
            return not any(self.state.hints.speaks(key, meaning) for key in keys)
        return len(meaning.items) == 1 and not any(
            self.state.hints.item_of(key) & meaning.items or key == "total" or key.startswith(("*sum", "*weights"))
            for key in keys
        )
