"""What is found of one student, whether it comes from answers or from lines: what was given, what is wrong, and
every cause that fits. Plain data.
"""

from __future__ import annotations

from typing import Literal, NamedTuple

Verdict = Literal["right", "carried", "wrong", "no number"]


class Cause(NamedTuple):
    """One explanation: a slip, or two in a pair. `keys` are the quantities that go wrong first, `items` what the
    slips speak of ("" where nothing).
    """

    slips: tuple[str, ...]
    keys: tuple[str, ...] = ()
    items: tuple[str, ...] = ()


class Said(NamedTuple):
    """One answer as given. `value` is in the answer's unit, None where there is no number; `note` is a comment that
    costs nothing.
    """

    name: str
    typed: str
    value: float | None
    verdict: Verdict
    note: str = ""


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
    be followed.
    """

    place: int
    student: str
    said: tuple[Said, ...] = ()
    wrongs: tuple[Wrong, ...] = ()
    unclear: int = 0
    trouble: str = ""

    @property
    def right(self) -> bool:
        return (
            not self.wrongs
            and not self.trouble
            and not self.unclear
            and all(each.verdict == "right" for each in self.said)
        )
