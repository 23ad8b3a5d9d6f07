"""Every slip of a problem in every place: what it makes of the quantities that it changes, in the problem and its
twins.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import cast

import numpy as np

from ..slips.account import Account, Impossible, Item, Spoilt, Values
from ..slips.slip import SlipRule, changed
from .kinds import kind_of
from .patterns import same
from .quantities import Row, quantities


@dataclass(frozen=True, slots=True, eq=False)
class SlipRows:
    """One slip in one place: what it makes of the quantities that it changes, in the problem and its twins."""

    name: str
    item: str
    touched: str
    near: str
    common: int
    rows: Mapping[str, Row]
    spoilt: Spoilt


class SlipMaker:
    """Makes the slips of one problem from its accounts, its true quantities and its data."""

    def __init__(
        self,
        accounts: Sequence[Account],
        values: Sequence[Values],
        truth: Mapping[str, Row],
        data: Mapping[str, Row],
    ) -> None:
        self.accounts, self.values, self.truth, self.data = accounts, values, truth, data
        self.first, self.unknowns = accounts[0], frozenset(accounts[0].unknowns)

    def slips(self, rules: Sequence[SlipRule]) -> list[SlipRows]:
        """Those of the rules, known couples left out, and wrong arms of the one pull."""
        found = list(self._slips([*rules, *_couples_left_out(self.first)], self.values))
        return [*found, *self._wrong_arms(found)]

    def _wrong_arms(self, found: Sequence[SlipRows]) -> Iterator[SlipRows]:
        """The one pull by any other length of the problem in place of its arm: its own place on the bone, or
        another's datum.
        """
        pulls = [each for each in self.first.items if each.key in self.unknowns]
        if len(pulls) != 1 or f"*moment {pulls[0].name}" not in self.truth or not found:
            return
        pull = pulls[0]
        moment, true = np.abs(self.truth[f"*moment {pull.name}"]) / pull.count, np.abs(self.truth[pull.key])
        for key, length in self.data.items():
            if kind_of(key) != "length" or not np.all(length) or same(moment / np.abs(length), true):
                continue
            own = key.startswith((pull.name, f"*x {pull.name}", f"*y {pull.name}"))
            name = "insertion-used-as-arm" if own else "wrong-datum"
            rows = {pull.key: moment / np.abs(length)}
            if f"*stress {pull.name}" in self.truth:
                rows[f"*stress {pull.name}"] = rows[pull.key] / self.data[f"*area {pull.name}"]
            yield SlipRows(
                name,
                pull.name,
                pull.key,
                "unknown",
                1,
                rows,
                replace(found[0].spoilt, slip=name, item=pull.name, also=()),
            )

    def _slips(self, rules: Sequence[SlipRule], values: Sequence[Values]) -> Iterator[SlipRows]:
        for rule in rules:
            made = [_played(rule, account) for account in self.accounts]
            for place, spoilt in enumerate(made[0]):
                found = [
                    spoilt,
                    *(
                        _partner(place, made[0], each) or _carried_over(spoilt, self.first, account)
                        for each, account in zip(made[1:], self.accounts[1:], strict=True)
                    ),
                ]
                if any(each is None for each in found):
                    continue
                accounts = [each.account for each in found if each is not None]
                try:
                    own = [each.values() for each in accounts]
                except Impossible:
                    continue
                wrong = changed(values[0], own[0])
                if not wrong:
                    continue
                rows = self._changed(quantities(accounts, own, other_points=False))
                if rows:
                    yield SlipRows(
                        spoilt.slip,
                        spoilt.item,
                        spoilt.touched if spoilt.touched in wrong else wrong[0],
                        spoilt.near,
                        rule.COMMON,
                        rows,
                        spoilt,
                    )

    def _changed(self, found: Mapping[str, Row]) -> dict[str, Row]:
        """What a slip changes of the true quantities."""
        keys = [key for key in found if key in self.truth]
        own, true = np.array([found[key] for key in keys]), np.array([self.truth[key] for key in keys])
        for key in [key for key in self.truth if key.startswith("*stress ")]:
            pull = next((each.key for each in self.first.items if each.name == key[8:]), "")
            if pull in found:
                keys.append(key)
                own, true = (
                    np.vstack([own, found[pull] / self.data[f"*area {key[8:]}"]]),
                    np.vstack([true, self.truth[key]]),
                )
        differ = (np.abs(own - true) > 1e-9 * np.maximum(np.abs(own), np.abs(true)) + 1e-12).any(axis=1)
        return {key: row for key, row, wrong in zip(keys, own, differ.tolist(), strict=True) if wrong}


def _played(rule: SlipRule, account: Account) -> list[Spoilt]:
    try:
        return list(rule.do(account))
    except (Impossible, ArithmeticError, LookupError, ValueError):
        return []


def _partner(place: int, made: list[Spoilt], others: list[Spoilt]) -> Spoilt | None:
    """The same slip in the same place of a twin."""
    if len(made) == len(others):
        return others[place]

    def mark(each: Spoilt) -> tuple[str, str, str]:
        return each.item, each.touched, each.angle

    same_place = [each for each in others if mark(each) == mark(made[place])]
    count = sum(mark(each) == mark(made[place]) for each in made[:place])
    return (
        same_place[count]
        if count < len(same_place) and len(same_place) == sum(mark(each) == mark(made[place]) for each in made)
        else None
    )


def _carried_over(spoilt: Spoilt, first: Account, twin: Account) -> Spoilt | None:
    """A slip that only changes data, in a twin: the data changed by the same factor."""
    changed_ = {
        key: number / first.data[key]
        for key, number in spoilt.account.data.items()
        if first.data.get(key) and number != first.data[key]
    }
    if (
        not changed_
        or replace(spoilt.account, data=first.data) != first
        or not all(key in twin.data for key in changed_)
    ):
        return None
    return replace(
        spoilt,
        account=replace(twin, data={**twin.data, **{key: twin.data[key] * factor for key, factor in changed_.items()}}),
    )


class _CoupleLeftOut:
    """A known couple left out of the balance, as a rule of slips."""

    COMMON = 2

    def __init__(self, slip: str, item: Item) -> None:
        self.SLIP, self.item = slip, item.name

    def do(self, account: Account) -> Iterator[Spoilt]:
        """The account without it."""
        without = account.with_item(self.item, in_moments=0.0, in_forces=0.0)
        yield Spoilt(self.SLIP, without, account.unknowns[0], "balance", self.item)


def _couples_left_out(account: Account) -> Iterator[SlipRule]:
    """A couple that turns as the unknown does is a helper left out, another is a load."""
    unknown = next((each for each in account.items if each.key in account.unknowns), None)
    values = account.values()
    for each in account.items:
        own, pull = (
            values.get(f"*moment {each.name}", 0.0),
            values.get(f"*moment {unknown.name}", 0.0) if unknown else 0.0,
        )
        if each.kind == "couple" and each.key not in account.unknowns:
            yield cast(SlipRule, _CoupleLeftOut("helper-muscle-left-out" if own * pull > 0 else "load-left-out", each))
