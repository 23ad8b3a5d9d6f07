"""The working ends one step early: a value on the way is given as the answer.

What shows: an answer that equals another quantity of the same working: the moment where the force was asked, a force
where the mass was, one of two
equal pulls where both were.
"""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

SLIP = "stopped-at-moment"
FAMILY = "answer and communication"
COMMON = 3
SAYS = Words(
    title="stopped one step early",
    says="This value is one on the way; what is asked comes one step later.",
    light="Read the question again. What kind of quantity is asked?",
    medium="Compare the unit of this value with the unit of what is asked. The step between them is still to be done.",
    strong="Go on from this value: divide it by what stands with the unknown, and then give the answer.",
    question="Is this line the answer or a value on the way?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Nothing: what shows is in the line itself."""
    yield from ()
