"""Where every force is upright the slope of a straight limb drops out: the pull is the same at any slope."""

from __future__ import annotations

from explain.document.english import the
from explain.solve.outcome import SILENT, Finding, Outcome

LABEL = "The slope"


def look(outcome: Outcome) -> Finding:
    bearings = list(outcome.body.bearings.items())
    if len(bearings) != 1 or not outcome.body.problem.balanced or outcome.body.twists:
        return SILENT
    name, bone = bearings[0]
    if bone.unknown or bone.degrees % 90 == 0 or len(outcome.body.forces) < 2:
        return SILENT
    for force in outcome.body.forces:
        upright = force.bearing is not None and not force.bearing.unknown and force.bearing.degrees in (90, 270)
        on_bone = len(force.steps) == 1 and (force.steps[0].bearing.degrees - bone.degrees) % 180 == 0
        if not upright or not on_bone or force.arm is not None:
            return SILENT
    return Finding(
        "holds",
        f"All forces are vertical, so the slope of {the(name)} stands in every term and drops out: at any "
        "other slope, short of vertical, the answer is the same.",
        LABEL,
        kind="lesson",
    )
