"""The unit of an answer is that of another kind of quantity.

What shows: the unit behind an answer has not the dimension of what was asked (newton metres for a force, newtons for a
distance) while the number
is right.
"""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

SLIP = "unit-label-wrong"
FAMILY = "answer and communication"
COMMON = 4
SAYS = Words(
    title="unit of another kind",
    says="The unit belongs to another kind of quantity than the one that is asked.",
    light="What kind of quantity is asked, and what does the unit count?",
    medium="Follow the units through the last step as if they were letters. What is left is the unit of the answer.",
    strong="Keep the number and write the unit that fits the quantity that is asked.",
    question="Which quantity is this number meant to be?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Nothing: what shows is in the line itself."""
    yield from ()
