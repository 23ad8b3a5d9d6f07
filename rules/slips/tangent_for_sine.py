"""A tangent stands where a sine or cosine is needed, in an arm or in a part of a force."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from explain.marking.slips.account import Account, Spoilt, Turned
from explain.marking.slips.slip import Words

from .changes import change, forces, oblique, spoilt, turn

SLIP = "tangent-for-sine"
FAMILY = "angles and trigonometry"
COMMON = 2
SAYS = Words(
    title="tangent used for a part",
    says="A tangent stands where {item} needs a sine or cosine.",
    light="Which side of the triangle is known for {item}, and which is sought?",
    medium="The tangent joins the two short sides. From the long side to a short one it takes the sine or the cosine.",
    strong="Replace the tangent for {item} by the sine or the cosine of {angle}.",
    question="Which two sides of the triangle does the line join?",
)


def do(account: Account) -> Iterator[Spoilt]:
    """Every account with this slip in it."""
    for one in oblique(forces(account)):
        yield spoilt(
            SLIP, change(account, (one,), lambda each: turn(each, _tangent)), f"*arm {one.name}", "arm", (one,)
        )
    for one in forces(account):
        for side in ("level", "upright"):
            part = getattr(one, side)
            if part is not None and part.function:
                yield spoilt(
                    SLIP, account.with_item(one.name, **{side: _tangent(part)}), f"*{side} {one.name}", "part", (one,)
                )


def _tangent(turned: Turned) -> Turned:
    return replace(turned, function="tan")
