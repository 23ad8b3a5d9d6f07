"""The root is forgotten, or the squares are taken from each other."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import sqrt

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import has_joint

SLIP = "pythagoras-broken"
FAMILY = "joint reaction"
COMMON = 2
SAYS = Words(
    title="theorem of Pythagoras misapplied",
    says="The squares of the two parts are not put together as the long side of a triangle asks.",
    light="Is the result longer than either part and shorter than both together?",
    medium="The square of the long side is the sum of the squares of the short ones, and a root comes last.",
    strong="Check three things: that each part is squared by itself, that the squares are added, and that the root "
    "is taken.",
    question="Was a root left out, or a sign turned?",
    item="the joint force",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    ways = (lambda along, across: along**2 + across**2, lambda along, across: sqrt(abs(along**2 - across**2)))
    for how in ways if has_joint(account) else ():
        yield Spoilt(SLIP, replace(account, resultant=how), "reaction", "resultant")
