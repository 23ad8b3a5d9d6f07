"""Whether a set of numbers may be handed out: as hard as the problem as written, fit for people, and telling right work
from wrong.

The problem as its author wrote it is the measure: what it has of a flaw already, a variant may have too.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from itertools import chain, combinations
from typing import NamedTuple

from ..marking.slips.account import Account, Values
from ..document.english import the
from ..solve.outcome import Finding, Outcome
from ..marking.slips.slip import SlipRule
from .lookalike_answers import (
    ALIKE,
    COMMON,
    RIGHT,
    Imitations,
    Mistaken,
    Sought,
    answer_name,
    are_alike,
    imitations,
    is_another_part,
    mistaken,
    pair,
    right_by_chance,
    sought,
)
from .settle_only import accounted
from .shape import Shape, differences, shape

Check = Callable[[Outcome], Finding | tuple[Finding, ...]]
Flaw = tuple[str, str]
_NUMBER = re.compile(r"[−-]?\d[\d.,\u202f]*")
_EQUAL = 0.005  # two numbers that round to the same in three figures


class Experts(NamedTuple):
    """What variants are screened with: the catalogue of slips, and the checks on answers by name."""

    slips: Sequence[SlipRule]
    checks: Sequence[tuple[str, Check]]


class Refusal(NamedTuple):
    """Why a set is not handed out: words that can follow "because", the names of what it hangs on, and the slips
    that it is about.
    """

    why: str
    of: tuple[str, ...] = ()
    slips: tuple[str, ...] = ()


class Measure(NamedTuple):
    """The problem as written: its shape, its flaws, and what its slips imitate."""

    shape: Shape
    flaws: frozenset[Flaw]
    imitates: Imitations


def measure(outcome: Outcome, experts: Experts) -> Measure:
    """The problem as written, for variants to be compared with. Raises Impossible where it has no values."""
    account, values = accounted(outcome)
    asked = sought([key for _, key in outcome.working.asked], values)
    flaws = frozenset(flaw for flaw, _ in chain(_coincidences(outcome, account, values), _unlikely(outcome, experts)))
    return Measure(
        shape(outcome, account, values), flaws, imitations(tuple(mistaken(account, asked, experts.slips)), asked)
    )


def screened(outcome: Outcome, account: Account, values: Values, like: Measure, experts: Experts) -> Refusal | None:
    """The first reason against a set of numbers that is met, the plainest first; None where there is none. Raises
    Impossible.
    """
    asked = sought([key for _, key in outcome.working.asked], values)
    for each in chain(_pulls(outcome), _harder(shape(outcome, account, values), like.shape)):
        return each
    for flaw, found in chain(_coincidences(outcome, account, values), _unlikely(outcome, experts)):
        if flaw not in like.flaws:
            return found
    shown: list[Mistaken] = []
    refusal = _imitated(account, asked, like.imitates, experts.slips, shown)
    hidden = like.imitates.shown - {each.slip for each in shown}
    return refusal or (Refusal(f"the slip {min(hidden)} would not show") if hidden else None)


def at_once(account: Account, keys: Sequence[str], like: Measure, slips: Sequence[SlipRule]) -> Refusal | None:
    """A reason against a set of numbers that these slips give; None says nothing. Raises Impossible."""
    return _imitated(account, sought(keys, account.values()), like.imitates, slips, [])


def _pulls(outcome: Outcome) -> Iterator[Refusal]:
    """Muscles only pull."""
    for muscle in outcome.muscles:
        if outcome.body.problem.balanced and outcome.size(muscle) <= 0:
            yield Refusal(f"{the(muscle.name)} would have to push", (muscle.name,))


def _harder(own: Shape, other: Shape) -> Iterator[Refusal]:
    for each in differences(own, other):
        yield Refusal(f"{each.what} would not be what it is in the problem as written", each.of)


def _coincidences(outcome: Outcome, account: Account, values: Values) -> Iterator[tuple[Flaw, Refusal]]:
    """Numbers that happen to be equal, so that a wrong use of one gives a right answer: arms, a mass and g, an
    answer and a datum.
    """
    arms = {item.name: values[f"*arm {item.name}"] for item in account.items if f"*arm {item.name}" in values}
    for one, other in combinations(arms, 2):
        if abs(arms[one] - arms[other]) <= ALIKE * abs(arms[one]):
            yield (
                ("arms", f"{one}, {other}"),
                Refusal(f"{the(one)} and {the(other)} would have the same moment arm", (one, other)),
            )
    g = next((float(each.value.number) for each in outcome.body.givens if each.letter.name == "g"), 0.0)
    for each in outcome.body.givens:
        if each.letter.name.endswith(".mass") and g and abs(float(each.value.number) - g) <= RIGHT * g:
            owner = each.letter.name.rpartition(".")[0]
            yield ("g", owner), Refusal(f"the mass of {the(owner)} would have the number that g has", (owner,))
    for answer in outcome.answers.values():
        for each in outcome.body.givens:
            if answer.value and abs(abs(answer.value) - abs(float(each.value.number))) <= _EQUAL * abs(answer.value):
                owner = each.letter.name.rpartition(".")[0]
                yield (
                    ("answer", f"{answer.name} {each.letter.name}"),
                    Refusal(f"the answer for {answer.name} would have the number of a datum", (owner,)),
                )


def _unlikely(outcome: Outcome, experts: Experts) -> Iterator[tuple[Flaw, Refusal]]:
    """What the checks on answers find: people who are not like this, places beyond a bone, angles that no joint
    reaches.
    """
    names = [each.name for each in outcome.body.forces] + [each.name for each in outcome.body.problem.segments]
    for name, check in experts.checks:
        found = check(outcome)
        for each in (found,) if isinstance(found, Finding) else found:
            if each.result in ("fails", "warns"):
                plain = _NUMBER.sub("…", each.says).partition(": ")[0].rstrip(".?")
                yield (
                    (name, ", ".join(each.of)),
                    Refusal(f"a check would warn: {plain}", tuple(name for name in names if name in each.of)),
                )


def _imitated(
    account: Account, asked: Sought, like: Imitations, slips: Sequence[SlipRule], shown: list[Mistaken]
) -> Refusal | None:
    """Slips that the answers could not tell, where those of the problem as written do; `shown` is filled with the
    very common ones.
    """
    for each in mistaken(account, asked, slips):
        for key in right_by_chance(each, asked):
            if (each.slip, key) not in like.right:
                said = f"the slip {each.slip} would give the right answer within {RIGHT:.0%} for {answer_name(key)}"
                return Refusal(said, slips=(each.slip,))
        if each.common < COMMON:
            continue
        if each.slip not in like.parts and is_another_part(each, asked):
            return Refusal(f"the slip {each.slip} would give the right answer to another part", slips=(each.slip,))
        for other in shown:
            if pair(each, other) not in like.alike and are_alike(each, other, asked):
                return Refusal(
                    f"the slips {' and '.join(pair(each, other))} would give the same answer within {ALIKE:.0%}",
                    slips=pair(each, other),
                )
        shown.append(each)
    return None
