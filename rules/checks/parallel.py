"""Where all forces are parallel, the joint force is their sum or their difference, no more and no less."""

from __future__ import annotations

from math import hypot

from explain.solve.outcome import SILENT, Finding, Outcome, Result
from explain.solve.comparable_numbers import nothing_over
from explain.wording.pivot_words import pivot_force

LABEL = "Parallel forces"


def look(outcome: Outcome) -> Finding:
    if not outcome.joint_asked or outcome.joint is None or not outcome.directed or not outcome.muscles:
        return SILENT
    along = _along(outcome)
    if len(along) < 2:
        return SILENT
    one, other = sorted((sum(v for v in along if v > 0), -sum(v for v in along if v < 0)), reverse=True)
    joint, holder = hypot(*outcome.joint), pivot_force(outcome.body.problem).removesuffix(" force")
    result: Result = "holds" if abs(joint - (one - other)) <= outcome.moved * (joint + outcome.all_forces) else "fails"
    if other <= 1e-9 * one:
        stands = (
            f"the {holder} carries their sum,"
            if result == "holds"
            else f"{outcome.force(one)} should be the {holder} force, and it came out as"
        )
        return Finding(result, f"All the other forces act the same way, so {stands} {outcome.force(joint)}.", LABEL)
    written = outcome.beside((one, -other, -joint), outcome.one_force, nothing_over)
    larger, smaller, rest = (f"{each.lstrip('−')} {outcome.force_unit}" for each in written.texts)
    makes = "makes up the difference," if result == "holds" else "should make up the difference, but its force is"
    within = "" if written.true or result == "fails" else ", to within what rounding leaves"
    return Finding(
        result,
        f"All forces are parallel: {larger} one way and {smaller} the other, and the {holder} {makes} {rest}{within}.",
        LABEL,
    )


def _along(outcome: Outcome) -> list[float]:
    """The forces in N along their one direction; none where they are not parallel."""
    vectors = [each for each in outcome.components.values() if hypot(*each) > 1e-9]
    if not vectors:
        return []
    x, y = max(vectors, key=lambda each: hypot(*each))
    size = hypot(x, y)
    if any(abs(x * b - y * a) > 1e-9 * size * hypot(a, b) for a, b in vectors):
        return []
    return [(a * x + b * y) / size for a, b in vectors]
