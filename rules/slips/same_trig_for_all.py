"""The function that is right for the weights is used for a force that is not upright."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import burdens, change, heavy, oblique, spoilt, turn

SLIP = "same-trig-for-all"
FAMILY = "angles and trigonometry"
COMMON = 3
SAYS = Words(
    title="one function for every force",
    says="The arm of {item} is written like that of the weights, and {item} does not act straight down.",
    light="Which way does {item} act, and which way do the weights?",
    medium="The same angle gives the sine for one direction of force and the cosine for the direction square to it.",
    strong="Draw the perpendicular from the pivot to the line of {item} and take the function that this triangle "
    "asks for.",
    question="Was the function chosen for this force, or for all alike?",
    item="the force that is not vertical",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    upright = {leg.turned.function for each in heavy(account) for leg in each.legs if leg.turned.function}
    for one in oblique(burdens(account)):
        if one.kind == "force" and len(upright) == 1:
            spoiled = change(
                account, (one,), lambda each: turn(each, lambda turned: replace(turned, function=min(upright)))
            )
            yield spoilt(SLIP, spoiled, f"*arm {one.name}", "arm", (one,))
