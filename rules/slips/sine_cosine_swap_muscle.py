"""Sine and cosine have changed places in the arm of a muscle."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import OTHER, change, muscles, oblique, spoilt, turn

SLIP = "sine-cosine-swap-muscle"
FAMILY = "angles and trigonometry"
COMMON = 4
SAYS = Words(
    title="sine and cosine exchanged for a muscle",
    says="Sine and cosine have changed places in the arm of {item}.",
    light="What would the arm of {item} be if it pulled along the bone? Does the line say so?",
    medium="A pull along the bone turns nothing, a pull square to it turns most. With the angle to the bone that is "
    "the sine.",
    strong="Exchange sine and cosine in the arm of {item}, or use the angle from the other line.",
    question="From which line is the angle of the pull measured?",
    item="the muscle",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for one in oblique(muscles(account)):
        spoiled = change(
            account, (one,), lambda each: turn(each, lambda turned: replace(turned, function=OTHER[turned.function]))
        )
        yield spoilt(SLIP, spoiled, f"*arm {one.name}", "arm", (one,))
