"""A sine or cosine has two angles: both are tried, and only one may be possible."""
from __future__ import annotations

from explain.outcome import SILENT, Finding, Outcome

LABEL = "The other angle"


def look(outcome: Outcome) -> Finding:
    angles = [each for name, each in outcome.answers.items() if name.endswith(".direction") and each.unit == "deg" and name != "reaction.direction"]
    if not angles:
        return SILENT
    each = angles[0]
    if not each.others:
        return Finding("holds", "No other angle of the turn balances.", LABEL)
    return Finding("holds", "; ".join(each.reasons) + ".", LABEL)
