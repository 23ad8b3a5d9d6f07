"""Moments get the sign of their force, up or down, although forces act on both sides of the pivot."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import alter, forces, spoilt

SLIP = "up-positive-both-sides"
FAMILY = "signs and equilibrium"
COMMON = 3
SAYS = Words(
    title="up taken as positive on both sides of the pivot",
    says="The moments have the signs of their forces, and forces act on both sides of the pivot.",
    light="Take two forces that point the same way on opposite sides of the pivot. Do they turn the same way?",
    medium="An upward force in front of the pivot and one behind it turn in opposite senses. Up and down give the "
    "sign of a force, not of a moment.",
    strong="Go through the terms and give each the sign of the sense in which it turns: clockwise or "
    "counter-clockwise.",
    question="Were the signs chosen by up and down, or is one term alone wrong?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    upright = [(each, each.upright.value(account.roots)) for each in forces(account) if each.upright is not None]
    for sense in (1, -1):
        turned = {each.name: sense * (1 if up > 0 else -1) for each, up in upright if abs(up) > 1e-9}
        wrong = tuple(each for each in forces(account) if turned.get(each.name, each.turns) != each.turns)
        if wrong and len(wrong) < len(turned):
            yield spoilt(SLIP, alter(account, wrong, in_moments=-1.0), "total", "balance", wrong)
