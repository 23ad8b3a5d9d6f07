"""A share in per cent goes in without being divided by a hundred, or a share of the weight is multiplied by g again."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import rescaled

SLIP = "percent-slip"
FAMILY = "weight and mass"
COMMON = 2
SAYS = Words(
    title="share of the body misplaced",
    says="The share that gives {item} is out: the per cent sign or the factor g has been counted differently from "
    "what it says.",
    light="Ask how heavy {item} would be by this line, beside a whole person.",
    medium="Per cent means a part of a hundred. A share of the mass still needs g, a share of the weight does not.",
    strong="Write the share of {item} as a decimal fraction, multiply by what it is a share of, and use g once at "
    "most.",
    question="Is the number a share of the mass or of the weight?",
    item="the segment",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    names = {
        key: each.name
        for each in account.items
        for key in (each.mass, each.key, each.legs[-1].key if each.legs else "")
        if key
    }
    for share in account.shares:
        mass = share.whole.startswith("*person")
        for factor in (100.0, 10.0, *((account.data["g"],) if mass else ())):
            yield Spoilt(
                SLIP,
                rescaled(account, share.key, factor),
                share.key,
                "weight" if mass else "arm",
                names.get(share.key, ""),
            )
