"""The joint force lies between the difference and the sum of the pull and the other forces, whatever the angles."""
from __future__ import annotations

from math import hypot

from explain.outcome import SILENT, Finding, Outcome

LABEL = "The triangle"


def look(outcome: Outcome) -> Finding:
    if not outcome.joint_asked or outcome.joint is None or not outcome.muscles or not outcome.directed:
        return SILENT
    names = {each.name for each in outcome.muscles}
    pull = hypot(*(sum(outcome.components[name][axis] for name in names) for axis in (0, 1)))
    rest = hypot(*(sum(each[axis] for name, each in outcome.components.items() if name not in names) for axis in (0, 1)))
    joint = hypot(*outcome.joint)
    low, high = abs(pull - rest), pull + rest
    if rest < 1e-9 * pull or joint - low < 1e-6 * high or high - joint < 1e-6 * high:
        return SILENT                                 # parallel forces: another check says more
    said = f"Pull, other forces and joint force close a triangle: {outcome.force(pull)} − {outcome.force(rest)} ≤ {outcome.force(joint)} ≤ " \
           f"{outcome.force(pull)} + {outcome.force(rest)}." if pull >= rest else \
           f"Pull, other forces and joint force close a triangle: {outcome.force(rest)} − {outcome.force(pull)} ≤ {outcome.force(joint)} ≤ " \
           f"{outcome.force(rest)} + {outcome.force(pull)}."
    return Finding("holds" if low <= joint <= high else "fails", said, LABEL)
