"""Series of problems, worked with the rules of this program: from a file to pages in every format."""

from __future__ import annotations

import json
import os
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Any

from ..input import Root, real_root
from ..errors import Fault
from ..problem.reader import tables_of
from ..api import work
from ..output import FORMATS
from ..solve.outcome import Outcome
from ..document.passage import Page
from ..table import csv_file
from ..problem.model import Problem
from .pages import joined, pages
from .series_file import Series, read_series
from .suggestion import suggest
from .sweep_page import values
from .worked_steps import Findings, Worked, work_steps


@dataclass(frozen=True)
class WorkedSeries:
    """A series worked through: `steps` in order, the start first; its pages in every format; `sweeps` as rows for a
    file of values.
    """

    series: Series
    steps: tuple[Worked, ...]

    def __repr__(self) -> str:
        return f"<WorkedSeries {self.title!r}: {len(self.steps)} steps>"

    @property
    def title(self) -> str:
        return self.series.title

    @property
    def needs_a_person(self) -> bool:
        """Whether a check fails in a step."""
        return any(finding.result == "fails" for each in self.steps for _, finding in each.checks)

    @cached_property
    def pages(self) -> tuple[Page, ...]:
        return pages(self.series, self.steps)

    def markdown(self) -> str:
        from ..write.markdown.pages import markdown

        return "\n---\n\n".join(markdown(page) for page in self.pages)

    def text(self, width: int = 100) -> str:
        from ..write.text.pages import text

        return "\n\n".join(text(page, width) for page in self.pages)

    def html(self) -> str:
        from ..write.html.pages import html_pages

        return html_pages(self.pages, self.title)

    def pdf(self) -> bytes:
        """The pages on paper, where a step begins on the sheet on which the one before it ends."""
        from ..write.pdf.pages import pdf

        return pdf(joined(self.pages, self.title), compact=True)

    def json(self) -> str:
        """One object on one line: the steps, each with its prediction, its comparison, and what `work` gives of a
        problem.
        """
        from ..walkthrough.as_json import SURROGATES

        told = {"title": self.title, "steps": [_as_object(each) for each in self.steps]}
        return SURROGATES.sub("\ufffd", json.dumps(told, ensure_ascii=False, allow_nan=False))

    def csv(self) -> bytes:
        """The values of every sweep, unrounded; a blank line parts one sweep from the next. Raises Fault where there
        is none.
        """
        sweeps = [each for each in self.steps if each.points]
        if not sweeps:
            raise Fault(
                file=self.series.file,
                found="no sweep, whose values could be written",
                expected="a step with [step.sweep]",
                example='[step.sweep]\nof = "forearm.direction"\nto = "90 deg"',
            )
        parted: list[list[str]] = []
        for each in sweeps:
            parted += [*([[]] if parted else []), *values(each)]
        return csv_file(parted)

    def written(self, form: str) -> bytes:
        """All pages in a format: markdown, html, pdf, latex, text or json."""
        if form == "pdf":
            return self.pdf()
        if form not in FORMATS:
            raise Fault(
                found=f'the format "{form}"',
                expected="one of " + ", ".join(FORMATS),
                example='save("pages.html", "html")',
            )
        if form == "json":
            return (self.json() + "\n").encode()
        if form == "latex":
            from ..write.formats import written

            return written(self.pages, form, self.title)
        return {"markdown": self.markdown, "html": self.html, "text": self.text}[form]().encode()

    def save(self, path: str | os.PathLike[str], form: str = "") -> Path:
        """Write all pages whole or not at all; the format by `form` or by the suffix. Raises Fault for a format that
        is not known.
        """
        from ..output import form_of, put_whole

        target = Path(path)
        put_whole(target, self.written(form or form_of(target)))
        return target


def series(
    path: str | os.PathLike[str], *, course: Mapping[str, object] | None = None, root: Root = None
) -> WorkedSeries:
    """Work all steps of a series file; `course` are keys of a course file that go before a problem's own.

    No name in the file leads out of the folder `root`, where there is one. Values of answers are in the unit beside
    them (`answer.unit`), changes in per cent.

    Raises Fault where the file or a step is at fault, NoWay where no way through a step was found.
    """
    found = read_series(tables_of(path, real_root(root)))
    return WorkedSeries(found, work_steps(found, _through, course))


work_series = series  # its name before there were others beside it


def suggested(
    path: str | os.PathLike[str], *, base: str = "", course: Mapping[str, object] | None = None, root: Root = None
) -> str:
    """A series file for a problem, as text: each of its steps has been worked. `base` is how it names the problem's
    file. Raises Fault.
    """
    return suggest(tables_of(path, real_root(root)), _through, base or Path(path).name, course)


def _through(problem: Problem) -> tuple[Outcome, Findings]:
    walkthrough = work(problem)
    return walkthrough.outcome, walkthrough.checks


def _as_object(each: Worked) -> dict[str, Any]:
    from ..walkthrough.as_json import as_object
    from ..walkthrough.class_page import spelling_of

    told, spell = as_object(each.outcome, each.checks), spelling_of(each.problem).text
    step: dict[str, Any] = {
        "step": each.step.number,
        "title": each.problem.title,
        "idea": each.step.idea,
        "follow": each.follow,
    }
    if each.comparison is not None:
        found = each.comparison
        step |= {
            "compare": each.step.compare,
            "predicted": found.prediction.way,
            "ground": found.prediction.ground,
            "change": found.way,
            "per_cent": found.per_cent,
            "says": spell(found.says),
            "why": spell(found.why),
        }
    if each.points:
        sweep = each.step.sweep
        assert sweep is not None
        if not sweep.is_angle:
            step["sweep_of"] = {"name": f"{sweep.owner}.{sweep.key}", "unit": sweep.unit}
        step["sweep"] = [
            {"angle" if sweep.is_angle else "value": float(point.value)}
            | (
                {name: answer.value for name, answer in point.outcome.answers.items()}
                if point.outcome
                else {"why_not": point.why_not}
            )
            for point in each.points
        ]
    return step | {key: told[key] for key in ("answers", "lines", "checks")}
