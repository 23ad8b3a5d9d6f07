"""A muscle, tendon or cable can only pull: a negative pull asks for the other muscle, or for another look at the signs."""
from __future__ import annotations

from explain.english import the
from explain.outcome import SILENT, Finding, Outcome, listed

LABEL = "Sign"


def look(outcome: Outcome) -> Finding:
    given = {each.letter.name for each in outcome.body.givens}
    muscles = [each for each in outcome.muscles if each.size.name in outcome.values and each.size.name not in given]
    if not muscles or not outcome.body.problem.balanced:
        return SILENT
    pushing = [each.name for each in muscles if outcome.size(each) < 0]
    idle = [each.name for each in muscles if outcome.size(each) == 0]
    if not pushing and idle:
        return Finding("holds", f"No pull of {listed([the(name) for name in idle])} is needed here: the other forces balance without it.", LABEL)
    if not pushing:
        one = len(muscles) == 1
        return Finding("holds", f"{'The pull came' if one else 'All pulls came'} out positive, as it must: a muscle can only pull.", LABEL)
    names = listed([the(name) for name in pushing])
    verb = "pull comes" if len(pushing) == 1 else "pulls come"
    return Finding("fails", f"Of {names} the {verb} out negative. The equations are right, and they say that the force would "
                            "have to point the other way: "
                            "it would have to push, which no muscle can do. In this position another muscle, one that turns the "
                            "opposite way, must do the "
                            "work. If that is a surprise, look again at the turning sense of each load.", LABEL)
