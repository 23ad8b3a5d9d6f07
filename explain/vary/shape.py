"""What makes one working as hard as another: its route, the senses of its terms, the functions in them, the roots of
its angles. Judges nothing.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from ..marking.slips.account import Account, Item, Turned, Values
from ..document.english import noun_of, the
from ..solve.outcome import Outcome

_NOTHING = 1e-9  # of the largest of its kind


class Feature(NamedTuple):
    """One feature of a working: what it is a feature of, in words, and how it is. `of` are the names it hangs on."""

    what: str
    how: str
    of: tuple[str, ...] = ()


Shape = tuple[Feature, ...]


def shape(outcome: Outcome, account: Account, values: Values) -> Shape:
    """Everything that must be the same in two problems for one to be as hard as the other."""
    return (*_route(outcome), *_senses(outcome, account, values), *_functions(account))


def differences(one: Shape, other: Shape) -> Iterator[Feature]:
    """The features of the first that the second has not."""
    there = set(other)
    yield from (each for each in one if each not in there)
    here = {each.what for each in one}
    yield from (Feature(each.what, "not there", each.of) for each in other if each.what not in here)


def _route(outcome: Outcome) -> Iterator[Feature]:
    stages = outcome.working.settled.stages
    yield Feature(
        "the order of the balances", "; ".join(f"{each.balance}, {each.unknown}, {each.partners}" for each in stages)
    )
    for key, roots in outcome.working.settled.roots.items():
        owner = key.removeprefix("*angle ")
        yield Feature(f"the number of angles that balance {the(owner)}", str(len(roots)), (owner,))


def _senses(outcome: Outcome, account: Account, values: Values) -> Iterator[Feature]:
    moments = {item.name: values[f"*moment {item.name}"] for item in account.items}
    largest = max(map(abs, moments.values()), default=0.0)
    for name, value in moments.items():
        yield Feature(f"the way that {the(name)} turns", _sign(value, largest), (name,))
    for name in (each.name for each in account.pulls):
        yield Feature(f"the sign of {noun_of('force', name)}", _sign(values[account.item(name).key], 0.0), (name,))
    if outcome.joint_asked:
        forces = max([outcome.largest_force, abs(values["reaction"])])
        for key, what in (
            ("reaction.right", "level"),
            ("reaction.up", "upright"),
            ("reaction.along", "lengthwise"),
            ("reaction.across", "crosswise"),
        ):
            if key in values:
                yield Feature(
                    f"the sense of the {what} part of the joint force", _sign(values[key], forces), ("reaction",)
                )


def _sign(value: float, largest: float) -> str:
    return "none" if abs(value) <= _NOTHING * largest else "one" if value > 0 else "the other"


def _functions(account: Account) -> Iterator[Feature]:
    for item in account.items:
        yield Feature(
            f"the sines and cosines in the moment of {the(item.name)}",
            " ".join(map(_function, _turned(item))),
            (item.name, item.segment),
        )


def _turned(item: Item) -> Iterator[Turned]:
    yield from (leg.turned for leg in item.legs)
    yield from (each for each in (item.level, item.upright) if each is not None)


def _function(turned: Turned) -> str:
    return f"{turned.sign:+d} {turned.function}"
