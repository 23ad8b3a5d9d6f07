"""A problem's pages for a book: the student's sheet, the walkthrough with what an instructor wants to know, the
answers.
"""

from __future__ import annotations

from collections.abc import Sequence

from ..walkthrough.class_page import spelling_of
from ..walkthrough.page import compose
from ..problem.course import Course
from ..problem.course_file import course_from
from ..input import Door
from ..problem.reader import opened, problem_of
from ..api import Walkthrough, slips, work
from ..document.passage import Caution, Heading, Passage
from ..walkthrough.exercise_sheet import student_sheet
from .conventions import differing
from .instructor import notes
from .key import answer_lines, printed
from .task import Facts, Task, Worked
from .topics import topics


def composed_of(task: Task) -> Worked:
    """All pages of a problem as passages. Raises what `explain.work` raises."""
    top = opened(task.text, task.file, Door(task.file, task.root), task.named)
    walkthrough = work(problem_of(top, task.overlay))
    problem = walkthrough.problem
    outcome = walkthrough.outcome
    said = differing(problem.course, course_from(task.course, Course()))
    sheet = student_sheet(outcome, task.diagram, task.working).passages
    walk = compose(outcome, walkthrough.checks, numbered=False).passages
    behind = notes(outcome, slips())
    for_students, for_instructors = (
        _told(within_a_book(each), said) for each in (sheet, (*walk, *spelling_of(problem).passages(behind)))
    )
    return Worked(_facts(walkthrough), for_students, for_instructors, tuple(answer_lines(outcome)))


def within_a_book(passages: Sequence[Passage]) -> tuple[Passage, ...]:
    """A page without its title and its caution, which the book states, and its headings one level lower."""
    kept = (
        each
        for each in passages
        if not isinstance(each, Caution) and not (isinstance(each, Heading) and each.level == 1)
    )
    return tuple(Heading(each.level + 1, each.line) if isinstance(each, Heading) else each for each in kept)


def _told(passages: Sequence[Passage], said: Sequence[Passage]) -> tuple[Passage, ...]:
    """What differs from the book's conventions stands behind the statement."""
    return (*passages[:1], *said, *passages[1:])


def _facts(walkthrough: Walkthrough) -> Facts:
    failing = tuple(finding.says for _, finding in walkthrough.checks if finding.result == "fails")
    return Facts(walkthrough.title, printed(walkthrough.outcome), topics(walkthrough.outcome), failing)
