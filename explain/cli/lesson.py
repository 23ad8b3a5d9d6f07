"""The command that makes a lesson of a problem or a series: pages for a board, what to say, captions.

Imports what it needs when it runs.
"""

from __future__ import annotations

import os
import sys
from pathlib import Path

import click

from ..errors import A_PERSON, DONE

_FORMS = ("html", "pdf")


@click.command()
@click.argument("file", metavar="PROBLEM", type=click.Path(path_type=Path))
@click.option(
    "-o",
    "out",
    type=click.Path(path_type=Path),
    help="Where to write the pages: lesson.html or lesson.pdf.  [default: HTML on standard output]",
)
@click.option("--script", type=click.Path(path_type=Path), help="Where to write what to say on each page, as Markdown.")
@click.option("--captions", type=click.Path(path_type=Path), help="Where to write captions of what is said, as WebVTT.")
@click.option(
    "--marks",
    type=click.Path(path_type=Path),
    help="A table of pages and seconds (page,seconds) for the captions' times; else by the length of the words.",
)
@click.option(
    "--rate",
    type=click.FloatRange(40, 400),
    help="Words a minute for the captions, each digit of a number a word.  [default: 130]",
)
@click.option("--handout", is_flag=True, help="Four pages a sheet, with room for notes.")
@click.option(
    "--course", type=click.Path(path_type=Path), help="A course file that goes before the one a problem names."
)
@click.option("--root", type=click.Path(path_type=Path), help="A folder that no name in a file may lead out of.")
def lesson(
    file: Path,
    out: Path | None,
    script: Path | None,
    captions: Path | None,
    marks: Path | None,
    rate: float | None,
    handout: bool,
    course: Path | None,
    root: Path | None,
) -> None:
    """Make a lesson of a PROBLEM or a series file: pages for a board, one idea a page."""
    from ..errors import Fault
    from ..lesson.api import RATE
    from ..lesson.api import lesson as made_of
    from ..lesson.marks import read_marks
    from ..output import put_all, put_out
    from ..problem.reader import course_keys

    targets = [each for each in (out, script, captions) if each]
    _apart([each for each in (file, course, marks) if each], targets)
    if (marks or rate) and not captions:
        raise Fault(
            found="--marks or --rate without --captions", expected="a file for the captions", example="--captions l.vtt"
        )
    if marks and rate:
        raise Fault(found="--marks and --rate", expected="one of the two", example="--marks marks.csv")
    form = _form(out)
    worked = made_of(file, course=course_keys(course) if course else None, root=root)
    timed = read_marks(marks, len(worked.boards)) if marks else None
    files = [(captions, worked.captions(timed, rate or RATE).encode())] if captions else []
    files += [(script, worked.script.encode())] if script else []
    pages = worked.written(form, handout) if out or not targets else b""
    put_all([*files, *([(out, pages)] if out else [])])
    if not targets:
        put_out(pages)
    sys.exit(A_PERSON if worked.needs_a_person else DONE)


def _form(out: Path | None) -> str:
    from ..errors import Fault
    from ..output import form_of

    form = form_of(out) if out else "html"
    if form not in _FORMS:
        assert out is not None
        raise Fault(
            str(out), found=f'the suffix "{out.suffix}"', expected="one of .html, .pdf", example="-o lesson.html"
        )
    return form


def _apart(read: list[Path], targets: list[Path]) -> None:
    """Refuse to write over what is read, and two things to one place."""
    from ..errors import Fault
    from ..output import same

    for place, target in enumerate(targets):
        if any(same(target, each) for each in read):
            found = "a file that is read, as the place to write to"
        elif any(os.path.realpath(target) == os.path.realpath(each) for each in targets[:place]):
            found = "one file for two things"
        else:
            continue
        raise Fault(file=str(target), found=found, expected="another name", example="-o lesson.html")
