"""The bone slopes, and the distance along it is taken for the arm of a load or weight."""

from __future__ import annotations

from collections.abc import Iterator

from explain.marking.slips.account import Account, Spoilt, Turned
from explain.marking.slips.slip import Words

from .changes import burdens, change, groups, oblique, spoilt, turn

SLIP = "angle-ignored-load"
FAMILY = "distances"
COMMON = 4
SAYS = Words(
    title="slope ignored for a load",
    says="The distance along the bone stands where the perpendicular distance of {item} belongs.",
    light="Which way does {item} act, and which way does the bone point?",
    medium="Only the distance across the line of the force counts. On a bone that slopes it is shorter than the "
    "distance along the bone.",
    strong="Multiply the distance of {item} along the bone by the sine or cosine of {angle} that makes it "
    "perpendicular to the force.",
    question="Is the factor missing from this term alone, or from all of them?",
    item="each load",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for items in groups(oblique(burdens(account))):
        spoiled = change(account, items, lambda each: turn(each, lambda turned: Turned(turned.sign)))
        yield spoilt(SLIP, spoiled, f"*arm {items[0].name}", "arm", items)
