"""A manual as one call of the library: built, written, and remembered for the next build."""

from __future__ import annotations

import os
from pathlib import Path

from ..errors import Fault
from ..input import Root, real_root
from ..output import form_of, make_folder
from .build import Built, Order, build, remember
from .editions import EDITIONS
from .output import publish

FORMATS = ("markdown", "html", "pdf")


def manual(
    book: str | os.PathLike[str],
    out: str | os.PathLike[str],
    *,
    edition: str = "",
    only: str = "all",
    form: str = "",
    jobs: int = 0,
    cache: str | os.PathLike[str] | None = None,
    root: Root = None,
) -> Built:
    """Make one book of chapters and problems, as the file `book` says, and write it to `out`.

    `form` is markdown, html or pdf; without it the suffix of `out` decides. `edition` is student, odd, answers or
    instructor; without it the book's own. `only` is all, odd or even. `jobs` 0 is a process for each core. `cache` is a
    folder that keeps worked problems for the next build; without it nothing is kept.

    Raises Fault where the book, a chapter or the place to write to is at fault, and NoPaper where a PDF cannot be made
    on this machine; a problem that cannot be worked is among the `troubles` of what is returned.
    """
    target = Path(out)
    form = _one_of("the format", form or form_of(target), FORMATS)
    edition = _one_of("the edition", edition, ("", *EDITIONS))
    if cache is not None:
        make_folder(Path(cache))
    kept = "" if cache is None else str(Path(cache).resolve())
    only = _one_of("the part", only, ("all", "odd", "even"))
    order = Order(Path(book), form, edition, only, jobs, kept, real_root(root))
    built = build(order)
    publish(built, target, order)
    if kept:
        remember(order, built)
    return built


def _one_of(what: str, said: str, known: tuple[str, ...]) -> str:
    if said not in known:
        raise Fault(
            found=f'{what} "{said}"',
            expected="one of " + ", ".join(filter(None, known)),
            example='manual("book.toml", "book.html", edition="student")',
        )
    return said
