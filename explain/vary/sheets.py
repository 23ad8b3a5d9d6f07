"""One student's sheet: whose it is, the problem in their numbers, room to work, and no answer. Knows pages, no
format.
"""

from __future__ import annotations

from dataclasses import replace

from ..walkthrough.page import CAUTION
from ..solve.outcome import Outcome
from ..document.passage import Caution, Page, Paragraph, Strong, Text
from ..walkthrough.exercise_sheet import student_sheet


WORKING = 190  # millimetres of room: with the diagram on the first page, a second page for the working


def sheet(outcome: Outcome, name: str) -> Page:
    """The sheet of a student; its title is the problem's, and the name stands below it."""
    page = student_sheet(outcome, working=WORKING)
    model = "plane, rigid and at rest" if outcome.body.problem.balanced else "plane and rigid"
    head = Paragraph((Strong("Name"), Text(f" {name}")))
    return replace(page, passages=(head, *page.passages, Caution((Text(CAUTION.format(model=model)),))))
