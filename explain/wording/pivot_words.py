"""What pushes at the pivot in words: a bone, a support that has a name, or a support at that place."""

from __future__ import annotations

from collections.abc import Mapping

from ..document.english import sentence, the, verb
from .direction_words import direction_words
from ..problem.model import Pivot, Problem, Unknown

_WAYS: Mapping[int, str] = {0: "to the right", 90: "upwards", 180: "to the left", 270: "downwards"}

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


def rough(problem: Problem) -> str:
    """The rough surface at the pivot in a sentence: "The quay at the foot is rough, with a coefficient of friction of
    0.40, and the foot is about to slip to the left."; "" where there is none.
    """
    pivot = problem.pivot
    if pivot.friction is None:
        return ""
    where, foot = the(pivot.support or "surface"), the(pivot.name)
    slope = "" if pivot.surface % 180 == 0 else f", {surface_words(pivot)},"
    known = (
        "" if isinstance(pivot.friction, Unknown) else f", with a coefficient of friction of {pivot.friction.number}"
    )
    way = _WAYS[int(pivot.surface + (0 if pivot.slips > 0 else 180)) % 360] if pivot.slips else ""
    about = f"; {foot} {verb(pivot.name, 'be')} about to slip {way}" if way else ""
    return sentence(f"{where} at {foot}{slope} is rough{known}{about}")


def surface_words(pivot: Pivot) -> str:
    """Which way a surface leads: "upright", "30° above the level, to the right"."""
    return "upright" if pivot.surface % 180 == 90 else direction_words(float(pivot.surface))
