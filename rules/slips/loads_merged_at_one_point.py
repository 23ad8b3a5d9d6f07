"""All the weights are put at one distance, mostly that of the load."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import alter, burdens, reach, segments, spoilt

SLIP = "loads-merged-at-one-point"
FAMILY = "missing or extra terms"
COMMON = 3
SAYS = Words(
    title="all weights put at one point",
    says="The weights are taken together at one distance, though {item} acts elsewhere.",
    light="Does {item} act where the others do?",
    medium="Weights may be added into one only where they act at one point. Otherwise each has its own distance.",
    strong="Split the term: {item} with the distance of its own centre of mass, the others with theirs.",
    question="Was a distance mixed up, or were the weights added on purpose?",
    item="each of the weights",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    lighter = segments(account)
    for load in burdens(account):
        if load.kind != "weight" and lighter and reach(load):
            legs = reach(load)
            yield spoilt(SLIP, alter(account, lighter, legs=legs, arm=""), f"*arm {lighter[0].name}", "arm", lighter)
