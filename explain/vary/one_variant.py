"""One student's variant, made whole: drawn and screened with the rules of this program, and written. What a process
or a worker of a cluster does.
"""

from __future__ import annotations

import tempfile
import threading
from collections.abc import Mapping
from math import isclose
from pathlib import Path
from typing import Any, NamedTuple

from ..api import Walkthrough, checks, slips, work
from ..document.passage import Page
from .key import Entry, entry_of
from .settle_only import CLOSE, Apart
from .ranges import Range
from .class_list import Student
from .screen import Experts
from .sheets import sheet
from .source import text_of
from .trial import Set, Trials

PRELOAD = ("explain.vary.one_variant", "explain.write.markdown.pages", "explain.write.html.pages")
FILE = "problem.toml"


class Plan(NamedTuple):
    """All that a worker needs to know: the problem with its course in it, the files beside it, the ranges, and what is
    wanted.

    `key` tells plans apart; `form` is markdown, html, pdf, latex or text; `pages` says whether each student's
    walkthrough is wanted too.
    """

    key: str
    tables: Mapping[str, Any]
    beside: Mapping[str, bytes]
    ranges: tuple[Range, ...]
    seed: int
    form: str
    pages: bool


class Made(NamedTuple):
    """What is made for one student: the sheet, the student's own problem file, the entry of the key, and the
    walkthrough where it is wanted.
    """

    student: Student
    sheet: bytes
    variant: bytes
    entry: Entry
    walkthrough: bytes


def experts() -> Experts:
    """The catalogue of slips, the very common ones first, and the checks on answers."""
    return Experts(sorted(slips(), key=lambda slip: -slip.COMMON), checks())


def trials_of(plan: Plan, folder: Path) -> Trials:
    """The sets of a plan, with what must stand beside the problem put into the folder. Raises Fault."""
    for name, content in plan.beside.items():
        (folder / name).write_bytes(content)
    return Trials(plan.tables, plan.ranges, str(folder / FILE), experts())


class _Bench:
    """The trials of one plan and the folder that they work in, kept for as long as a process works on it."""

    def __init__(self, plan: Plan) -> None:
        self.folder = tempfile.TemporaryDirectory()
        self.trials = trials_of(plan, Path(self.folder.name))


_BENCHES: dict[str, _Bench] = {}
_ONE = threading.Lock()  # a worker of a cluster may have several threads, and nothing here was made for that


def _bench(plan: Plan) -> _Bench:
    if plan.key not in _BENCHES:
        _BENCHES.clear()
        _BENCHES[plan.key] = _Bench(plan)
    return _BENCHES[plan.key]


def make(plan: Plan, student: Student) -> Made:
    """Everything for one student. Raises Fault where no set of numbers may be handed out."""
    with _ONE:
        return _made(plan, student, _bench(plan).trials.set_for(plan.seed, student))


def _made(plan: Plan, student: Student, found: Set) -> Made:
    comment = f"Student: {student.name}\nSeed {plan.seed}. Mark with: explain mark {student.file}.toml WORKING"
    return Made(
        student,
        written(sheet(found.outcome, student.name, plan.ranges), plan.form),
        text_of(found.tables, comment).encode(),
        entry_of(plan.ranges, found.places, found.outcome),
        _walkthrough(found, plan) if plan.pages else b"",
    )


def _walkthrough(found: Set, plan: Plan) -> bytes:
    walkthrough = work(found.outcome.body.problem)
    same_answers(found, walkthrough)
    return walkthrough.written(plan.form)


def same_answers(found: Set, walkthrough: Walkthrough) -> None:
    """See that the certified lines have the answers of the key. Raises Apart where they have not."""
    for name, answer in walkthrough.answers.items():
        value = found.outcome.answers[name].value
        if not isclose(answer.value, value, rel_tol=CLOSE, abs_tol=CLOSE * found.outcome.largest_force):
            raise Apart(f"{walkthrough.title}: the lines have {answer.value!r} for {name}, the key has {value!r}")


def written(page: Page, form: str) -> bytes:
    """A page in a format. Raises `explain.write.pdf.pages.NoPaper` where PDF cannot be made."""
    match form:
        case "pdf":
            from ..write.pdf.pages import pdf

            return pdf(page)
        case "html":
            from ..write.html.pages import html

            return html(page).encode()
        case "latex":
            from ..write.latex.pages import latex_pages

            return latex_pages((page,)).encode()
        case "markdown":
            from ..write.markdown.pages import markdown

            return markdown(page).encode()
    from ..write.text.pages import text

    return text(page).encode()
