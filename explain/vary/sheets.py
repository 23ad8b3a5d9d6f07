"""One student's sheet: whose it is, the problem in their numbers, room to work, and no answer. Knows pages, no
format.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from ..document.english import sentence, the
from ..document.passage import Caution, Line, Page, Paragraph, Passage, Strong, Table, Text
from ..solve.outcome import Outcome
from ..walkthrough.exercise_sheet import student_sheet
from ..walkthrough.page import CAUTION
from ..wording.phrases import before, segment_of, way
from .ranges import Range

WORKING = 190  # millimetres of room: with the diagram on the first page, a second page for the working


def sheet(outcome: Outcome, name: str, ranges: Sequence[Range] = ()) -> Page:
    """The sheet of a student; its title is the problem's, and the name stands below it. What is given has every value
    of `ranges`.
    """
    page = student_sheet(outcome, working=WORKING)
    model = "plane, rigid and at rest" if outcome.body.problem.balanced else "plane and rigid"
    head = Paragraph((Strong("Name"), Text(f" {name}")))
    passages = (_with_directions(each, outcome, ranges) for each in page.passages)
    return replace(page, passages=(head, *passages, Caution((Text(CAUTION.format(model=model)),))))


def _with_directions(passage: Passage, outcome: Outcome, ranges: Sequence[Range]) -> Passage:
    """The table of what is given, with the directions that a student has for himself: they have no letter, and an
    author's statement may tell the angle alone.
    """
    if not isinstance(passage, Table) or passage.caption != "Given":
        return passage
    return replace(
        passage, rows=(*passage.rows, *_directions(outcome, {each.owner for each in ranges if _turns(each)}))
    )


def _turns(each: Range) -> bool:
    return each.key == "direction"


def _directions(outcome: Outcome, owners: set[str]) -> Iterator[tuple[Line, ...]]:
    problem = outcome.body.problem
    for segment in problem.segments:
        if segment.name in owners:
            yield _row(segment.name, way(segment.direction, before(problem, segment.name)))
    for pull in problem.pulls:
        if pull.name in owners and pull.direction is not None:
            yield _row(pull.name, way(pull.direction, segment_of(problem, pull.place), pull.kind == "muscle"))


def _row(name: str, said: str) -> tuple[Line, ...]:
    return (Text("–"),), (Text(sentence(f"direction of {the(name)}").rstrip(".")),), (Text(said.removeprefix("at ")),)
