"""The command that makes a book; everything else is imported when it runs."""

from __future__ import annotations

import sys
from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING

import click

from ..errors import A_PERSON, BROKEN, DONE, STOPPED, worst

if TYPE_CHECKING:
    from ..jobs.pool import Trouble
    from ..manual.build import Built
    from ..manual.task import Worked
    from ..write.pdf.pieces import Laid

_FORMS = ("markdown", "html", "pdf")
_EDITIONS = ("student", "odd", "answers", "instructor")


@click.command()
@click.argument("file", metavar="BOOK", type=click.Path(path_type=Path))
@click.option(
    "-o",
    "out",
    type=click.Path(path_type=Path),
    help="Where to write the book; its suffix says the format.  [default: standard output]",
)
@click.option(
    "--as", "form", type=click.Choice(_FORMS), help="The format, where no suffix says it.  [default: markdown]"
)
@click.option(
    "--edition",
    type=click.Choice(_EDITIONS),
    help="Who it is for: student (no answers), odd (theirs at the back), answers (alone), instructor.",
)
@click.option(
    "--only", type=click.Choice(("all", "odd", "even")), default="all", help="Only the odd- or even-numbered problems."
)
@click.option("--root", type=click.Path(path_type=Path), help="A folder that no name in a file may lead out of.")
@click.option(
    "--jobs", type=click.IntRange(0, 256), default=0, help="How many processes work.  [default: one for each core]"
)
@click.option(
    "--cache",
    type=click.Path(path_type=Path),
    help="The folder that keeps worked problems; safe to delete.  [default: in the user's own cache]",
)
@click.option("--no-cache", is_flag=True, help="Keep nothing, and use nothing that was kept.")
def manual(
    file: Path,
    out: Path | None,
    form: str | None,
    edition: str | None,
    only: str,
    root: Path | None,
    jobs: int,
    cache: Path | None,
    no_cache: bool,
) -> None:
    """Make one book of chapters and problems, as the file BOOK says."""
    from ..input import real_root
    from ..manual.build import Order, build, remember
    from ..manual.output import publish

    order = Order(
        file, _form(out, form), edition or "", only, jobs, "" if no_cache else _folder(file, cache), real_root(root)
    )
    try:
        built = build(order, _watched)
        publish(built, out, order, _laid_out)
        remember(order, built)
    except KeyboardInterrupt:
        kept = (
            "what was worked is kept, and the same command goes on from there." if order.folder else "nothing was kept."
        )
        click.echo(f"explain: stopped; {kept}", err=True)
        sys.exit(STOPPED)
    _told(built, errata_on_output=out is not None)
    sys.exit(_code(built))


def _form(out: Path | None, form: str | None) -> str:
    """The format asked for. Raises Fault where a book cannot have it, or a terminal cannot show it."""
    from ..errors import Fault
    from ..output import form_of

    if out is not None:
        form = form or form_of(out)
    if form is not None and form not in _FORMS:
        raise Fault(
            str(out),
            found=f'the suffix "{out.suffix if out else ""}"',
            expected="a book as .pdf, .html or .md",
            example="-o book.pdf",
        )
    if form == "pdf" and out is None and sys.stdout.isatty():
        raise Fault(found="PDF for a terminal", expected="a file to write it to", example="-o book.pdf")
    return form or "markdown"


def _folder(file: Path, chosen: Path | None) -> str:
    """The cache of a book. A folder that was chosen must be writable; the usual one may fail, and then nothing is
    kept.
    """
    from ..errors import Fault
    from ..manual.cache_folder import home
    from ..output import make_folder

    folder = chosen or home(file)
    try:
        make_folder(folder)
    except Fault:
        if chosen:
            raise
        click.echo(f"explain: nothing is kept for the next build: no folder can be made at {folder}", err=True)
        return ""
    return str(folder.resolve())


def _watched(results: Iterable[Worked | Trouble], length: int) -> Iterable[Worked | Trouble]:
    from ..jobs.progress_bar import watched

    return watched(results, length, "Working problems")


def _laid_out(results: Iterable[Laid | Trouble], length: int) -> Iterable[Laid | Trouble]:
    from ..jobs.progress_bar import watched

    return watched(results, length, "Laying out sheets")


def _told(built: Built, errata_on_output: bool) -> None:
    """What became of the build, on standard error; the errata on standard output where the book itself is not there."""
    _say(
        [
            f"{built.fresh + built.kept} problems: {built.fresh} worked, {built.kept} kept from before.",
            *(f"A check fails in {label}." for label in built.failing),
            *(f"Left out: the chapter {path}: {message}" for path, message in built.book.missing.items()),
            *(f"Not worked: {label}: {trouble.message}" for label, trouble in built.troubles),
        ],
        True,
    )
    if built.errata:
        _say(["Errata: changed since the last build", *(f"- {line}" for line in built.errata)], not errata_on_output)
    elif built.errata is not None:
        _say(["Errata: nothing has changed since the last build."], not errata_on_output)


def _say(lines: Iterable[str], on_error: bool) -> None:
    from ..errors import legible

    for line in "\n".join(lines).split("\n"):
        click.echo(legible(line), err=on_error)


def _code(built: Built) -> int:
    """What was told and passed over is for a person to look at; a fault of the program stays one."""
    passed_over = built.failing or built.troubles or built.book.missing
    broken = [trouble.code for _, trouble in built.troubles if trouble.code == BROKEN]
    return worst([A_PERSON if passed_over else DONE, *broken])
