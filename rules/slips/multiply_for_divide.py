"""The moment is multiplied by the arm where it should be divided."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Finish, Spoilt
from explain.marking.slips.slip import Words

from .changes import solved, sought

SLIP = "multiply-for-divide"
FAMILY = "algebra and arithmetic"
COMMON = 2
SAYS = Words(
    title="multiplied in place of dividing",
    says="The right-hand side is multiplied by what should divide it.",
    light="What is the unit of the right-hand side as it is written?",
    medium="A force is a moment divided by an arm. The shorter the arm, the larger the pull.",
    strong="Divide by the arm in place of multiplying by it.",
    question="What multiplies the unknown in the line before?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for unknown in sought(account):
        for length in dict.fromkeys((1.0, account.length)):
            yield Spoilt(SLIP, solved(account, unknown, _times(length)), unknown, "unknown")


def _times(length: float) -> Finish:
    """A product of numbers in the unit of length that is used."""
    return lambda others, by: sum(others) * by / length**2
