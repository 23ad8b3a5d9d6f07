"""The joint force lies between the difference and the sum of the pull and the other forces, whatever the angles."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from decimal import Decimal
from math import hypot

from explain.solve.outcome import SILENT, Finding, Outcome
from explain.wording.pivot_words import pivot_force

LABEL = "The triangle"


def look(outcome: Outcome) -> Finding:
    if not outcome.joint_asked or outcome.joint is None or not outcome.muscles or not outcome.directed:
        return SILENT
    names, force = {each.name for each in outcome.muscles}, pivot_force(outcome.body.problem)
    pull, rest = _sum(outcome, names), _sum(outcome, outcome.components.keys() - names)
    shorter, longer = sorted((hypot(*pull), hypot(*rest)))
    joint, lost = hypot(*outcome.joint), outcome.moved * (hypot(*outcome.joint) + outcome.all_forces)
    written = outcome.compared((longer, shorter, joint), outcome.one_force, _closes)
    long, short, third = (f"{each} {outcome.force_unit}" for each in written.texts)
    if not longer - shorter - lost <= joint <= longer + shorter + lost:
        return Finding(
            "fails",
            f"A {force} of {third} closes no triangle with {long} and {short}, the pull and the other forces together.",
            LABEL,
        )
    if abs(pull[0] * rest[1] - pull[1] * rest[0]) <= 1e-6 * (longer + shorter) ** 2:
        return SILENT  # parallel forces: another check says more
    if not written.true:
        return SILENT  # so flat that only rounding tells the sides apart
    return Finding(
        "holds",
        f"Pull, other forces and {force} close a triangle: {long} − {short} ≤ {third} ≤ {long} + {short}.",
        LABEL,
        quiet=True,
    )


def _closes(sides: Sequence[Decimal]) -> bool:
    longer, shorter, third = sides
    return shorter > 0 and longer - shorter <= third <= longer + shorter


def _sum(outcome: Outcome, names: Iterable[str]) -> tuple[float, float]:
    """The parts, in N to the right and up, of several forces together."""
    parts = [outcome.components[name] for name in names]
    return sum(each[0] for each in parts), sum(each[1] for each in parts)
