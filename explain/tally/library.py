"""A tally as one call of the library, with its report in every format."""

from __future__ import annotations

import os
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from ..api import work
from ..output import FORMATS
from ..document.passage import Page
from ..errors import Fault, shown
from ..input import Root, real_root
from .answer_table import read_sheet
from .api import asked_of, of_answers
from .attempts import ATTEMPTS, LAST
from .counts import Tally
from .gradebook import gradebook
from .key import read_key, variant_in
from .page import Sheetful, chart, page
from .rows import csv_rows, json_text
from .spread import Crowd, judged
from .variants import answers_taken, class_sheet, workings_taken


@dataclass(frozen=True)
class ClassReport:
    """What a class got wrong: `tally` has the counts, `unread` what is said of each file that could not be judged."""

    found: Sheetful
    unread: tuple[str, ...] = ()

    def __repr__(self) -> str:
        title, entries = self.found.outcome.body.problem.title, self.tally.entries
        return f"<ClassReport {title!r}: {len(entries)} students, {self.tally.right} right>"

    @property
    def tally(self) -> Tally:
        return self.found.tally

    @property
    def needs_a_person(self) -> bool:
        """Whether anything is wrong or could not be followed."""
        return self.tally.needs_a_person

    @cached_property
    def page(self) -> Page:
        return page(self.found)

    def json(self) -> str:
        return json_text(self.found)

    def csv(self) -> bytes:
        """A table with a row for each student."""
        return csv_rows(self.found)

    def gradebook(self) -> bytes:
        """Marks for each student by name, as a table."""
        return gradebook(self.found)

    def chart(self) -> str:
        """The bars of the slips as SVG."""
        from ..write.figure.plot import drawn

        return drawn(chart(self.found))

    def written(self, form: str) -> bytes:
        """The report in a format: markdown, html, pdf, latex, text or json. Raises Fault for another."""
        from ..marking.report.files import written

        if form not in FORMATS:
            raise Fault(
                found=f'the format "{form}"',
                expected="one of " + ", ".join(FORMATS),
                example='save("class.html", "html")',
            )
        return self.json().encode() + b"\n" if form == "json" else written((self.page,), form, self.page.title)

    def save(self, path: str | os.PathLike[str], form: str = "") -> Path:
        """Write the report whole or not at all; the format by `form` or by the suffix. Raises Fault."""
        from ..output import form_of, put_whole

        target = Path(path)
        put_whole(target, self.written(form or form_of(target)))
        return target


def tally(
    problem: str | os.PathLike[str],
    handed_in: str | os.PathLike[str],
    *,
    columns: Sequence[str] = (),
    by: str = "",
    variants: str | os.PathLike[str] | None = None,
    names: bool = False,
    attempt: str = LAST,
    jobs: int = 0,
    cluster: str = "",
    course: Mapping[str, object] | None = None,
    root: Root = None,
) -> ClassReport:
    """Find what a class got wrong in a problem, from a table of final answers or a folder of workings.

    `problem` is the path of a problem file; `handed_in` is a .csv file or a folder with a file for each student.
    `columns` say which column of the table holds an answer ("biceps=Q1"), `by` which holds the names. `variants` is
    the key.csv that `vary` wrote, where each student has other numbers. A student counts once, by the first, the last
    or the best `attempt`. Without `names` nothing in the report has any.
    `jobs` 0 is a process for each core; `cluster` is the address of a Dask scheduler. Numbers are read in the units
    of the table's headings, else of their cells, else of the problem.

    Raises Fault where the problem, the table, the key or every working is at fault, and NoWay where no way through the
    problem was found; a single file that cannot be read is among the `unread` of what is returned.
    """
    if attempt not in ATTEMPTS:
        raise Fault(found=f"the attempt {shown(attempt)}", expected=f"one of {', '.join(ATTEMPTS)}", example='"best"')
    file, given, real = Path(problem), Path(handed_in), real_root(root)
    walkthrough = work(file, course=course, root=real or None)
    if variants is None and not given.is_dir():
        return ClassReport(
            of_answers(walkthrough, read_sheet(given, asked_of(walkthrough), columns, by), names=names, attempt=attempt)
        )
    if variants is None:
        taken = workings_taken(walkthrough, given, file, variant_in(file, course, real))
    elif given.is_dir():
        taken = workings_taken(walkthrough, given, file, read_key(Path(variants), real), course)
    else:
        key = read_key(Path(variants), real)
        sheet = class_sheet(given, asked_of(walkthrough), columns, by, key)
        taken = answers_taken(walkthrough, sheet, key, course)
    found, missed = judged(walkthrough, taken, Crowd(variants is not None, jobs, cluster, names, attempt))
    return ClassReport(found, tuple(dict.fromkeys(each.message for each in missed)))
