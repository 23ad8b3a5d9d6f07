"""A force that is already a weight is multiplied by g once more."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import alter, groups, heavy, massed, spoilt, weight_key

SLIP = "g-twice"
FAMILY = "weight and mass"
COMMON = 3
SAYS = Words(
    title="g used twice",
    says="The weight of {item} has g in it two times.",
    light="Follow {item} from the data to this line. Where does g come in?",
    medium="The factor g turns a mass into a weight. What is a weight already needs no g.",
    strong="Take the second g out of the term of {item}. The mass is multiplied by g once, and the result is used "
    "as it is.",
    question="Was the number before this line a mass or a weight?",
    item="each weight",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for items in groups(massed(account)):
        yield spoilt(SLIP, alter(account, items, powers=2), weight_key(account, items[0]), "weight", items)
    for items in groups(tuple(each for each in heavy(account) if not each.mass and each.key in account.data)):
        yield spoilt(SLIP, alter(account, items, scale=account.data["g"]), items[0].key, "weight", items)
