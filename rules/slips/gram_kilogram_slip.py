"""Grams go into the working as if they were kilograms, or kilograms as if they were grams."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import massed

SLIP = "gram-kilogram-slip"
FAMILY = "weight and mass"
COMMON = 2
SAYS = Words(
    title="grams taken as kilograms",
    says="The mass of {item} is out by the step between grams and kilograms.",
    light="In which unit is the mass of {item} given, and in which does g want it?",
    medium="With g in metres per second squared the weight comes out in newtons only when the mass is in kilograms.",
    strong="Convert the mass of {item} between grams and kilograms before it is multiplied by g, and ask whether a "
    "thing of that size is so heavy.",
    question="Is it the mass or a length that was not converted?",
    item="each mass",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for key, item in _masses(account).items():
        factors = (1000.0,) if account.written.get(key, ("", ""))[1] == "g" else (1000.0, 0.001)
        for factor in factors:
            yield Spoilt(SLIP, account.with_data(**{key: account.data[key] * factor}), key, "weight", item)


def _masses(account: Account) -> dict[str, str]:
    """The masses that are given, with the item each belongs to."""
    found = {each.mass: each.name for each in massed(account) if each.mass in account.data}
    return found | ({"*person.mass": ""} if "*person.mass" in account.data else {})
