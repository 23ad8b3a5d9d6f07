"""The near segment is counted and one farther out is not: a hand, a foot."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import segments, spoilt

SLIP = "second-segment-left-out"
FAMILY = "missing or extra terms"
COMMON = 3
SAYS = Words(
    title="a farther segment forgotten",
    says="The nearer part of the limb has its term, and {item} has none.",
    light="Follow the limb to its end. Which parts have a term in this line?",
    medium="Each part beyond the pivot that is held up adds its own weight at its own distance, even a light one, "
    "since its distance is long.",
    strong="Add the weight of {item}, with the distance measured all the way from the pivot.",
    question="Is this part counted in with its neighbour in the class's table?",
    item="the outer segment",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for one in segments(account)[1:]:
        yield spoilt(SLIP, account.with_item(one.name, in_moments=0.0, in_forces=0.0), "total", "balance", (one,))
        yield spoilt(SLIP, account.with_item(one.name, in_forces=0.0), "reaction.up", "forces", (one,))
