"""The verdict on each line, from what was found of its claims and suspicions. Words are chosen elsewhere."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

import numpy as np

from ..slips.verdict import Kind
from .kinds import FACTORS, UNIT_KIND, kind_of
from .patterns import same
from .passes import Judged
from .state import State
from .values import Claim, Suspect

Checked = Literal["", "arithmetic", "claim"]


@dataclass(slots=True)
class Verdict:
    """One line: the verdict, what was checked of it, the suspicions that it is guilty of, why in a word. `accepted`: a
    person accepted it, or a line that it rests on (`since`).
    """

    number: int
    kind: Kind
    checked: Checked = ""
    suspects: list[Suspect] = field(default_factory=list)
    claims: list[Claim] = field(default_factory=list)
    why: str = ""
    since: int = 0
    again: bool = False
    accepted: bool = False


def verdicts(judged: Judged) -> list[Verdict]:
    """All lines of a working in order."""
    out: list[Verdict] = []
    found = _Found()
    by_line: dict[int, list[Suspect]] = {}
    for each in judged.state.suspects:
        if each.state in ("guilty", "again"):
            by_line.setdefault(each.line, []).append(each)
    for line in judged.state.lines:
        verdict = _verdict(judged, line.number, by_line.get(line.number, []), found)
        found.accused |= verdict.kind == "slips" or verdict.accepted
        for each in by_line.get(line.number, []):
            found.doubts.add(each.place)
            found.lines |= {each.line} if each.state == "guilty" else set()
        out.append(verdict)
    return out


@dataclass(slots=True)
class _Found:
    """What was found up to a line: the places of suspicions, the lines that are guilty, whether one slips."""

    doubts: set[int] = field(default_factory=set)
    lines: set[int] = field(default_factory=set)
    accused: bool = False


def _verdict(judged: Judged, line: int, here: list[Suspect], found: _Found) -> Verdict:
    state = judged.state
    claims = state.on(line)
    mine = [each for each in here if each.state == "guilty"]
    true = [each for each in claims if each.status == "true"]
    blames = frozenset[int]().union(*(claim.value.blames for claim in claims))
    since = max((state.suspects[place].line for place in blames & found.doubts), default=0)
    out = Verdict(line, "holds", "claim" if true else "arithmetic", mine, claims)
    if mine:
        out.kind = "slips"
    elif not claims:
        out.kind, out.checked = ("unclear", "") if line in state.unread else ("aside", "")
        out.why = "unread" if line in state.unread else ""
    elif _follows(judged, claims, found) and not (
        len(true) == len(claims)
        and not any(each.value.blames & found.doubts for each in true)
        and all(_speaks(judged, each) for each in true)
    ):
        out.kind, out.since = "carried", since
    elif not true and line > judged.presumed and any(_unexplained(state, each) for each in claims):
        out.kind, out.why = "unclear", "nothing explains it"
    if line in judged.questions and out.kind in ("holds", "aside", "carried") and not found.accused:
        out.kind, out.why = "unclear", "answer"
    if judged.accepted:
        _overrule(judged, out)
    return out


def _overrule(judged: Judged, out: Verdict) -> None:
    """A line that a person accepted holds, and so does what follows from it alone."""
    laid = [each for each in judged.state.suspects if each.state == "accepted"]
    mine = [each for each in laid if each.line == out.number]
    places = {each.place for each in laid}
    rests = places & frozenset[int]().union(*(each.value.blames for each in out.claims))
    if out.number in judged.accepted and (mine or out.kind in ("slips", "unclear", "carried")):
        out.kind, out.checked, out.suspects, out.why, out.since, out.accepted = "holds", "", mine, "", 0, True
    elif out.kind == "holds" and (mine or rests):
        before = [each.line for each in laid if each.line < out.number and each.line in judged.accepted]
        out.checked, out.suspects, out.since, out.accepted = "", mine, max(before, default=0), True


def _follows(judged: Judged, claims: list[Claim], found: _Found) -> bool:
    """Whether a line rests on one that is in doubt."""
    for claim in claims:
        rests = not found.lines.isdisjoint(claim.value.deps)
        if (
            not found.doubts.isdisjoint(claim.value.blames)
            or claim.status in ("suspect", "carried")
            and found.lines
            or rests
            and (claim.status != "true" or not _speaks(judged, claim))
        ):
            return True
    return False


def _speaks(judged: Judged, claim: Claim) -> bool:
    """Whether what a claim is true of is what it is called."""
    return not claim.meaning.role or any(judged.state.hints.speaks(each.key, claim.meaning) for each in claim.keys)


def _unexplained(state: State, claim: Claim) -> bool:
    """A claim by name that nothing explains: a question."""
    if claim.status != "none":
        return False
    if claim.value.free:
        return _not_its_own(state, claim) or _pull_of_no_source(state, claim)
    if any(same(np.abs(claim.value.f), each.row) for each in state.trace.sources.angles):
        return False
    if claim.meaning.role:
        return True
    return (
        len(claim.meaning.items) == 1
        and claim.formula
        and bool(claim.unit)
        and len(claim.meaning.kinds) == 1
        and claim.meaning.kinds <= {"moment", "length"}
    )


def _pull_of_no_source(state: State, claim: Claim) -> bool:
    """A formula for the pull or the joint force in a force's unit, made with numbers from nowhere, that comes to no
    such force.
    """
    if not claim.meaning.role or not claim.formula or UNIT_KIND.get(claim.unit) != "force":
        return False
    number = abs(claim.value.number)
    return not any(
        state.hints.speaks(each.key, claim.meaning) for each in state.trace.sources.near(number, 0.01 * number)
    )


def _not_its_own(state: State, claim: Claim) -> bool:
    """A weight or moment of one named thing whose number is none of that thing's: a question, though its numbers
    were not traced.
    """
    items, kind = claim.meaning.items, UNIT_KIND.get(claim.unit, "")
    if (
        len(items) != 1
        or items & state.hints.pulls
        or kind not in ("force", "moment")
        or kind not in claim.meaning.kinds
        or claim.meaning.role
        or claim.value.half == 0
    ):
        return False
    own = [key for key in state.known.truth if kind_of(key) == kind and state.hints.item_of(key) & items]
    factor, number = FACTORS[kind].get(claim.unit, 1.0), abs(claim.value.number)
    sizes = [abs(float(state.known.truth[key][0])) for key in own] + [
        abs(found[key]) for found in state.trace.sources.others for key in own if key in found
    ]
    return bool(sizes) and not any(abs(number - size * factor) <= 0.03 * number + claim.value.half for size in sizes)
