"""The sense in which moments turn, by signs and by words: on which line one of them has another than the others."""

from __future__ import annotations

import re
from collections.abc import Iterator

import numpy as np

from .known import True_
from .state import State
from .values import Claim, Suspect

SIGNS = frozenset(("sign-of-a-term", "term-moved-sign-kept"))
_TURNS = re.compile(r"\b(?:anti-?clockwise|counter-?clockwise|acw|ccw|clockwise|cw)\b")


def _earlier(state: State, line: int) -> Iterator[tuple[Claim, list[True_]]]:
    for claim in sorted(state.claims, key=lambda each: each.line):
        if claim.line < line:
            yield claim, state.known.true_of(claim.value.f, claim.unit)


def to_its_sign(state: State, suspect: Suspect) -> None:
    """The line whose moment has another sense than those of the other forces, by its sign or by words."""
    signs: dict[str, tuple[float, int]] = {}
    silent: set[str] = set()  # things whose sense is told neither by a word nor by a minus
    signed = spoken = False
    for claim, keys in _earlier(state, suspect.line):
        said = {
            1.0 if each[0] == "a" or each.startswith(("cc", "counter")) else -1.0
            for each in _TURNS.findall(f"{claim.words} {claim.text}".lower())
        }
        turn = said.pop() if len(said) == 1 else 0.0
        spoken |= turn != 0
        signed |= claim.value.number < 0 or turn < 0
        mine = [each.key[8:] for each in keys if each.key.startswith("*moment ")]
        mine += [
            each.key[5:]
            for each in keys
            if each.key.startswith("*arm ") and not claim.name and each.key[5:] in state.hints.unknown_items
        ]
        mine += sorted(claim.meaning.items) if turn and len(claim.meaning.items) == 1 and not mine else []
        for name in mine[:1]:
            row = state.known.truth.get(f"*moment {name}")
            if row is not None:
                silent = silent - {name} if turn or claim.value.number < 0 else silent | {name}
                signs[name] = ((turn or float(np.sign(claim.value.number))) * float(np.sign(row[0])), claim.line)
    signs = {name: each for name, each in signs.items() if not (spoken and name in silent)}
    senses = [sign for sign, _ in signs.values()]
    odd = [line for sign, line in signs.values() if 2 * senses.count(sign) < len(senses)]
    if (
        signed
        and len(odd) == 1
        or signed
        and len(senses) == 2
        and len(set(senses)) == 2
        and (odd := _of_its_item(state, suspect, signs))
    ):
        suspect.line = odd[0]


def _of_its_item(state: State, suspect: Suspect, signs: dict[str, tuple[float, int]]) -> list[int]:
    items = {state.known.slips[place].item for place in suspect.worlds if state.known.slips[place].name in SIGNS}
    return [line for name, (_, line) in signs.items() if items == {name}]
