"""The level and the upright part of a slanting force have changed places in the two balances."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import OTHER, forces, has_joint

SLIP = "reaction-components-swapped"
FAMILY = "joint reaction"
COMMON = 3
SAYS = Words(
    title="parts exchanged between the two balances",
    says="The horizontal part of {item} stands in the vertical balance, and the vertical part in the horizontal one.",
    light="Which part of {item} is the longer one in the drawing, the horizontal or the vertical?",
    medium="The part beside the angle takes the cosine, the part opposite it the sine. Which of the two is horizontal "
    "depends on the line the angle counts from.",
    strong="Exchange the two parts of {item} between the balances.",
    question="From which line is the angle of this force measured?",
    item="the slanting pull",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for one in forces(account) if has_joint(account) else ():
        if one.level is not None and one.upright is not None and one.level.function and one.upright.function:
            level, upright = (
                replace(part, function=OTHER.get(part.function, part.function)) for part in (one.level, one.upright)
            )
            yield Spoilt(
                SLIP, account.with_item(one.name, level=level, upright=upright), f"*level {one.name}", "part", one.name
            )
