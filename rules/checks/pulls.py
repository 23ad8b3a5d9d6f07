"""A muscle, tendon or cable can only pull: a negative pull asks for the other muscle, or for another look at the
signs.
"""

from __future__ import annotations

from explain.document.english import listed, the
from explain.solve.outcome import SILENT, Finding, Outcome

LABEL = "Sign"


def look(outcome: Outcome) -> Finding:
    given = {each.letter.name for each in outcome.body.givens}
    muscles = [each for each in outcome.muscles if each.size.name in outcome.values and each.size.name not in given]
    if not muscles or not outcome.body.problem.balanced:
        return SILENT
    idle = [each.name for each in muscles if not outcome.size(each)]
    below = [each for each in muscles if outcome.size(each) < 0]
    if any(outcome.working.sizes.get(each.size.name, 0.0) > 0 for each in below):
        return SILENT  # only roundings took it below nothing, and another check tells of these
    pushing = [each.name for each in below]
    if idle and not pushing:
        return Finding(
            "holds",
            f"No pull of {listed([the(name) for name in idle])} is needed here: the other forces balance without it.",
            LABEL,
            of=tuple(idle),
        )
    if not pushing:
        came = (
            "The pull came out positive, as it must"
            if len(muscles) == 1
            else "All pulls came out positive, as they must"
        )
        return Finding("holds", f"{came}: a muscle can only pull.", LABEL, quiet=True)
    names = listed([the(name) for name in pushing])
    verb = "pull comes" if len(pushing) == 1 else "pulls come"
    return Finding(
        "fails",
        f"Of {names} the {verb} out negative. The equations are right, and they say that the force would "
        "have to point the other way: "
        "it would have to push, which no muscle can do. In this position another muscle, one that turns the "
        "opposite way, must do the "
        "work. If that is a surprise, look again at the turning sense of each load.",
        LABEL,
        of=tuple(pushing),
    )
