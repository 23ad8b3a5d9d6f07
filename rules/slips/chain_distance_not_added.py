"""A distance along an outer segment is measured from that segment's own joint, not from the pivot."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import forces, spoilt

SLIP = "chain-distance-not-added"
FAMILY = "distances"
COMMON = 3
SAYS = Words(
    title="distance measured from the wrong joint",
    says="The distance of {item} begins at a nearer joint of its own and not at the pivot.",
    light="Put a finger on the pivot and walk to {item}. Is all of that walk in the line?",
    medium="A moment is taken about one pivot, so each distance starts there, across every segment in between.",
    strong="Add what lies between the pivot and the joint of that segment to the distance of {item}.",
    question="About which point are the moments of this line taken?",
    item="the outer part",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for item in forces(account):
        for start in range(1, len(item.legs)):
            yield spoilt(
                SLIP, account.with_item(item.name, legs=item.legs[start:]), f"*arm {item.name}", "arm", (item,)
            )
