"""The command that puts problems into a package for a learning platform; everything else is imported when it runs."""

from __future__ import annotations

import sys
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

import click

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from ..api import Walkthrough
    from ..export.bank import Source
    from .main import Session

_HOLDS = "The package holds the right answers: an instructor's copy, not for those who are to work the problems."


class _How(NamedTuple):
    """What all items have alike."""

    share: float
    choices: int


@click.command()
@click.argument("files", metavar="[FILE]...", nargs=-1, type=click.Path(path_type=Path))
@click.option("-o", "out", required=True, type=click.Path(path_type=Path), help="The package to write, a .zip file.")
@click.option(
    "--as", "form", type=click.Choice(("qti",)), default="qti", show_default=True, help="QTI 3, a content package."
)
@click.option(
    "--variants",
    multiple=True,
    type=click.Path(path_type=Path),
    help="A folder that explain vary wrote: an item for each variant, by number, without names.",
)
@click.option(
    "--choices",
    type=click.IntRange(2, 8),
    help="In place of a number field so many numbers to choose from: the right one, and wrong ones that the commonest "
    "slips lead to, each with a hint.",
)
@click.option(
    "--tolerance",
    type=click.FloatRange(0.01, 20),
    default=1.0,
    show_default=True,
    help="How far a number may be off and still be right, in per cent.",
)
@click.option(
    "--course", type=click.Path(path_type=Path), help="A course file that goes before the one a problem names."
)
@click.option("--root", type=click.Path(path_type=Path), help="A folder that no name in a file may lead out of.")
def export(
    files: tuple[Path, ...],
    out: Path,
    form: str,
    variants: tuple[Path, ...],
    choices: int | None,
    tolerance: float,
    course: Path | None,
    root: Path | None,
) -> None:
    """Put problem FILES into a package of questions for a learning platform. It holds the right answers."""
    from ..errors import Fault, legible
    from ..export.bank import bank, problems, told_apart
    from ..output import put_whole
    from ..write.qti.package import package
    from .main import CAUTION, Session, _not_onto

    if out.suffix.lower() != ".zip":
        raise Fault(str(out), found=f'the suffix "{out.suffix}"', expected="a package, .zip", example="-o package.zip")
    if not files and not variants:
        raise Fault(
            found="no problem file", expected="files, or --variants with a folder", example="explain export jug.toml"
        )
    if not tolerance <= 20:  # what is no number passes through a range
        raise Fault(found=f"a tolerance of {tolerance:g}", expected="0.01 to 20 per cent", example="--tolerance 1")
    _not_onto(files, [out])
    session = Session(course, root)
    sources = told_apart(
        [*problems(files), *(each for folder in variants for each in bank(folder, session.root or ""))]
    )
    made = _all(session, sources, _How(tolerance / 100, choices or 0))
    if made:
        title = made[0][0] if len(made) == 1 else f"{len(made)} problems of statics"
        items = [(name, content) for _, name, content in made]
        put_whole(out, package(items, title, f"{_HOLDS} {CAUTION}"))
        click.echo(legible(f"{out}: {len(made)} item{'s' * (len(made) > 1)}. {_HOLDS}"), err=True)
    session.summary(len(sources))
    sys.exit(session.code)


def _all(session: Session, sources: Sequence[Source], how: _How) -> list[tuple[str, str, Mapping[str, bytes]]]:
    """The title, the name and the files of each item; a problem that cannot be worked is told and passed over."""
    from ..errors import legible

    if len(sources) < 2:
        return [each for source in sources for each in _one(session, source, how)]
    found = []
    with click.progressbar(
        sources, label="Working", file=sys.stderr, item_show_func=lambda each: legible(each.name) if each else ""
    ) as bar:
        for source in bar:
            found += _one(session, source, how)
    return found


def _one(session: Session, source: Source, how: _How) -> list[tuple[str, str, Mapping[str, bytes]]]:
    if not session.made(source.file, source.fit):
        return []
    return [
        item
        for file, walkthrough in session.one(source.file)
        for _, item in session.made(file, partial(_item, walkthrough, source, how))
    ]


def _item(walkthrough: Walkthrough, source: Source, how: _How) -> tuple[str, str, Mapping[str, bytes]]:
    from ..export.question import question
    from ..write.qti.package import files_of

    title = f"{walkthrough.title}, variant {source.variant}" if source.variant else walkthrough.title
    return title, source.name, files_of(question(walkthrough, source.name, title, how.share, how.choices))
