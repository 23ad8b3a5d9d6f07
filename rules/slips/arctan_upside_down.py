"""The fraction in the arctangent is turned over, so that the angle is counted from the other axis."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import atan2, degrees

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import has_joint

SLIP = "arctan-upside-down"
FAMILY = "angles and trigonometry"
COMMON = 3
SAYS = Words(
    title="arctangent upside down",
    says="The angle of the joint force is that from the other line: the fraction has its two parts exchanged.",
    light="From which line is this angle to be measured?",
    medium="The tangent of an angle is the side opposite it over the side beside it. Which part of the force lies "
    "along the line of reference?",
    strong="Put the part along the line of reference below, the other above, and take the arctangent again.",
    question="Is the angle meant from the horizontal or from the vertical?",
    item="the joint force",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    if has_joint(account):
        yield Spoilt(
            SLIP,
            replace(account, angle=lambda along, across: degrees(atan2(abs(along), abs(across)))),
            "*angle reaction",
            "direction",
        )
