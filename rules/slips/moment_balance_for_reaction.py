"""Moments stand on one side and the joint force on the other.

What shows: a letter of the joint force set equal to a moment or a sum of moments, or a lever ratio about the joint
itself used for the joint force.
The two sides have different units.
"""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

SLIP = "moment-balance-for-reaction"
FAMILY = "signs and equilibrium"
COMMON = 3
SAYS = Words(
    title="moments taken for the joint force",
    says="The two sides of this line are not of one kind: moments on one, a force on the other.",
    light="Name the unit of each side.",
    medium="Moments about the joint say nothing of the joint force, as it has no arm there. The joint force comes "
    "from the balance of forces.",
    strong="Write the sums of the horizontal forces and of the vertical forces, each equal to zero, and solve them for "
    "the parts of the joint force.",
    question="Which balance is this line, of forces or of moments?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Nothing: what shows is in the line itself."""
    yield from ()
