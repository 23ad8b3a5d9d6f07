"""Every number that a slip, or a pair of slips, leads to: for each answer a sorted table, looked up by bisection.
Knows accounts, no student.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from math import copysign
from typing import NamedTuple

from ..marking.judging.kinds import kind_of
from ..marking.slips.account import Account, Impossible, Spoilt
from ..marking.slips.slip import SILENT, SlipRule, spoilt_accounts
from .entry import Cause
from .asked import Wanted

Numbers = tuple[float | None, ...]  # by place among the answers wanted, in their units
Window = tuple[float, float]
_NEAR = 1e-9


class World(NamedTuple):
    """The answers of one account, and the causes that lead to just these."""

    numbers: Numbers
    causes: tuple[Cause, ...] = ()


class Spoiled(NamedTuple):
    """A slip as it can be made again on top of another: its place in the order of a working, and its account."""

    place: int
    spoilt: Spoilt
    world: World


class Table:
    """Worlds by the size of each of their answers."""

    def __init__(self, worlds: Sequence[World], width: int) -> None:
        self.worlds = tuple(worlds)
        self._sorted = tuple(self._by(place) for place in range(width))

    def __len__(self) -> int:
        return len(self.worlds)

    def _by(self, place: int) -> tuple[list[float], list[int]]:
        found = sorted(
            (abs(number), index)
            for index, each in enumerate(self.worlds)
            if (number := each.numbers[place]) is not None
        )
        return [size for size, _ in found], [index for _, index in found]

    def near(self, windows: Sequence[tuple[int, Window]]) -> list[World]:
        """The worlds in the narrowest of some windows, each a place and the least and the greatest size there."""
        best: tuple[int, list[int], int, int] | None = None
        for place, (least, most) in windows:
            sizes, order = self._sorted[place]
            low, high = bisect_left(sizes, least), bisect_right(sizes, most)
            if best is None or high - low < best[0]:
                best = high - low, order, low, high
        return [self.worlds[index] for index in best[1][best[2] : best[3]]] if best else []

    def sizes(self, place: int) -> Sequence[float]:
        """The sizes of one answer, least first."""
        return self._sorted[place][0]


def numbers_of(account: Account, wanted: Sequence[Wanted]) -> Numbers:
    """The answers that an account gives. Raises Impossible."""
    values = account.values()
    return tuple(each.of(values) for each in wanted)


def singles(account: Account, rules: Sequence[SlipRule], wanted: Sequence[Wanted]) -> tuple[Spoiled, ...]:
    """Every slip that moves an answer, in the order of a working."""
    true = numbers_of(account, wanted)
    order = {rule.SLIP: place for place, rule in enumerate(rules)}
    found = []
    for spoilt, values in spoilt_accounts(account, rules):
        numbers = tuple(each.of(values) for each in wanted)
        if moves(true, numbers):
            found.append(Spoiled(order[spoilt.slip], spoilt, World(numbers, causes_of(spoilt))))
    return tuple(sorted(found, key=lambda each: each.place))


def other_arms(account: Account, wanted: Sequence[Wanted], made: Sequence[Spoiled]) -> Iterator[World]:
    """The one pull by any other length of the problem in place of its arm, as the judge of workings looks for it, and
    what follows; those that are a slip's already are left out.
    """
    pulls = [each for each in account.items if each.key in account.unknowns]
    values = account.values()
    if len(pulls) != 1 or f"*moment {pulls[0].name}" not in values:
        return
    pull, known = pulls[0], {_rounded(each.world.numbers) for each in made}
    moment = values[f"*moment {pull.name}"] / pull.count
    for key, length in account.data.items():
        if kind_of(key) != "length" or not length:
            continue
        force = copysign(abs(moment / length), values[pull.key])
        numbers = numbers_of(replace(account, fixed={**account.fixed, pull.key: force}), wanted)
        if moves(numbers_of(account, wanted), numbers) and _rounded(numbers) not in known:
            known.add(_rounded(numbers))
            own = key.startswith((pull.name, f"*x {pull.name}", f"*y {pull.name}"))
            slip = "insertion-used-as-arm" if own else "wrong-datum"
            yield World(numbers, (Cause((slip,), (pull.key,), (pull.name,)),))


def pairs(
    account: Account,
    rules: Sequence[SlipRule],
    wanted: Sequence[Wanted],
    made: Sequence[Spoiled],
    watch: Callable[[Sequence[Spoiled]], Iterator[Spoiled]] = iter,
) -> Iterator[World]:
    """Two slips in one working, the earlier step first; those whose answers are those of one slip alone are left
    out.
    """
    true = numbers_of(account, wanted)
    alone = {_rounded(each.world.numbers) for each in made} | {_rounded(true)}
    for first in watch(made):
        for rule in rules[first.place :]:
            yield from _seconds(first, rule, wanted, alone)


def _seconds(first: Spoiled, rule: SlipRule, wanted: Sequence[Wanted], alone: set[tuple[str, ...]]) -> Iterator[World]:
    for second in rule.do(first.spoilt.account):
        try:
            numbers = numbers_of(second.account, wanted)
        except Impossible:
            continue
        one = first.spoilt
        again = second.slip == one.slip and (second.item, second.touched) <= (one.item, one.touched)
        if not again and _rounded(numbers) not in alone:
            yield World(
                numbers, (Cause((one.slip, second.slip), (one.touched, second.touched), (one.item, second.item)),)
            )


def moves(true: Numbers, numbers: Numbers) -> bool:
    """Whether an answer is more than half a per cent off."""
    return any(
        a is not None and b is not None and abs(a - b) > SILENT * abs(a) + _NEAR
        for a, b in zip(true, numbers, strict=True)
    )


def causes_of(spoilt: Spoilt) -> tuple[Cause, ...]:
    """The slip, and those that give the very same values."""
    return tuple(Cause((each.slip,), (each.touched,), (each.item,)) for each in (spoilt, *spoilt.also))


def _rounded(numbers: Numbers) -> tuple[str, ...]:
    return tuple("" if each is None else f"{each:.6e}" for each in numbers)


def own(account: Account, wanted: Sequence[Wanted], numbers: Sequence[tuple[int, float]]) -> Numbers | None:
    """What follows from a student's own numbers, all else being right; None where nothing does."""
    fixed = {wanted[place].key: number / wanted[place].factor for place, number in numbers}
    try:
        return numbers_of(replace(account, fixed={**account.fixed, **fixed}), wanted)
    except Impossible:
        return None
