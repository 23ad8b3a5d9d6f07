"""Where all forces are parallel, the joint force is their sum or their difference, no more and no less."""
from __future__ import annotations

from math import hypot

from explain.outcome import SILENT, Finding, Outcome

LABEL = "Parallel forces"


def look(outcome: Outcome) -> Finding:
    if not outcome.joint_asked or outcome.joint is None or not outcome.directed or len(outcome.components) < 2:
        return SILENT
    vectors = [each for each in outcome.components.values() if hypot(*each) > 1e-9]
    if len(vectors) < 2 or not outcome.muscles:
        return SILENT
    x, y = vectors[0]
    if any(abs(x * b - y * a) > 1e-9 * hypot(x, y) * hypot(a, b) for a, b in vectors):
        return SILENT
    muscle = outcome.muscles[0]
    ux, uy = outcome.components[muscle.name]
    length = hypot(ux, uy)
    if length < 1e-9:
        return SILENT
    along = [(a * ux + b * uy) / length for a, b in vectors]
    one, other = sum(v for v in along if v > 0), -sum(v for v in along if v < 0)
    joint = hypot(*outcome.joint)
    ok = abs(joint - abs(one - other)) < 0.005 * max(one, other)
    if other < 1e-9:
        return Finding("holds" if ok else "fails", f"All the other forces act the same way, so the joint carries their sum, "
                                                   f"{outcome.force(one)}.", LABEL)
    return Finding("holds" if ok else "fails", f"All forces are parallel: {outcome.force(one)} one way and "
                                               f"{outcome.force(other)} the other, and the joint makes up the "
                                               f"difference, {outcome.force(abs(one - other))}.", LABEL)
