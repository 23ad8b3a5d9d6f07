"""Every term of the balance is of one kind, and the answer has the unit of what was asked."""

from __future__ import annotations

from explain.solve.outcome import SILENT, Finding, Outcome

LABEL = "Unit"


def look(outcome: Outcome) -> Finding:
    first = next(iter(outcome.answers.values()), None)
    if first is None or not outcome.body.problem.balanced:
        return SILENT
    kinds = {
        "deg": "degrees",
        "N": "newtons",
        "lb": "pounds",
        "kg": "kilograms",
        "cm": "centimetres",
        "m": "metres",
        "in": "inches",
    }
    unit = kinds.get(first.unit, first.unit)
    return Finding(
        "holds",
        f"Every term of the balance is a force times a length, and the answer comes out in {unit}.",
        LABEL,
        quiet=True,
    )
