"""What may be told to a student: words without any number that the student does not have already. Knows numbers, not
what they mean.

A sentence with a number that is neither a datum of the problem nor typed in the working is left out, and so is one with
the value of an answer.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from ...solve.outcome import Outcome
from ..slips.verdict import Marking

_NUMBER = re.compile(r"\d+(?:[ \u00a0\u202f]\d{3})*(?:[.,]\d+)?(?:[eE][+-]?\d+)?")
_LINES = re.compile(r"\b[Ll]ines? \d+(?:(?:, | and | to |–)\d+)*")
_SENTENCE = re.compile(r"(?<=[.?!])\s+")
_NEAR = 0.006  # what rounding to three figures can do


@dataclass(frozen=True, slots=True)
class Discreet:
    """`known` are numbers as a student has them; `secret` the values of answers, by size."""

    known: frozenset[float]
    data: frozenset[float]
    secret: tuple[float, ...]

    def words(self, text: str) -> str:
        """The text without the sentences that would tell too much."""
        return " ".join(each for each in _SENTENCE.split(text.strip()) if self.may(each))

    def may(self, text: str) -> bool:
        return all(self._may(number) for number in numbers(_LINES.sub("", text)))

    def _may(self, number: float) -> bool:
        if number in self.data:
            return True
        return number in self.known and not any(abs(number - each) <= _NEAR * each for each in self.secret)


def discreet(marking: Marking, outcome: Outcome) -> Discreet:
    """What this student may be told of this problem."""
    problem = outcome.body.problem
    texts = (problem.title, problem.statement, *(f"{each.value.number:f}" for each in outcome.body.givens))
    typed = (each.text for each in marking.lines)
    secret = {abs(each.value) for each in outcome.answers.values()}
    return Discreet(frozenset(_all(typed)), frozenset(_all(texts)), tuple(sorted(secret - {0.0})))


def numbers(text: str) -> Iterator[float]:
    """The numbers in a text, a decimal comma read as a point."""
    for found in _NUMBER.findall(text):
        yield float(re.sub(r"[ \u00a0\u202f]", "", found).replace(",", "."))


def _all(texts: Iterable[str]) -> Iterator[float]:
    for each in texts:
        yield from numbers(each)
