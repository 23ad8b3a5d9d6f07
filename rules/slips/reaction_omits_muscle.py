"""The joint force is taken from the weights alone, without the pull of the muscle."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import alter, groups, has_joint, joint_key, muscles, spoilt

SLIP = "reaction-omits-muscle"
FAMILY = "joint reaction"
COMMON = 4
SAYS = Words(
    title="muscle forgotten in the force balance",
    says="The balance of forces has no term for {item}.",
    light="Name all the forces on the body cut free, and find each in this line.",
    medium="The muscle pulls on the bone however its moment was used. It belongs in the balance of forces, and "
    "mostly it is the largest term.",
    strong="Add {item} to the balance of forces, with its horizontal part and its vertical part.",
    question="Which forces are counted in this line?",
    item="the muscles",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for items in groups(muscles(account) if has_joint(account) else ()):
        yield spoilt(SLIP, alter(account, items, in_forces=0.0), joint_key(account), "forces", items)
