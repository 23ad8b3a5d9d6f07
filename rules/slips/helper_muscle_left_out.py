"""One of several muscles is missing, so that the others bear all of the moment."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import known, muscles, spoilt

SLIP = "helper-muscle-left-out"
FAMILY = "missing or extra terms"
COMMON = 2
SAYS = Words(
    title="one of several muscles left out",
    says="There is no term for {item} among the pulls.",
    light="How many muscles does the problem name, and how many pull in this line?",
    medium="When several muscles pull, their moments add up to balance the load. Each has a term of its own.",
    strong="Bring {item} into the balance with its own arm, and write its pull by the rule of sharing that is given.",
    question="Does the class take all the muscles together as one?",
    item="one of the muscles",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    items = muscles(account)
    for one in items if len(items) > 1 else ():
        touched = "total" if one in known(account) else account.unknowns[0]
        yield spoilt(SLIP, account.with_item(one.name, in_moments=0.0, in_forces=0.0), touched, "balance", (one,))
