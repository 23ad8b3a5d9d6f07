"""Answers that stop short of what is asked: a force left in kilograms, a moment or a part that is called the pull."""

from __future__ import annotations

import re
from collections.abc import Sequence

from .answers import Answer
from .fault import Fault
from .kinds import kind_of
from .state import State
from .values import Claim

_PART = re.compile(r"component|part|perp|vertical|horizontal|turning|\bside|alone|each|⊥")


class StopsShort:
    """The answers of one pass that stop short."""

    def __init__(self, state: State, answers: Sequence[Answer], fault: Fault) -> None:
        self.state, self.known, self.answers, self.fault = state, state.known, answers, fault

    def of_the_pull(self) -> None:
        """A moment that is called the pull is accused, a part of it asked about."""
        for answer in self.answers:
            if (
                answer.status == "part"
                and self._a_moment(answer)
                and not any(each.line <= answer.claim.line for each in self.state.guilty())
            ):
                self.fault.accuse(
                    answer.claim.line,
                    ["stopped-at-moment", "unit-label-wrong", "divide-one-term"],
                    frozenset(),
                    "a moment that is called the pull",
                    answer.claim,
                )
            if answer.status == "part" and self._only_a_part(answer) and not self.state.guilty():
                self.fault.questions.add(answer.claim.line)

    def of_newtons(self) -> None:
        """A force that is asked for, and left in kilograms to the end."""
        for answer in self.answers:
            claim = answer.claim
            if (
                answer.status == "right"
                and claim.unit == "kg"
                and answer.asked in self.known.truth
                and kind_of(answer.asked) == "force"
                and any(each.form == "kg" for each in claim.keys)
                and not any(kind_of(each.key) == "mass" for each in claim.keys)
                and not self._in_newtons_later(claim)
            ):
                self.fault.accuse(
                    claim.line,
                    ["kilogram-answer", "mass-for-weight", "unit-label-wrong"],
                    frozenset(),
                    "a force in kilograms",
                    claim,
                )

    @staticmethod
    def _a_moment(answer: Answer) -> bool:
        """The last value called the pull is a moment."""
        claim = answer.claim
        return (
            claim.meaning.role == "pull"
            and bool(claim.name)
            and bool(claim.keys)
            and all(kind_of(each.key) == "moment" for each in claim.keys)
        )

    def _in_newtons_later(self, claim: Claim) -> bool:
        keys = {each.key for each in claim.keys}
        return any(
            each.line >= claim.line and each is not claim and any(key.key in keys and not key.form for key in each.keys)
            for each in self.state.claims
        )

    def _only_a_part(self, answer: Answer) -> bool:
        """The last line calls the pull what is only a part of it, or what one force alone asks of it."""
        claim = answer.claim
        if (
            claim.meaning.role != "pull"
            or claim.meaning.axis
            or claim.name[-1:] in tuple("xyXYhvHV")
            or _PART.search(self.state.raw_of(claim.line))
            or claim.line < self.state.lines[-1].number - 1
        ):
            return False
        return bool(claim.keys) and all(
            each.key.startswith(("*turning", "*level", "*upright", "*along", "*across")) for each in claim.keys
        )
