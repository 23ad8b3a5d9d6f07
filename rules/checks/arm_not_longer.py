"""A perpendicular distance is the shortest one: never longer than the distance along the bone."""
from __future__ import annotations

from explain.english import the, verb
from explain.outcome import SILENT, Finding, Outcome

LABEL = "Arms"


def look(outcome: Outcome) -> Finding:
    oblique = [force for force in outcome.body.forces if force.arm is None and force.steps and outcome.size(force)
               and outcome.arm(force) < outcome.reach(force) * (1 - 1e-9)]
    stated = [force for force in outcome.body.forces if force.arm is not None and force.steps]
    too_long = [force for force in stated if outcome.arm(force) > outcome.reach(force) * (1 + 1e-9)]
    if too_long:
        each = too_long[0]
        return Finding("warns", f"The moment arm of {the(each.name)} is given as {outcome.length(outcome.arm(each))}, but it "
                                f"grips only {outcome.length(outcome.reach(each))} "
                                f"from the {outcome.pivot}. A perpendicular distance cannot be longer than that; check the data.", LABEL)
    if not oblique:
        return SILENT
    each = oblique[0]
    return Finding("holds", f"Perpendicular distances are the shortest ones: {outcome.length(outcome.arm(each))} for "
                            f"{the(each.name)}, which {verb(each.name, 'act')} {outcome.length(outcome.reach(each))} "
                            f"from the {outcome.pivot}.", LABEL, quiet=True)
