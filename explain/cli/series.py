"""The command `series`: from a series file to its pages, or from a problem to a series that is proposed for it.
Imports what it needs when it runs.
"""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from ..errors import A_PERSON, DONE
from ..output import FORMATS

if TYPE_CHECKING:
    from ..series.api import WorkedSeries


@click.command()
@click.argument("file", type=click.Path(path_type=Path))
@click.option(
    "-o",
    "out",
    type=click.Path(path_type=Path),
    help="Where to write: a file, whose suffix says the format.  [default: standard output]",
)
@click.option("--as", "form", type=click.Choice(FORMATS), help="The format, where no suffix says it.  [default: text]")
@click.option("--csv", "table", type=click.Path(path_type=Path), help="Where to write the values of the sweeps, too.")
@click.option(
    "--course", type=click.Path(path_type=Path), help="A course file that goes before the one a problem names."
)
@click.option("--root", type=click.Path(path_type=Path), help="A folder that no name in a file may lead out of.")
@click.option("--suggest", is_flag=True, help="FILE is a problem: propose a series for it, as TOML.")
def series(
    file: Path,
    out: Path | None,
    form: str | None,
    table: Path | None,
    course: Path | None,
    root: Path | None,
    suggest: bool,
) -> None:
    """Work a series FILE: a base problem, and steps that each change one thing."""
    from ..problem.reader import course_keys

    keys = course_keys(course) if course else None
    _not_onto([file, *([course] if course else [])], [each for each in (out, table) if each])
    if suggest:
        _suggest(file, out, keys, form, table, root)
        return
    from ..series.api import work_series

    form = _form(out, form)
    worked = work_series(file, course=keys, root=root)
    values = worked.csv() if table else b""
    _write(worked, out, form, table, values)
    sys.exit(A_PERSON if worked.needs_a_person else DONE)


def _form(out: Path | None, form: str | None) -> str:
    from ..errors import Fault
    from ..output import form_of

    if out is None and form == "pdf" and sys.stdout.isatty():
        raise Fault(found="PDF for a terminal", expected="a file to write it to", example="-o series.pdf")
    return form or (form_of(out) if out else "text")


def _write(worked: WorkedSeries, out: Path | None, form: str, table: Path | None, values: bytes) -> None:
    """Everything is made before anything is written."""
    from ..output import put_all, put_out

    pages = worked.written(form)
    put_all((place, content) for place, content in ((table, values), (out, pages)) if place is not None)
    if out is None:
        put_out(pages)


def _suggest(
    problem: Path, out: Path | None, keys: object, form: str | None, table: Path | None, root: Path | None
) -> None:
    from ..errors import Fault
    from ..series.api import suggested

    if form or table or (out is not None and out.suffix.lower() not in ("", ".toml")):
        raise Fault(
            found="a proposal in another format than TOML",
            expected="a series file, which is TOML",
            example=f"explain series --suggest {problem} -o series.toml",
        )
    base = os.path.relpath(problem, out.parent) if out else problem.name
    _put(out, suggested(problem, base=base, course=keys if isinstance(keys, dict) else None, root=root).encode())


def _put(out: Path | None, content: bytes) -> None:
    from ..output import put_out, put_whole

    if out is not None:
        put_whole(out, content)
    else:
        put_out(content)


def _not_onto(files: list[Path], targets: list[Path]) -> None:
    """Refuse to write over what is read, and two things to one place."""
    from ..errors import Fault
    from ..output import same

    for target in targets:
        if any(same(target, each) for each in files):
            raise Fault(
                file=str(target),
                found="a file that is read, as the place to write to",
                expected="another name",
                example="-o series.pdf",
            )
    if len(targets) == 2 and os.path.realpath(targets[0]) == os.path.realpath(targets[1]):
        raise Fault(
            file=str(targets[0]),
            found="one file for the pages and the values",
            expected="two names",
            example="-o series.pdf --csv sweep.csv",
        )
