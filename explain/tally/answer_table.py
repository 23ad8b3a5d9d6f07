"""A table of final answers, in whatever encoding: which column is which answer, and each student's cells. Reads and
judges nothing.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import NamedTuple

from ..equation.terms import Unit
from ..errors import Fault, nearest, shown
from ..marking.reading import comma_in
from ..table import Line, Table, table_lines, table_text
from .cells import Cell, cell, unit_of_header
from .asked import Wanted

CELL = 2_000  # characters; a longer cell is no answer and is not kept
_WHO = ("student", "name", "pupil", "learner", "id", "number", "no", "no.", "email")
_EXAMPLE = "student,biceps,reaction"
_ROWS = f"{_EXAMPLE}\n1,239 N,197 N"
ANSWERS = Table(
    "table of answers",
    50_000_000,
    "a table of answers as .csv: the names of the columns, then a row for each student",
    _ROWS,
)
_ODD = "Some characters of the table could not be read in its encoding; saved as UTF-8 it loses none."


class Row(NamedTuple):
    """One student: the line of the file, what stands in the column of names, and by answer the cell or why it is
    none. `blank` are the answers whose cells are empty, where the column has any answer.
    """

    line: int
    student: str
    cells: Mapping[str, Cell | str]
    typed: Mapping[str, str]
    blank: tuple[str, ...] = ()


class Sheet(NamedTuple):
    """A table as it was read. `columns` are the headers by the answer they hold; `remarks` are for the report, and
    name nobody.
    """

    rows: tuple[Row, ...]
    columns: Mapping[str, str]
    units: Mapping[str, Unit]
    remarks: tuple[str, ...] = ()


def read_sheet(
    path: Path, wanted: Sequence[Wanted], columns: Sequence[str] = (), by: str = "", encoding: str = ""
) -> Sheet:
    """The answers of a table. `columns` are "COLUMN" or "ANSWER=COLUMN"; `by` is the column of names; `encoding` is one
    of `OTHERS`, "" for what the bytes look like. Raises Fault.
    """
    text = table_text(path, ANSWERS, encoding)
    head, lines = _lines(text, str(path))
    found = _columns(head, wanted, columns, str(path))
    who = _who(head, by, found, str(path))
    comma = comma_in("\n".join(row[place][:CELL] for _, row in lines for place in found.values() if place < len(row)))
    rows = _blank_marked([_row(line, row, found, who, comma) for line, row in lines])
    if not any(row.cells for row in rows):
        raise ANSWERS.fault(str(path), "no answer in any row")
    units = {name: unit_of_header(head[place])[1] for name, place in found.items()}
    return Sheet(
        rows,
        {name: head[place] for name, place in found.items()},
        units,
        (*([_ODD] if "\ufffd" in text else []), *_shape(head, lines)),
    )


# ---------------------------------------------------------------------- the file
def _lines(text: str, file: str) -> tuple[list[str], list[Line]]:
    """The header, and each row that is not blank with the line of the file it begins on."""
    if not text.strip():
        raise ANSWERS.fault(file, "nothing: the file is empty")
    rows = table_lines(text, file, ANSWERS)
    if len(rows) < 2:
        raise ANSWERS.fault(file, "a table without rows")
    return [each.strip() for each in rows[0][1]], rows[1:]


# ---------------------------------------------------------------------- the columns
def _folded(name: str) -> str:
    return " ".join(name.replace("_", " ").casefold().split())


def _columns(head: Sequence[str], wanted: Sequence[Wanted], columns: Sequence[str], file: str) -> dict[str, int]:
    """By answer, the place of its column."""
    out = {}
    for asked in columns:
        name, column = _pair(asked, wanted, file)
        if column not in head:
            raise _fault(
                file,
                f"no column {shown(column)}",
                f"one of the columns {_listed(head)}",
                f'--column "{nearest(column, head) or head[-1]}"',
            )
        out[name] = head.index(column)
    plain = [_folded(unit_of_header(each)[0]) for each in head]
    for each in wanted:
        place = next((plain.index(name) for name in map(_folded, (each.name, *each.other)) if name in plain), None)
        if place is not None and place not in out.values():
            out.setdefault(each.name, place)
    if not out:
        asked_for = _listed([each.name for each in wanted])
        raise Fault(
            file,
            found=f"the columns {_listed(head)}, and none named like an answer",
            expected=f"a column for one of the answers {asked_for}",
            example=f'--column "{wanted[0].name}={head[-1]}"',
        )
    return out


def _pair(asked: str, wanted: Sequence[Wanted], file: str) -> tuple[str, str]:
    names = [each.name for each in wanted]
    name, mark, column = asked.partition("=")
    if mark and name.strip() in names:
        return name.strip(), column.strip()
    if len(wanted) == 1 or asked in names:
        return asked if asked in names else names[0], asked
    raise _fault(
        file,
        f"the column {shown(asked)}",
        f"which answer it holds: one of {_listed(names)}",
        f'--column "{names[0]}={asked}"',
    )


def _who(head: Sequence[str], by: str, found: Mapping[str, int], file: str) -> int | None:
    if by:
        if by not in head:
            raise Fault(
                file,
                found=f"no column {shown(by)}",
                expected=f"one of the columns {_listed(head)}",
                example=f'--by "{nearest(by, head) or head[0]}"',
            )
        return head.index(by)
    free = [place for place in range(len(head)) if place not in found.values()]
    return next((place for name in _WHO for place in free if _folded(head[place]) == name), None)


def _listed(names: Sequence[str]) -> str:
    return ", ".join(shown(each) for each in names[:12]) + (f" and {len(names) - 12} more" if len(names) > 12 else "")


# ---------------------------------------------------------------------- the rows
def _row(line: int, row: Sequence[str], found: Mapping[str, int], who: int | None, comma: str) -> Row:
    typed = {name: row[place][:CELL] for name, place in found.items() if place < len(row) and row[place].strip()}
    cells = {name: cell(text, comma) for name, text in typed.items()}  # type: ignore[arg-type]
    student = row[who].strip()[:CELL] if who is not None and who < len(row) else ""
    return Row(line, student, cells, typed)


def _blank_marked(rows: Sequence[Row]) -> tuple[Row, ...]:
    """The rows with what is left blank in each. A column that nobody has filled in was not asked for."""
    asked = dict.fromkeys(name for row in rows for name in row.typed)
    return tuple(row._replace(blank=tuple(name for name in asked if name not in row.typed)) for row in rows)


def _shape(head: Sequence[str], lines: Sequence[tuple[int, Sequence[str]]]) -> tuple[str, ...]:
    """A row with more cells than there are columns is often a decimal comma that parted a number."""
    wide = [line for line, row in lines if len(row) > len(head) and any(each.strip() for each in row[len(head) :])]
    if not wide:
        return ()
    told = ", ".join(map(str, wide[:8])) + (f" and {len(wide) - 8} more" if len(wide) > 8 else "")
    return (
        f"More cells than columns in line {told}: where a comma stands for the decimal point, the cell needs quotes "
        "or the table semicolons.",
    )


def _fault(file: str, found: str, expected: str, example: str) -> Fault:
    return Fault(file, found=found, expected=expected, example=example)
