"""The calculator divides the right angle into a hundred parts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import forces, oblique, spoilt

SLIP = "grad-mode"
FAMILY = "angles and trigonometry"
COMMON = 1
SAYS = Words(
    title="calculator in gradians",
    says="The sines and cosines here are those of a calculator set to gradians.",
    light="What does the calculator give for the sine of a right angle?",
    medium="A gradian is a little less than a degree, so each value is a little off, which looks like rounding.",
    strong="Set the calculator to degrees and work out each sine, cosine and tangent again.",
    question="Which mode is the calculator in, and how were the values rounded?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for one in oblique(forces(account)):
        yield spoilt(SLIP, replace(account, mode="grad"), f"*arm {one.name}", "arm", (one,))
        return
