"""An oblique pull has a level part, and with upright loads only the joint can answer it."""

from __future__ import annotations

from explain.document.english import the, verb
from explain.solve.outcome import SILENT, Finding, Outcome
from explain.wording.pivot_words import pivot_force

LABEL = "The horizontal part"


def look(outcome: Outcome) -> Finding:
    if not outcome.joint_asked or outcome.joint is None or not outcome.directed:
        return SILENT
    sideways = [name for name, (right, _) in outcome.components.items() if abs(right) > 1e-9 * outcome.largest_force]
    if len(sideways) != 1 or sideways[0] not in {each.name for each in outcome.muscles}:
        return SILENT
    level, joint = outcome.components[sideways[0]][0], outcome.joint[0]
    holder = pivot_force(outcome.body.problem).removesuffix(" force")
    way = {True: "right", False: "left"}
    said = (
        f"{the(sideways[0]).capitalize()} {verb(sideways[0], 'pull')} the body to the {way[level > 0]}; nothing "
        "else is horizontal, "
        f"so the {holder} must push it to the {way[level < 0]}, and just as hard: "
    )
    if abs(level + joint) <= outcome.moved * (abs(joint) + outcome.all_forces):
        return Finding("holds", f"{said}{outcome.force(abs(joint))}.", LABEL, quiet=True)
    return Finding(
        "fails",
        f"{said}{outcome.force(abs(level))}, but its part came out as {outcome.force(joint)}.",
        LABEL,
        of=(sideways[0],),
    )
