"""The whole body's weight is put above a joint, with what lies below that joint still in it."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import spoilt

SLIP = "stance-leg-not-removed"
FAMILY = "missing or extra terms"
COMMON = 3
SAYS = Words(
    title="part below the joint not taken off",
    says="The weight of {item} is the whole body's here, and a part of the body is on the other side of the joint.",
    light="Which part of the body does the joint hold up, and which holds up the joint?",
    medium="Cut at the joint. Only what is on the cut-off side weighs on it; the limb that stands on the ground is "
    "not part of that.",
    strong="Take the share of the supporting limb off the body's weight before it goes into {item}.",
    question="Does the class model the whole body's weight here on purpose?",
    item="the rest of the body",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for item in account.items:
        for share in account.shares:
            if (
                share.key in (item.key, item.mass)
                and share.whole.startswith("*person")
                and 0.5 < account.data.get(share.part, 0.0) < 1
            ):
                yield spoilt(SLIP, account.with_data(**{share.part: 1.0}), share.key, "weight", (item,))
