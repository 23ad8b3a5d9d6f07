"""A product, a sum or a function is worked out wrongly.

What shows: the two sides of one equals sign differ though both need only the numbers that are shown, by more than the
rounding of what is
displayed, and no other slip explains it.
"""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

SLIP = "arithmetic-slip"
FAMILY = "algebra and arithmetic"
COMMON = 3
SAYS = Words(
    title="slip in the arithmetic",
    says="The numbers on the two sides of an equals sign here do not agree.",
    light="Work out each side of this line again.",
    medium="Make a rough estimate with round numbers first. It tells which side to look at.",
    strong="Do the sum step by step and write down what each step gives.",
    question="Which numbers were typed in?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Nothing: what shows is in the line itself."""
    yield from ()
