"""The size of a direction is right and it points into the wrong quarter."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import atan2, degrees

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import has_joint

SLIP = "wrong-quadrant"
FAMILY = "angles and trigonometry"
COMMON = 3
SAYS = Words(
    title="direction in the wrong quarter",
    says="The joint force points into another quarter of the plane than its two parts do.",
    light="Sketch the two parts of the joint force tip to tail. Into which quarter does their sum point?",
    medium="A calculator's arctangent knows only the fraction, not the signs of its two parts. The signs choose the "
    "quarter.",
    strong="Keep the angle, and choose the words, left or right and above or below, by the signs of the two parts.",
    question="Was a sign lost, or is the force on the other body meant?",
    item="the joint force",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    if has_joint(account):
        yield Spoilt(
            SLIP,
            replace(account, heading=lambda right, up: degrees(atan2(-up, right))),
            "*direction reaction",
            "direction",
        )
        yield Spoilt(
            SLIP,
            replace(account, heading=lambda right, up: degrees(atan2(up, -right))),
            "*direction reaction",
            "direction",
        )
