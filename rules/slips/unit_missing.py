"""An answer is a bare number.

What shows: an answer line whose number is right and that has no unit, where the problem asks for one.
"""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

SLIP = "unit-missing"
FAMILY = "answer and communication"
COMMON = 4
SAYS = Words(
    title="no unit",
    says="The answer has no unit.",
    light="What does the number count?",
    medium="A number says how many; the unit says of what. Without it the answer is open.",
    strong="Write the unit of the quantity that is asked behind the number.",
    question="In which unit is the number?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Nothing: what shows is in the line itself."""
    yield from ()
