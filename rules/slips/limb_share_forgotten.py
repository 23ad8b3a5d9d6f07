"""What two limbs bear between them is put on one."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import rescaled, spoilt

SLIP = "limb-share-forgotten"
FAMILY = "missing or extra terms"
COMMON = 3
SAYS = Words(
    title="sharing between two limbs forgotten",
    says="All of {item} stands in the line, though more than one limb bears it.",
    light="How many limbs bear the load, and how many are cut free here?",
    medium="A balance for one limb holds what that limb bears. What is shared must be shared out before it goes in.",
    strong="Take for {item} only the part that falls to the limb that is drawn.",
    question="Is the balance written for one limb or for both together?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for item in account.items:
        if item.count > 1:
            yield spoilt(
                SLIP,
                account.with_item(item.name, count=1),
                account.unknowns[0] if account.unknowns else "total",
                "balance",
                (item,),
            )
        for share in account.shares:
            halved = (
                share.key in (item.key, item.mass)
                and share.whole.startswith("*person")
                and account.data.get(share.part, 1.0) <= 0.5
            )
            if halved and item.kind in ("load", "force", "muscle"):
                yield spoilt(SLIP, rescaled(account, share.key, 2.0), share.key, "weight", (item,))
