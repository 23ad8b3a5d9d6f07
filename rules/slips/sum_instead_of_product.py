"""A force and its distance are added where they should be multiplied."""
from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from explain.account import Account, Spoilt
from explain.slip import Words

from ._tools import alter, forces, groups, spoilt

SLIP = "sum-instead-of-product"
FAMILY = "distances"
COMMON = 1
CONFUSED = ("unequal-net",)
SAYS = Words(
    title="force plus distance",
    says="A force and a distance are added here; a turning effect is their product.",
    light="What are the units of the two numbers that are added for {item}?",
    medium="Newtons and centimetres cannot be added. Twice the force at the same place turns twice as hard, and so does the same force twice as far out.",
    strong="Multiply the force of {item} by its distance in place of adding them.",
    question="What is the sign between the force and the distance?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it: the number of the arm in the class's unit, and in metres and centimetres."""
    for items in groups(forces(account)):
        for length in dict.fromkeys((account.length, 1.0, 0.01)):
            counted = replace(alter(account, items, joined="plus"), length=length)
            yield spoilt(SLIP, counted, f"*moment {items[0].name}", "moment", items)
