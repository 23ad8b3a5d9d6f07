"""The angle of an oblique pull is left out: the distance along the bone is taken for the lever arm."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Leg, Spoilt, Turned
from explain.marking.slips.slip import Words

from .changes import change, muscles, oblique, spoilt, turn

SLIP = "insertion-used-as-arm"
FAMILY = "distances"
COMMON = 4
SAYS = Words(
    title="angle of pull ignored",
    says="The distance to the insertion stands where the perpendicular distance of {item} belongs.",
    light="Does {item} pull at a right angle to the line along which this distance is measured?",
    medium="The arm is the shortest distance from the pivot to the line of pull. A slanting pull has a shorter arm "
    "than its insertion distance.",
    strong="Multiply the insertion distance of {item} by the sine or cosine of {angle}, so that it is perpendicular "
    "to the pull.",
    question="Is there any angle in the term, or none?",
    item="the muscle",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for one in oblique(muscles(account)):
        yield spoilt(
            SLIP, account.with_item(one.name, legs=(Leg(one.legs[-1].key),)), f"*arm {one.name}", "arm", (one,)
        )
        if len(one.legs) > 1:
            yield spoilt(
                SLIP,
                change(account, (one,), lambda each: turn(each, lambda turned: Turned(turned.sign))),
                f"*arm {one.name}",
                "arm",
                (one,),
            )
