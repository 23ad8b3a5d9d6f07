"""Lessons, worked with the rules of this program: from a file to pages, notes and captions."""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path

from ..api import Walkthrough, work
from ..document.board import Board, Lesson, Question
from ..document.figure_parts import ARMS, SIGNS, parts
from ..document.passage import Answer, Caution, Drawing, Line, Page, Picture, Strong
from ..document.spelling import Spelling
from ..equation.terms import Terms
from ..input import Root, real_root
from ..problem.reader import tables_of
from ..series.api import WorkedSeries, series
from ..series.worked_steps import Worked
from ..solve.outcome import Outcome
from ..walkthrough.answer_sentences import answer_line, parts_line
from ..walkthrough.class_page import spelling_of
from ..walkthrough.diagram import draw, picture
from ..walkthrough.page import compose
from .boards import Telling, boards
from .captions import RATE as RATE
from .captions import captions
from .figure_steps import Step, steps
from .marks import Marks
from .questions import Findings, before_answer, before_check, which_way
from .script import script


@dataclass(frozen=True)
class WorkedLesson:
    """A lesson on a problem or a series: its `boards` in order, and in every format. `html` and `pdf` raise what the
    writers raise.
    """

    lesson: Lesson
    needs_a_person: bool = False

    def __repr__(self) -> str:
        return f"<WorkedLesson {self.lesson.title!r}: {len(self.boards)} pages>"

    @property
    def boards(self) -> tuple[Board, ...]:
        return self.lesson.boards

    def html(self, handout: bool = False) -> str:
        from ..write.html.board import html_boards

        return html_boards(self.lesson, handout)

    def pdf(self, handout: bool = False) -> bytes:
        from ..write.pdf.board import pdf_boards

        return pdf_boards(self.lesson, handout)

    @cached_property
    def script(self) -> str:
        """What to say on each page, as Markdown."""
        return script(self.lesson)

    def captions(self, marks: Marks | None = None, rate: float = RATE) -> str:
        """What is said as WebVTT: times by the marks of the pages, or by the length of the words at so many a minute.
        Raises Fault where the marks are not those of these pages.
        """
        return captions(self.lesson, marks, rate)

    def written(self, form: str, handout: bool = False) -> bytes:
        """The pages as "html" or "pdf"."""
        return self.pdf(handout) if form == "pdf" else self.html(handout).encode()


def lesson(
    path: str | os.PathLike[str], *, course: Mapping[str, object] | None = None, root: Root = None
) -> WorkedLesson:
    """The lesson on a problem file or a series file; `course` and `root` are those of `work`. Raises Fault, NoWay."""
    if "base" in tables_of(path, real_root(root)).values:
        return _of_series(series(path, course=course, root=root))
    return _of_problem(work(Path(path), course=course, root=root))


def _of_problem(walkthrough: Walkthrough) -> WorkedLesson:
    page = compose(walkthrough.outcome, walkthrough.checks, numbered=False)
    made = boards(page, _telling(walkthrough.outcome, walkthrough.checks, ()))
    return WorkedLesson(Lesson(walkthrough.title, made, page.language), walkthrough.needs_a_person)


def _of_series(worked: WorkedSeries) -> WorkedLesson:
    first, *told = map(_without_caution, worked.pages[:-1])
    say = Telling(say=spelling_of(worked.steps[0].problem).text)
    made = list(boards(first, say))
    for page, each in zip(told, worked.steps, strict=True):
        made += boards(page, _of_step(page, worked.steps, each))
    made += boards(worked.pages[-1], say)
    return WorkedLesson(Lesson(worked.title, tuple(made), first.language), worked.needs_a_person)


def _without_caution(page: Page) -> Page:
    """What a lesson says once, at its end, is not said on every page."""
    return replace(page, passages=tuple(each for each in page.passages if not isinstance(each, Caution)))


def _of_step(page: Page, worked: Sequence[Worked], each: Worked) -> Telling:
    """A step shows at once what was there before it; where it has no figure of its own it has that of before."""
    old = _there(draw(worked[each.step.compare].outcome), draw(each.outcome)) if each.step.number else ()
    telling = _telling(each.outcome, each.checks, old)
    if any(isinstance(passage, Picture) for passage in page.passages):
        return telling
    drawn = spelling_of(each.problem).passage(picture(each.outcome))
    assert isinstance(drawn, Picture)
    return replace(telling, picture=drawn)


def _there(before: Drawing, now: Drawing) -> tuple[str, ...]:
    """The parts that were drawn before; arms, and what counts as positive, only where they are the same."""
    other = {ARMS} if _measures(before) != _measures(now) else set[str]()
    if (before.axes, before.sense) != (now.axes, now.sense):
        other.add(SIGNS)
    return tuple(each for each in parts(before) if each not in other)


def _measures(drawing: Drawing) -> list[Terms]:
    arms = [each.arm.label for each in drawing.arrows if each.arm]
    return [*(each.label for each in drawing.spans), *(each.label for each in drawing.openings), *arms]


def _telling(outcome: Outcome, findings: Findings, known: Sequence[str]) -> Telling:
    problem = outcome.body.problem
    spell = spelling_of(problem)

    def grown(drawn: Picture) -> list[Step]:
        return [_spelled(spell, each) for each in steps(outcome, draw(outcome), known)]

    def before(answer: Answer) -> list[Question]:
        names = [name for name, _ in outcome.working.asked if answer in _lines(outcome, spell, name)]
        return [_asked(spell, each) for name in names for each in before_answer(outcome, findings, name)]

    def check(line: Line) -> Question | None:
        label = line[0].text.strip().rstrip(".") if line and isinstance(line[0], Strong) else ""
        found = ((name, each) for name, each in findings if label and spell.text(each.label) == label)
        questions = (before_check(outcome, name, each) for name, each in found)
        return next((_asked(spell, each) for each in questions if each), None)

    def behind(part: str) -> Question | None:
        asked = which_way(outcome, part.removeprefix("*")) if problem.balanced and part.startswith("*") else None
        return _asked(spell, asked) if asked and part not in known else None

    return Telling(grown, before, check, behind, say=spell.text)


def _spelled(spell: Spelling, step: Step) -> Step:
    return step._replace(part=spell.text(step.part), told=spell.lines(step.told))


def _asked(spell: Spelling, question: Question) -> Question:
    return Question(spell.text(question.ask), spell.text(question.answer))


def _lines(outcome: Outcome, spell: Spelling, name: str) -> Iterator[object]:
    """How an answer may stand on the page."""
    if name in outcome.answers:
        yield spell.passage(Answer(answer_line(outcome, name)))
    if name.startswith("reaction."):
        yield spell.passage(Answer(parts_line(outcome)))
