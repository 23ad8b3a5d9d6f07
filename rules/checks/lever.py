"""Which class of lever the body is about the chosen pivot, and what is gained or paid."""
from __future__ import annotations

from explain.english import the
from explain.outcome import SILENT, Finding, Outcome, number

LABEL = "Lever"
GAIN = {True: "Force is saved and reach is paid", False: "Reach and speed are gained and paid for in force"}


def look(outcome: Outcome) -> Finding:
    efforts = [force for force in outcome.muscles if force.size.name in outcome.values]
    if len(efforts) != 1 or not outcome.body.problem.balanced or outcome.size(efforts[0]) <= 0 or not outcome.directed:
        return SILENT
    effort = efforts[0]
    loads = [force for force in outcome.body.forces if force is not effort and outcome.moments[force.name] * outcome.moments[effort.name] < 0]
    if not loads or not effort.steps:
        return SILENT
    load = max(loads, key=lambda each: abs(outcome.moments[each.name]))
    if not load.steps:
        return SILENT
    arm, load_arm = outcome.arm(effort), outcome.arm(load)
    (ex, ey), (lx, ly) = outcome.place(effort), outcome.place(load)
    opposite = ex * lx + ey * ly < 0
    if opposite:
        kind = f"The {outcome.pivot} lies between effort and load: first class"
    elif arm < load_arm:
        kind = "Effort and load on one side, the effort nearer: third class"
    elif arm > load_arm:
        kind = "Effort and load on one side, the load nearer: second class"
    else:
        return SILENT
    gain = arm / load_arm
    return Finding("holds", f"{kind} about the {outcome.pivot}; mechanical advantage {number(gain, 2)} ({outcome.length(arm)} against {outcome.length(load_arm)} for {the(load.name)}). "
                            f"{GAIN[gain > 1]}.", LABEL)
