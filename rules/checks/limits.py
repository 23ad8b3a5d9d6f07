"""Try the ends: hanging straight down a weight turns nothing, held level it turns most."""

from __future__ import annotations

from math import cos, radians, sin

from explain.document.english import it, the
from explain.mechanics.body import turned_back
from explain.solve.outcome import SILENT, Finding, Outcome
from explain.solve.comparable_numbers import growing

LABEL = "The ends"


def look(outcome: Outcome) -> Finding:
    if len(outcome.body.bearings) != 1 or not outcome.weights or not outcome.body.problem.balanced:
        return SILENT
    bearing = next(iter(outcome.body.bearings.values()))
    if bearing.degrees % 90 == 0 and not bearing.unknown:
        return SILENT
    name = next(iter(outcome.body.bearings))
    on_it = [force for force in outcome.weights if len(force.steps) == 1 and force.segment == name]
    back = [turned_back(force.steps[0].bearing, bearing) for force in on_it]
    if len(on_it) != len(outcome.weights) or any(each.degrees % 180 or each.unknown for each in back):
        return SILENT  # a place that is given across and up does not turn with the segment
    turn = radians(float(bearing.degrees) + sum(k * outcome.values[letter.name] for letter, k in bearing.unknown))
    level = abs(
        sum(
            outcome.size(each) * outcome.values[each.steps[0].distance.name] * (-1 if turned.degrees else 1)
            for each, turned in zip(on_it, back, strict=True)
        )
    )
    here = abs(sum(outcome.moments[each.name] for each in on_it))
    written = outcome.compared((0.0, here, level), outcome.one_moment, growing)
    if not sin(turn) or not outcome.possible:
        return SILENT
    ok = abs(here - abs(level * cos(turn))) <= outcome.moved * sum(
        outcome.pull(each) * outcome.way(each) for each in on_it
    )
    if ok and not written.true:
        return SILENT  # so near to an end that the numbers do not tell them apart
    between, most = (f"{each} {outcome.moment_unit}" for each in written.texts[1:])
    weights = "the weight" if len(on_it) == 1 else "the weights"
    end = "vertical" if sin(turn) > 0 else "hanging straight down"
    return Finding(
        "holds" if ok else "fails",
        f"With {the(name)} {end} {weights} would have no {outcome.word}; "
        f"with {it(name)} horizontal the {outcome.word} would be {most}. "
        f"At this slope it is {between}, {'' if ok else 'not '}in between.",
        LABEL,
        kind="lesson",
        of=(name,),
    )
