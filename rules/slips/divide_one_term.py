"""Of a sum, one term is divided and the others are not."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Finish, Impossible, Spoilt
from explain.marking.slips.slip import Words

from .changes import solved, sought

SLIP = "divide-one-term"
FAMILY = "algebra and arithmetic"
COMMON = 4
SAYS = Words(
    title="only one term divided",
    says="One term of the sum has been divided, and the rest not.",
    light="Name the unit of each term in this line.",
    medium="Dividing a side means dividing all of it. Every term of the sum gets the same divisor.",
    strong="Put the whole sum over the divisor, or add it up first and divide after that.",
    question="Which terms have the divisor below them?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for unknown in sought(account):
        unit = 1.0 if unknown.endswith((".at", ".x", ".y", ".moment_arm", ".com")) else account.length
        for place in range(len(account.items)):
            for length in dict.fromkeys((unit, 1.0)):
                yield Spoilt(SLIP, solved(account, unknown, _partly(place, length)), unknown, "unknown")


def _partly(place: int, length: float) -> Finish:
    """One term is divided; the others stay as numbers in the unit of length that is used."""

    def finish(others: list[float], by: float) -> float:
        if len(others) < 2:
            raise Impossible("there is no sum")
        return others[place] / by + (sum(others) - others[place]) / (length if by > 0 else -length)

    return finish
