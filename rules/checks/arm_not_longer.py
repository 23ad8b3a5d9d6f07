"""A perpendicular distance is the shortest one: never longer than the distance along the bone."""

from __future__ import annotations

from explain.document.english import the, verb
from explain.solve.outcome import SILENT, Finding, Outcome
from explain.solve.comparable_numbers import Beside, growing

LABEL = "Arms"


def look(outcome: Outcome) -> Finding:
    oblique = [
        force
        for force in outcome.body.forces
        if force.arm is None
        and force.steps
        and outcome.size(force)
        and outcome.arm(force) < outcome.reach(force) * (1 - 1e-9)
    ]
    stated = [force for force in outcome.body.forces if force.arm is not None and force.steps]
    unit = outcome.body.length_unit
    too_long = [force for force in stated if outcome.arm(force) > outcome.reach(force) * (1 + 1e-9)]
    if too_long:
        each = too_long[0]
        reach, arm = _lengths(outcome, outcome.reach(each), outcome.arm(each)).texts
        was = "is given as" if outcome.is_given(each.arm) else "comes out as"
        return Finding(
            "warns",
            f"The moment arm of {the(each.name)} {was} {arm} {unit}, but it grips only {reach} {unit} from "
            f"{the(outcome.pivot)}. "
            "A perpendicular distance cannot be longer than that; check the data.",
            LABEL,
            of=(each.name,),
        )
    if not oblique:
        return SILENT
    each = oblique[0]
    lengths = _lengths(outcome, outcome.arm(each), outcome.reach(each))
    if not lengths.true:
        return SILENT
    arm, reach = lengths.texts
    return Finding(
        "holds",
        f"Perpendicular distances are the shortest ones: {arm} {unit} for {the(each.name)}, which "
        f"{verb(each.name, 'act')} "
        f"{reach} {unit} from {the(outcome.pivot)}.",
        LABEL,
        quiet=True,
        kind="lesson",
    )


def _lengths(outcome: Outcome, shorter: float, longer: float) -> Beside:
    return outcome.compared((shorter, longer), outcome.one_length, growing)
