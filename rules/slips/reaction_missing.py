"""The balance of forces is written without any joint force.

What shows in a line as well: a sum of muscle and weights set equal to zero, which the working's own values break.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import has_joint, joint_key

SLIP = "reaction-missing"
FAMILY = "joint reaction"
COMMON = 4
SAYS = Words(
    title="joint force missing from the balance",
    says="The balance of forces has no joint force in it.",
    light="What keeps the bone from moving off at the joint?",
    medium="Where the body is cut, whatever was cut away pushes or pulls. At a joint that is a force of unknown "
    "size and direction.",
    strong="Add the two parts of the joint force to the two balances, as unknowns.",
    question="Which forces act on the body cut free?",
    item="the joint force",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    if has_joint(account):
        yield Spoilt(SLIP, replace(account, joint=lambda given, values: (0.0, 0.0)), joint_key(account), "forces")
