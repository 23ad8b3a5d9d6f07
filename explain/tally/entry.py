"""What is found of one student, whether it comes from answers or from lines: what was given, what is wrong, and
every cause that fits. Plain data.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, NamedTuple

Verdict = Literal["right", "carried", "wrong", "no number", "blank"]


class Cause(NamedTuple):
    """One explanation: a slip, or two in a pair. `keys` are the quantities that go wrong first, `items` what the
    slips speak of ("" where nothing).
    """

    slips: tuple[str, ...]
    keys: tuple[str, ...] = ()
    items: tuple[str, ...] = ()


class Score(NamedTuple):
    """The marks of one student: earned for sure, open for a person to decide about, and the most there are."""

    earned: int
    open: int
    total: int


class Said(NamedTuple):
    """One answer as given. `value` is in the answer's unit, None where there is no number; "blank" is an empty cell of
    a table; `note` is a comment that
    costs nothing.
    """

    name: str
    typed: str
    value: float | None
    verdict: Verdict
    note: str = ""


EARNS = ("right", "carried")


def score_of(said: Sequence[Said]) -> Score:
    """The marks of answers without lines: one for each that is right or follows from an earlier one."""
    return Score(sum(each.verdict in EARNS for each in said), 0, len(said))


class Wrong(NamedTuple):
    """One thing that went wrong: the answers it covers (or the line), and the causes that fit it, all of them.

    `pairs` is how many pairs of slips would fit as well and are not named, since one number says too little; `text` is
    the answer or line as
    typed, `value` and `unit` those of the first answer.
    """

    answers: tuple[str, ...]
    causes: tuple[Cause, ...] = ()
    pairs: int = 0
    line: int = 0
    text: str = ""
    value: float | None = None
    unit: str = ""

    @property
    def slips(self) -> tuple[str, ...]:
        """Every slip of every cause, each once."""
        return tuple(dict.fromkeys(slip for cause in self.causes for slip in cause.slips))

    @property
    def ways(self) -> tuple[tuple[str, ...], ...]:
        """The explanations that differ in their slips."""
        return tuple(dict.fromkeys(cause.slips for cause in self.causes))


class Entry(NamedTuple):
    """A student. `place` is the row of the table or the number of the working; `unclear` counts lines that could not
    be followed; `whose` tells students apart where their names may not; a `stranger` is nobody of the class's key.
    """

    place: int
    student: str
    said: tuple[Said, ...] = ()
    wrongs: tuple[Wrong, ...] = ()
    unclear: int = 0
    trouble: str = ""
    whose: str = ""
    stranger: bool = False
    score: Score | None = None

    @property
    def right(self) -> bool:
        return (
            not self.wrongs
            and not self.trouble
            and not self.unclear
            and all(each.verdict == "right" for each in self.said)
        )

    @property
    def to_look_at(self) -> bool:
        """Whether anything is wrong, could not be followed or is no number; a blank cell is none of these."""
        odd = any(each.verdict not in ("right", "blank") for each in self.said)
        return bool(odd or self.wrongs or self.trouble or self.unclear)
