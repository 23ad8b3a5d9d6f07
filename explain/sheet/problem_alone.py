"""The problem alone, with room for diagram and working. Knows pages, no format; no answer stands in it."""

from __future__ import annotations

from dataclasses import replace

from ..document.passage import Caution, Page, Text
from ..solve.outcome import Outcome
from ..walkthrough.exercise_sheet import student_sheet
from ..walkthrough.page import CAUTION

WORKING = 190  # millimetres of room: with the diagram on the first page, a second page for the working


def problem_alone(outcome: Outcome) -> Page:
    """The sheet of a problem."""
    page = student_sheet(outcome, working=WORKING)
    model = "plane, rigid and at rest" if outcome.body.problem.balanced else "plane and rigid"
    return replace(page, passages=(*page.passages, Caution((Text(CAUTION.format(model=model)),))))
