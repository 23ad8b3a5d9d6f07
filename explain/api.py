"""Where the program and what it knows about working a problem come together: the only module that imports `rules`."""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

import rules
from rules.checks import CHECKS

from .walkthrough.page import compose
from .problem.course_file import course_from
from .input import Root
from .output import FORMATS
from .errors import Fault
from .problem.reader import door_of, read_problem
from .mechanics.free_body import cut_free
from .solve.answers import told_short
from .solve.outcome import Finding, Outcome
from .document.passage import Page, Picture
from .problem.model import Problem
from .solve.engine import work_through

if TYPE_CHECKING:
    from .solve.answers import Answer
    from .marking.judging import Marker
    from .marking.slips.slip import SlipRule
    from .solve.engine import Move
    from .marking.slips.verdict import Marking

Source = str | os.PathLike[str] | Mapping[str, object] | Problem


@dataclass(frozen=True)
class Walkthrough:
    """A worked problem: answers, certified moves, checks, and the page in every format.

    `answers` maps names ("biceps", "reaction.up") to Answer, whose `value` is in its `unit`; `moves` are in order,
    each with its certified line; `checks` are pairs of a name and a Finding. The writers raise nothing but
    `explain.write.pdf.pages.NoPaper` where PDF cannot be made on this machine.
    """

    problem: Problem
    outcome: Outcome

    def __repr__(self) -> str:
        return f"<Walkthrough {self.title!r}: {told_short(self.answers)}; {len(self.moves)} lines>"

    @property
    def title(self) -> str:
        return self.problem.title

    @property
    def answers(self) -> Mapping[str, Answer]:
        return self.outcome.answers

    @property
    def moves(self) -> tuple[Move, ...]:
        return self.outcome.working.moves

    @cached_property
    def checks(self) -> tuple[tuple[str, Finding], ...]:
        out: list[tuple[str, Finding]] = []
        for check in CHECKS:
            found = check.look(self.outcome)
            each = (found,) if isinstance(found, Finding) else found
            out += [(check.__name__.rpartition(".")[2], finding) for finding in each]
        return tuple(out)

    @property
    def needs_a_person(self) -> bool:
        """Whether a check fails."""
        return any(finding.result == "fails" for _, finding in self.checks)

    @cached_property
    def page(self) -> Page:
        return compose(self.outcome, self.checks)

    def markdown(self) -> str:
        from .write.markdown.pages import markdown

        return markdown(self.page)

    def text(self, width: int = 100) -> str:
        from .write.text.pages import text

        return text(self.page, width)

    def html(self) -> str:
        from .write.html.pages import html

        return html(self.page)

    def pdf(self) -> bytes:
        from .write.pdf.pages import pdf

        return pdf(self.page)

    def latex(self) -> str:
        """The page as the body of a LaTeX document, for \\input; the preamble needs amsmath."""
        from .write.latex.pages import latex_pages

        return latex_pages((self.page,))

    def json(self) -> str:
        from .walkthrough.as_json import json_text

        return json_text(self.outcome, self.checks)

    def picture(self) -> Picture:
        from .walkthrough.class_page import spelling_of
        from .walkthrough.diagram import picture

        drawn = spelling_of(self.problem).passage(picture(self.outcome))
        assert isinstance(drawn, Picture)
        return drawn

    def figure(self) -> str:
        """The free-body diagram as SVG."""
        from .write.figure.free_body import figure

        return figure(self.picture())

    @cached_property
    def marker(self) -> Marker:
        """What marks workings of this problem; the worlds with slips in them are made once."""
        from .marking.judging import Marker

        return Marker(self.outcome.working, slips())

    def mark(self, text: str) -> Marking:
        """The verdicts on a student's working, line by line. Never raises for a text."""
        return self.marker.mark(text)

    def save(self, path: str | os.PathLike[str], form: str = "") -> Path:
        """Write the page whole or not at all; the format by `form` or by the suffix. Raises Fault for a format that
        is not known.
        """
        from .output import form_of, put_whole

        target = Path(path)
        put_whole(target, self.written(form or form_of(target)))
        return target

    def written(self, form: str) -> bytes:
        """The page in a format: markdown, html, pdf, latex, text or json."""
        if form == "pdf":
            return self.pdf()
        if form not in FORMATS:
            raise Fault(
                found=f'the format "{form}"',
                expected="one of " + ", ".join(FORMATS),
                example='save("page.html", "html")',
            )
        if form == "json":
            return (self.json() + "\n").encode()
        made = {"markdown": self.markdown, "html": self.html, "latex": self.latex, "text": self.text}
        return made[form]().encode()

    def _repr_markdown_(self) -> str:
        return self.markdown()

    def _repr_html_(self) -> str:
        from html import escape

        from .document.untrusted_text import one_line

        return (
            f'<iframe title="{escape(one_line(self.title))}" srcdoc="{escape(self.html())}" '
            'style="width:100%;height:48rem;border:0"></iframe>'
        )


