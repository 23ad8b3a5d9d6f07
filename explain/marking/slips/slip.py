"""What a slip is: a rule that must be refused, its wording in hints of three strengths, and every way it spoils an
account. Knows no particular slip.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Protocol

from .account import Account, Impossible, Spoilt, Values
from ...document.english import the
from .verdict import Named

SILENT = 0.005  # a value less than half a per cent off shows no slip
_NOTHING = 1e-9  # of the largest value: where the truth is zero
Spoiling = tuple[Spoilt, Values]


@dataclass(frozen=True, slots=True)
class Words:
    """What is said of a slip. `{item}` and `{angle}` are slots; `item` and `angle` stand in them where a slip names
    none.

    `light`, `medium`, `strong` are the hints; none has a number. `question` tells the slip from those that give the
    same line.
    """

    title: str
    says: str
    light: str
    medium: str
    strong: str
    question: str = ""
    item: str = "each of the forces"
    angle: str = "the angle"

    def told(self, text: str, spoilt: Spoilt) -> str:
        """One of the sentences with its slots filled."""
        item = spoilt.item if spoilt.item.startswith("the ") else the(spoilt.item) if spoilt.item else self.item
        return text.format(item=item, angle=spoilt.angle or self.angle)


class SlipRule(Protocol):
    """A module of rules/slips."""

    @property
    def SLIP(self) -> str:
        """Its name in the catalogue."""

    @property
    def FAMILY(self) -> str:
        """What it has to do with: "distances", "joint reaction"."""

    @property
    def COMMON(self) -> int:
        """From 1, seldom, to 4, very common."""

    @property
    def SAYS(self) -> Words:
        """Its wording."""

    def do(self, account: Account) -> Iterator[Spoilt]:
        """Every account that the slip makes of a true one."""


def named(rule: SlipRule, spoilt: Spoilt) -> Named:
    """The slip with its wording, as it is said of a line."""
    says = rule.SAYS
    title, said, *hints = (
        says.told(each, spoilt) for each in (says.title, says.says, says.light, says.medium, says.strong)
    )
    return Named(rule.SLIP, title, said, (hints[0], hints[1], hints[2]), (spoilt.touched,))


def changed(true: Values, spoilt: Values) -> tuple[str, ...]:
    """The keys whose values a slip changes by more than half a per cent."""
    least = _NOTHING * max(map(abs, true.values()), default=1.0)
    return tuple(
        key
        for key, value in spoilt.items()
        if abs(value - true.get(key, 0.0)) > SILENT * max(abs(true.get(key, 0.0)), least)
    )


def spoilt_accounts(account: Account, slips: Sequence[SlipRule]) -> tuple[Spoiling, ...]:
    """Every spoilt account that has values and is not silent, with them, the commonest slip first.

    Those with the very same values are one: the commonest slip's, with the others in `also`. Raises Impossible where
    the account itself has no values.
    """
    true, found = account.values(), dict[object, list[Spoiling]]()
    for rule in sorted(slips, key=lambda each: -each.COMMON):
        for spoilt in rule.do(account):
            try:
                values = spoilt.account.values()
            except Impossible:
                continue
            wrong = changed(true, values)
            if wrong:
                same = tuple(sorted((key, f"{values[key]:.9e}") for key in wrong))
                found.setdefault(same, []).append((replace(spoilt, touched=_first(spoilt, wrong)), values))
    return tuple(_merged(same) for same in found.values())


def _first(spoilt: Spoilt, wrong: Sequence[str]) -> str:
    """What is wrong first: as the slip says, or where a balance makes that good again, the unknown or part of the
    joint force that it ends in.
    """
    later = (*spoilt.account.unknowns, "reaction.right", "reaction.up", *wrong)
    return next(key for key in (spoilt.touched, *later) if key in wrong)


def _merged(same: Sequence[Spoiling]) -> Spoiling:
    spoilt, values = same[0]
    also = {each.slip: each for each, _ in reversed(same[1:]) if each.slip != spoilt.slip}
    return replace(spoilt, also=tuple(reversed(also.values()))), values
