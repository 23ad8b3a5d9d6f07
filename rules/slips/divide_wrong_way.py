"""The last fraction is upside down."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import solved, sought

SLIP = "divide-wrong-way"
FAMILY = "algebra and arithmetic"
COMMON = 3
SAYS = Words(
    title="division the wrong way round",
    says="The fraction of this line is upside down.",
    light="What is the unit of the right-hand side as it is written?",
    medium="To free an unknown, both sides are divided by what multiplies it. What multiplies it goes below the line.",
    strong="Turn the fraction over: what stands with the unknown in the line before goes below.",
    question="What multiplies the unknown in the line before?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for unknown in sought(account):
        yield Spoilt(SLIP, solved(account, unknown, lambda others, by: by / sum(others)), unknown, "unknown")
