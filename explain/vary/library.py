"""Variants for a class as one call of the library. Knows how names become students; the work is done by `handouts`."""

from __future__ import annotations

import os
from collections.abc import Mapping, Sequence
from pathlib import Path

from ..errors import Fault
from ..input import Root, real_root
from .class_list import Student, enrolled, numbered, read_roll
from .handouts import Handed, Order, hand_out


def vary(
    problem: str | os.PathLike[str],
    folder: str | os.PathLike[str],
    *,
    names: str | os.PathLike[str] | Sequence[str] = (),
    id: str = "",
    count: int = 0,
    seed: int = 0,
    form: str = "markdown",
    pages: bool = False,
    jobs: int = 0,
    cluster: str = "",
    replace: bool = False,
    course: Mapping[str, object] | None = None,
    root: Root = None,
) -> Handed:
    """Write a sheet for each student into `folder`, with a problem file for each and a key.

    `problem` is the path of a problem file with a [vary]. `names` are the students, or the path of a class list (a
    .csv file); without them `count` numbered variants are made. Numbers are drawn by seed and name, so that every
    student keeps them while the list grows, shrinks or is sorted; `id` is a column of the list to draw by in place of
    the name, where two students have one name. `form` is that of the sheets: markdown, html, pdf, latex or text. With
    `pages` each student's walkthrough is written too. `jobs` 0 is a process for each core; `cluster` is the address of
    a Dask scheduler. The same seed gives the same bytes; a run that was stopped goes on where it stopped.

    Raises Fault where the problem, its ranges, the names or the folder are at fault, and NoPaper where a PDF cannot be
    made on this machine; a student in trouble is among the `troubles` of what is returned.
    """
    students = _students(names, id, count)
    order = Order(Path(problem), Path(folder), students, seed, form, pages, jobs, cluster, course, replace)
    return hand_out(order._replace(root=real_root(root)))


def _students(names: str | os.PathLike[str] | Sequence[str], id: str, count: int) -> tuple[Student, ...]:
    found = read_roll(Path(names), id=id) if isinstance(names, str | os.PathLike) else enrolled(names)
    if not found and count < 1:
        raise Fault(
            found="neither names nor a count", expected="one of them", example='vary("jug.toml", "monday", count=30)'
        )
    return found[: count or None] or numbered(count)
