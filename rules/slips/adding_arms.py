"""The distances of two forces are added into one arm."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import forces, pairs, reach, rearmed, spoilt, taken

SLIP = "adding-arms"
FAMILY = "distances"
COMMON = 3
SAYS = Words(
    title="distances added into one arm",
    says="The arm of {item} has the distance of another force in it.",
    light="Which points does the arm of {item} join?",
    medium="Each force has its own arm from the pivot. Distances of two forces on one side of the pivot are not put "
    "end to end.",
    strong="Use for {item} its own distance from the pivot alone.",
    question="About which point are the moments of this line taken?",
    item="one of the forces",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for one, other in pairs(forces(account)):
        if reach(one) and reach(other):
            yield spoilt(
                SLIP, rearmed(account, one, (*reach(one), *taken(one, other, 1.0))), f"*arm {one.name}", "arm", (one,)
            )
