"""What is carried, or what pushes from outside, has no term."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import alter, burdens, groups, joint_key, spoilt

SLIP = "load-left-out"
FAMILY = "missing or extra terms"
COMMON = 1
SAYS = Words(
    title="external load left out",
    says="The line has no term for {item}.",
    light="What touches the limb from outside, and where is it in this line?",
    medium="The balance holds for every force on the body cut free: its own weight and whatever it carries or is "
    "pushed by.",
    strong="Add a term for {item} with its distance from the pivot and the sense in which it turns.",
    question="Does this line treat a part of the problem on its own?",
    item="the loads",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for chosen in groups(tuple(each for each in burdens(account) if each.kind != "weight")):
        yield spoilt(SLIP, alter(account, chosen, in_moments=0.0, in_forces=0.0), "total", "balance", chosen)
        yield spoilt(SLIP, alter(account, chosen, in_forces=0.0), joint_key(account), "forces", chosen)
