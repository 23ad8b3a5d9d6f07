"""One muscle against one side of weights: the shorter arm needs the larger force. Silent where anything else helps
or the arms are not told apart.
"""

from __future__ import annotations

from explain.mechanics.body import Force
from explain.document.english import the, weight_of
from explain.solve.outcome import SILENT, Finding, Outcome
from explain.solve.comparable_numbers import growing

LABEL = "Size"


def look(outcome: Outcome) -> Finding:
    muscles, loads = outcome.muscles, outcome.weights
    others = [force for force in outcome.body.forces if force.kind == "force"]
    if (
        len(muscles) != 1
        or not loads
        or others
        or outcome.body.twists
        or not outcome.body.problem.balanced
        or not outcome.possible
    ):
        return SILENT
    muscle = muscles[0]
    if muscle.size.name in {each.letter.name for each in outcome.body.givens}:
        return SILENT
    sign = outcome.moments[muscle.name]
    if (
        outcome.size(muscle) <= 0
        or outcome.arm(muscle) <= 0
        or any(outcome.moments[force.name] * sign >= 0 for force in loads)
    ):
        return SILENT
    if outcome.arm(muscle) < min(map(outcome.arm, loads)):
        return _shorter(outcome, muscle, loads)
    if outcome.arm(muscle) > max(map(outcome.arm, loads)):
        return _longer(outcome, muscle, loads)
    return SILENT


def _shorter(outcome: Outcome, muscle: Force, loads: tuple[Force, ...]) -> Finding:
    """The muscle has the shorter arm: so many times the weight."""
    main = max(loads, key=lambda each: abs(outcome.moments[each.name]))
    arm, load_arm = outcome.arm(muscle), outcome.arm(main)
    ratio, found = load_arm / arm, outcome.pull(muscle) / outcome.size(main)
    arms = outcome.compared(
        (arm, load_arm),
        outcome.one_length,
        lambda two: growing(two) and outcome.times(float(two[1] / two[0])) == outcome.times(ratio),
    )
    short, long = (f"{each} {outcome.body.length_unit}" for each in arms.texts)
    said = (
        f"The lever arm of {the(muscle.name)} is {short}, that of {the(main.name)} {long}: "
        f"{outcome.times(ratio)} as long. "
    )
    if len(loads) == 1:
        stands = abs(found - ratio) <= outcome.moved * ratio
        rest = "and it is" if stands else f"but it is {outcome.times(found)}"
        return Finding(
            "holds" if stands else "fails",
            f"{said}So the pull must be as many times {weight_of(main.name)}, {rest}.",
            LABEL,
        )
    counts = outcome.compared((ratio, found), 1.0, growing, 2)
    least, all_told = counts.texts
    said = said.replace(outcome.times(ratio), f"{least} times")
    if not counts.true:
        stands = abs(found - ratio) <= outcome.moved * ratio
        return (
            SILENT
            if stands
            else Finding("fails", f"{said}But the pull is only {outcome.times(found)} its weight.", LABEL)
        )
    return Finding(
        "holds",
        f"{said}So the pull must be more than {least} times {weight_of(main.name)}; with the rest it is {all_told} "
        "times.",
        LABEL,
    )


def _longer(outcome: Outcome, muscle: Force, loads: tuple[Force, ...]) -> Finding:
    """The muscle has the longer arm: less than the weight will do."""
    pull, weight = outcome.pull(muscle), sum(outcome.size(each) for each in loads)
    arms = outcome.compared((max(map(outcome.arm, loads)), outcome.arm(muscle)), outcome.one_length, growing)
    sizes = outcome.compared((pull, weight), outcome.one_force, growing)
    if not arms.true or not sizes.true and pull < weight * (1 + outcome.moved):
        return SILENT
    less, more = sizes.texts
    short, long = arms.texts
    unit = outcome.body.length_unit
    said = f"The pull of {the(muscle.name)} has the longer arm ({long} {unit} against {short} {unit}), so "
    if not sizes.true:
        return Finding(
            "fails",
            f"{said}it should be less than the weight it holds, but it is {less} {outcome.force_unit} against "
            f"{more} {outcome.force_unit}.",
            LABEL,
        )
    return Finding(
        "holds",
        f"{said}less than the weight it holds will do: {less} {outcome.force_unit} against {more} "
        f"{outcome.force_unit}.",
        LABEL,
    )
