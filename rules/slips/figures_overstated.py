"""An answer has more figures than its data carry, or is cut where it should be rounded.

What shows: an answer within half a unit of its last sensible figure that has six or more figures, or whose last figure
is one too low because the
rest was cut off.
"""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

SLIP = "figures-overstated"
FAMILY = "answer and communication"
COMMON = 4
SAYS = Words(
    title="too many figures, or cut figures",
    says="The answer has more figures than the data can carry, or its last figure was cut and not rounded.",
    light="How many figures do the data have?",
    medium="No answer is finer than the numbers it comes from. The last figure that is kept is rounded by the one "
    "behind it.",
    strong="Round the answer to the figures that the class asks for.",
    question="How many figures does the class ask for?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Nothing: what shows is in the line itself."""
    yield from ()
