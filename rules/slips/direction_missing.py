"""A force is given by its size alone.

What shows: an answer for a force with no word, sign or angle for its direction, where the problem asks for one.
"""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

SLIP = "direction-missing"
FAMILY = "answer and communication"
COMMON = 4
SAYS = Words(
    title="direction not given",
    says="The size of the force is there, and its direction is not.",
    light="Which way does this force act?",
    medium="A force has a size and a direction. Both belong to the answer.",
    strong="Add the direction in words or as an angle from a named line, and the body the force acts on.",
    question="Which way does the force act, and on which body?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Nothing: what shows is in the line itself."""
    yield from ()
