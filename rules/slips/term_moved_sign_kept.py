"""A term goes to the other side of the equation and keeps its sign."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Finish, Spoilt
from explain.marking.slips.slip import Words

from .changes import solved, sought

SLIP = "term-moved-sign-kept"
FAMILY = "algebra and arithmetic"
COMMON = 4
SAYS = Words(
    title="term moved across with its sign kept",
    says="One term has gone to the other side of this line with the sign it had before.",
    light="Compare this line with the one before, term by term.",
    medium="What is done to one side is done to the other. Taking a term away from both sides makes it appear "
    "across with the opposite sign.",
    strong="Find the term that changed sides and turn its sign over.",
    question="Is the sign already wrong in the line before?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for unknown in sought(account):
        for place in range(len(account.items)):
            yield Spoilt(SLIP, solved(account, unknown, _kept(place)), unknown, "unknown")


def _kept(place: int) -> Finish:
    def finish(others: list[float], by: float) -> float:
        return (sum(others) - 2 * others[place]) / by

    return finish
