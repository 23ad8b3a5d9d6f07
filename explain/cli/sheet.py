"""The command that makes sheets to be worked on; everything else is imported when it runs."""

from __future__ import annotations

import sys
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from ..api import Walkthrough
    from ..document.passage import Page
    from ..sheet.faded import Fading

_FORMS = ("markdown", "html", "pdf", "text", "latex")


@click.command()
@click.argument("problems", metavar="PROBLEM...", nargs=-1, required=True, type=click.Path(path_type=Path))
@click.option(
    "-o",
    "out",
    type=click.Path(path_type=Path),
    help="Where to write: a file (its suffix says the format) or a folder, one file a problem.",
)
@click.option("--as", "form", type=click.Choice(_FORMS), help="The format, where no suffix says it.  [default: text]")
@click.option("--blank", help="last:2 or all-but:3: the walkthrough with so many lines left empty, their reasons kept.")
@click.option(
    "--find-the-slip", "slip", metavar="SLIP", help="A working with this slip in it, or any, and a key on its own page."
)
@click.option("--seed", type=click.IntRange(0, 10_000), default=0, help="Another seed puts the slip elsewhere.")
@click.option(
    "--course", type=click.Path(path_type=Path), help="A course file that goes before the one a problem names."
)
@click.option("--root", type=click.Path(path_type=Path), help="A folder that no name in a file may lead out of.")
def sheet(
    problems: tuple[Path, ...],
    out: Path | None,
    form: str | None,
    blank: str | None,
    slip: str | None,
    seed: int,
    course: Path | None,
    root: Path | None,
) -> None:
    """Make a sheet of each PROBLEM to be worked on: the problem alone, with room for diagram and working."""
    from ..errors import Fault
    from ..sheet.faded import fading
    from .main import Session, target, write_pages

    if blank and slip:
        raise Fault(found="--blank and --find-the-slip", expected="one of the two", example="--blank last:2")
    left = fading(blank) if blank else None
    folder, form = target(problems, out, form, _FORMS)
    session = Session(course, root)
    made = [
        each
        for file, walkthrough in session.all(problems)
        for each in session.made(file, partial(_pages, walkthrough, left, slip, seed))
    ]
    write_pages(made, folder, out, form)
    session.summary(len(problems))
    sys.exit(session.code)


def _pages(walkthrough: Walkthrough, left: Fading | None, slip: str | None, seed: int) -> tuple[Page, ...]:
    from ..api import slips, work
    from ..sheet import faded, slip_to_find
    from ..sheet.problem_alone import problem_alone

    if left:
        told = work(walkthrough.problem, course={"detail": "full"})  # a class that tells little has no reasons to keep
        return (faded.faded(told.outcome, left),)
    if slip:
        return slip_to_find.pages(walkthrough, slip_to_find.hide(walkthrough, slips(), slip, seed))
    return (problem_alone(walkthrough.outcome),)
