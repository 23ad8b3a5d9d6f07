"""The joint force is set equal to a single other force."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import alter, angle_of, forces, has_joint, joint_key

SLIP = "reaction-equals-muscle"
FAMILY = "joint reaction"
COMMON = 3
SAYS = Words(
    title="joint force set equal to one other force",
    says="The joint force is set equal to {item} alone.",
    light="How many forces does the joint force have to balance?",
    medium="Action and reaction act on two bodies. On the one body cut free it is the sum of all the forces that "
    "vanishes.",
    strong="Write the balance with all the forces, those beside {item} too, and solve it for the joint force.",
    question="Which forces act on the body cut free?",
    item="the muscle",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for one in forces(account) if has_joint(account) else ():
        others = tuple(each for each in forces(account) if each is not one)
        spoiled = alter(account, others, in_forces=0.0)
        yield Spoilt(SLIP, spoiled, joint_key(account), "forces", one.name, angle_of(one))
