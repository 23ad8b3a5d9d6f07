"""Where a class goes on with numbers as they are shown, the roundings on the way must leave the answer standing."""

from __future__ import annotations

import re

from explain.equation import key as keys
from explain.solve.answers import Answer
from explain.solve.outcome import SILENT, Finding, Outcome, number

LABEL = "Roundings"
FAR = 0.1  # of an answer; common practice, no source: a tenth off is another answer, not another rounding


def look(outcome: Outcome) -> Finding:
    if not outcome.working.checker.carry_shown:
        return SILENT
    far = [(key, outcome.answers[name]) for name, key in outcome.working.asked if _is_far(outcome.answers[name])]
    if not far:
        return SILENT
    meanings = {each.letter.name: each.meaning for each in outcome.body.sought}
    said = "; ".join(
        f"the {meanings.get(key, _meaning(key))} is {_exact(outcome, answer)}, and here it came to "
        f"{_degrees(answer.shown)}"
        for key, answer in far
    )
    turned = any(_shown(answer) * answer.value < 0 for _, answer in far)
    return Finding(
        "fails" if turned else "warns",
        "Each line goes on with the numbers as they are shown, and nearly equal ones are subtracted, so the "
        f"roundings have grown: with every figure kept, {said}. Show more figures in the working.".replace("-", "−"),
        LABEL,
    )


def _is_far(answer: Answer) -> bool:
    return bool(answer.value) and abs(_shown(answer) - answer.value) > FAR * abs(answer.value)


def _shown(answer: Answer) -> float:
    found = re.match(r"[-−]?[\d.]+", answer.shown.replace("−", "-"))
    return float(found[0]) if found else answer.value


def _exact(outcome: Outcome, answer: Answer) -> str:
    course = outcome.body.problem.course
    unit = answer.shown.removeprefix(answer.shown.partition(" ")[0]) or f" {answer.unit}"
    return _degrees(f"{number(answer.value, max(course.figures, 3), course.ties)}{unit}")


def _degrees(text: str) -> str:
    return text.replace(" deg", "°")


def _meaning(key: str) -> str:
    return "force at the pivot" if keys.of(key).is_joint else f"{keys.of(key).what} of {keys.of(key).owner}"
