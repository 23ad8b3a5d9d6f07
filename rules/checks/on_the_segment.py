"""Grips and centres of mass lie on their segment."""
from __future__ import annotations

from explain.english import the, verb
from explain.outcome import SILENT, Finding, Outcome

LABEL = "On the bone"


def look(outcome: Outcome) -> Finding:
    beyond = []
    for force in outcome.body.forces:
        length = outcome.values.get(f"{force.segment}.length")
        if length is None or not force.steps or force.steps[-1].distance.name not in (f"{force.name}.at", f"{force.name}.com"):
            continue
        if f"{force.name}.at" in outcome.answers:
            continue
        if outcome.values[force.steps[-1].distance.name] > length * (1 + 1e-9):
            beyond.append(force)
    if not beyond:
        return SILENT
    each = beyond[0]
    at = outcome.values[each.steps[-1].distance.name]
    return Finding("warns", f"{the(each.name).capitalize()} {verb(each.name, 'act')} {outcome.length(at)} along the {each.segment}, which is only {outcome.length(outcome.values[f'{each.segment}.length'])} long. "
                            "The working is right for these numbers; check that they are meant.", LABEL)
