"""When each page comes up in a recording: a table of pages and seconds. Knows no words."""

from __future__ import annotations

from collections.abc import Mapping
from math import isfinite
from pathlib import Path

from ..table import Table, table_lines, table_text

Marks = Mapping[int, float]
MARKS = Table(
    "table of marks",
    1_000_000,
    "a row for each page, with its number and the second at which it comes up",
    "page,seconds\n1,0\n2,14.5",
)
_HEADER = ["page", "seconds"]


def read_marks(path: Path, pages: int) -> Marks:
    """The second at which each of so many pages comes up. Raises Fault for one that is missing, twice there or too
    early.
    """
    file, marks = str(path), dict[int, float]()
    rows = table_lines(table_text(path, MARKS), file, MARKS)
    if not rows or [cell.strip().casefold() for cell in rows[0][1]] != _HEADER:
        raise MARKS.fault(file, "no first row with the names page and seconds", 1)
    for line, cells in rows[1:]:
        page, second = _numbers(file, line, cells)
        if not 1 <= page <= pages or page in marks:
            found = f"page {page} a second time" if page in marks else f"page {page} of a lesson of {pages} pages"
            raise MARKS.fault(file, found, line)
        marks[page] = second
    missing = [page for page in range(1, pages + 1) if page not in marks]
    if missing:
        raise MARKS.fault(file, f"no mark for page {missing[0]} of {pages}")
    for page in range(2, pages + 1):
        if marks[page] <= marks[page - 1]:
            found = f"page {page} at {marks[page]:g} s, which is not after page {page - 1} at {marks[page - 1]:g} s"
            raise MARKS.fault(file, found)
    return marks


def _numbers(file: str, line: int, cells: list[str]) -> tuple[int, float]:
    try:
        page, second = int(cells[0]), float(cells[1])
    except (ValueError, IndexError):
        raise MARKS.fault(file, f'"{", ".join(cells)}"', line) from None
    if len([each for each in cells if each.strip()]) != 2 or not isfinite(second) or not 0 <= second < 1_000_000:
        raise MARKS.fault(file, f'"{", ".join(cells)}"', line)
    return page, second
