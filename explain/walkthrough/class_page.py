"""A page as one class has it: its words and its paper. Knows no passage's meaning."""

from __future__ import annotations

from collections.abc import Iterable

from ..document.passage import Page, Passage
from ..document.spelling import Spelling
from ..problem.model import Problem


def class_page(problem: Problem, title: str, passages: Iterable[Passage]) -> Page:
    """The page of these passages."""
    return Page(title, spelling_of(problem).passages(passages), paper=problem.course.paper)


def spelling_of(problem: Problem) -> Spelling:
    """How the class spells, and its words for horizontal and vertical; what the problem's author named stays as it "
    "is."""
    names = [each.name for each in problem.segments] + [each.name for each in problem.loads]
    names += [each.name for each in problem.pulls] + [each.name for each in problem.couples]
    table = problem.person.table if problem.person else ""
    said = (
        problem.title,
        problem.pivot.name,
        problem.pivot.bone,
        problem.pivot.support,
        table,
        *problem.neglect,
        *names,
    )
    return Spelling(problem.course.spelling, filter(None, said), problem.course.level_words, problem.course.decimal)
