"""Tables that people keep as CSV: from a file to rows with the lines that they begin on, and from rows to text. Knows
no column's meaning.
"""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import NamedTuple

from .errors import Fault
from .input import given, text_of

MARKS = ",;\t"  # what may part the cells

Line = tuple[int, list[str]]


class Table(NamedTuple):
    """A kind of table as messages speak of it: what it is called, the most bytes, what is expected, an example."""

    what: str
    most: int
    expected: str
    example: str

    def fault(self, file: str, found: str, line: int | None = None, advice: str = "") -> Fault:
        """What is said where a file is no such table."""
        return Fault(file, line, found=found, expected=self.expected, example=self.example, advice=advice)


def table_text(path: Path, table: Table) -> str:
    """The text of a file that a person chose, in any usual encoding. Raises Fault."""
    try:
        data = given(path, table.most)
    except (OSError, ValueError) as error:
        why = (getattr(error, "strerror", None) or "no path").lower()
        raise table.fault(str(path), f"no {table.what} that can be read ({why})") from None
    if len(data) > table.most:
        raise table.fault(str(path), f"more than {table.most // 1_000_000} MB")
    text = text_of(data).lstrip("\ufeff")
    if "\0" in text:
        advice = "A spreadsheet has to be saved as .csv first; UTF-8 is best."
        raise table.fault(str(path), "bytes that are no text", advice=advice)
    return text


def table_lines(text: str, file: str, table: Table, marks: str = MARKS, strict: bool = False) -> list[Line]:
    """The rows that are not blank, each with the line that it begins on. The cells are parted by the mark that the
    first of them has most of. Raises Fault.
    """
    head = text.lstrip().partition("\n")[0]
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=max(marks, key=head.count), strict=strict)
    rows, line = list[Line](), 1
    try:
        for row in reader:
            if any(map(str.strip, row)):
                rows.append((line, row))
            line = reader.line_num + 1
    except csv.Error as error:
        raise table.fault(file, f"a table that cannot be read ({error})", line) from None
    return rows


def csv_text(rows: Iterable[Sequence[object]], end: str = "\n") -> str:
    """Rows as CSV."""
    out = io.StringIO(newline="")
    csv.writer(out, lineterminator=end).writerows(rows)
    return out.getvalue()
