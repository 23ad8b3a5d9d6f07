"""All forces together, joint force included, push the body nowhere."""

from __future__ import annotations

from math import hypot

from explain.equation import key as keys
from explain.solve.outcome import SILENT, Finding, Outcome

LABEL = "Forces"


def look(outcome: Outcome) -> Finding:
    if not outcome.body.problem.balanced or not outcome.directed:
        return SILENT
    if outcome.body.problem.pivot.reaction and not outcome.joint_asked:
        return SILENT
    right, up = outcome.joint or (0.0, 0.0)
    level = right + sum(each[0] for each in outcome.components.values())
    upright = up + sum(each[1] for each in outcome.components.values())
    if hypot(level, upright) <= outcome.moved * (hypot(right, up) + outcome.all_forces) + _rounded_away(outcome):
        ups = sum(max(each[1], 0.0) for each in outcome.components.values()) + max(up, 0.0)
        return Finding(
            "holds",
            f"Upward and downward forces are both {outcome.force(ups)}, and the horizontal forces cancel.",
            LABEL,
            quiet=True,
        )
    return Finding(
        "fails", f"{outcome.force(level)} horizontal and {outcome.force(upright)} vertical are left over.", LABEL
    )


def _rounded_away(outcome: Outcome) -> float:
    """N that roundings may have taken from all forces together, where a class goes on with what it has written."""
    slack = outcome.working.slack if outcome.working.checker.carry_shown else {}
    joint = sum(each for key, each in slack.items() if keys.of(key).is_joint)
    return joint + sum(slack.get(force.size.name, 0.0) * force.count for force in outcome.body.forces)
