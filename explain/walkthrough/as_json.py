"""A walkthrough as JSON: answers, lines, checks. Decides nothing but the names of the keys."""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Sequence
from typing import Any

from ..solve.outcome import Finding, Outcome
from .class_page import spelling_of
from .move_sentences import said
from ..solve.engine import Move
from ..document.spelling import Spelling
from ..formula.latex import latex
from ..formula.plain import plain

Spell = Callable[[str], str]
SURROGATES = re.compile("[\ud800-\udfff]")


def json_text(outcome: Outcome, checks: Sequence[tuple[str, Finding]]) -> str:
    """One object on one line."""
    text = json.dumps(as_object(outcome, checks), ensure_ascii=False, allow_nan=False)
    return SURROGATES.sub("\ufffd", text)


def as_object(outcome: Outcome, checks: Sequence[tuple[str, Finding]]) -> dict[str, Any]:
    """title, answers by name, lines in order, checks."""
    spelling = spelling_of(outcome.body.problem)
    spell = spelling.text
    return {
        "title": outcome.body.problem.title,
        "answers": {name: _answer(each, spell) for name, each in outcome.answers.items()},
        "lines": [_line(outcome, move, spelling) for move in outcome.working.moves],
        "checks": [_check(name, each, spell) for name, each in checks],
    }


def _answer(answer: Any, spell: Spell) -> dict[str, Any]:
    out: dict[str, Any] = {"value": answer.value, "unit": answer.unit, "shown": spell(answer.shown)}
    if answer.direction is not None or answer.name == "reaction":
        out["direction"] = answer.direction
    if answer.words:
        out["words"] = spell(answer.words)
    if answer.others:
        out["others"], out["set_aside"] = list(answer.others), list(map(spell, answer.reasons))
    return out


def _line(outcome: Outcome, move: Move, spelling: Spelling) -> dict[str, Any]:
    what, why, watch = map(spelling.text, said(move))
    equation = spelling.formula(move.line.equation)
    out = {
        "move": move.rule.__name__.rpartition(".")[2],
        "equation": plain(equation),
        "latex": latex(equation),
        "what": what,
        "why": why,
        "certified": outcome.working.checker.vouches_for(move.line),
    }
    return {**out, "watch": watch} if watch else out


def _check(name: str, finding: Finding, spell: Spell) -> dict[str, Any]:
    out = {"name": name, "result": finding.result, "says": spell(finding.says)}
    return {**out, "source": finding.source} if finding.source else out
