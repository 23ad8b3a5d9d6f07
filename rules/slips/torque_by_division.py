"""A moment is taken as the force divided by the distance."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import joined, spoilt

SLIP = "torque-by-division"
FAMILY = "distances"
COMMON = 2
SAYS = Words(
    title="moment by division",
    says="The force of {item} is divided by its distance here; its moment is their product.",
    light="If {item} acted farther out, would it turn more or less? What does the line say?",
    medium="A moment grows with the distance from the pivot, so force and distance are multiplied.",
    strong="Replace the division in the moment of {item} by a product.",
    question="Was it divided, or were the arms of two forces exchanged?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for items, counted in joined(account, "over"):
        yield spoilt(SLIP, counted, f"*moment {items[0].name}", "moment", items)
