"""The joint force lies between the difference and the sum of the pull and the other forces, whatever the angles."""
from __future__ import annotations

from collections.abc import Iterable
from math import hypot

from explain.outcome import SILENT, Finding, Outcome

LABEL = "The triangle"
ALLOWED = 0.005                                   # of the longest side there can be: common practice, no source


def look(outcome: Outcome) -> Finding:
    if not outcome.joint_asked or outcome.joint is None or not outcome.muscles or not outcome.directed:
        return SILENT
    names = {each.name for each in outcome.muscles}
    pull, rest = _sum(outcome, names), _sum(outcome, outcome.components.keys() - names)
    sides = sorted((hypot(*pull), hypot(*rest)))
    joint, high = hypot(*outcome.joint), sum(sides)
    if not -ALLOWED * high <= joint - (sides[1] - sides[0]) <= (2 * sides[0] + ALLOWED * high):
        return Finding("fails", f"A joint force of {outcome.force(joint)} closes no triangle with a pull of {outcome.force(hypot(*pull))} and "
                                f"other forces of {outcome.force(hypot(*rest))} together.", LABEL)
    if abs(pull[0] * rest[1] - pull[1] * rest[0]) <= 1e-6 * high * high:
        return SILENT                                 # parallel forces: another check says more
    shorter, longer = map(outcome.force, sides)
    return Finding("holds", f"Pull, other forces and joint force close a triangle: {longer} − {shorter} ≤ {outcome.force(joint)} "
                            f"≤ {longer} + {shorter}.",
                   LABEL)


def _sum(outcome: Outcome, names: Iterable[str]) -> tuple[float, float]:
    """The parts, in N to the right and up, of several forces together."""
    parts = [outcome.components[name] for name in names]
    return sum(each[0] for each in parts), sum(each[1] for each in parts)
