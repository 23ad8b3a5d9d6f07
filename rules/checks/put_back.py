"""The answer put back into the balance of moments about the pivot leaves nothing over."""
from __future__ import annotations

from explain.outcome import SILENT, Finding, Outcome

LABEL = "Put back"
ALLOWED = 0.005                                   # of the largest term: common practice, no source


def look(outcome: Outcome) -> Finding:
    if not outcome.body.problem.balanced or not outcome.moments:
        return SILENT
    one_way = sum(each for each in outcome.moments.values() if each > 0)
    other = -sum(each for each in outcome.moments.values() if each < 0)
    largest = max(abs(each) for each in outcome.moments.values())
    reach = max(outcome.way(force) * abs(outcome.size(force)) * force.count if force.arm is None else abs(outcome.moments[force.name])
                for force in outcome.body.forces) if outcome.body.forces else largest
    if largest <= max(1e-9, outcome.blur) * reach:
        return SILENT
    left = one_way - other
    said = f"About the {outcome.pivot} {outcome.moment(one_way)} turn counter-clockwise and {outcome.moment(other)} clockwise"
    if abs(left) <= max(ALLOWED * largest, outcome.blur * reach):
        return Finding("holds", f"{said}: they balance.", LABEL, quiet=outcome.joint_asked and outcome.directed)
    return Finding("fails", f"{said}: {outcome.moment(left)} are left over.", LABEL)
