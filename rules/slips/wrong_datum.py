"""A number of another item stands in the place of this one's."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations, permutations

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import distances, massed, spoilt

SLIP = "wrong-datum"
FAMILY = "algebra and arithmetic"
COMMON = 3
SAYS = Words(
    title="right number, wrong item",
    says="The number for {item} belongs to another item of the problem.",
    light="For each number of this line, say what it is and what it belongs to.",
    medium="Every number here is among the data. What has to fit is the pairing: each mass and each distance with "
    "its own item.",
    strong="Look up {item} in the statement and put its own number there.",
    question="Which item is this number given for?",
    item="one of the items",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    masses = {each.mass: each for each in massed(account) if each.mass in account.data}
    lengths = {key: item for key, item in distances(account).items() if key in account.data}
    for found, near in ((masses, "weight"), (lengths, "arm")):
        for one, two in permutations(found, 2):
            yield spoilt(SLIP, account.with_data(**{one: account.data[two]}), one, near, (found[one],))
        for one, two in combinations(found, 2):
            yield spoilt(
                SLIP, account.with_data(**{one: account.data[two], two: account.data[one]}), one, near, (found[one],)
            )
