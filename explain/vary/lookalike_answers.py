"""Which slips give an answer that is right, or that another slip gives too. Knows accounts and catalogues of slips,
and judges no working.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations, permutations
from math import hypot
from typing import NamedTuple

from ..marking.slips.account import Account, Impossible, Values
from ..marking.slips.slip import SlipRule

RIGHT = 0.02  # a slip's answers within 2 % of the right ones: its working could pass for a right one
ALIKE = 0.01  # the answers of two slips within 1 % of each other: nobody could tell them apart by these
COMMON = 4  # of slips that are very common (the catalogue's 1 to 4) no two may be alike, and all must show
_SAME = 1e-9


class Mistaken(NamedTuple):
    """The answers that one slip gives, in the order of the keys."""

    slip: str
    common: int
    answers: tuple[float, ...]


class Imitations(NamedTuple):
    """The slips, by name, that one set of numbers cannot tell: from the right answer to a question of its own, from
    the right answer to another part, from each other.
    """

    right: frozenset[tuple[str, str]]  # a slip and the key of the answer
    parts: frozenset[str]
    alike: frozenset[tuple[str, str]]
    shown: frozenset[str]  # the very common slips that change an answer


class Sought(NamedTuple):
    """What is asked: the keys of an account, the right values, and for each what a difference is measured by."""

    keys: tuple[str, ...]
    right: tuple[float, ...]
    scales: tuple[float, ...]


def sought(keys: Sequence[str], true: Values) -> Sought:
    """The parts and the size of a joint force are measured by the largest force, all else by itself: small
    differences of large terms are not told.
    """
    kept = tuple(key for key in keys if key in true)
    forces = [abs(value) for key, value in true.items() if key.endswith((".force", ".weight"))]
    joint = max([*forces, hypot(true.get("reaction.right", 0.0), true.get("reaction.up", 0.0))])
    return Sought(
        kept,
        tuple(true[key] for key in kept),
        tuple(joint if key.startswith("reaction") else abs(true[key]) or 1.0 for key in kept),
    )


def mistaken(account: Account, asked: Sought, slips: Sequence[SlipRule]) -> Iterator[Mistaken]:
    """What each slip makes of the answers, in the order of the catalogue; slips that leave no answer, or all answers
    as they are, are left out.
    """
    for rule in slips:
        for spoilt in rule.do(account):
            try:
                values = spoilt.account.values()
            except Impossible:
                continue
            answers = tuple(values.get(key, 0.0) for key in asked.keys)
            if apart(answers, asked.right, asked.scales) > _SAME:
                yield Mistaken(rule.SLIP, rule.COMMON, answers)


def apart(one: Sequence[float], other: Sequence[float], scales: Sequence[float]) -> float:
    """The largest difference between two sets of answers, as a share of their scales."""
    return max((abs(a - b) / scale for a, b, scale in zip(one, other, scales, strict=True)), default=0.0)


def imitations(found: Sequence[Mistaken], asked: Sought) -> Imitations:
    """Everything that these slips imitate."""
    common = [each for each in found if each.common >= COMMON]
    return Imitations(
        frozenset((each.slip, key) for each in found for key in right_by_chance(each, asked)),
        frozenset(each.slip for each in common if is_another_part(each, asked)),
        frozenset(pair(one, other) for one, other in combinations(common, 2) if are_alike(one, other, asked)),
        frozenset(each.slip for each in common),
    )


def right_by_chance(found: Mistaken, asked: Sought) -> Iterator[str]:
    """The answers, each by itself, that a slip changes and that could still pass for right."""
    for key, answer, right, scale in zip(asked.keys, found.answers, asked.right, asked.scales, strict=True):
        if _SAME < abs(answer - right) / scale < RIGHT:
            yield key


def pair(one: Mistaken, other: Mistaken) -> tuple[str, str]:
    return (one.slip, other.slip) if one.slip < other.slip else (other.slip, one.slip)


def are_alike(one: Mistaken, other: Mistaken, asked: Sought) -> bool:
    """Whether two different slips could not be told apart by their answers."""
    return one.slip != other.slip and all(
        abs(a - b) < ALIKE * max(abs(a), abs(b), scale * ALIKE)
        for a, b, scale in zip(one.answers, other.answers, asked.scales, strict=True)
    )


def is_another_part(found: Mistaken, asked: Sought) -> bool:
    """Whether a wrong answer to one part is the right answer to another of the same kind; the parts of a joint force
    are no answers to others.
    """
    whole = [place for place, key in enumerate(asked.keys) if not key.startswith("reaction.")]
    for one, other in permutations(whole, 2):
        answer, right = abs(found.answers[one]), abs(asked.right[other])
        wrong = abs(found.answers[one] - asked.right[one]) > RIGHT * asked.scales[one]
        if wrong and _kind(asked.keys[one]) == _kind(asked.keys[other]) and abs(answer - right) < ALIKE * right:
            return True
    return False


def answer_name(key: str) -> str:
    """What a problem file calls the answer of a key."""
    return f"{key.removeprefix('*angle ')}.direction" if key.startswith("*angle ") else key.removesuffix(".force")


def _kind(key: str) -> str:
    """What may be mistaken for each other: forces with forces, whether of the joint or of a muscle."""
    if key.startswith("reaction") or key.endswith((".force", ".weight")):
        return "force"
    return key.partition(" ")[0] if key.startswith("*") else key.rpartition(".")[2]
