"""Pounds and kilograms are converted the wrong way round, or pounds are read as kilograms."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import Items, alter, groups, heavy, massed, rescaled, spoilt

SLIP = "pound-kilogram-slip"
FAMILY = "weight and mass"
COMMON = 2
POUNDS = ("lb", "lbf")
PER_KILOGRAM = 1 / 0.45359237  # pounds; exact by the international yard and pound agreement of 1959
NEWTONS = 4.4482216152605  # of a pound-force, exact by the same and the standard g of 9.80665 m/s^2
SAYS = Words(
    title="pounds and kilograms converted the wrong way",
    says="The number for {item} fits a conversion between pounds and kilograms that went the wrong way.",
    light="Which is more, a pound or a kilogram? Compare that with the two numbers of {item}.",
    medium="A kilogram is more than two pounds, so the number of kilograms must come out smaller than the number of "
    "pounds.",
    strong="Turn the conversion of {item} round: where it multiplies, divide, and the reverse. Then check that the "
    "kilograms are fewer than the pounds.",
    question="Was the number converted the wrong way, or not converted at all?",
    item="each weight",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    g = account.data["g"]
    items = tuple(each for each in heavy(account) if account.written.get(each.key, ("", ""))[1] in POUNDS)
    for chosen in groups(items):
        for factor in (PER_KILOGRAM * g / NEWTONS, g / NEWTONS):
            yield spoilt(SLIP, _scaled(account, chosen, factor), chosen[0].key, "weight", chosen)
    for each in massed(account):
        if account.written.get(each.mass, ("", ""))[1] in POUNDS:
            for factor in (PER_KILOGRAM**2, PER_KILOGRAM):
                yield spoilt(SLIP, rescaled(account, each.mass, factor), each.mass, "weight", (each,))


def _scaled(account: Account, items: Items, factor: float) -> Account:
    return alter(account, items, scale=factor)
