"""A sine or cosine has two angles: both are tried, and only one may be possible."""

from __future__ import annotations

from explain.equation import key as keys
from explain.solve.answers import Answer
from explain.document.english import sentence
from explain.solve.outcome import SILENT, Finding, Outcome

LABEL = "The other angle"


def look(outcome: Outcome) -> tuple[Finding, ...]:
    angles = [outcome.answers[name] for name, key in outcome.working.asked if keys.of(key).is_angle]
    return tuple(_told(each) for each in angles) or (SILENT,)


def _told(angle: Answer) -> Finding:
    if not angle.others:
        return Finding("holds", "No other angle of the whole turn balances.", LABEL)
    return Finding("holds", " ".join(map(sentence, angle.reasons)), LABEL)
