"""The command that marks workings; everything else is imported when it runs."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

import click

from ..errors import A_PERSON, BROKEN, DONE, code_of
from ..output import FORMATS

if TYPE_CHECKING:
    from ..marking.report.submissions import Paper
    from ..api import Walkthrough
    from ..document.passage import Page
    from ..marking.slips.verdict import Marking


class _Wanted(NamedTuple):
    """What is to come out: `audience` is "" where nobody is named."""

    audience: str
    hints: int
    form: str


class _Marked(NamedTuple):
    """A working that was judged: the name to write it under, what its page is called, the verdicts."""

    file: str
    name: str
    marking: Marking


@click.command()
@click.argument("problem", type=click.Path(path_type=Path))
@click.argument("workings", metavar="WORKING...", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option(
    "-o",
    "out",
    type=click.Path(path_type=Path),
    help="Where to write: a file (its suffix says the format) or a folder, one file a working.",
)
@click.option("--as", "form", type=click.Choice(FORMATS), help="The format, where no suffix says it.  [default: text]")
@click.option(
    "--for",
    "audience",
    type=click.Choice(("student", "tutor")),
    help="student: one issue at a time, no answer; tutor: everything, marks and the walkthrough.  [default: "
    "student; of JSON, everything]",
)
@click.option(
    "--hints",
    type=click.IntRange(0, 3),
    default=1,
    show_default=True,
    help="How strong the hints to a student may be; 0 is none.",
)
@click.option(
    "--course", type=click.Path(path_type=Path), help="A course file that goes before the one the problem names."
)
@click.option("--root", type=click.Path(path_type=Path), help="A folder that no name in a file may lead out of.")
@click.option(
    "--accept",
    "number",
    type=click.IntRange(1),
    metavar="N",
    help="Overrule the verdict on line N of the one WORKING: it is written into the problem file.",
)
@click.option("--because", default="", help="Why line N is accepted; told beside it.")
@click.option("--column", default="", help="The column of a .csv file that holds the lines.")
@click.option("--by", default="", help="The column of a .csv file that says whose line it is.")
def mark(
    problem: Path,
    workings: tuple[Path, ...],
    out: Path | None,
    form: str | None,
    audience: str | None,
    hints: int,
    course: Path | None,
    root: Path | None,
    number: int | None,
    because: str,
    column: str,
    by: str,
) -> None:
    """Judge each WORKING of a PROBLEM, line by line: .txt, .md, a column of a .csv, or - for standard input."""
    from ..problem.reader import course_keys
    from ..api import work

    wanted = _Wanted(audience or "", hints, _form(out, form))
    _keep_inputs((problem, *workings), out)
    keys = course_keys(course) if course else None
    walkthrough = work(problem, course=keys, root=root)
    desk = _Desk(walkthrough, column, by)
    found = desk.papers(workings)
    if number is not None:
        desk.walkthrough = walkthrough = _accepted(problem, found, number, because, keys, root)
    elif because:
        raise _no_accept()
    marked = desk.all(found)
    if marked:
        _write(walkthrough, marked, wanted, out)
    desk.summary()
    _tell_idle(walkthrough, marked)
    sys.exit(desk.code)


class _Desk:
    """Workings judged one after another; one that cannot be read is reported and passed over."""

    def __init__(self, walkthrough: Walkthrough, column: str, by: str) -> None:
        self.walkthrough, self.column, self.by = walkthrough, column, by
        self.code, self.count = DONE, 0
        self.failed: list[str] = []
        self.wrong: list[str] = []

    def papers(self, workings: Sequence[Path]) -> list[tuple[Path, Paper]]:
        """The workings of all files that can be read."""
        return [each for path in workings for each in self._papers(path)]

    def all(self, found: Sequence[tuple[Path, Paper]]) -> list[_Marked]:
        from ..jobs.progress_bar import watched

        self.count = len(found) + len(self.failed)
        several = len(found) > 1
        asked = watched(found, len(found), "Marking") if several else iter(found)
        return [marked for path, paper in asked for marked in self._one(path, paper, several)]

    def _papers(self, path: Path) -> list[tuple[Path, Paper]]:
        from ..marking.report.submissions import papers

        try:
            return [(path, paper) for paper in papers(path, self.column, self.by)]
        except Exception as error:
            self._fail(str(path), error)
            return []

    def _one(self, path: Path, paper: Paper, several: bool) -> Iterator[_Marked]:
        from ..marking.report.submissions import file_name

        stem = "working" if str(path) == "-" else path.stem
        name = " ".join(filter(None, (path.name, paper.name)))
        try:
            marking = self.walkthrough.mark(paper.text)
        except Exception as error:
            self._fail(name, error)
            return
        if marking.needs_a_person:
            self.code = max(self.code, A_PERSON)
            self.wrong.append(name)
        yield _Marked(file_name(paper, stem), (paper.name or stem) if several else "", marking)

    def _fail(self, name: str, error: Exception) -> None:
        """Tell what is wrong with one working; the others go on."""
        from ..errors import legible

        code = code_of(error)
        said = (
            str(error)
            if code != BROKEN
            else f"{name}: a fault of the program itself: {type(error).__name__}: {error}\nPlease report it with "
            "the working."
        )
        click.echo("explain: " + "\n".join(legible(line) for line in said.split("\n")), err=True)
        self.code = max(self.code, code)
        self.failed.append(name)

    def summary(self) -> None:
        from ..errors import legible

        if self.count < 2:
            return
        said = [f"{self.count - len(self.failed)} of {self.count} workings read"]
        if self.wrong:
            said.append(f"{len(self.wrong)} with a line to look at: {', '.join(self.wrong)}")
        if self.failed:
            said.append(f"not read: {', '.join(self.failed)}")
        click.echo(legible("; ".join(said) + "."), err=True)


def _accepted(
    problem: Path,
    found: Sequence[tuple[Path, Paper]],
    number: int,
    because: str,
    course: Mapping[str, object] | None,
    root: Path | None,
) -> Walkthrough:
    """The problem with one more accepted line in its file. Raises Fault where there is not one working."""
    from ..api import accept
    from ..errors import Fault

    if len(found) != 1:
        raise Fault(
            found=f"--accept {number} with {len(found)} workings",
            expected="the one working whose line is accepted",
            example=f"explain mark jug.toml working.txt --accept {number}",
        )
    return accept(problem, found[0][1].text, number, because, course=course, root=root)


def _no_accept() -> Exception:
    from ..errors import Fault

    return Fault(found="--because without --accept", expected="the line that is accepted", example="--accept 3")


def _tell_idle(walkthrough: Walkthrough, marked: Sequence[_Marked]) -> None:
    """Name the accepted lines of the problem file that no working has."""
    from ..errors import legible, shown

    used = {line.accepted for each in marked for line in each.marking.lines}
    for place, each in enumerate(walkthrough.problem.accepted, 1):
        if marked and each.line not in used:
            said = f"accept[{place}].line: found {shown(each.line)}, which no line of "
            said += "these workings is." if len(marked) > 1 else "this working is."
            click.echo(legible(f"explain: {walkthrough.problem.file}: {said}"), err=True)


def _form(out: Path | None, form: str | None) -> str:
    """The format asked for. Raises Fault where a terminal cannot show it."""
    from ..errors import Fault
    from ..output import form_of

    if out is None:
        if form == "pdf" and sys.stdout.isatty():
            raise Fault(found="PDF for a terminal", expected="a file to write it to", example="-o report.pdf")
        return form or "text"
    if out.suffix and not os.path.isdir(out):
        return form or form_of(out)
    return form or "markdown"


def _keep_inputs(inputs: Sequence[Path], out: Path | None) -> None:
    """Refuse to write a report over a problem or a working."""
    from ..errors import Fault
    from ..output import same

    for each in inputs:
        if out is not None and os.path.isfile(out) and same(out, each):
            raise Fault(
                file=str(out),
                found="an input as the place to write to",
                expected="another name",
                example="-o report.pdf",
            )


def _write(walkthrough: Walkthrough, marked: Sequence[_Marked], wanted: _Wanted, out: Path | None) -> None:
    from ..output import SUFFIXES, make_folder, put_out, put_whole

    if out is None:
        put_out(_bytes(walkthrough, marked, wanted))
    elif out.suffix and not os.path.isdir(out):
        put_whole(out, _bytes(walkthrough, marked, wanted))
    else:
        make_folder(out)
        for name, each in zip(_names(marked), marked, strict=True):
            target = out / f"{name}{SUFFIXES[wanted.form]}"
            put_whole(target, _bytes(walkthrough, (each,), wanted))


def _names(marked: Sequence[_Marked]) -> Iterator[str]:
    """A file name for each, none twice."""
    used: set[str] = set()
    for each in marked:
        name, count = f"{each.file}-report", 1
        while name.casefold() in used:
            count += 1
            name = f"{each.file}-report-{count}"
        used.add(name.casefold())
        yield name


def _bytes(walkthrough: Walkthrough, marked: Sequence[_Marked], wanted: _Wanted) -> bytes:
    from ..marking.report.files import json_lines, written

    if wanted.form == "json":
        return json_lines(walkthrough, [each.marking for each in marked], wanted.audience, wanted.hints)
    return written(_pages(walkthrough, marked, wanted), wanted.form, walkthrough.title)


def _pages(walkthrough: Walkthrough, marked: Sequence[_Marked], wanted: _Wanted) -> list[Page]:
    """All reports; for a tutor the walkthrough stands once, behind them."""
    from ..marking.report.page import report

    audience = "tutor" if wanted.audience == "tutor" else "student"
    out = [
        report(each.marking, walkthrough, "tutor" if audience == "tutor" else "student", wanted.hints, each.name)
        for each in marked
    ]
    return [*out, walkthrough.page] if audience == "tutor" else out
