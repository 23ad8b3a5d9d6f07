"""A tally as data: a table with a row for each student, safe to open in a spreadsheet, and JSON. Decides nothing but
names of keys and what has no names.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from typing import Any

from ..errors import legible
from ..table import csv_file
from ..walkthrough.class_page import spelling_of
from .attempts import who
from .counts import Group, SlipCount
from .entry import Entry, Said, Wrong
from .page import Sheetful, summary
from .short_words import causes

_SAID = frozenset(("title", "summary", "idea", "exercise", "where", "remarks"))


def csv_rows(of: Sheetful) -> bytes:
    """A row for each student, each attempt that does not count, and what is nobody's. Names, and what was typed, only
    where names are asked for.
    """
    tally, answers = of.tally, list(of.answers)
    entries = sorted((*tally.entries, *tally.further, *tally.strangers), key=lambda each: each.place)
    numbered = {student: place for place, student in enumerate(dict.fromkeys(map(who, entries)), 1)}
    head = [
        "place",
        "student",
        "counted",
        *(f"{name}{end}" for name in answers for end in ("", " verdict")),
        "right",
        "slips",
        "explanations",
        "pairs not named",
        "first wrong line",
        "lines not followed",
        "remark",
    ]
    names = [entry.student if of.names and entry.student else str(numbered[who(entry)]) for entry in entries]
    counted = {id(each) for each in tally.entries}
    rows = [_row(entry, name, id(entry) in counted, of) for entry, name in zip(entries, names, strict=True)]
    return csv_file((head, *rows))


def _row(entry: Entry, name: str, counted: bool, of: Sheetful) -> list[str]:
    said = {each.name: each for each in entry.said}
    cells = [cell for answer in of.answers for cell in _given(said.get(answer), of.names)]
    slips = dict.fromkeys(slip for wrong in entry.wrongs for slip in wrong.slips)
    told = " / ".join(causes(wrong, of.known) or "nothing explains it" for wrong in entry.wrongs)
    first = next((str(wrong.line) for wrong in entry.wrongs if wrong.line), "")
    return [
        str(entry.place),
        name,
        "yes" if counted else "no",
        *cells,
        "yes" if entry.right else "no",
        " ".join(slips),
        told,
        str(sum(wrong.pairs for wrong in entry.wrongs)),
        first,
        str(entry.unclear or ""),
        of.typed(entry.trouble),
    ]


def _given(said: Said | None, names: bool) -> tuple[str, str]:
    if said is None:
        return "", ""
    value = f"{said.value:.10g}" if said.value is not None else said.typed if names else ""
    return value, f"{said.verdict}, {said.note}" if said.note else said.verdict


def json_text(of: Sheetful) -> str:
    """Everything, as one object on one line."""
    tally = of.tally
    value = {
        "title": of.outcome.body.problem.title,
        "from": "workings" if tally.lines else "answers",
        "summary": summary(tally),
        **({"variants": of.variants} if of.variants else {}),
        "students": len(tally.entries),
        "right": tally.right,
        "slips": [_slip(each, of) for each in tally.slips],
        "several": [_group(each, of) for each in tally.several],
        "unexplained": [_group(each, of) for each in tally.unexplained],
        "families": dict(tally.weights),
        "teach_again": [
            {
                "family": each.family,
                "students": each.students,
                "idea": each.idea,
                "exercise": each.exercise,
                "where": each.step,
                "slips": [one.sort.slip for one in each.slips],
            }
            for each in of.lessons
        ],
        "chance": {"single": _shares(of.evidence.singles), "pair": _shares(of.evidence.pairs)},
        "remarks": [legible(each) for each in tally.remarks],
        "rows": [_entry(each, of) for each in tally.entries],
        "further_attempts": [_entry(each, of) for each in tally.further],
        "not_students": [_entry(each, of) for each in tally.strangers],
        "nothing_handed_in": list(map(legible, of.absent)) if of.names else len(of.absent),
    }
    told = spelling_of(of.outcome.body.problem).record(value, _SAID) | {"title": value["title"]}
    return re.sub("[\ud800-\udfff]", "\ufffd", json.dumps(told, ensure_ascii=False, allow_nan=False))


def _shares(shares: Mapping[str, float]) -> dict[str, float]:
    return {name: round(share, 4) for name, share in shares.items()}


def _slip(each: SlipCount, of: Sheetful) -> dict[str, Any]:
    out: dict[str, Any] = {
        "slip": each.sort.slip,
        "title": each.sort.title,
        "family": each.sort.family,
        "students": each.students,
        "alone": each.alone,
        "among": each.among,
        "where": next((step for key in each.keys if (step := of.steps.of(key))), ""),
    }
    return out | ({"first_wrong_line_in": each.first} if of.tally.lines else {})


def _group(each: Group, of: Sheetful) -> dict[str, Any]:
    return {**_wrong(each.wrong, of), "students": each.students, "places": list(each.places)}


def _wrong(each: Wrong, of: Sheetful) -> dict[str, Any]:
    out: dict[str, Any] = {
        "answers": list(each.answers),
        "value": each.value,
        "explanations": _causes(each),
        "pairs_not_named": each.pairs,
    }
    return {"line": each.line, "text": of.typed(each.text)} | out if each.line else out


def _causes(wrong: Wrong) -> list[dict[str, Any]]:
    return [{"slips": list(each.slips), "about": [item for item in each.items if item]} for each in wrong.causes]


def _entry(each: Entry, of: Sheetful) -> dict[str, Any]:
    out: dict[str, Any] = {
        "place": each.place,
        "right": each.right,
        "answers": {said.name: _answer(said, of.names) for said in each.said},
        "wrong": [_wrong(wrong, of) for wrong in each.wrongs],
        "unclear": each.unclear,
    }
    return (
        ({"student": legible(each.student)} if of.names else {})
        | out
        | ({"trouble": of.typed(each.trouble)} if each.trouble else {})
    )


def _answer(said: Said, names: bool) -> dict[str, Any]:
    out: dict[str, Any] = {"value": said.value, "verdict": said.verdict}
    return out | ({"note": said.note} if said.note else {}) | ({"typed": legible(said.typed)} if names else {})
