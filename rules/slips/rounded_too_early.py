"""Values on the way are rounded to so few figures that the answer moves.

What shows: a line that agrees with its own displayed numbers and lies off the truth by more than the tolerance, where
the numbers before it were
cut to one or two figures.
"""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

SLIP = "rounded-too-early"
FAMILY = "algebra and arithmetic"
COMMON = 4
SAYS = Words(
    title="rounded too early",
    says="The line agrees with the numbers before it, and those were rounded so far that the answer has moved.",
    light="How many figures do the numbers on the way have?",
    medium="Each rounding on the way leaves a small error, and a division by a short arm makes it large. Keep more "
    "figures than the answer needs.",
    strong="Work on with the unrounded values and round the answer once, at the end.",
    question="How were the values on the way rounded?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Nothing: what shows is in the line itself."""
    yield from ()
