"""The share of the length is measured from the far end of the segment."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import segments, span, spoilt, stated

SLIP = "com-from-wrong-end"
FAMILY = "distances"
COMMON = 3
SAYS = Words(
    title="centre of mass measured from the wrong end",
    says="The centre of mass of {item} is measured from its far end in this line.",
    light="From which end of {item} does the share of its length count?",
    medium="Tables name the end from which they measure, mostly the one nearer the trunk. The heavier half is the "
    "thicker one.",
    strong="Measure the share from the near end of {item}: what is written here is the rest of the length.",
    question="From which end does the class's table count?",
    item="the segment",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for item in segments(account):
        if where := span(account, item):
            key, length = where
            yield spoilt(SLIP, stated(account, key, length - account.values()[key]), key, "arm", (item,))