def slips() -> Sequence[SlipRule]:
    """The catalogue of slips."""
    from rules.slips import SLIPS

    return SLIPS


def checks() -> tuple[tuple[str, Callable[[Outcome], Finding | tuple[Finding, ...]]], ...]:
    """The checks on answers by name."""
    return tuple((check.__name__.rpartition(".")[2], check.look) for check in CHECKS)


def read(source: Source, *, course: Mapping[str, object] | None = None, root: Root = None) -> Problem:
    """A problem from a path, a TOML text or a mapping; `course` are keys of a course file that go before its own.
    Quantities keep the units they are written in. Raises Fault.

    `root` is a folder that no name in the problem may lead out of. Names in a text or a mapping begin there; without a
    root they open nothing.
    """
    if not isinstance(source, Problem):
        return read_problem(source, course=course, door=door_of(source, root))
    return replace(source, course=course_from(course, source.course)) if course else source


def work(source: Source, *, course: Mapping[str, object] | None = None, root: Root = None) -> Walkthrough:
    """Work a problem through; `source`, `course` and `root` are those of `read`. The value of an answer is in its
    `unit`. Raises Fault where the input is at fault, NoWay where no way through was found.
    """
    problem = read(source, course=course, root=root)
    return Walkthrough(problem, Outcome(work_through(cut_free(problem), rules.MOVES)))


def draw(source: Source, *, course: Mapping[str, object] | None = None, root: Root = None) -> str:
    """The free-body diagram of a problem as SVG, its unknown forces as they were worked out; arguments and errors are
    those of `work`.
    """
    return work(source, course=course, root=root).figure()


def mark(
    source: Source | Walkthrough, text: str, *, course: Mapping[str, object] | None = None, root: Root = None
) -> Marking:
    """The verdicts on a student's working `text`, line by line, in whatever units and letters it is typed.

    `source`, `course`, `root` and errors are those of `work`; no text raises one. Give a Walkthrough to mark many
    workings of one problem: what they share is made once.
    """
    walkthrough = source if isinstance(source, Walkthrough) else work(source, course=course, root=root)
    return walkthrough.mark(text)


def accept(
    path: str | os.PathLike[str],
    text: str,
    line: int,
    because: str = "",
    *,
    course: Mapping[str, object] | None = None,
    root: Root = None,
) -> Walkthrough:
    """Overrule the verdict on a line of a working `text`, counted from 1: it is written into the problem file at
    `path` as a table [[accept]], whole or not at all, all else kept to the byte. Gives the problem as it is then.

    `because` is told beside the line. `course` and `root` are those of `work`. Raises Fault where the line needs no
    acceptance, is none, or where the file cannot be written.
    """
    from .marking.report.accepting import accepted_line, put_accepted

    walkthrough = work(path, course=course, root=root)
    put_accepted(Path(path), accepted_line(walkthrough.marker, text, line, because), root)
    return work(path, course=course, root=root)
