"""An angle is read from the wrong line: from the level where the upright is meant, from the bone where its
perpendicular is meant.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from explain.marking.slips.account import Account, Spoilt, Turned
from explain.marking.slips.slip import Words

from .changes import burdens, change, groups, muscles, oblique, spoilt, turn

SLIP = "angle-wrong-reference"
FAMILY = "angles and trigonometry"
COMMON = 4
SAYS = Words(
    title="angle read from the wrong line",
    says="The angle that is used for {item} is measured from another line than this function needs.",
    light="Between which two lines does {angle} lie?",
    medium="An angle has two sides. The function fits only the one pair of lines for which its triangle is drawn.",
    strong="Name both lines of the angle for {item}, and use the angle that completes the right angle if the other "
    "line is meant.",
    question="From which line is the angle measured in this line of working?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for items in (*groups(oblique(burdens(account))), *((each,) for each in oblique(muscles(account)))):
        yield spoilt(
            SLIP, change(account, items, lambda each: turn(each, _complement)), f"*arm {items[0].name}", "arm", items
        )


def _complement(turned: Turned) -> Turned:
    return replace(turned, degrees=90 - turned.degrees, unknown=tuple((key, -k) for key, k in turned.unknown))
