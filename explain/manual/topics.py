"""What a problem is about, in words for an index: its joint, its muscles, and what is new in its method. Tells no
answer.
"""

from __future__ import annotations

from collections.abc import Iterator

from ..mechanics.body import Bearing
from ..equation.terms import Quantity
from ..solve.outcome import Outcome
from ..problem.model import AtLimit, FromTable, Hung, Multiple, Percent, Problem
from .task import JOINTS, METHODS, MUSCLES, Topic


def topics(outcome: Outcome) -> tuple[Topic, ...]:
    """Every topic once."""
    problem = outcome.body.problem
    found = [Topic(JOINTS, outcome.pivot), *(Topic(MUSCLES, force.name) for force in outcome.muscles)]
    found += [
        Topic(METHODS, word)
        for word in (*_of_what_is_asked(outcome), *_of_the_pulls(outcome), *_of_the_body(outcome, problem))
    ]
    return tuple(dict.fromkeys(found))


def _of_what_is_asked(outcome: Outcome) -> Iterator[str]:
    problem = outcome.body.problem
    if not problem.balanced:
        yield "moments where nothing is at rest"
        return
    if not problem.pivot.reaction:
        yield "supports: all three balances"
    for _, key in outcome.working.asked:
        if key in ("reaction.along", "reaction.across"):
            yield "joint force, along and across a bone"
        elif key.startswith("reaction"):
            yield "joint force"
        elif key.startswith("*angle "):
            yield "angle sought"
        for end, words in (
            (".at", "distance sought"),
            (".moment_arm", "moment arm sought"),
            (".stress", "stress in a muscle"),
            (".mass", "mass sought"),
            (".hung", "mass sought"),
            (".weight", "weight sought"),
        ):
            if key.endswith(end):
                yield words
    if len([each for each in outcome.body.sought if each.letter.name.endswith(".force")]) > 1:
        yield "several unknown forces"


def _of_the_pulls(outcome: Outcome) -> Iterator[str]:
    problem = outcome.body.problem
    for pull in problem.pulls:
        if isinstance(pull.force, Multiple) or pull.share:
            yield "pulls that share"
        if isinstance(pull.force, Hung):
            yield "cable over a pulley"
        if isinstance(pull.force, AtLimit):
            yield "muscle at its limit"
        if pull.toward is not None:
            yield "line of pull through two points"
        if isinstance(pull.moment_arm, Quantity):
            yield "moment arm given"
        if pull.count > 1:
            yield "several pulls alike"
    if any(force.bearing and _oblique(force.bearing) for force in outcome.body.forces):
        yield "oblique force"
    if problem.couples:
        yield "couple"


def _of_the_body(outcome: Outcome, problem: Problem) -> Iterator[str]:
    if len(problem.segments) > 1:
        yield "several segments held together"
    if any(each.mass or each.weight for each in problem.segments):
        yield "weight of a segment, at its centre of mass"
    if any(_oblique(each) for each in outcome.body.bearings.values()):
        yield "sloping segment"
    heavy = [*(each.mass for each in problem.segments), *(each.mass for each in problem.loads)]
    if any(isinstance(each, FromTable) for each in heavy):
        yield "segment table"
    if any(isinstance(each, Percent) for each in heavy):
        yield "shares of body mass"
    if outcome.body.force_unit == "lbf":
        yield "pounds"


def _oblique(bearing: Bearing) -> bool:
    return bool(bearing.unknown) or bearing.degrees % 90 != 0
