"""A weight given in pounds is multiplied by g as though pounds here were a mass."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words
from explain.reference.gravity import IN_CLASSES, IN_FEET

from .changes import Items, alter, groups, heavy, spoilt

SLIP = "pound-as-mass"
FAMILY = "weight and mass"
COMMON = 3
POUNDS = ("lb", "lbf")
SAYS = Words(
    title="pounds treated as a mass",
    says="The pounds of {item} are a force already, and g has been multiplied in all the same.",
    light="What does a pound count in this problem, mass or force?",
    medium="A weight in pounds is a force. It goes into the moment as it is given.",
    strong="Leave g out: multiply the pounds of {item} straight away by the distance.",
    question="Does the class take pounds as a force, or as pound-mass?",
    item="each weight in pounds",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    items = tuple(each for each in heavy(account) if account.written.get(each.key, ("", ""))[1] in POUNDS)
    for chosen in groups(items):
        for factor in (IN_CLASSES[0], IN_FEET, 32.174):
            yield spoilt(SLIP, _scaled(account, chosen, factor), chosen[0].key, "weight", chosen)


def _scaled(account: Account, items: Items, factor: float) -> Account:
    return alter(account, items, scale=factor)
