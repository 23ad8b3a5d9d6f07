"""Try the ends: hanging straight down a weight turns nothing, held level it turns most."""
from __future__ import annotations

from math import cos, radians, sin

from explain.english import the
from explain.outcome import SILENT, Finding, Outcome

LABEL = "The ends"


def look(outcome: Outcome) -> Finding:
    if len(outcome.body.bearings) != 1 or not outcome.weights or not outcome.body.problem.balanced:
        return SILENT
    bearing = next(iter(outcome.body.bearings.values()))
    if bearing.degrees % 90 == 0 and not bearing.unknown:
        return SILENT
    name = next(iter(outcome.body.bearings))
    on_it = [force for force in outcome.weights if len(force.steps) == 1 and force.segment == name]
    if len(on_it) != len(outcome.weights):
        return SILENT
    turn = radians(float(bearing.degrees) + sum(k * outcome.values[letter.name] for letter, k in bearing.unknown))
    level = sum(outcome.size(each) * outcome.values[each.steps[0].distance.name] for each in on_it)
    here = abs(sum(outcome.moments[each.name] for each in on_it))
    if level <= 0:
        return SILENT
    ok = abs(here - abs(level * cos(turn))) < 1e-6 * level or len({each.steps[0].bearing.degrees for each in on_it}) > 1
    return Finding("holds" if ok else "fails", f"{'Upright' if sin(turn) > 0 else 'Hanging straight down'} the weights would "
                                               f"turn nothing; with {the(name)} level they would turn with "
                                               f"{outcome.moment(level)}. "
                                               f"At this slope it is {outcome.moment(here)}, in between.", LABEL) if sin(turn) else SILENT
