"""The command that tallies a class; everything else is imported when it runs."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from ..errors import A_PERSON, AT_FAULT, DONE
from ..output import FORMATS

if TYPE_CHECKING:
    from ..tally.spread import Crowd
    from ..api import Walkthrough
    from ..tally.variants import Taken
    from ..document.passage import Page, Plot
    from ..tally.page import Sheetful

_KEPT = (".sqlite", ".db")  # what explain desk --keep writes
_MANY = 50  # rows from which a bar is shown
_TOLD = 10  # students without a variant that are named on the terminal


@click.command()
@click.argument("problem", type=click.Path(path_type=Path))
@click.argument("given", metavar="FOLDER_OR_CSV", type=click.Path(path_type=Path))
@click.option(
    "-o",
    "out",
    type=click.Path(path_type=Path),
    help="Where to write the report; its suffix says the format.  [default: standard output]",
)
@click.option("--as", "form", type=click.Choice(FORMATS), help="The format, where no suffix says it.  [default: text]")
@click.option("--csv", "rows", type=click.Path(path_type=Path), help="Write a table too, with a row for each student.")
@click.option(
    "--gradebook",
    type=click.Path(path_type=Path),
    help="Write marks for each student too, by name, as a .csv file: of workings by the scheme, of answers one for "
    "each that is right or follows.",
)
@click.option(
    "--attempt",
    type=click.Choice(("first", "last", "best")),
    default="last",
    show_default=True,
    help="Which counts where a student has several rows or workings.",
)
@click.option("--chart", type=click.Path(path_type=Path), help="Write the bar chart too, as SVG.")
@click.option(
    "--column",
    "columns",
    multiple=True,
    metavar="[ANSWER=]COLUMN",
    help="The column of the table that holds an answer; may be given several times.",
)
@click.option("--by", default="", help="The column of the table that says whose answers they are.")
@click.option(
    "--names",
    is_flag=True,
    help="Show the names of students, and what they typed. Without it nothing has any but the gradebook.",
)
@click.option(
    "--variants",
    type=click.Path(path_type=Path),
    metavar="KEY",
    help="The key.csv that explain vary wrote: each is judged with the student's own variant.",
)
@click.option(
    "--jobs",
    type=click.IntRange(0, 256),
    default=0,
    help="How many processes judge workings, or answers to variants.  [default: one for each core]",
)
@click.option(
    "--cluster",
    default="",
    help="The address of a Dask scheduler, or local: workings, or answers to variants, go out to its workers.",
)
@click.option(
    "--course", type=click.Path(path_type=Path), help="A course file that goes before the one the problem names."
)
@click.option("--root", type=click.Path(path_type=Path), help="A folder that no name in a file may lead out of.")
def tally(
    problem: Path,
    given: Path,
    out: Path | None,
    form: str | None,
    rows: Path | None,
    gradebook: Path | None,
    attempt: str,
    chart: Path | None,
    columns: tuple[str, ...],
    by: str,
    names: bool,
    variants: Path | None,
    jobs: int,
    cluster: str,
    course: Path | None,
    root: Path | None,
) -> None:
    """Tell what a class got wrong in a PROBLEM, from a folder of workings, a table (.csv) of final answers, or
    the lines that a desk has kept (.sqlite).

    The exit code is 1 where anything is wrong or could not be followed, and 2 where a file could not be read; the
    others are counted all the same.
    """
    from ..input import real_root
    from ..problem.reader import course_keys
    from ..api import work

    form = _form(out, form)
    _keep_inputs((problem, given, *(each for each in (course, variants) if each)), (out, rows, chart, gradebook))
    keys = course_keys(course) if course else None
    real = real_root(root)
    walkthrough = work(problem, course=keys, root=real or None)
    if variants or (cluster and os.path.isdir(given)):
        from ..tally.spread import Crowd

        taken = _taken(walkthrough, problem, given, variants, columns, by, keys, real)
        found, failed = _judged(walkthrough, taken, Crowd(bool(variants), jobs, cluster, names, attempt))
    elif os.path.isdir(given):
        found, failed = _of_folder(walkthrough, problem, given, keys, jobs, names, real, attempt)
    elif given.suffix.lower() in _KEPT:
        found, failed = _of_kept(walkthrough, problem, given, keys, jobs, names, real, attempt)
    else:
        found, failed = _of_table(walkthrough, given, columns, by, names, attempt), DONE
    _write(found, form, out, rows, chart, gradebook)
    sys.exit(failed or (A_PERSON if found.tally.needs_a_person else DONE))


def _of_table(
    walkthrough: Walkthrough, table: Path, columns: Sequence[str], by: str, names: bool, attempt: str
) -> Sheetful:
    from ..tally.api import asked_of, of_answers
    from ..jobs.progress_bar import watched
    from ..tally.answer_table import read_sheet

    sheet = read_sheet(table, asked_of(walkthrough), columns, by)
    many = len(sheet.rows) >= _MANY
    return of_answers(
        walkthrough,
        sheet,
        lambda each: watched(each, len(each), "Answers") if many else each,
        lambda each: watched(each, len(each), "Pairs of slips"),
        names,
        attempt,
    )


def _of_folder(
    walkthrough: Walkthrough,
    problem: Path,
    folder: Path,
    course: Mapping[str, object] | None,
    jobs: int,
    names: bool,
    root: str,
    attempt: str,
) -> tuple[Sheetful, int]:
    """The tally of a folder, and the exit code that its unreadable files ask for. Raises Fault where none can be
    read.
    """
    from ..jobs.pool import Trouble, each
    from ..tally.api import PRELOAD, mark_file, no_working, of_workings, papers_in
    from ..jobs.progress_bar import watched
    from ..tally.entry import Entry

    papers, entries, code, read = papers_in(folder, problem, course, root=root), list[Entry](), DONE, 0
    done = each(mark_file, papers, jobs or (1 if len(papers) < 8 else 0), preload=PRELOAD)
    for paper, result in zip(papers, watched(done, len(papers), "Marking"), strict=True):
        if isinstance(result, Trouble):
            _tell(result.message if paper.file in result.message else f"{paper.file}: {result.message}")
            code = max(code, result.code)
            why = "the file could not be read" if result.code == AT_FAULT else "a fault of the program itself"
            entries.append(Entry(paper.place, paper.student, trouble=why))
        else:
            read += 1
            entries.extend(result)
    if not read:
        raise no_working(folder)
    return of_workings(walkthrough, entries, names, attempt), code


def _of_kept(
    walkthrough: Walkthrough,
    problem: Path,
    kept: Path,
    course: Mapping[str, object] | None,
    jobs: int,
    names: bool,
    root: str,
    attempt: str,
) -> tuple[Sheetful, int]:
    """The tally of the lines that a desk has kept, by their codes. Raises Fault."""
    from tempfile import TemporaryDirectory

    from ..desk.kept import kept_lines
    from ..desk.shelf import name_of

    with TemporaryDirectory() as folder:
        for code, text in kept_lines(kept, name_of(problem.stem)).items():
            (Path(folder) / f"{code}.txt").write_text(text, encoding="utf-8")
        return _of_folder(walkthrough, problem, Path(folder), course, jobs, names, root, attempt)


def _taken(
    walkthrough: Walkthrough,
    problem: Path,
    given: Path,
    variants: Path | None,
    columns: Sequence[str],
    by: str,
    course: Mapping[str, object] | None,
    root: str,
) -> Taken:
    """What is to be judged with the variants of a key, or, of a folder that goes out to a cluster, with the one
    problem. Raises Fault.
    """
    from ..tally.api import asked_of
    from ..tally.variants import answers_taken, class_sheet, workings_taken
    from ..tally.key import read_key, variant_in

    if variants is None:
        return workings_taken(walkthrough, given, problem, variant_in(problem, course, root))
    key = read_key(variants, root)
    if os.path.isdir(given):
        return workings_taken(walkthrough, given, problem, key, course)
    return answers_taken(walkthrough, class_sheet(given, asked_of(walkthrough), columns, by, key), key, course)


def _judged(walkthrough: Walkthrough, taken: Taken, how: Crowd) -> tuple[Sheetful, int]:
    """The tally of what was taken, and the exit code that files ask for which could not be read. Raises Fault."""
    from ..tally.spread import judged
    from ..jobs.progress_bar import watched

    found, missed = judged(walkthrough, taken, how, lambda results, length: watched(results, length, "Judging"))
    messages = list(dict.fromkeys(each.message for each in missed))
    for message in messages[:_TOLD]:
        _tell(message)
    if len(messages) > _TOLD:
        _tell(f"and {len(messages) - _TOLD:,} more.")
    return found, max((each.code for each in missed if each.code != A_PERSON), default=DONE)


def _tell(message: str) -> None:
    from ..errors import legible

    click.echo("explain: " + "\n".join(legible(line) for line in message.split("\n")), err=True)


# ---------------------------------------------------------------------- what comes out
def _form(out: Path | None, form: str | None) -> str:
    from ..errors import Fault
    from ..output import form_of

    if out is None and form == "pdf" and sys.stdout.isatty():
        raise Fault(found="PDF for a terminal", expected="a file to write it to", example="-o report.pdf")
    return form or (form_of(out) if out is not None else "text")


def _keep_inputs(given: Iterable[Path], targets: Sequence[Path | None]) -> None:
    """Refuse to write over what is read, one thing over another, or a chart as anything but SVG."""
    from ..errors import Fault
    from ..output import drawing_only, same as one_file

    wanted = [each for each in targets if each is not None]
    for each in wanted:
        same = any(one_file(each, one) for one in given) or sum(each.absolute() == one.absolute() for one in wanted) > 1
        if same or os.path.isdir(each):
            found = "a place that holds something else of this command" if same else "a folder as the place to write to"
            raise Fault(
                str(each),
                found=found,
                expected="a file name of its own",
                example="-o report.pdf --csv rows.csv --chart chart.svg",
            )
    for table, option in ((targets[1], "--csv rows.csv"), (targets[3], "--gradebook marks.csv")):
        if table is not None and table.suffix.lower() != ".csv":
            raise Fault(
                str(table),
                found=f'the suffix "{table.suffix}" for a table',
                expected="the suffix .csv",
                example=option,
            )
    if targets[2] is not None:
        drawing_only(targets[2])


def _write(
    found: Sheetful, form: str, out: Path | None, rows: Path | None, chart: Path | None, gradebook: Path | None
) -> None:
    """Everything is made before anything is written."""
    from ..output import put_all, put_out
    from ..tally.page import chart as bars, page
    from ..tally.gradebook import gradebook as marks_of
    from ..tally.rows import csv_rows, json_text

    report = json_text(found).encode() + b"\n" if form == "json" else _page(page(found), form)
    table = csv_rows(found) if rows is not None else b""
    marks = marks_of(found) if gradebook is not None else b""
    drawing = _drawn(bars(found)) if chart is not None else b""
    put_all(
        (target, content)
        for target, content in ((rows, table), (gradebook, marks), (chart, drawing), (out, report))
        if target is not None
    )
    if out is None:
        put_out(report)


def _page(page: Page, form: str) -> bytes:
    from ..marking.report.files import written

    return written((page,), form, page.title)


def _drawn(plot: Plot) -> bytes:
    from ..write.figure.plot import drawn

    return drawn(plot).encode()
