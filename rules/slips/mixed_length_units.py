"""Some distances are in metres and others in centimetres in one and the same line."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import distances, muscles, reach, rescaled, spoilt

SLIP = "mixed-length-units"
FAMILY = "distances"
COMMON = 4
SAYS = Words(
    title="length units mixed",
    says="The distance of {item} is counted in another unit than the other distances.",
    light="Name the unit of each distance in the line.",
    medium="Every distance of one balance must be in one unit, whichever it is.",
    strong="Bring the distance of {item} to the unit of the others before it goes into the line.",
    question="Is the unit another one, or has the decimal point moved?",
    item="one of the forces",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for key, item in distances(account).items():
        for factor in (100.0, 0.01):
            yield spoilt(SLIP, rescaled(account, key, factor), key, "arm", (item,))
    rest = tuple(distances(account))
    for item in muscles(account):
        mine = [leg.key for leg in reach(item)]
        others = [key for key in rest if key not in mine]
        for factor in (100.0, 0.01) if others and mine else ():
            yield spoilt(SLIP, _all(account, others, factor), others[0], "arm", (item,))


def _all(account: Account, keys: Sequence[str], factor: float) -> Account:
    for key in keys:
        if not any(each.key == key and each.whole in keys for each in account.shares):
            account = rescaled(account, key, factor)
    return account
