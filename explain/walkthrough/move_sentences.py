"""What rules say of their lines: sentences with their slots filled, as formulas or as plain text, and each reason
given once.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from ..equation.terms import Letter, Term, term
from ..solve.outcome import Outcome
from ..document.passage import Inline, Line, Maths, Text
from ..solve.engine import Move
from ..formula.plain import plain

SLOT = re.compile(r"\{(\w+)\}")


@dataclass(slots=True)
class Told:
    """Which reasons have been given: each is given once, and none for a move that is `known` from before."""

    outcome: Outcome
    reasons: set[str] = field(default_factory=set)
    known: Callable[[Move], bool] = lambda move: False

    @property
    def brief(self) -> bool:
        return self.outcome.body.problem.course.detail == "brief"

    def once(self, text: str) -> str:
        if not text or text in self.reasons or self.brief:
            return ""
        self.reasons.add(text)
        return text


def filled(text: str, sight: Any) -> Line:
    """A sentence with its slots filled: letters and sums as formulas, words as text."""
    out: list[Inline] = []
    end = 0
    for match in SLOT.finditer(text):
        if match.start() > end:
            out.append(Text(text[end : match.start()]))
        out.append(_slot(getattr(sight, match.group(1))))
        end = match.end()
    if end < len(text):
        out.append(Text(text[end:]))
    return tuple(out)


def _slot(value: Any) -> Inline:
    if isinstance(value, str):
        return Text(value)
    if isinstance(value, Term):
        return Maths((value,))
    if isinstance(value, tuple) and value and isinstance(value[0], Term):
        return Maths(value)
    if isinstance(value, Letter):
        return Maths((term(value),))
    return Text(str(value))


def said_plainly(text: str, sight: Any) -> str:
    """The same as plain text."""
    if "{" not in text:
        return text
    return "".join(
        each.text if isinstance(each, Text) else plain(each.of)
        for each in filled(text, sight)
        if isinstance(each, Text | Maths)
    )


def said(move: Move) -> tuple[str, str, str]:
    """What a move did, why it may, and what to watch, each in plain text."""
    say = move.rule.say
    return said_plainly(say.what, move.sight), said_plainly(say.why, move.sight), said_plainly(say.watch, move.sight)
