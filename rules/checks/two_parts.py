"""A force whose size and angle were both sought is the long side of a right triangle with what the other forces
leave over.
"""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from math import hypot

from explain.document.english import the
from explain.solve.outcome import SILENT, Finding, Outcome

LABEL = "The two parts"


def look(outcome: Outcome) -> tuple[Finding, ...]:
    sought = {stage.unknown for stage in outcome.working.settled.stages if stage.polar}
    return tuple(_told(outcome, force.name) for force in outcome.body.forces if force.size.name in sought) or (SILENT,)


def _told(outcome: Outcome, name: str) -> Finding:
    """The size by Pythagoras from the other forces, without the angle."""
    others = [parts for force, parts in outcome.components.items() if force != name]
    level, upright = (abs(sum(each[axis] for each in others)) for axis in (0, 1))
    size, lost = outcome.pull(outcome.body.force(name)), outcome.moved * outcome.all_forces
    if abs(hypot(level, upright) - size) > lost:
        return Finding(
            "fails",
            f"The other forces leave {outcome.force(level)} horizontal and {outcome.force(upright)} vertical, "
            f"which {outcome.force(size)} of {the(name)} do not match.",
            LABEL,
        )
    written = outcome.beside((level, upright, size), outcome.one_force, _closes)
    if min(level, upright) <= lost or not written.true:
        return SILENT  # a part of nothing leaves no triangle
    a, b, c = (f"{each} {outcome.force_unit}" for each in written.texts)
    return Finding(
        "holds",
        f"The other forces leave {a} horizontal and {b} vertical; the long side of that right triangle is {c}, "
        "the size that the angle gave.",
        LABEL,
    )


def _closes(sides: Sequence[Decimal]) -> bool:
    """Whether the root of the squares as printed is the long side as printed."""
    level, upright, size = sides
    return min(level, upright) > 0 and (level**2 + upright**2).sqrt().quantize(size) == size
