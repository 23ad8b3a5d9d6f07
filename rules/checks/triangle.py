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
    said = f"Pull, other forces and joint force close a triangle: {outcome.force(low)} ≤ {outcome.force(joint)} ≤ {outcome.force(high)}."
    return Finding("holds" if low - 1e-9 * high <= joint <= high * (1 + 1e-9) else "fails", said, LABEL)
