"""An arm that is given as perpendicular is multiplied by a sine or cosine."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Leg, Spoilt, Turned
from explain.marking.slips.slip import Words

from .changes import angles, forces, rearmed, spoilt

SLIP = "perpendicular-arm-resolved-again"
FAMILY = "distances"
COMMON = 3
SAYS = Words(
    title="perpendicular arm resolved a second time",
    says="The moment arm of {item} is perpendicular as it is given, and an angle has been applied to it.",
    light="What does the problem call the distance of {item}?",
    medium="A moment arm is already the perpendicular distance. No angle is left to be taken into account.",
    strong="Use the moment arm of {item} as it is given, without a sine or cosine.",
    question="Is the angle in the muscle's term, or missing from the loads'?",
    item="the muscle",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for one in forces(account):
        for turned in _turns(account) if one.arm else ():
            yield spoilt(SLIP, rearmed(account, one, (Leg(one.arm, turned),)), f"*arm {one.name}", "arm", (one,))


def _turns(account: Account) -> tuple[Turned, ...]:
    return tuple(Turned(1, function, angle) for angle in angles(account) for function in ("sin", "cos"))
