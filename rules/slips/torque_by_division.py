"""A moment is taken as the force divided by the distance."""
from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from explain.account import Account, Spoilt
from explain.slip import Words

from ._tools import alter, forces, groups, spoilt

SLIP = "torque-by-division"
FAMILY = "distances"
COMMON = 2
CONFUSED = ("arms-swapped", "multiply-for-divide")
SAYS = Words(
    title="moment by division",
    says="The force of {item} is divided by its distance here; its moment is their product.",
    light="If {item} acted farther out, would it turn more or less? What does the line say?",
    medium="A moment grows with the distance from the pivot, so force and distance are multiplied.",
    strong="Replace the division in the moment of {item} by a product.",
    question="Was it divided, or were the arms of two forces exchanged?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it: the number of the arm in the class's unit, and in metres and centimetres."""
    for items in groups(forces(account)):
        for length in dict.fromkeys((account.length, 1.0, 0.01)):
            counted = replace(alter(account, items, joined="over"), length=length)
            yield spoilt(SLIP, counted, f"*moment {items[0].name}", "moment", items)
