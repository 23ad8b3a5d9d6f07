"""The muscle is paired with the load's distance and the load with the muscle's."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import burdens, muscles, reach, rearmed, spoilt

SLIP = "arms-swapped"
FAMILY = "distances"
COMMON = 3
SAYS = Words(
    title="arms exchanged",
    says="The distances of {item} and of another force have changed places.",
    light="For each product in this line, say which force it is and where that force acts.",
    medium="Each force is multiplied by its own distance from the pivot. A short arm asks for a large pull.",
    strong="Give {item} its own distance back, and the other force likewise.",
    question="Were the distances exchanged, or was a force divided by its distance?",
    item="the muscle",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for pull in muscles(account):
        for other in burdens(account):
            if reach(pull) and reach(other):
                exchanged = rearmed(rearmed(account, pull, reach(other)), other, reach(pull))
                yield spoilt(SLIP, exchanged, f"*arm {pull.name}", "arm", (pull,))
