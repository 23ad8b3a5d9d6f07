"""The numbers that a student copies from a problem: nothing is open about their last figure. Knows no line."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal

from ..slips.account import Account
from ...solve.engine import Working

# how far the point moves when a number is copied in another unit of its kind
_MOVED: dict[str, tuple[int, ...]] = {
    "cm": (-2, 1),
    "mm": (-1, -3),
    "m": (2, 3),
    "kg": (3,),
    "g": (-3,),
    "N": (-3,),
    "kN": (3,),
    "%": (-2,),
}


def written(working: Working) -> list[Decimal]:
    """The numbers of the data as a student may copy them: in their own unit, in metres and centimetres, a share as a
    fraction; g.
    """
    out = [Decimal(text) for text in ("9.81", "9.8", "10", "9.80665", "32.2")]
    lengths = [each.length for each in working.body.problem.segments if each.length]
    halves = [
        replace(each, number=each.number / 2) for each in lengths
    ]  # the middle of a segment is no rounded figure either
    for each in (*(given.value for given in working.body.givens), *lengths, *halves):
        unit = each.unit[0][0] if each.unit else ""
        out += [each.number.normalize() * Decimal(10) ** power for power in (0, *_MOVED.get(unit, ()))]
    return out


def angles(account: Account) -> Iterator[Decimal]:
    """The angles in sines and cosines, and those that go with them to a right angle or a straight one: no rounded
    figures.
    """
    turned = [
        each
        for item in account.items
        for each in (*(leg.turned for leg in item.legs), item.level, item.upright)
        if each and not each.unknown
    ]
    for angle in {round(abs(each.degrees), 6) for each in turned}:
        yield from (Decimal(repr(abs(each))).normalize() for each in (angle, 90 - angle, 180 - angle, 90 + angle))
