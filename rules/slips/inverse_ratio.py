"""The fraction before an arcsine or arccosine is upside down, and no angle has such a sine.

What shows: a stated sine or cosine of the sought angle above one, the reciprocal of the true value; the calculator then
gives no angle, so there is
no account.
"""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

SLIP = "inverse-ratio"
FAMILY = "angles and trigonometry"
COMMON = 2
SAYS = Words(
    title="inverse function of a fraction above one",
    says="The value of this sine or cosine is above one, and no angle has that.",
    light="Between which values does a sine or cosine lie?",
    medium="The sine is the short side over the long one, so the fraction is at most one. Here the two have changed "
    "places.",
    strong="Turn the fraction over and take the inverse function again.",
    question="What stands above and what below the line?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Nothing: what shows is in the line itself."""
    yield from ()
