"""Data of a problem that its accounts do not hold as such: the angles that are given, the areas of muscles."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import numpy as np

from ..slips.account import Account
from ...solve.engine import Working
from .patterns import same
from .quantities import Row


def given_angles(accounts: Sequence[Account]) -> list[Row]:
    """Every distinct angle that is given, in degrees."""
    rows: list[Row] = []
    for place, item in enumerate(accounts[0].items):
        for at, leg in enumerate(item.legs):
            if leg.turned.function and not leg.turned.unknown:
                rows.append(np.array([each.items[place].legs[at].turned.degrees for each in accounts]))
        for side in ("level", "upright"):
            turned = getattr(item, side)
            if turned and turned.function and not turned.unknown:
                rows.append(np.array([getattr(each.items[place], side).degrees for each in accounts]))
    for lies in ("lies", "bone"):
        if getattr(accounts[0], lies) is not None:
            rows.append(np.array([getattr(each, lies) for each in accounts]))
    out: list[Row] = []
    for row in rows:
        if not any(same(row, each) for each in out):
            out.append(row)
    return out


def areas(working: Working, count: int) -> Iterator[tuple[str, Row]]:
    """The areas of muscles, in m2: moved like any datum, though no balance asks for them."""
    for place, pull in enumerate(working.body.problem.pulls):
        if pull.area is None:
            continue
        scale = (
            1e-4
            if pull.area.unit and pull.area.unit[0][0] == "cm"
            else 1e-6
            if pull.area.unit and pull.area.unit[0][0] == "mm"
            else 1.0
        )
        row = (
            float(pull.area.number)
            * scale
            * np.array([1.0, *(1 + 0.0137 * (place + 2) * (-1) ** k * (k + 1) for k in range(count - 1))])
        )
        yield pull.name, row
