"""A distance that is already level is multiplied by the sine or cosine of an angle that belongs elsewhere."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from explain.marking.slips.account import Account, Spoilt, Turned
from explain.marking.slips.slip import Words

from .changes import angles, burdens, spoilt

SLIP = "angle-applied-to-level-distance"
FAMILY = "distances"
COMMON = 3
SAYS = Words(
    title="angle applied to a horizontal distance",
    says="The distance of {item} is perpendicular to the force as it is given, and an angle has been applied to it.",
    light="Along which line is the distance of {item} measured?",
    medium="A horizontal distance is already at right angles to a weight. An angle is needed only for a distance "
    "along a "
    "bone that slopes.",
    strong="Use the horizontal distance of {item} as it is, without a sine or cosine.",
    question="Is the distance given along the bone or horizontal?",
    item="the load",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for one in burdens(account):
        for place, leg in enumerate(one.legs):
            for angle in angles(account) if not leg.turned.function else ():
                for function in ("sin", "cos"):
                    legs = (
                        *one.legs[:place],
                        replace(leg, turned=Turned(leg.turned.sign, function, angle)),
                        *one.legs[place + 1 :],
                    )
                    yield spoilt(SLIP, account.with_item(one.name, legs=legs), f"*arm {one.name}", "arm", (one,))
