"""A force and its distance are added where they should be multiplied."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import joined, spoilt

SLIP = "sum-instead-of-product"
FAMILY = "distances"
COMMON = 1
SAYS = Words(
    title="force plus distance",
    says="A force and a distance are added here; a turning effect is their product.",
    light="What are the units of the two numbers that are added for {item}?",
    medium="Newtons and centimetres cannot be added. Twice the force at the same place turns twice as hard, and so "
    "does the same force twice as far out.",
    strong="Multiply the force of {item} by its distance in place of adding them.",
    question="What is the sign between the force and the distance?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for items, counted in joined(account, "plus"):
        yield spoilt(SLIP, counted, f"*moment {items[0].name}", "moment", items)
