"""The part of a force along the bone is counted as turning too, with the same distance."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import OTHER, forces, oblique, spoilt

SLIP = "axial-part-counted"
FAMILY = "angles and trigonometry"
COMMON = 2
SAYS = Words(
    title="part along the bone counted as turning",
    says="Both parts of {item} have the full distance along the bone as their arm.",
    light="Which of the two parts of {item} passes through the pivot?",
    medium="A part that points along the bone has its line through the joint. It presses, and turns nothing.",
    strong="Keep only the part of {item} across the bone in the moments, and drop the other.",
    question="How many terms does this force have in the line?",
    item="the oblique force",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for one in oblique(forces(account)):
        more = tuple(
            replace(leg, turned=replace(leg.turned, function=OTHER[leg.turned.function]))
            for leg in one.legs
            if leg.turned.function
        )
        yield spoilt(SLIP, account.with_item(one.name, legs=(*one.legs, *more)), f"*arm {one.name}", "arm", (one,))
