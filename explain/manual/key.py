"""The answers of a problem as the back of a book gives them. Works nothing out."""

from __future__ import annotations

from collections.abc import Iterator

from ..solve.outcome import Outcome
from ..document.passage import Line, Paragraph, Text
from ..walkthrough.answer_sentences import PARTS, answer_line, parts_line, pretty


def answer_lines(outcome: Outcome) -> Iterator[Paragraph]:
    """A sentence for every answer that was asked for, in order; the parts of a joint force are one. Further roots
    are told too.
    """
    told = False
    for name, _ in outcome.working.asked:
        if name not in outcome.answers:
            continue
        if name not in PARTS:
            yield Paragraph((*answer_line(outcome, name), *_other_roots(outcome, name)))
        elif not told:
            told = True
            yield Paragraph(parts_line(outcome))


def _other_roots(outcome: Outcome, name: str) -> Line:
    reasons = outcome.answers[name].reasons
    return (Text(" (" + "; ".join(reasons) + ".)"),) if reasons else ()


def printed(outcome: Outcome) -> tuple[tuple[str, str], ...]:
    """Every answer by name, as it is printed, to be compared with another edition."""
    return tuple(
        (name, f"{pretty(each)}{', ' + each.words if each.words else ''}") for name, each in outcome.answers.items()
    )
