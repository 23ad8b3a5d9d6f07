"""What a pivot is called: a joint of the body, or a support such as a trestle, an axle, the foot of a ladder."""

from __future__ import annotations

import re

from ..document.english import the, verb
from ..problem.model import Problem

_JOINTS = frozenset(
    (
        "ankle",
        "atlas",
        "disc",
        "elbow",
        "finger",
        "hip",
        "jaw",
        "joint",
        "knee",
        "lumbar",
        "neck",
        "shoulder",
        "spine",
        "thumb",
        "toe",
        "vertebra",
        "wrist",
    )
)
_VERTEBRAE = re.compile(r"[CTLS]\d{1,2}(?:[/–-][CTLS]?\d{1,2})?")


def is_joint(pivot: str) -> bool:
    """Whether a pivot is a joint of the body by its name: trestles, axles and feet of ladders are none."""
    words = [word.strip(",.;") for word in pivot.split()]
    return any(
        word.casefold() in _JOINTS or word.casefold().removesuffix("s") in _JOINTS or _VERTEBRAE.fullmatch(word)
        for word in words
    )


def has_joint(problem: Problem) -> bool:
    """Whether bones meet at the pivot: where two of its name, a bone and muscles say so, and no support is named."""
    muscles = any(pull.kind == "muscle" for pull in problem.pulls)
    signs = (is_joint(problem.pivot.name), bool(problem.pivot.bone), muscles)
    return not problem.pivot.support and sum(signs) >= 2


def pivot_force(problem: Problem) -> str:
    """What the force at the pivot is called: "joint force", "support force"."""
    return "joint force" if has_joint(problem) else "support force"


def pusher(problem: Problem) -> str:
    """What pushes at the pivot: "the humerus", "the trestle", "the support at A"; of a joint without a named bone the
    joint itself.
    """
    if named := problem.pivot.bone or problem.pivot.support:
        return the(named)
    if not has_joint(problem):
        return f"the support at {the(problem.pivot.name)}"
    if problem.course.reaction_on == "the other bone":
        return f"the other bone at {the(problem.pivot.name)}"
    return the(problem.pivot.name)


def pushes(problem: Problem) -> str:
    """The verb that goes with what pushes at the pivot: the humerus pushes, the vertebrae push."""
    named = problem.pivot.bone or problem.pivot.support
    name = named or (problem.pivot.name if has_joint(problem) else "")
    if problem.course.reaction_on == "the other bone" and not named:
        name = ""
    return verb(name or "support", "push")
