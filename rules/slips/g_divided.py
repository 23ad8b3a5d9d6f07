"""A mass is divided by g where it should be multiplied."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import alter, groups, massed, spoilt, weight_key

SLIP = "g-divided"
FAMILY = "weight and mass"
COMMON = 2
SAYS = Words(
    title="divided by g",
    says="The weight of {item} comes out as a smaller number than its mass, as if the mass had been divided by g.",
    light="Compare the weight of {item} in newtons with its mass in kilograms. Which number should be larger?",
    medium="Near the ground each kilogram is pulled with several newtons, so weight is mass times g.",
    strong="Multiply the mass of {item} by g in place of dividing by it.",
    question="Is g below the line here, or is it missing?",
    item="each mass",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for items in groups(massed(account)):
        yield spoilt(SLIP, alter(account, items, powers=-1), weight_key(account, items[0]), "weight", items)
