"""One part of the joint force alone is given as the whole."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from explain.marking.slips.account import Account, Impossible, Spoilt
from explain.marking.slips.slip import Words

from .changes import has_joint

SLIP = "horizontal-part-forgotten"
FAMILY = "joint reaction"
COMMON = 4
SAYS = Words(
    title="one part of the joint force forgotten",
    says="The joint force has a second part, and it is not in this line.",
    light="Does any force on the body have a horizontal part? What balances it?",
    medium="There are two balances of forces. A slanting pull has a part in each, and the joint must answer both.",
    strong="Write the other balance of forces too, and put both parts together.",
    question="Is this line meant as one part, or as the whole force?",
    item="the joint force",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for how in (_upright, _level) if has_joint(account) else ():
        yield Spoilt(SLIP, replace(account, resultant=how), "reaction", "resultant")


def _upright(along: float, across: float) -> float:
    return abs(across)


def _level(along: float, across: float) -> float:
    if abs(along) <= 1e-9 * abs(across):
        raise Impossible("there is no horizontal part to be taken for the whole")
    return abs(along)
