"""The sum of the moments is set equal to something other than zero."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from explain.marking.slips.account import Account, Spoilt, Values
from explain.marking.slips.slip import Words

from .changes import groups, heavy, known, spoilt

SLIP = "unequal-net"
FAMILY = "signs and equilibrium"
COMMON = 2
SAYS = Words(
    title="sum not set to zero",
    says="The sum of the moments is set equal to a weight in this line.",
    light="What is the sum of all the moments on a body at rest?",
    medium="At rest nothing begins to turn, so clockwise and counter-clockwise moments cancel. Their sum is nought, "
    "not a load.",
    strong="Set the sum equal to zero; what stands on the other side now belongs among the terms, as a force times "
    "its arm, or nowhere.",
    question="What does the right-hand side stand for?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    sizes, true = tuple(each for each in heavy(account) if each in known(account)), account.values()
    for items in groups(sizes):
        for sign in (1.0, -1.0):
            net = sign * sum(true[each.key] for each in items) * account.length
            yield spoilt(
                SLIP,
                replace(account, extra=_net(net)),
                account.unknowns[0] if account.unknowns else "total",
                "balance",
                items,
            )


def _net(moment: float) -> Callable[[Values], float]:
    return lambda values: moment
