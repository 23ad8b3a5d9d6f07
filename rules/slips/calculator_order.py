"""A product below the line goes into the calculator without brackets: the last factor multiplies where it should
divide.
"""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Finish, Spoilt, Turned
from explain.marking.slips.slip import Words

from .changes import solved, spoilt

SLIP = "calculator-order"
FAMILY = "algebra and arithmetic"
COMMON = 4
SAYS = Words(
    title="calculator entry without brackets",
    says="The written line is right; its value fits an entry in which only the first factor below the line divides.",
    light="Work out the part below the line first and write it down. Then divide.",
    medium="A calculator goes from left to right. After a division sign it takes only the next number below the line.",
    strong="Put brackets round everything below the line, or divide by each of its factors in turn.",
    question="How was the fraction typed in?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for one in account.pulls:
        turned = one.legs[0].turned if len(one.legs) == 1 else Turned()
        if turned.function:
            yield spoilt(SLIP, solved(account, one.key, _unbracketed(turned, account)), one.key, "unknown", (one,))


def _unbracketed(turned: Turned, account: Account) -> Finish:
    def finish(others: list[float], by: float) -> float:
        return sum(others) / by * turned.value(account.roots) ** 2

    return finish
