"""The centre of mass is put halfway along, though the problem says where it is."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import segments, span, spoilt, stated

SLIP = "com-at-midpoint"
FAMILY = "distances"
COMMON = 3
SAYS = Words(
    title="centre of mass put in the middle",
    says="The weight of {item} acts at the middle of the segment in this line.",
    light="Does the problem say where the centre of mass of {item} is?",
    medium="Limbs are thicker near the trunk, so the centre of mass lies off the middle. The given place counts.",
    strong="Take the distance, or the share of the length, that the problem gives for the centre of mass of {item}.",
    question="Does the class take segments as uniform?",
    item="each segment",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for item in segments(account):
        if where := span(account, item):
            yield spoilt(SLIP, stated(account, where[0], where[1] / 2), where[0], "arm", (item,))
