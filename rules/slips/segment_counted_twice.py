"""The weight of a segment is in the balance two times: alone and inside a joined value."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import segments, spoilt

SLIP = "segment-counted-twice"
FAMILY = "missing or extra terms"
COMMON = 2
SAYS = Words(
    title="segment counted twice",
    says="The weight of {item} enters two times.",
    light="List the weights of this line. Does any part of the limb turn up more than once?",
    medium="A value for two segments together already holds both. Either the joined value is used, or the single ones.",
    strong="Keep one term for {item} and take the other away.",
    question="Is there a value for two segments together in the line?",
    item="the segment",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for one in segments(account):
        yield spoilt(SLIP, account.with_item(one.name, in_moments=2.0, in_forces=2.0), "total", "balance", (one,))
