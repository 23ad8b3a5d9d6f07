"""Muscles that pull equally hard for each square centimetre must turn one way: muscles that hold against each other
share by no such rule.
"""

from __future__ import annotations

from collections.abc import Mapping

from .body import Body
from ..document.english import the, verb
from .truth import Truth
from .undetermined import Undetermined

NOTHING = 1e-9  # of the pull times the way to it
WAYS = {1: "counter-clockwise", -1: "clockwise", 0: "neither way"}


def turn_one_way(body: Body, truth: Truth, values: Mapping[str, float]) -> None:
    """Raise Undetermined where the muscles that share by their areas do not all turn one way; what is not known yet
    is passed over.
    """
    ways: dict[str, int] = {}
    for pull in body.problem.pulls:
        force = body.force(pull.name)
        if pull.share:
            try:
                moment = truth.size(truth.moment[pull.name], {**values, force.size.name: 1.0})
                far = sum(abs(values[step.distance.name]) for step in force.steps) or 1.0
            except KeyError:
                continue
            ways[pull.name] = 0 if abs(moment) < NOTHING * far else 1 if moment > 0 else -1
    if len(set(ways.values())) > 1 or 0 in ways.values():
        first = next(iter(ways))
        other = next((name for name in ways if ways[name] != ways[first]), first)
        told = " and ".join(
            f"{the(each)} {verb(each, 'turn')} {WAYS[ways[each]]}" for each in dict.fromkeys((first, other))
        )
        raise Undetermined(
            file=body.problem.file,
            key=f"{other}.share",
            found=f'share = "area", where {told}',
            expected="muscles that all turn the same way: what pulls against them needs a force of its own",
            example='share = "area" on the muscles of one side alone',
        )
