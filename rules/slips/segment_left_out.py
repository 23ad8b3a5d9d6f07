"""The weight of the limb itself is missing from a balance."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import alter, groups, segments, spoilt

SLIP = "segment-left-out"
FAMILY = "missing or extra terms"
COMMON = 4
SAYS = Words(
    title="weight of a segment left out",
    says="The line has no term for the weight of {item}.",
    light="Count the weights in the drawing and the terms in the line. Are they as many?",
    medium="A limb has weight of its own, and it acts at the limb's centre of mass. Every force on the body cut "
    "free belongs in the balance.",
    strong="Add a term for {item}: its weight, with the distance from the pivot to its centre of mass, and the "
    "sense in which it turns.",
    question="Is the term missing, or is it there with a mass in place of a weight?",
    item="the segments",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    items = segments(account)
    for chosen in groups(items):
        if len(chosen) > 1 or chosen[0] is items[0]:
            yield spoilt(SLIP, alter(account, chosen, in_moments=0.0, in_forces=0.0), "total", "balance", chosen)
            yield spoilt(SLIP, alter(account, chosen, in_forces=0.0), "reaction.up", "forces", chosen)
