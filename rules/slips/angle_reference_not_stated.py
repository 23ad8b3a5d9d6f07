"""A direction is given by a bare angle.

What shows: an answer for the direction of a force with a number of degrees and no word for the line it counts from
(level, upright, bone) or for
the side (above, below, left, right).
"""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

SLIP = "angle-reference-not-stated"
FAMILY = "angles and trigonometry"
COMMON = 4
SAYS = Words(
    title="direction without a reference",
    says="The angle is given without the line from which it is measured.",
    light="Could someone draw the force from what is written?",
    medium="An angle fixes a direction only together with a line and a side.",
    strong="Add from which line the angle counts and to which side: above or below, left or right.",
    question="From which line does the angle count, and to which side?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Nothing: what shows is in the line itself."""
    yield from ()
