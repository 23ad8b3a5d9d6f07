"""A decimal point moved by one place when a distance was converted."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import distances, rescaled, spoilt

SLIP = "decimal-shift"
FAMILY = "distances"
COMMON = 3
SAYS = Words(
    title="decimal point slipped",
    says="The distance of {item} is out by one decimal place.",
    light="Compare the distance of {item} before and after it was converted. Could two hands span it?",
    medium="From centimetres to metres the point moves two places, as there are a hundred in one.",
    strong="Convert the distance of {item} once more and count the places.",
    question="Did the point move by one place, or are two units mixed?",
    item="one of the forces",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for key, item in distances(account).items():
        for factor in (10.0, 0.1):
            yield spoilt(SLIP, rescaled(account, key, factor), key, "arm", (item,))
