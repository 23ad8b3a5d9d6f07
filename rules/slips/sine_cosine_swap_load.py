"""Sine and cosine have changed places in the arm of a load or weight."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import OTHER, burdens, change, groups, oblique, spoilt, turn

SLIP = "sine-cosine-swap-load"
FAMILY = "angles and trigonometry"
COMMON = 4
SAYS = Words(
    title="sine and cosine exchanged for a load",
    says="The arm of {item} has the other one of sine and cosine.",
    light="Sketch the triangle for {item}. Which of its sides is the arm, as seen from {angle}?",
    medium="Try the ends: when the bone hangs straight down a weight turns nothing, when it is horizontal it turns "
    "most. "
    "Which function does that?",
    strong="Exchange sine and cosine in the arm of {item}, or use the other angle of the triangle.",
    question="From which line is the angle measured?",
    item="each load",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for items in groups(oblique(burdens(account))):
        spoiled = change(
            account, items, lambda each: turn(each, lambda turned: replace(turned, function=OTHER[turned.function]))
        )
        yield spoilt(SLIP, spoiled, f"*arm {items[0].name}", "arm", items)
