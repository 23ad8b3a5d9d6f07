"""Where a class goes on with numbers as they are shown, the roundings on the way must leave the answer standing."""

from __future__ import annotations

import re

from explain.equation import key as keys
from explain.document.english import the
from explain.solve.answers import Answer
from explain.solve.outcome import SILENT, Finding, Outcome, number

LABEL = "Roundings"
_PART = {
    keys.RIGHT: "horizontal part of the ",
    keys.UP: "vertical part of the ",
    keys.ALONG: "part along the limb of the ",
    keys.ACROSS: "part across the limb of the ",
}
FAR = 0.1  # of an answer; common practice, no source: a tenth off is another answer, not another rounding


def look(outcome: Outcome) -> Finding:
    if not outcome.working.checker.carry_shown:
        return SILENT
    asked = {**{name: name for name in outcome.answers}, **dict(outcome.working.asked)}
    far = [(asked[name], each) for name, each in outcome.answers.items() if _is_far(each, outcome)]
    if not far:
        return SILENT
    meanings = {each.letter.name: each.meaning for each in outcome.body.sought}
    said = "; ".join(
        f"the {meanings.get(key, _meaning(key))} is {_exact(outcome, answer)}, and here it came to "
        f"{_as_written(answer.shown)}"
        for key, answer in far
    )
    turned = any(_shown(answer) * answer.value < 0 for _, answer in far)
    return Finding(
        "fails" if turned else "warns",
        "Each line goes on with the numbers as they are shown, and nearly equal ones are subtracted, so the "
        f"roundings have grown: with every figure kept, {said}. Show more figures in the working.".replace("-", "−"),
        LABEL,
    )


def _is_far(answer: Answer, outcome: Outcome) -> bool:
    """Of a part of the joint force that was not asked for, beside the whole: a small part is soon a tenth off."""
    whole = outcome.answers.get(keys.JOINT)
    beside = whole if whole and answer.name not in dict(outcome.working.asked) else answer
    return bool(answer.value) and abs(_shown(answer) - answer.value) > FAR * abs(beside.value)


def _shown(answer: Answer) -> float:
    found = re.match(r"[-−]?[\d.]+", answer.shown.replace("−", "-"))
    return float(found[0]) if found else answer.value


def _exact(outcome: Outcome, answer: Answer) -> str:
    course = outcome.body.problem.course
    unit = answer.shown.removeprefix(answer.shown.partition(" ")[0]) or f" {answer.unit}"
    return _as_written(f"{number(answer.value, max(course.figures, 3), course.ties)}{unit}")


def _as_written(text: str) -> str:
    value, _, unit = text.partition(" ")
    return f"{value}°" if unit == "deg" else f"{value} {unit.replace(' ', '·')}".strip()


def _meaning(key: str) -> str:
    if keys.of(key).is_joint:
        return f"{_PART.get(key, '')}joint force"
    owner, what = keys.of(key).owner, keys.of(key).what.lstrip("*")
    return f"{what} of {the(owner)}" if owner else f"{what} moment"
