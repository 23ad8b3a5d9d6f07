"""A distance is taken from some point other than the pivot: from the muscle, from another force, from the end of the
limb.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import forces, pairs, reach, rearmed, spoilt, taken

SLIP = "wrong-pivot-distance"
FAMILY = "distances"
COMMON = 4
SAYS = Words(
    title="distance taken from another point",
    says="The distance of {item} in this line does not start at the pivot.",
    light="Show the two ends of the distance that is used for {item}.",
    medium="All arms of one balance start at the same pivot. The gap between two forces is no arm.",
    strong="Measure {item} from the pivot, with the distance as the problem gives it, and take nothing off.",
    question="About which point are the moments of this line taken?",
    item="one of the forces",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for one, other in pairs(forces(account)):
        if reach(one) and reach(other):
            yield spoilt(
                SLIP, rearmed(account, one, (*reach(one), *taken(one, other, -1.0))), f"*arm {one.name}", "arm", (one,)
            )
    for one in forces(account):
        if one.length in account.data and len(one.legs) == 1:
            leg = one.legs[0]
            yield spoilt(
                SLIP,
                rearmed(account, one, (replace(leg, key=one.length), replace(leg, times=-1.0))),
                f"*arm {one.name}",
                "arm",
                (one,),
            )
