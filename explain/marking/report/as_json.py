"""A judged working as JSON: lines, first wrong line, answers, marks. Decides nothing but the names of the keys, and
what a student's copy leaves out.
"""

from __future__ import annotations

import json
from typing import Any

from .without_numbers import Discreet, discreet
from ..marks.award import Marks
from ...solve.outcome import Outcome
from .lines import first_issue
from ..slips.verdict import LineVerdict, Marking, Named
from ...walkthrough.as_json import SURROGATES
from ...walkthrough.class_page import spelling_of

_SAID = frozenset(("says", "hints", "note", "question", "why"))


def mark_json(marking: Marking, marks: Marks, outcome: Outcome) -> str:
    """Everything that is known, as one object on one line."""
    return _text(
        {
            "title": marking.title,
            "lines": [_line(each) for each in marking.lines],
            "first_wrong": marking.first_wrong,
            "answers": {each.name: {"given": each.value, "right": each.right} for each in marking.answers},
            "marks": _marks(marks),
        },
        outcome,
    )


def student_json(marking: Marking, outcome: Outcome, hints: int) -> str:
    """What a student may see: one issue, its hints up to a level; a line behind it has no verdict (null) unless it
    follows from that line.
    """
    mouth, stop = discreet(marking, outcome), first_issue(marking)
    lines = [_for_student(each, stop, mouth, hints) for each in marking.lines]
    answers = {
        each.name: {"given": each.value, "right": each.right if stop is None or 0 < each.line < stop else None}
        for each in marking.answers
    }
    return _text({"title": marking.title, "lines": lines, "first_wrong": stop, "answers": answers}, outcome)


def _text(value: dict[str, Any], outcome: Outcome) -> str:
    told = spelling_of(outcome.body.problem).record(value, _SAID)
    return SURROGATES.sub("\ufffd", json.dumps(told, ensure_ascii=False, allow_nan=False))


def _line(each: LineVerdict) -> dict[str, Any]:
    first = each.slips[0] if each.slips else None
    out: dict[str, Any] = {
        "number": each.number,
        "text": each.text,
        "read_as": each.read_as,
        "verdict": each.verdict,
        "slip": first.slip if first else None,
        "also_possible": [slip.slip for slip in each.slips[1:]],
        "says": " ".join(dict.fromkeys(filter(None, (each.says, first.says if first else "")))),
        "hints": list(first.hints) if first else [],
    }
    more = {
        "checked": each.checked,
        "accepted": each.accepted,
        "note": each.note,
        "question": each.question,
        "part": each.part,
        "again": each.again,
        "since": each.since,
    }
    return out | {key: value for key, value in more.items() if value}


def _for_student(each: LineVerdict, stop: int | None, mouth: Discreet, hints: int) -> dict[str, Any]:
    out: dict[str, Any] = {
        "number": each.number,
        "text": each.text,
        "read_as": each.read_as,
        "verdict": each.verdict,
        "slip": None,
        "also_possible": [],
        "says": mouth.words(each.says),
        "hints": [],
    }
    if stop is not None and each.number > stop:
        kept = each.verdict == "aside" or each.verdict == "carried" and each.since in (0, stop)
        return out | {"read_as": "", "verdict": each.verdict if kept else None, "says": ""}
    if each.slips:
        out["hints"] = [told for level in range(min(hints, 3)) if (told := _hint(each.slips[0], level, mouth))]
        out["says"] = mouth.words(each.slips[0].says) if hints > 2 else ""
        out["slip"] = each.slips[0].slip if hints > 2 else None
    question = mouth.words(each.question) if hints > 1 or each.verdict == "unclear" else ""
    more = {"checked": each.checked, "accepted": each.accepted, "question": question}
    return out | {key: value for key, value in more.items() if value}


def _hint(slip: Named, level: int, mouth: Discreet) -> str:
    return mouth.words(slip.hints[level])


def _marks(marks: Marks) -> dict[str, Any]:
    rows = [
        {
            "kind": each.point.kind,
            "for": each.point.what,
            "of": each.point.marks,
            "marks": each.marks,
            "open": each.open,
            "why": each.why,
        }
        for each in marks.awards
    ]
    return {"earned": marks.earned, "open": marks.open, "of": marks.total, "rows": rows}
