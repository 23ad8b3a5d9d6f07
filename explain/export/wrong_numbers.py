"""The wrong numbers that the commonest slips lead to, each with the slip: what stands beside the right one where a
number is to be chosen. Knows accounts, no page.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from ..marking.slips.account import Spoilt
from ..marking.slips.slip import SlipRule
from ..tally.alternatives import Spoiled
from ..tally.asked import Wanted

APART = 0.02  # two numbers to choose from differ by more than this share of the larger
_NOTHING = 1e-6  # of the largest number there is: that is none


class Wrong(NamedTuple):
    """A number as it is shown, in the unit of the answer, and the slip that leads to it."""

    number: float
    spoilt: Spoilt


def wrong_numbers(
    made: Sequence[Spoiled],
    rules: Sequence[SlipRule],
    asked: Wanted,
    place: int,
    shown: Callable[[float], float],
    most: int,
) -> tuple[Wrong, ...]:
    """At most so many wrong numbers for the answer at a place, the commonest slip first and none twice.

    `shown` rounds as the page does. Of an answer without a sense a number's size is what counts, unless the right
    one is below nothing.
    """
    kept, found, slips = [asked.value, shown(asked.value)], list[Wrong](), set[str]()
    for number, spoilt in _commonest(made, rules, place):
        wrong = shown(number if asked.signed or asked.value < 0 else abs(number))
        if spoilt.slip not in slips and all(_apart(wrong, each, asked.signed) for each in kept):
            kept.append(wrong)
            slips.add(spoilt.slip)
            found.append(Wrong(wrong, spoilt))
            if len(found) == most:
                break
    return tuple(found)


def _commonest(made: Sequence[Spoiled], rules: Sequence[SlipRule], place: int) -> Iterator[tuple[float, Spoilt]]:
    """What each slip makes of an answer, in the order of how common slips are, then of a working."""
    common = {rule.SLIP: rule.COMMON for rule in rules}
    numbers = [(each.world.numbers[place], each.spoilt) for each in made]
    largest = max((abs(number) for number, _ in numbers if number is not None), default=0.0)
    for number, spoilt in sorted(numbers, key=lambda each: -common[each[1].slip]):
        if number is not None and abs(number) > _NOTHING * largest:
            yield number, spoilt


def _apart(one: float, other: float, signed: bool) -> bool:
    if not signed:
        one, other = abs(one), abs(other)
    return abs(one - other) > APART * max(abs(one), abs(other))
