"""The answer put back into the balance of moments about the pivot leaves nothing over."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from decimal import Decimal

from explain.document.english import the
from explain.solve.outcome import SILENT, Finding, Outcome
from explain.solve.comparable_numbers import equal

LABEL = "Put back"


def look(outcome: Outcome) -> Finding:
    if not outcome.body.problem.balanced or not outcome.moments:
        return SILENT
    one_way = sum(each for each in outcome.moments.values() if each > 0)
    other = -sum(each for each in outcome.moments.values() if each < 0)
    lost = outcome.moved * sum(
        abs(outcome.moments[force.name]) if force.arm is not None else outcome.way(force) * outcome.pull(force)
        for force in outcome.body.forces
    )
    if max(one_way, other) <= max(1e-12, lost):
        return SILENT
    if abs(one_way - other) > lost:
        return Finding(
            "fails",
            f"{_said(outcome, one_way, other, _unlike)}: {outcome.moment(one_way - other)} are left over.",
            LABEL,
        )
    within = (
        "" if outcome.beside((one_way, other), outcome.one_moment, equal).true else ", to within what rounding leaves"
    )
    return Finding(
        "holds",
        f"{_said(outcome, one_way, other, equal)}: they balance{within}.",
        LABEL,
        quiet=outcome.joint_asked and outcome.directed,
    )


def _said(outcome: Outcome, one_way: float, other: float, said: Callable[[Sequence[Decimal]], bool]) -> str:
    written = [
        f"{each} {outcome.moment_unit}" for each in outcome.beside((one_way, other), outcome.one_moment, said).texts
    ]
    return f"About {the(outcome.pivot)} {written[0]} turn counter-clockwise and {written[1]} clockwise"


def _unlike(numbers: Sequence[Decimal]) -> bool:
    return not equal(numbers)
