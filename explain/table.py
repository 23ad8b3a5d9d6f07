"""Tables that people keep as CSV: from a file to rows with the lines that they begin on, and from rows to text. Knows
no column's meaning.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from pathlib import Path
from typing import NamedTuple

from .errors import Fault, legible
from .input import given, text_of

MARKS = ",;\t"  # what may part the cells
_FORMULA = re.compile(r"\s*[=+\-@\t\r\n|%＝＋－＠]")
_PLAIN = re.compile(r"[+-]?[0-9]+(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?")

Line = tuple[int, list[str]]


def _saved_twice(data: bytes) -> str:
    """UTF-8 that was once read as Windows Latin and saved as UTF-8 again: "ZÃ«" for "Zë"."""
    raw = bytearray()
    for each in text_of(data):
        try:
            raw += each.encode("cp1252")
        except UnicodeEncodeError:
            raw += each.encode("latin-1", "replace")
    return raw.decode("utf-8", "replace")


OTHERS: Mapping[str, Callable[[bytes], str]] = {
    "Mac Roman": lambda data: data.decode("mac_roman"),
    "DOS (code page 850)": lambda data: data.decode("cp850"),
    "UTF-8 that was read as Latin and saved again": _saved_twice,
}  # encodings whose bytes look like Windows Latin or UTF-8


class Table(NamedTuple):
    """A kind of table as messages speak of it: what it is called, the most bytes, what is expected, an example."""

    what: str
    most: int
    expected: str
    example: str

    def fault(self, file: str, found: str, line: int | None = None, advice: str = "") -> Fault:
        """What is said where a file is no such table."""
        return Fault(file, line, found=found, expected=self.expected, example=self.example, advice=advice)


def table_text(path: Path, table: Table, encoding: str = "") -> str:
    """The text of a file that a person chose, in any usual encoding, or in one of `OTHERS`. Raises Fault."""
    try:
        data = given(path, table.most)
    except (OSError, ValueError) as error:
        why = (getattr(error, "strerror", None) or "no path").lower()
        raise table.fault(str(path), f"no {table.what} that can be read ({why})") from None
    if len(data) > table.most:
        raise table.fault(str(path), f"more than {table.most // 1_000_000} MB")
    text = (OTHERS[encoding](data) if encoding else text_of(data)).lstrip("\ufeff")
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


def csv_file(rows: Iterable[Sequence[str]]) -> bytes:
    """Rows as every CSV file of this program has them: UTF-8 with a mark and CRLF, which spreadsheets open right, and
    no cell that they take for a formula. A row without cells is a blank line.
    """
    out = io.StringIO(newline="")
    csv.writer(out, lineterminator="\r\n").writerows([safe(cell) for cell in row] for row in rows)
    return out.getvalue().encode("utf-8-sig", "replace")


def safe(text: str) -> str:
    """A cell that no spreadsheet takes for a formula: an apostrophe goes before what begins like one; a plain number
    stays.
    """
    shown = legible(text)
    return f"'{shown}" if (_FORMULA.match(text) or _FORMULA.match(shown)) and not _PLAIN.fullmatch(shown) else shown


def unguarded(text: str) -> str:
    """A cell without the apostrophe that `safe` puts before what begins like a formula."""
    return text[1:] if text.startswith("'") and _FORMULA.match(text[1:]) else text
