"""What the letters of a line may stand for together: numbered letters of one item first. Knows no value of its own
and weighs nothing.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import product
from typing import NamedTuple

from .unit_frames import Dimension


class Meaning(NamedTuple):
    """One thing a letter may stand for, in SI."""

    value: float
    kind: Dimension
    key: str
    spread: float = 0.0


Choice = tuple[str, Meaning | None]  # a letter and what it may stand for


def together(choices: Sequence[Sequence[Choice]]) -> Iterator[tuple[Choice, ...]]:
    """One meaning for each letter: first those where letters of one number are of one item, F1 d1 + F2 d2, then all
    others.
    """
    numbers = [each[0][0][-1] if each and each[0][0][-1:].isdigit() else "" for each in choices]
    if len([each for each in numbers if each]) < 3:
        yield from product(*choices)
        return
    yield from _of_one_item(choices, numbers, {})
    yield from (chosen for chosen in product(*choices) if not _is_together(chosen, numbers))


def _of_one_item(
    choices: Sequence[Sequence[Choice]], numbers: Sequence[str], items: Mapping[str, str]
) -> Iterator[tuple[Choice, ...]]:
    if not choices:
        yield ()
        return
    for choice in choices[0]:
        known = {**items, numbers[0]: _item(choice)} if numbers[0] else items
        if all(known[number] == item for number, item in items.items()) and len(set(known.values())) == len(known):
            yield from ((choice, *rest) for rest in _of_one_item(choices[1:], numbers[1:], known))


def _is_together(chosen: Sequence[Choice], numbers: Sequence[str]) -> bool:
    pairs = {(number, _item(choice)) for number, choice in zip(numbers, chosen, strict=True) if number}
    return len(pairs) == len({number for number, _ in pairs}) == len({item for _, item in pairs})


def _item(choice: Choice) -> str:
    """The item whose quantity a letter stands for."""
    key = choice[1].key if choice[1] else choice[0]
    return key.partition(" ")[2] if key.startswith("*") else key.partition(".")[0]
