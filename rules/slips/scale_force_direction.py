"""The push of the body on something is used in place of the push of that thing on the body."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import burdens, spoilt

SLIP = "scale-force-direction"
FAMILY = "signs and equilibrium"
COMMON = 3
SAYS = Words(
    title="force by the body taken for the force on it",
    says="In this line {item} acts the way the body pushes, and the balance needs the push on the body.",
    light="What is cut free here, and what pushes on it at {item}?",
    medium="Forces at a contact come in pairs, equal and opposite. A balance holds only the ones that act on the "
    "body cut free.",
    strong="Turn {item} round, in the drawing and in both balances.",
    question="Is the force wrong in the balance of forces as well?",
    item="the contact force",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for one in burdens(account):
        if one.kind == "force":
            yield spoilt(SLIP, account.with_item(one.name, in_moments=-1.0, in_forces=-1.0), "total", "balance", (one,))
