"""The slope of the pull in space is used where its angle to the bone is needed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import atan2, degrees

from explain.marking.slips.account import Account, Item, Spoilt, Turned
from explain.marking.slips.slip import Words

from .changes import muscles, oblique, spoilt

SLIP = "muscle-angle-to-horizontal"
FAMILY = "angles and trigonometry"
COMMON = 3
SAYS = Words(
    title="muscle's slope taken for its angle to the bone",
    says="The angle in the arm of {item} is its angle to the horizontal, and the bone slopes.",
    light="Between which two lines does the angle for {item} lie?",
    medium="The arm along a bone needs the angle between the pull and that bone. The angle to the horizontal is the "
    "same "
    "only when the bone is horizontal.",
    strong="Use the angle between {item} and the bone. Take the slope of the bone into account if only the slope of "
    "the pull is known.",
    question="Is the angle to the bone or to the horizontal?",
    item="the muscle",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for one in oblique(muscles(account)):
        for angle in _others(one):
            yield spoilt(
                SLIP,
                account.with_item(one.name, legs=(replace(one.legs[-1], turned=Turned(1, "sin", angle)),)),
                f"*arm {one.name}",
                "arm",
                (one,),
            )


def _others(item: Item) -> tuple[float, ...]:
    """The angle of a pull to the level, and as much on the other side of its angle to the bone."""
    turned = item.legs[-1].turned
    if item.level is None or item.upright is None or turned.unknown or item.level.unknown or not turned.function:
        return ()
    to_level = degrees(atan2(abs(item.upright.value({})), abs(item.level.value({}))))
    to_bone = turned.degrees if turned.function == "sin" else 90 - turned.degrees
    return tuple(dict.fromkeys((round(to_level, 9), round(abs(2 * to_bone - to_level), 9))))
