"""The command that writes a small file to begin with; it asks nothing, and overwrites nothing."""

from __future__ import annotations

import re
from pathlib import Path

import click

from ..errors import Fault, shown
from ..problem.new_files import LIKE, new_files

_STEM = re.compile(r"[^\W_][\w .-]{0,79}")
_NEXT = {
    "problem": "explain work {file}",
    "course": "explain work PROBLEM --course {file}",
    "series": "explain series {file}",
    "book": "explain manual {file} -o {stem}.html",
}


@click.command()
@click.argument("name")
@click.option("--like", type=click.Choice(tuple(LIKE)), help="What the problem is about.  [default: elbow]")
@click.option("--course", "kind", flag_value="course", help="A course file: how a class speaks and counts.")
@click.option("--series", "kind", flag_value="series", help="A series file, and the problem that it begins from.")
@click.option("--book", "kind", flag_value="book", help="A book file, and a chapter with one problem.")
def new(name: str, like: str | None, kind: str | None) -> None:
    """Write a small commented problem file NAME.toml that works at once.

    With --course, --series or --book such a file of another kind. Nothing that is there is overwritten.
    """
    from ..output import put_new

    kind = kind or "problem"
    if like and kind == "course":
        raise Fault(found="--like beside --course", expected="one of the two", example=f"explain new {name} --course")
    path = _path(name)
    files = new_files(kind, path.stem, like or "elbow")
    put_new([(path.parent / each, text.encode()) for each, text in files.items()])
    written = " and ".join(str(path.parent / each) for each in files)
    click.echo(f"Written: {written}\nNext: {_NEXT[kind].format(file=_quoted(path), stem=path.stem)}")


def _path(name: str) -> Path:
    """Where the file goes. Raises Fault for a name that no file should have."""
    path = Path(name if name.endswith(".toml") else f"{name}.toml")
    if Path(name).suffix not in ("", ".toml"):
        raise Fault(
            found=f'the suffix "{Path(name).suffix}" of {shown(name)}',
            expected="a name alone, or one that ends in .toml",
            example=f"explain new {Path(name).stem}",
        )
    if not _STEM.fullmatch(path.stem) or name.endswith(("/", "\\")):
        raise Fault(
            found=f"{shown(name)} as the name of a file",
            expected="a name of letters, figures, spaces and hyphens that begins with a letter or a figure",
            example="explain new pail",
        )
    if not path.parent.is_dir():
        raise Fault(
            found=f"{shown(name)}, but there is no folder {shown(str(path.parent))}",
            expected="a name in a folder that is there",
            example=f"explain new {path.stem}",
        )
    return path


def _quoted(path: Path) -> str:
    return f'"{path}"' if " " in str(path) else str(path)
