"""The two parts of a force are added as plain numbers."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import has_joint

SLIP = "resultant-by-adding"
FAMILY = "joint reaction"
COMMON = 3
SAYS = Words(
    title="parts added as numbers",
    says="The two parts of the joint force are added as if they pointed the same way.",
    light="At which angle do the two parts meet?",
    medium="Parts at right angles are two short sides of a triangle; the force is its long side, longer than either "
    "and shorter than both together.",
    strong="Square the two parts, add the squares and take the root.",
    question="How were the two parts put together?",
    item="the joint force",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for how in (
        (lambda along, across: abs(along) + abs(across), lambda along, across: abs(along + across))
        if has_joint(account)
        else ()
    ):
        yield Spoilt(SLIP, replace(account, resultant=how), "reaction", "resultant")
