"""Inches and feet stand in one line."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import distances, rescaled, spoilt

SLIP = "inch-foot-mix"
FAMILY = "distances"
COMMON = 2
SAYS = Words(
    title="inches and feet mixed",
    says="The distance of {item} is counted in feet where the others are in inches, or the reverse.",
    light="Name the unit of each distance in the line.",
    medium="Every distance of one balance must be in one unit. There is a dozen between inches and feet.",
    strong="Bring the distance of {item} to the unit of the others.",
    question="Which of the distances was converted?",
    item="one of the forces",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for key, item in distances(account).items():
        if account.written.get(key, ("", ""))[1] in ("in", "ft"):
            for factor in (12.0, 1 / 12):
                yield spoilt(SLIP, rescaled(account, key, factor), key, "arm", (item,))
