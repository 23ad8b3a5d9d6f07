"""What was shared between two limbs is shared once more, or the one limb's own weight is halved too."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import rescaled, segments, spoilt

SLIP = "limb-share-twice"
FAMILY = "missing or extra terms"
COMMON = 2
SAYS = Words(
    title="shared twice",
    says="The share of {item} has been taken more often than the problem takes it.",
    light="Where in the working is {item} shared out, and is it done again later?",
    medium="Sharing between limbs is done once. The weight of the limb that is drawn is not shared at all.",
    strong="Go back to {item} as the problem gives it and take the share one time only.",
    question="Was the number already the part for one limb?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    shared = [
        (share.key, item)
        for item in account.items
        for share in account.shares
        if share.key in (item.key, item.mass)
        and item.kind != "weight"
        and share.whole.startswith("*person")
        and account.data.get(share.part, 1.0) <= 0.5
    ]
    for key, item in shared:
        yield spoilt(SLIP, rescaled(account, key, 0.5), key, "weight", (item,))
    several = [each for each in account.items if each.count > 1]
    for item in several:
        yield spoilt(
            SLIP,
            account.with_item(item.name, count=2 * item.count),
            account.unknowns[0] if account.unknowns else "total",
            "balance",
            (item,),
        )
    for item in segments(account) if shared or several else ():
        yield spoilt(SLIP, account.with_item(item.name, scale=0.5), item.key, "weight", (item,))
