"""With the joint force put in, the moments about any other point add to zero too: this catches a slip in the force balance as well."""
from __future__ import annotations

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
    terms = [outcome.moments[name] - x * outcome.components[name][1] + y * outcome.components[name][0] for name in outcome.components]
    terms += [outcome.moments[each.name] for each in outcome.body.twists if each.name not in outcome.components]
    terms.append(-x * up + y * right)
    largest = max(abs(each) for each in terms)
    if largest < 1e-12:
        return SILENT
    one_way, back = sum(each for each in terms if each > 0), -sum(each for each in terms if each < 0)
    said = f"About the point where {the(other.name)} {verb(other.name, 'act')}, with the joint force put in: {outcome.moment(one_way)} one way, {outcome.moment(back)} the other"
    return Finding("holds", said + ".", LABEL) if abs(one_way - back) <= ALLOWED * largest else Finding("fails", said + ", which do not balance.", LABEL)
