"""With the joint force put in, the moments about any other point add to zero too: this catches a slip in the force balance as well."""
from __future__ import annotations

from math import hypot

from explain.english import the, verb
from explain.outcome import SILENT, Finding, Outcome

LABEL = "A second pivot"
ALLOWED = 0.005


def look(outcome: Outcome) -> Finding:
    if not outcome.joint_asked or outcome.joint is None or not outcome.directed:
        return SILENT
    placed = [force for force in outcome.body.forces if force.steps and force.arm is None]
    if not placed:
        return SILENT
    other = max(placed, key=outcome.reach)
    x, y = outcome.place(other)
    right, up = outcome.joint
    terms = {name: outcome.moments[name] - x * outcome.components[name][1] + y * outcome.components[name][0] for name in outcome.components}
    terms |= {each.name: outcome.moments[each.name] for each in outcome.body.twists}
    terms["joint force"] = -x * up + y * right
    largest = max(abs(each) for each in terms.values())
    lost = outcome.blur * max(outcome.way(other) * hypot(right, up), *(outcome.way(force) * abs(outcome.size(force)) * force.count for force in placed))
    if largest < max(1e-12, lost):
        return SILENT
    rest = sum(terms.values())
    written = [f"{name} {outcome.moment_number(each) if each < 0 else '+' + outcome.moment_number(each)}"
               for name, each in terms.items() if abs(each) > 1e-9 * largest]
    point = f"the point where {the(other.name)} {verb(other.name, 'act')}"
    said = f"About {point}, counter-clockwise positive: {', '.join(written)} {outcome.moment_unit}"
    if abs(rest) <= max(ALLOWED * largest, lost):
        return Finding("holds", said + ", together nothing.", LABEL)
    return Finding("fails", f"{said}, together {outcome.moment(rest)}.", LABEL)
