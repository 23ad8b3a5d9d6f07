"""The joint force is taken to lie along the bone, and one balance is used to find its size."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from math import cos, radians, sin

from explain.marking.slips.account import Account, Pair, Spoilt, Values
from explain.marking.slips.slip import Words

from .changes import has_joint

SLIP = "reaction-along-bone"
FAMILY = "joint reaction"
COMMON = 3
SAYS = Words(
    title="joint force assumed along the bone",
    says="The joint force is drawn along the bone, and the balance across the bone does not hold then.",
    light="What tells the direction of the joint force?",
    medium="A joint can push in any direction. Only the two balances of forces together say which.",
    strong="Leave the direction open: take a horizontal and a vertical part as unknowns and find each from its own "
    "balance.",
    question="How was the direction found?",
    item="the joint force",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    if account.lies is None or not has_joint(account):
        return
    along, across = cos(radians(account.lies)), sin(radians(account.lies))
    for part, side in ((along, 0), (across, 1)):
        if abs(part) > 1e-9:
            yield Spoilt(SLIP, replace(account, joint=_along(along, across, part, side)), "reaction", "direction")


def _along(along: float, across: float, part: float, side: int) -> Callable[[Account, Values], Pair]:
    def joint(account: Account, values: Values) -> Pair:
        size = account.sums(values)[side] / part
        return size * along, size * across

    return joint
