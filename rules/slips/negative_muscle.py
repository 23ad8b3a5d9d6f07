"""A muscle comes out negative, and the minus is left without a word.

What shows: an answer below zero for the pull of a muscle, tendon or cord, whose true value is above zero, with no word
that explains the sign. What
made it negative is another slip.
"""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

SLIP = "negative-muscle"
FAMILY = "signs and equilibrium"
COMMON = 3
SAYS = Words(
    title="negative pull kept",
    says="This muscle would have to push.",
    light="Can a muscle push?",
    medium="Muscles and cords only pull. A minus sign says that a turning sense is wrong or that another muscle is "
    "needed.",
    strong="Look for the moment whose turning sense is not as drawn, put that right, and solve again.",
    question="What does the minus sign mean here?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Nothing: what shows is in the line itself."""
    yield from ()
