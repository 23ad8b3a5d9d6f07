"""The force on the neighbouring bone is given, equal in size and opposite in direction."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from explain.marking.slips.account import Account, Pair, Spoilt, Values
from explain.marking.slips.slip import Words

from .changes import has_joint, joint_key

SLIP = "reaction-on-other-body"
FAMILY = "joint reaction"
COMMON = 3
SAYS = Words(
    title="force on the other bone",
    says="This is the force on the neighbouring body; what is asked is the one on the body cut free.",
    light="On which body does the force that is asked for act?",
    medium="At a joint each bone pushes the other, equally hard and in opposite directions. An answer names the "
    "body it acts on.",
    strong="Turn the direction round, or say that it is the force on the other body.",
    question="On which of the two bodies does this force act?",
    item="the joint force",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    if has_joint(account):
        yield Spoilt(SLIP, replace(account, joint=_reversed), joint_key(account), "direction")


def _reversed(account: Account, values: Values) -> Pair:
    right, up = account.sums(values)
    return -right, -up
