"""Where the muscle runs nearly along the bone, the joint force presses the bones together: joints push, they do not
pull.
"""

from __future__ import annotations

from math import cos, radians, sin

from explain.document.english import it, its, sentence, the, verb
from explain.solve.outcome import SILENT, Finding, Outcome

LABEL = "Pressing"
NEARLY_ALONG = 0.9  # cosine of about 25 degrees: common practice, no source


def look(outcome: Outcome) -> Finding:
    if (
        not outcome.joint_asked
        or outcome.joint is None
        or not outcome.directed
        or not outcome.body.bearings
        or len(outcome.muscles) != 1
        or not outcome.possible
    ):
        return SILENT
    muscle = outcome.muscles[0]
    first = next(iter(outcome.body.bearings.values()))
    turn = radians(float(first.degrees) + sum(k * outcome.values[letter.name] for letter, k in first.unknown))
    bone = cos(turn), sin(turn)
    pull = outcome.components[muscle.name]
    along = (pull[0] * bone[0] + pull[1] * bone[1]) / (abs(outcome.size(muscle)) * muscle.count or 1.0)
    if along > -NEARLY_ALONG or muscle.segment != next(iter(outcome.body.bearings)):
        return SILENT
    push = outcome.joint[0] * bone[0] + outcome.joint[1] * bone[1]
    if push > 0:
        return Finding(
            "holds",
            sentence(
                f"{the(muscle.name)} {verb(muscle.name, 'pull')} {the(muscle.segment)} nearly along "
                f"{its(muscle.segment)} length into the joint, and the joint pushes back along {it(muscle.segment)} "
                f"with {outcome.force(push)}"
            ),
            LABEL,
        )
    return Finding(
        "warns",
        f"Along {the(muscle.segment)} the joint force comes out as a pull of {outcome.force(-push)}. Joint "
        "surfaces push; only ligaments pull.",
        LABEL,
        of=(muscle.name,),
    )
