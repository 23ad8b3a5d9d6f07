"""Forces that oppose each other are added in the force balance, or forces that agree are taken from each other."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import alter, burdens, groups, has_joint, joint_key, spoilt

SLIP = "reaction-wrong-sense"
FAMILY = "joint reaction"
COMMON = 4
SAYS = Words(
    title="wrong sense in the force balance",
    says="The term of {item} has the wrong sign in the balance of forces.",
    light="Which way does {item} act, and which way does the pull?",
    medium="In a balance of forces the sign is that of the direction: up against down, right against left. What "
    "helps the joint force has its sign.",
    strong="Turn the sign of {item} over in this balance.",
    question="Which direction is taken as positive here?",
    item="all that weighs on the limb",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for items in groups(burdens(account) if has_joint(account) else ()):
        yield spoilt(SLIP, alter(account, items, in_forces=-1.0), joint_key(account), "forces", items)
