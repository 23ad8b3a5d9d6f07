"""A change in per cent is taken of the new value and not of the old one.

What shows: a percentage that equals the change over the later value. Percentages compare two parts of a problem, so no
single account holds them.
"""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

SLIP = "percent-of-wrong-base"
FAMILY = "answer and communication"
COMMON = 3
SAYS = Words(
    title="per cent of the wrong base",
    says="The change is divided by the value after it, and not by the value before.",
    light="Of which value is the change so many per cent?",
    medium="A rise or a fall is measured against what was there before.",
    strong="Divide the change by the earlier value.",
    question="Which of the two values is the base?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Nothing: what shows is in the line itself."""
    yield from ()
