"""A force is given in kilograms: the answer's unit is that of a mass, its number the right one or the right one divided
by g.

What shows: an answer whose quantity is a force (a pull, a weight, a part of the joint force) with a unit of mass. Where
the number is the truth
over g, the working never left kilograms; where it is the truth in newtons, only the label is wrong.
"""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

SLIP = "kilogram-answer"
FAMILY = "weight and mass"
COMMON = 3
SAYS = Words(
    title="force left in kilograms",
    says="A force is asked for, and kilograms count mass.",
    light="What kind of quantity is asked for, and what kind does the unit belong to?",
    medium="Forces are counted in newtons. Kilograms say how much matter there is, not how hard anything pulls.",
    strong="See whether g is in the working. If it is, change the unit of the answer to newtons; if it is not, "
    "bring it in at the weights first.",
    question="Does g stand anywhere in the working?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Nothing: what shows is in the line itself."""
    yield from ()
