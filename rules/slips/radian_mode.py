"""The calculator takes degrees for radians.

What shows in a line as well: the stated value of a sine, cosine or tangent is that of the same number of radians,
everywhere or in one place.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import forces, oblique, spoilt

SLIP = "radian-mode"
FAMILY = "angles and trigonometry"
COMMON = 2
SAYS = Words(
    title="calculator in radians",
    says="The sines and cosines here are those of the same number of radians.",
    light="What does the calculator give for the sine of a right angle?",
    medium="A sine lies between nought and one for an acute angle and grows with it. Test one whose value is known "
    "without a calculator.",
    strong="Set the calculator to degrees and work out each sine, cosine and tangent again.",
    question="Which mode is the calculator in?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for one in oblique(forces(account)):
        yield spoilt(SLIP, replace(account, mode="rad"), f"*arm {one.name}", "arm", (one,))
        return
