"""One mass is turned into a weight and another is not, in the same balance."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import alter, massed, spoilt, weight_key

SLIP = "g-in-one-term-only"
FAMILY = "weight and mass"
COMMON = 3
SAYS = Words(
    title="g used for one item and not for another",
    says="Some of the weights here have been multiplied by g, and {item} not.",
    light="Go through the terms one by one and name the unit of each.",
    medium="Terms that are added must be of one kind. A mass times a distance cannot stand beside a force times a "
    "distance.",
    strong="Multiply the mass of {item} by g as well, so that all the terms are moments of forces.",
    question="Is there a small term for it in this line, or none at all?",
    item="one of them",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    items = massed(account)
    if len(items) < 2:
        return
    for one in items:
        yield spoilt(SLIP, account.with_item(one.name, powers=0), weight_key(account, one), "weight", (one,))
    for one in items if len(items) > 2 else ():
        rest = tuple(each for each in items if each is not one)
        yield spoilt(SLIP, alter(account, rest, powers=0), weight_key(account, rest[0]), "weight", rest)
