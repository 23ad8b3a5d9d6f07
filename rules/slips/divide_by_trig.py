"""A distance or force is divided by a sine or cosine where it should be multiplied."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from explain.marking.slips.account import Account, Spoilt
from explain.marking.slips.slip import Words

from .changes import burdens, change, forces, groups, muscles, oblique, spoilt, turn

SLIP = "divide-by-trig"
FAMILY = "angles and trigonometry"
COMMON = 2
SAYS = Words(
    title="divided by the sine or cosine",
    says="What belongs to {item} is divided by a sine or cosine and so grows; a part is never longer than the whole.",
    light="Is the arm of {item} longer or shorter than the distance along the bone?",
    medium="The perpendicular is the shortest way to a line. Sines and cosines are at most one, so they multiply.",
    strong="Multiply by the sine or cosine of {angle} for {item} in place of dividing by it.",
    question="Is the long side of the triangle known, or sought?",
    item="each force",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for items in (*groups(oblique(burdens(account))), *((each,) for each in oblique(muscles(account)))):
        yield spoilt(
            SLIP,
            change(account, items, lambda each: turn(each, lambda turned: replace(turned, over=True))),
            f"*arm {items[0].name}",
            "arm",
            items,
        )
    for one in forces(account):
        for side in ("level", "upright"):
            part = getattr(one, side)
            if part is not None and part.function:
                yield spoilt(
                    SLIP,
                    account.with_item(one.name, **{side: replace(part, over=True)}),
                    f"*{side} {one.name}",
                    "part",
                    (one,),
                )
