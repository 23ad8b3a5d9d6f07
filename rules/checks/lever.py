"""Which class of lever the body is about the chosen pivot, and what is gained or paid."""
from __future__ import annotations

from explain.body import Force
from explain.english import the
from explain.outcome import SILENT, Finding, Outcome, number

LABEL = "Lever"
GAIN = {True: "Force is gained, reach is the price.", False: "Reach and speed are gained, force is the price."}


def look(outcome: Outcome) -> Finding:
    effort = _effort(outcome)
    if effort is None or not outcome.body.problem.balanced or outcome.size(effort) <= 0 or not outcome.directed:
        return SILENT
    loads = [force for force in outcome.body.forces if force is not effort and outcome.moments[force.name] * outcome.moments[effort.name] < 0]
    if not loads:
        return SILENT
    load = max(loads, key=lambda each: abs(outcome.moments[each.name]))
    arm, load_arm = outcome.arm(effort), outcome.arm(load)
    if min(arm, load_arm) <= 0 or any(outcome.size(each) < 0 for each in outcome.weights):
        return SILENT                                 # what cannot be is told by another check
    (ex, ey), (lx, ly) = _foot(outcome, effort), _foot(outcome, load)
    if ex * lx + ey * ly < 0:
        kind = f"The {outcome.pivot} lies between effort and load: first class"
    elif arm < load_arm * (1 - 1e-9):
        kind = "Effort and load on one side, the effort nearer: third class"
    elif arm > load_arm * (1 + 1e-9):
        kind = "Effort and load on one side, the load nearer: second class"
    else:
        return SILENT
    gain = arm / load_arm
    price = GAIN[gain > 1]
    return Finding("holds", f"{kind} about the {outcome.pivot}; mechanical advantage {number(gain, 2)} ({outcome.length(arm)} "
                            f"against {outcome.length(load_arm)} for "
                            f"{the(load.name)}). {price}", LABEL)


def _effort(outcome: Outcome) -> Force | None:
    """The one muscle; where there is none, the one force that was sought."""
    sought = {each.letter.name for each in outcome.body.sought}
    found = [force for force in outcome.muscles if force.size.name in outcome.values] or \
            [force for force in outcome.body.forces if force.kind == "force" and force.size.name in sought]
    return found[0] if len(found) == 1 else None


def _foot(outcome: Outcome, force: Force) -> tuple[float, float]:
    """Where the perpendicular from the pivot meets the line of a force."""
    right, up = outcome.components[force.name]
    size = right * right + up * up or 1.0
    turning = outcome.moments[force.name] / size
    return turning * up, -turning * right
