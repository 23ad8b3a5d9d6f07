"""The joint force gets a term in the moments about its own joint.

What shows: a balance of moments about the pivot in which a letter of the joint force is multiplied by a distance, or
stands as a term. Its arm
about that pivot is nothing, and whatever arm is made up, no number follows from the data, so no account can be given.
About any other point the
term is right.
"""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

SLIP = "reaction-in-moment-equation"
FAMILY = "missing or extra terms"
COMMON = 2
SAYS = Words(
    title="joint force given a moment about its own joint",
    says="The joint force has a term in the moments about the very joint where it acts.",
    light="How far is the line of the joint force from the pivot of this line?",
    medium="A force whose line passes through the pivot cannot turn anything about it. That is why the joint was "
    "chosen as the pivot.",
    strong="Take the term of the joint force out of the moments. It comes back in the balance of forces.",
    question="About which point are the moments of this line taken?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Nothing: what shows is in the line itself."""
    yield from ()
