"""The worlds that a working may live in: the truth with a student's own g, and the truth with slips in it. Knows
accounts, no line.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from math import pi
from typing import NamedTuple

from ..slips.account import Account, Impossible, Spoilt, Values
from ..slips.slip import SlipRule, changed, spoilt_accounts

OTHER_G = (9.81, 9.8, 9.80665, 10.0)  # found in classes (common practice, no source)
TURNS = {"deg": pi / 180, "rad": 1.0, "grad": pi / 200}
_SECOND = 4  # worlds that a second slip is looked for in


class World(NamedTuple):
    """Values by key, the account they come from, and the slips in it, in the order in which they were made."""

    values: Values
    account: Account
    slips: tuple[Spoilt, ...] = ()
    note: str = ""
    changed: frozenset[str] = frozenset()  # the keys whose values the last slip changes

    @property
    def turn(self) -> float:
        return TURNS[self.account.mode]


@dataclass(slots=True)
class Worlds:
    """Every world that one problem offers; those with slips are made when they are first needed, and kept."""

    account: Account
    rules: Sequence[SlipRule]
    spoilt: dict[int, tuple[World, ...]] = field(default_factory=dict)
    kept: list[Account] = field(default_factory=list)
    true: tuple[World, ...] = ()
    others: tuple[
        tuple[str, Mapping[str, float]], ...
    ] = ()  # data by other published tables, with what is said of them

    def truths(self, g: float | None = None) -> tuple[World, ...]:
        """The truth by the class's own g, then by others; by the student's `g` first where there is one."""
        if not self.true:
            self.true = self._truths()
        return tuple(sorted(self.true, key=lambda each: g is not None and abs(each.account.data["g"] - g) > 1e-9))

    def _truths(self) -> tuple[World, ...]:
        first = World(self.account.values(), self.account)
        tables = [
            World(each.values(), each, note=note)
            for note, data in self.others
            for each in [self.account.with_data(**data)]
        ]
        if not any(item.mass for item in self.account.items):
            return (first, *tables)
        others = [g for g in OTHER_G if abs(g - self.account.data["g"]) > 1e-9]
        accounts = [
            replace(self.account, data={**self.account.data, "g": g, **_person(self.account, g)}) for g in others
        ]
        notes = [f"taken with g = {g:g} m/s²" for g in others]
        return (
            first,
            *(World(each.values(), each, note=note) for each, note in zip(accounts, notes, strict=True)),
            *tables,
        )

    def after(self, world: World) -> tuple[World, ...]:
        """The worlds with one more slip."""
        key = id(world.account)
        if key not in self.spoilt:
            self.kept.append(world.account)
            self.spoilt[key] = tuple(
                World(values, each.account, (*world.slips, each), "", frozenset(changed(world.values, values)))
                for each, values in spoilt_accounts(world.account, self.rules)
            )
        return self.spoilt[key]

    def further(self, live: Sequence[World]) -> list[World]:
        """The worlds with one more slip than those that a working may be in."""
        return [each for world in live[:_SECOND] for each in self.after(world)]

    def names(self, worlds: Sequence[World]) -> frozenset[str]:
        """The slips that are in some worlds."""
        made = [each for world in worlds for each in world.slips]
        return frozenset(name for each in made for name in (each.slip, *(other.slip for other in each.also)))


def with_own(world: World, own: Mapping[str, float]) -> World | None:
    """A world in which a student's own values stand for what they are of."""
    account = replace(world.account, fixed={**world.account.fixed, **own})
    try:
        return World(account.values(), account, world.slips)
    except Impossible:
        return None


def _person(account: Account, g: float) -> dict[str, float]:
    mass = account.data.get("*person.mass")
    return {"*person.weight": mass * g} if mass is not None and "*person.weight" in account.data else {}
