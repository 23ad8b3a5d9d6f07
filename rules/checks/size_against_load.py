"""One muscle against one side of weights: the shorter arm needs the larger force. Silent where anything else helps or the arms are not told apart."""
from __future__ import annotations

from explain.english import the
from explain.outcome import SILENT, Finding, Outcome, number, times

LABEL = "Size"


def look(outcome: Outcome) -> Finding:
    muscles, loads = outcome.muscles, outcome.weights
    others = [force for force in outcome.body.forces if force.kind == "force"]
    if len(muscles) != 1 or not loads or others or outcome.body.twists or not outcome.body.problem.balanced:
        return SILENT
    muscle = muscles[0]
    if muscle.size.name in {each.letter.name for each in outcome.body.givens}:
        return SILENT
    pull, sign = outcome.size(muscle) * muscle.count, outcome.moments[muscle.name]
    against = [force for force in loads if outcome.moments[force.name] * sign < 0]
    if pull <= 0 or len(against) != len(loads):
        return SILENT
    arm = outcome.arm(muscle)
    nearest, farthest = min(outcome.arm(each) for each in loads), max(outcome.arm(each) for each in loads)
    weight = sum(outcome.size(each) for each in loads)
    main = max(loads, key=lambda each: abs(outcome.moments[each.name]))
    ratio = outcome.arm(main) / arm
    if arm < nearest:
        ok = pull > weight
        said = (f"The lever arm of {the(muscle.name)} is {outcome.length(arm)}, that of {the(main.name)} "
                f"{outcome.length(outcome.arm(main))}: {times(ratio)} as long. "
                f"So the pull must be more than {number(ratio, 2)} times the weight of {the(main.name)}" if len(loads) > 1 else
                f"The lever arm of {the(muscle.name)} is {outcome.length(arm)}, that of {the(main.name)} "
                f"{outcome.length(outcome.arm(main))}: {times(ratio)} as long. "
                f"So the pull must be {number(ratio, 2)} times the weight of {the(main.name)}")
        rest = f"; with the rest it is {number(pull / outcome.size(main), 2)} times." if len(loads) > 1 else ", and it is."
        return Finding("holds" if ok else "warns", said + rest, LABEL)
    if arm > farthest:
        ok = pull < weight
        return Finding("holds" if ok else "warns", f"The pull of {the(muscle.name)} has the longer arm ({outcome.length(arm)} "
                                                   f"against {outcome.length(farthest)}), so it gets away with "
                                                   f"less than the weight it holds: {outcome.force(pull)} against {outcome.force(weight)}.", LABEL)
    return SILENT
