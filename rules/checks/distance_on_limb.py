"""A distance that was asked for lies between the joint and the end of the limb."""

from __future__ import annotations

from explain.equation import key as keys
from explain.document.english import the
from explain.solve.outcome import SILENT, Finding, Outcome
from explain.solve.comparable_numbers import growing

LABEL = "Where it lies"
NOWHERE = 1e-12  # m: what floats leave of nothing


def look(outcome: Outcome) -> tuple[Finding, ...]:
    asked = [name for name, key in outcome.working.asked if key == name and keys.of(key).what == "at"]
    return tuple(_told(outcome, name) for name in asked) or (SILENT,)


def _told(outcome: Outcome, name: str) -> Finding:
    value = outcome.values[name]
    force = outcome.body.force(keys.of(name).owner)
    length = next((each.length for each in outcome.body.problem.segments if each.name == force.segment), None)
    unit = outcome.body.length_unit
    near = f"near end of {the(force.segment)}" if outcome.body.starts.get(force.segment) else outcome.pivot
    if abs(value) < NOWHERE:
        return Finding(
            "warns",
            f"The distance comes out as nothing: {the(force.name)} would have to act at the {near} itself.",
            LABEL,
            of=(force.name,),
        )
    if value < 0:
        return Finding(
            "warns",
            f"The distance comes out negative: {the(force.name)} would have to act on the other side of the {near}.",
            LABEL,
            of=(force.name,),
        )
    if length is not None and value > outcome.values[f"{force.segment}.length"] * (1 + 1e-9):
        long, far = outcome.compared(
            (outcome.values[f"{force.segment}.length"], value), outcome.one_length, growing
        ).texts
        return Finding(
            "warns",
            f"{far} {unit} is beyond the end of the {force.segment}, which is only {long} {unit} long.",
            LABEL,
            of=(force.name,),
        )
    return Finding(
        "holds",
        f"{outcome.length(value)} is a positive distance, on the stated side of the {near}"
        + (f" and within the {force.segment}." if length is not None else "."),
        LABEL,
        quiet=True,
    )
