"""A distance that was asked for lies between the joint and the end of the limb."""
from __future__ import annotations

from explain.english import the
from explain.outcome import SILENT, Finding, Outcome

LABEL = "Where it lies"


def look(outcome: Outcome) -> Finding:
    asked = [name for name in outcome.answers if name.endswith(".at")]
    if not asked:
        return SILENT
    name = asked[0]
    value = outcome.values[name]
    force = outcome.body.force(name.removesuffix(".at"))
    length = next((each.length for each in outcome.body.problem.segments if each.name == force.segment), None)
    near = f"near end of {the(force.segment)}" if outcome.body.starts.get(force.segment) else outcome.pivot
    if value < 0:
        return Finding("warns", f"The distance comes out negative: {the(force.name)} would have to act on the other side of the "
                                f"{near}.", LABEL)
    if length is not None and value > outcome.values.get(f"{force.segment}.length", float("inf")):
        return Finding("warns", f"{outcome.length(value)} is beyond the end of the {force.segment}.", LABEL)
    return Finding("holds", f"{outcome.length(value)} is a positive distance, on the stated side of the {near}" +
                   (f" and within the {force.segment}." if length is not None else "."), LABEL)
