"""A number is copied with two neighbouring digits exchanged.

What shows in a line as well: a number that is none of the data and has the digits of one of them in another order.
"""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

SLIP = "digit-transposed"
FAMILY = "algebra and arithmetic"
COMMON = 3
SAYS = Words(
    title="number copied wrongly",
    says="A number for {item} has the digits of the given one in another order.",
    light="Compare each number of this line with the data.",
    medium="A number that is none of the data must come from somewhere. Lay the statement beside the line.",
    strong="Copy the number for {item} again from the statement.",
    question="Where does this number come from?",
    item="one of the items",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    names = {
        key: each.name
        for each in account.items
        for key in (each.key, each.mass, each.arm, *(leg.key for leg in each.legs))
    }
    for key, (number, _) in account.written.items():
        for other in _transposed(number) if key in account.data and key != "g" else ():
            factor = float(other) / float(number)
            yield Spoilt(
                SLIP,
                account.with_data(**{key: account.data[key] * factor}),
                key,
                "weight" if key.endswith(("mass", "hung")) else "arm",
                names.get(key, ""),
            )


def _transposed(number: str) -> tuple[str, ...]:
    """The number with two neighbouring digits exchanged, a decimal point staying where it is."""
    places = [place for place, sign in enumerate(number) if sign.isdigit()]
    found = []
    for one, two in zip(places, places[1:], strict=False):
        if number[one] != number[two]:
            signs = list(number)
            signs[one], signs[two] = signs[two], signs[one]
            found.append("".join(signs))
    return tuple(each for each in found if float(number) and float(each))
