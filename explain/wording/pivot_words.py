"""What pushes at the pivot in words: a bone, a support that has a name, or a support at that place."""

from __future__ import annotations

from ..document.english import the
from ..problem.model import Problem

JOINTS = frozenset(
    [
        "elbow",
        "knee",
        "hip",
        "shoulder",
        "ankle",
        "wrist",
        "neck",
        "jaw",
        "disc",
        "joint",
        "spine",
        "atlas",
        "toe",
        "finger",
        "thumb",
        "lumbar",
        "vertebra",
    ]
)


def is_joint(pivot: str) -> bool:
    """Whether a pivot is a joint of the body: trestles, axles and feet of ladders are none."""
    return any(word.strip("s,.;").casefold() in JOINTS for word in pivot.split())


def pusher(problem: Problem) -> str:
    """What pushes at the pivot: "the humerus", "the trestle", "the support at the left end"."""
    named = problem.pivot.bone or problem.pivot.support
    return the(named) if named else f"the support at {the(problem.pivot.name)}"


def is_supported(problem: Problem) -> bool:
    """Whether the words of statics fit: no bone pushes at the pivot, and no muscle pulls at a joint there."""
    muscles = any(pull.kind == "muscle" for pull in problem.pulls)
    at_joint = muscles and is_joint(problem.pivot.name) and not problem.pivot.support
    return not problem.pivot.bone and not at_joint


def pivot_force(problem: Problem) -> str:
    """What the force at the pivot is called."""
    return "support force" if is_supported(problem) else "joint force"
