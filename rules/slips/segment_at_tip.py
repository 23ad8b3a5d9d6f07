"""The weight of a segment is put at its far end: its length is taken for the distance of its centre of mass."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import segments, span, spoilt, stated

SLIP = "segment-at-tip"
FAMILY = "distances"
COMMON = 4
SAYS = Words(
    title="segment's weight put at its end",
    says="The weight of {item} acts at the far end in this line.",
    light="At which point of {item} does its weight act?",
    medium="A weight acts at the centre of mass, which lies somewhere inside the segment and not at its end.",
    strong="Put the distance of the centre of mass of {item} in place of its length.",
    question="Is this distance the length of the segment, or that of the load?",
    item="each segment",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    found = [(each, where) for each in segments(account) if (where := span(account, each))]
    for item, (key, length) in found:
        yield spoilt(SLIP, stated(account, key, length), key, "arm", (item,))
    if len(found) > 1:
        spoiled = account
        for _, (key, length) in found:
            spoiled = stated(spoiled, key, length)
        yield spoilt(SLIP, spoiled, found[0][1][0], "arm", tuple(each for each, _ in found))
