"""What a pivot is called: a joint of the body, or a support such as a trestle, an axle, the foot of a ladder."""

from __future__ import annotations

import re
from collections.abc import Mapping

from ..document.english import sentence, the, verb
from .direction_words import direction_words
from ..problem.model import Pivot, Problem, Unknown

_WAYS: Mapping[int, str] = {0: "to the right", 90: "upwards", 180: "to the left", 270: "downwards"}

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
    return any(_names_joint(word.strip(",.;")) for word in pivot.split())


def _names_joint(word: str) -> bool:
    return bool({word.casefold(), word.casefold().removesuffix("s")} & _JOINTS or _VERTEBRAE.fullmatch(word))


def has_joint(problem: Problem) -> bool:
    """Whether bones meet at the pivot: where two of its name, a bone and muscles say so, or a name of one word, and
    no support is named.
    """
    muscles, name = any(pull.kind == "muscle" for pull in problem.pulls), problem.pivot.name
    signs = (is_joint(name), _names_joint(name), bool(problem.pivot.bone), muscles)
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
    """Which way a surface leads: "vertical", "30° above the horizontal, to the right"."""
    return "vertical" if pivot.surface % 180 == 90 else direction_words(float(pivot.surface))
