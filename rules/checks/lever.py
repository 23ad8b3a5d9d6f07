"""Which class of lever the body is about the chosen pivot, and what is gained or paid."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from explain.mechanics.body import Force
from explain.document.english import sentence, the, verb
from explain.solve.outcome import SILENT, Finding, Outcome

LABEL = "Lever"
GAIN = {True: "Force is gained, reach is the price.", False: "Reach and speed are gained, force is the price."}


def look(outcome: Outcome) -> Finding:
    effort = _effort(outcome)
    if (
        effort is None
        or not outcome.body.problem.balanced
        or outcome.size(effort) <= 0
        or not outcome.directed
        or not outcome.possible
    ):
        return SILENT
    loads = [
        force
        for force in outcome.body.forces
        if force is not effort and outcome.moments[force.name] * outcome.moments[effort.name] < 0
    ]
    if not loads:
        return SILENT
    load = max(loads, key=lambda each: abs(outcome.moments[each.name]))
    arm, load_arm = outcome.arm(effort), outcome.arm(load)
    if min(arm, load_arm) <= 0 or any(outcome.size(each) < 0 for each in outcome.weights):
        return SILENT  # another check speaks of what cannot be
    (ex, ey), (lx, ly) = _foot(outcome, effort), _foot(outcome, load)
    gain = outcome.compared((arm / load_arm, 1.0), 1.0, _unlike, min(2, outcome.figures))
    arms = outcome.compared((arm, load_arm), outcome.one_length, _unlike)
    if ex * lx + ey * ly < 0:
        kind = (
            f"{sentence(the(outcome.pivot)).rstrip('.')} {verb(outcome.pivot, 'lie')} between effort and load: "
            "first class"
        )
    elif gain.true and arms.true:
        kind = (
            "Effort and load on one side, the "
            f"{'effort nearer: third' if arm < load_arm else 'load nearer: second'} class"
        )
    else:
        return SILENT
    price = GAIN[arm > load_arm] if gain.true else "Neither force nor reach is gained."
    own, other = (f"{each} {outcome.body.length_unit}" for each in arms.texts)
    return Finding(
        "holds",
        f"{kind} about {the(outcome.pivot)}; mechanical advantage {gain.texts[0]} ({own} against {other} for "
        f"{the(load.name)}). {price}",
        LABEL,
        kind="lesson",
    )


def _unlike(two: Sequence[Decimal]) -> bool:
    return two[0] != two[1]


def _effort(outcome: Outcome) -> Force | None:
    """The one muscle; where there is none, the body is no lever of biomechanics."""
    found = [force for force in outcome.muscles if force.size.name in outcome.values]
    return found[0] if len(found) == 1 else None


def _foot(outcome: Outcome, force: Force) -> tuple[float, float]:
    """Where the perpendicular from the pivot meets the line of a force."""
    right, up = outcome.components[force.name]
    size = right * right + up * up or 1.0
    turning = outcome.moments[force.name] / size
    return turning * up, -turning * right
