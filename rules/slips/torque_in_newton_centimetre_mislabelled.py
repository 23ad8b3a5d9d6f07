"""A moment worked out in centimetres is labelled with metres.

What shows: a stated moment whose number is right in newton centimetres and whose unit says newton metres (or the other
way). The forces that follow
are right.
"""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

SLIP = "torque-in-newton-centimetre-mislabelled"
FAMILY = "distances"
COMMON = 3
SAYS = Words(
    title="moment in newton centimetres labelled newton metres",
    says="The number of this moment belongs to one unit of length and its label to another.",
    light="Which unit do the distances in this moment have?",
    medium="The unit of a moment is made of the units that were multiplied.",
    strong="Keep the number and write the unit that its factors have, or convert the distance first and multiply "
    "again.",
    question="Were the distances in centimetres or in metres?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Nothing: what shows is in the line itself."""
    yield from ()
