"""One force turns the wrong way in the balance of moments."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import known, spoilt

SLIP = "sign-of-a-term"
FAMILY = "signs and equilibrium"
COMMON = 4
SAYS = Words(
    title="wrong turning sense for one force",
    says="The term of {item} has the sign of the other turning sense.",
    light="Imagine {item} acting alone. Which way would the limb turn about the pivot?",
    medium="Moments that turn one way have one sign, those that turn the other way the other sign. The sign belongs "
    "to the turning, not to the force.",
    strong="Turn the sign of the term of {item} over.",
    question="Is this the first line with the moments, or was the term moved across?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for one in account.items:
        yield spoilt(
            SLIP,
            account.with_item(one.name, in_moments=-1.0),
            "total" if one in known(account) else account.unknowns[0],
            "balance",
            (one,),
        )
