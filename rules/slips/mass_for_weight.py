"""Kilograms stand where newtons should: every mass goes into the working as if it were a weight."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import alter, massed, spoilt, weight_key

SLIP = "mass-for-weight"
FAMILY = "weight and mass"
COMMON = 4
SAYS = Words(
    title="mass used as weight",
    says="The number that stands for {item} here is a mass. A mass has to be multiplied by g before it can turn "
    "anything.",
    light="Which unit belongs to the number that stands for {item}?",
    medium="Only a force has a turning effect, and a mass is no force yet. Check that each first factor of a moment "
    "is in newtons.",
    strong="Work out the weight of {item} as mass times g, and put that weight where the mass stands now. Then "
    "carry the change down.",
    question="Is the number meant as kilograms, or is it a force with its unit left out?",
    item="each thing that is given by its mass",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    items = massed(account)
    if items:
        spoiled = alter(account, items, powers=0)
        yield spoilt(SLIP, spoiled, weight_key(account, items[0]), "weight", items)
    if "*person.weight" in account.data:
        yield Spoilt(
            SLIP,
            account.with_data(**{"*person.weight": account.data["*person.weight"] / account.data["g"]}),
            "*person.weight",
            "weight",
        )
