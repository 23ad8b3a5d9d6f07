"""How a problem will be worked, before it is: what is cut free, what is unknown, where moments are taken and why.

Knows which balance settles what; tells no answer.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from ..document.english import counted, force_of, listed, noun_of, sentence, the
from ..equation import key as keys
from ..solve.outcome import Outcome
from ..wording.pivot_words import pivot_force
from .general_words import body_name

ABOUT = "moments about "


def strategy(outcome: Outcome) -> str:
    """Three sentences at most; none where the class wants its pages brief."""
    if outcome.body.problem.course.detail == "brief":
        return ""
    return " ".join(map(sentence, _said(outcome)))


def _said(outcome: Outcome) -> Iterator[str]:
    problem, pivot = outcome.body.problem, the(outcome.pivot)
    from_what = f"at {pivot}" if problem.pivot.reaction else "from everything that touches it"
    cut = f"cut {body_name(outcome)} free {from_what}"
    yield f"we {cut}" if problem.course.person == "we" else cut
    if not problem.balanced:
        yield f"nothing need be at rest, so there is no equation to solve: the {outcome.word}s about {pivot} are added"
        return
    stages, unknown = outcome.working.settled.stages, _unknowns(outcome)
    if not stages or not unknown:
        return
    if not problem.pivot.reaction or stages[0].balance != "moments" or stages[0].partners:
        yield f"{_are(unknown, outcome)}: {listed(list(_gives(outcome)))}"
        return
    count = counted(len(unknown) + 2)
    if outcome.joint_asked:
        yield f"{_are(unknown, outcome)}: {count} unknowns for three equations of equilibrium ({_equations(outcome)})"
    else:
        yield f"{_are(unknown, outcome)}, but the equation of {outcome.word}s is enough for what is asked"
    yield (
        f"we take {outcome.word}s about {pivot}, because the {pivot_force(problem)}, which is unknown, passes through "
        f"it and has no {outcome.word} there; the only unknown left is {_meaning(outcome, stages[0].unknown)}"
    ).removeprefix("" if problem.course.person == "we" else "we ")


def _unknowns(outcome: Outcome) -> list[str]:
    """What is sought besides the force at the pivot, in words."""
    return [_bare(each.meaning) for each in outcome.body.sought]


def _are(unknown: list[str], outcome: Outcome) -> str:
    problem = outcome.body.problem
    joint = [f"the two parts of the {pivot_force(problem)}"] if problem.pivot.reaction else []
    names = [*unknown, *joint]
    return f"unknown {'is' if len(names) == 1 else 'are'} {listed(names)}"


def _equations(outcome: Outcome) -> str:
    bone = outcome.body.problem.course.axes
    ways = f"forces along {the(bone)} and forces across it" if bone else "horizontal forces and vertical forces"
    return f"{outcome.word}s, {ways}"


def _gives(outcome: Outcome) -> Iterator[str]:
    """Which balances give which unknowns, in the order in which they are taken."""
    for stage in outcome.working.settled.stages:
        pairs = ((stage.balance, stage.unknown), *stage.partners)
        balances = listed([_balance(outcome, balance, len(pairs) > 1) for balance, _ in pairs])
        give = "gives" if stage.balance == "friction" and len(pairs) == 1 else "give"
        yield f"{balances} {give} {listed([_meaning(outcome, unknown) for _, unknown in pairs])}"


def _balance(outcome: Outcome, balance: str, one_of_several: bool) -> str:
    if balance.startswith(ABOUT):
        return f"the {outcome.word}s about the point where {the(balance.removeprefix(ABOUT))} acts"
    words = {
        "level": "the horizontal forces",
        "upright": "the vertical forces",
        "friction": "the coefficient of friction"
        + (" (the body is about to slip)" if one_of_several else ", since the body is about to slip,"),
    }
    return words.get(balance, f"the {outcome.word}s about {the(outcome.pivot)}")


def _meaning(outcome: Outcome, key: str) -> str:
    """An unknown in words."""
    if keys.of(key).is_joint:
        part = {keys.RIGHT: "horizontal", keys.UP: "vertical"}[key]
        return f"the {part} part of the {pivot_force(outcome.body.problem)}"
    found = next((each.meaning for each in outcome.body.sought if each.letter.name == key), "")
    if found:
        return _bare(found)
    owner, what = keys.of(key).owner, keys.of(key).what
    return force_of(owner) if what == "force" else noun_of(what, owner)


def _bare(meaning: str) -> str:
    """A meaning in a sentence: "the pull of the biceps", "the distance from the wrist to the hammer"."""
    start, to, end = re.sub(r" \([^)]*\)$", "", meaning).partition(" to ")
    if to:
        return f"the distance from {the(start)} to {the(end)}"
    return f"the {start}"
