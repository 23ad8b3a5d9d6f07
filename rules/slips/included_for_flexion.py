"""The angle between two bones is taken for the angle of bending, or the reverse: the supplement is used."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from explain.marking.slips.account import Account, Spoilt, Turned
from explain.marking.slips.slip import Words

from .changes import change, forces, groups, oblique, spoilt, turn

SLIP = "included-for-flexion"
FAMILY = "angles and trigonometry"
COMMON = 2
SAYS = Words(
    title="included angle taken for flexion",
    says="The angle in the arm of {item} is the supplement of the one that is meant.",
    light="Is {angle} the bend, counted from a straight limb, or the opening between the two bones?",
    medium="The bend and the opening add up to a straight angle. Their sines agree, their cosines have opposite signs.",
    strong="Use for {item} the supplement of the angle that stands in the line.",
    question="How does the class count the angle of a joint?",
    item="each force",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for items in groups(
        tuple(each for each in oblique(forces(account)) if any(leg.turned.function == "cos" for leg in each.legs))
    ):
        spoiled = change(account, items, lambda each: turn(each, _supplement))
        yield spoilt(SLIP, spoiled, f"*arm {items[0].name}", "arm", items)


def _supplement(turned: Turned) -> Turned:
    return replace(turned, degrees=180 - turned.degrees, unknown=tuple((key, -k) for key, k in turned.unknown))
