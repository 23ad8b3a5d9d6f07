"""The rule by which two forces share the work is used the other way round."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import spoilt

SLIP = "share-rule-reversed"
FAMILY = "missing or extra terms"
COMMON = 2
SAYS = Words(
    title="sharing rule the wrong way round",
    says="The rule that ties {item} to the other pull is turned round here.",
    light="Say the rule in words: which of the two is so many times the other?",
    medium="Put the factor on the side the words ask for, then test which of the two forces comes out larger.",
    strong="Write {item} as the factor times the other force, and not the other force as the factor times {item}.",
    question="Which of the two should be the harder pull?",
    item="the one force",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for one in account.items:
        factor = one.multiple[0]
        if factor and account.data.get(factor):
            yield spoilt(SLIP, account.with_data(**{factor: 1 / account.data[factor]}), one.key, "weight", (one,))
