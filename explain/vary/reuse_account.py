"""The account of a set of numbers from that of another set that differs in plain data alone, in a tenth of the time of
working it out anew.

Plain data are lengths along a bone, masses and sizes of forces, all above zero: they change no term, no sense and no
function of a working. Where a
pull goes toward a point, an angle is sought, or moments are taken about another force, nothing is taken over.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

from ..marking.slips.account import Account
from ..errors import Fault
from ..exact.interval import in_si
from ..problem.quantity import read
from .ranges import Range

KINDS = {
    "mass": "mass",
    "weight": "force",
    "at": "length",
    "com": "length",
    "length": "length",
    "moment_arm": "length",
    "force": "force",
    "moment": "moment",
}
_MOST = 5_000  # accounts that are kept


class _Datum(NamedTuple):
    value: float
    written: tuple[str, str]


class Swift:
    """Accounts by what is not plain in them."""

    def __init__(self, ranges: Sequence[Range]) -> None:
        self.plain = [_data(each) for each in ranges]
        self.names = [each.name for each in ranges]
        self.kept: dict[tuple[int, ...], Account | None] = {}

    def keep(self, places: Sequence[int], account: Account) -> None:
        """Take an account that was worked out for others to begin from."""
        others = self._others(places)
        if others not in self.kept and len(self.kept) < _MOST:
            without_places = {key: value for key, value in account.data.items() if not key.startswith(("*x ", "*y "))}
            self.kept[others] = replace(account, data=without_places) if self._may(account) else None

    def account(self, places: Sequence[int]) -> Account | None:
        """The account of a set, None where no other is near enough."""
        account = self.kept.get(self._others(places))
        if account is None:
            return None
        new = {name: data[place] for name, data, place in zip(self.names, self.plain, places, strict=True) if data}
        return replace(
            account,
            data={**account.data, **{name: each.value for name, each in new.items()}},
            written={**account.written, **{name: each.written for name, each in new.items()}},
        )

    def _others(self, places: Sequence[int]) -> tuple[int, ...]:
        return tuple(place for place, data in zip(places, self.plain, strict=True) if not data)

    def _may(self, account: Account) -> bool:
        moved = any(balance.startswith("moments about") or key.startswith("*angle ") for balance, key in account.stages)
        return (
            not moved
            and not any(key.startswith(("*line ", "*reach ")) for key in account.data)
            and all(name in account.data for name, data in zip(self.names, self.plain, strict=True) if data)
        )


def _data(each: Range) -> tuple[_Datum, ...]:
    """The values of a range as an account has them, none where they are not plain."""
    kind = KINDS.get(each.key)
    if kind is None or not all(isinstance(value, str) for value in each.values):
        return ()
    try:
        found = [read(value, kind) for value in each.values]
    except Fault:
        return ()
    if any(one.number <= 0 or len(one.unit) != 1 for one in found):
        return ()
    return tuple(_Datum(float(in_si(one)), (str(one.number), one.unit[0][0])) for one in found)
