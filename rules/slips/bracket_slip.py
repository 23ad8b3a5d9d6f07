"""A common factor is applied to some terms of a sum and not to the others."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Item, Spoilt, Turned
from explain.marking.slips.slip import Words

from .changes import burdens, change, oblique, spoilt, turn

SLIP = "bracket-slip"
FAMILY = "algebra and arithmetic"
COMMON = 3
SAYS = Words(
    title="common factor applied to one term only",
    says="The factor that goes with all the terms of the bracket is missing from the term of {item}.",
    light="Which terms of this line have the sine or cosine, and which should?",
    medium="A factor before a bracket multiplies every term inside it.",
    strong="Multiply the term of {item} by the common factor too, or put the bracket back.",
    question="Was there a bracket in the line before?",
    item="one of the terms",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    common: dict[Turned, list[Item]] = {}
    for each in oblique(burdens(account)):
        if len(each.legs) == 1:
            common.setdefault(each.legs[0].turned, []).append(each)
    for items in common.values():
        for one in items if len(items) > 1 else ():
            spoiled = change(account, (one,), lambda each: turn(each, lambda turned: Turned(turned.sign)))
            yield spoilt(
                SLIP, spoiled, account.unknowns[0] if account.unknowns else f"*arm {one.name}", "unknown", (one,)
            )
