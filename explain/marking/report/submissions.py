"""Workings as they are handed in: text, Markdown, or a column of a table, in whatever encoding. Reads files and
judges no line.
"""

from __future__ import annotations

import csv
import io
import re
import sys
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import NamedTuple

from ...input import given, text_of
from ...errors import Fault, nearest, shown
from ..reading.limits import WORKING

MOST_OF_A_TABLE = 50_000_000  # bytes
SUFFIXES = (".txt", ".md", ".markdown", ".csv", "")
STANDARD_INPUT = Path("-")
_FENCE = re.compile(r"^\s*(?:`{3,}|~{3,})\s*\w*\s*$")
_LISTED = re.compile(r"^\s*[-*+]\s+(?=\S)")
_TICKED = re.compile(r"`([^`]+)`")
_CONTROL = re.compile("[\x00-\x08\x0e-\x1a\x1c-\x1f]")
_BINARY = 0.02  # the share of control characters that no text has
_USUAL = ("working", "lines", "text", "answer", "line")


class Paper(NamedTuple):
    """One working: what it is called ("" where it is the only one of its file), and its text."""

    name: str
    text: str


def papers(path: Path, column: str = "", by: str = "") -> tuple[Paper, ...]:
    """The workings of a file; `-` is standard input. `column` and `by` are columns of a table: the lines, and whose
    they are. Raises Fault.
    """
    if path == STANDARD_INPUT:
        return (Paper("", _text(sys.stdin.buffer.read(WORKING * 4 + 1), "standard input")),)
    suffix = path.suffix.lower()
    if suffix not in SUFFIXES:
        raise _fault(
            str(path),
            f'the suffix "{path.suffix}"',
            "a working as .txt, .md or .csv",
            "explain mark jug.toml working.txt",
        )
    table = suffix == ".csv"
    if not table and (column or by):
        raise _fault(
            str(path),
            "a column asked of what is no table",
            "a .csv file for --column and --by",
            "explain mark jug.toml class.csv --column working",
        )
    most = MOST_OF_A_TABLE if table else WORKING * 4
    try:
        data = given(path, most)
    except (OSError, ValueError) as error:
        why = (getattr(error, "strerror", None) or str(error)).lower()
        raise _fault(
            str(path), f"no file that can be read ({why})", "the path of a working", "explain mark jug.toml working.txt"
        ) from None
    text = _text(data, str(path), most)
    if table:
        return _of_table(text, str(path), column, by)
    return (Paper("", _unfenced(text) if suffix in (".md", ".markdown") else text),)


def _text(data: bytes, file: str, most: int = WORKING * 4) -> str:
    """The text of a file, refused where there is none, too much, or no text in it."""
    if len(data) > most:
        raise _fault(
            file,
            f"more than {most // 1_000_000} MB",
            "a working of a few pages at most",
            "explain mark jug.toml working.txt",
        )
    text = text_of(data)
    if not text.strip("\ufeff \t\r\n"):
        raise _fault(file, "nothing: the working is empty", "a line of working a line", "F*4.0 = 29.43*33")
    if len(_CONTROL.findall(text)) > _BINARY * len(text):
        raise _fault(
            file,
            "bytes that are no text",
            "plain text; a photograph, a PDF or a document has to be typed out",
            "F*4.0 = 29.43*33",
            "Text in UTF-16 or UTF-32 is saved as UTF-8 first.",
        )
    if most == WORKING * 4 and len(text) > WORKING:
        raise _fault(
            file,
            f"more than {WORKING:,} characters",
            "a working of a few pages at most",
            "explain mark jug.toml working.txt",
        )
    return text


def _unfenced(text: str) -> str:
    """Markdown without the fences around code and formulas, without list marks and the ticks of code; every line
    keeps its number.
    """
    lines = ("" if _FENCE.match(line) or line.strip() == "$$" else line for line in re.split(r"\r\n|\n|\r", text))
    return "\n".join(_TICKED.sub(r"\1", _LISTED.sub("", line)) for line in lines)


# ---------------------------------------------------------------------- tables
def _of_table(text: str, file: str, column: str, by: str) -> tuple[Paper, ...]:
    """A row is a working where `by` is not given and a cell has several lines; else the column is one, or one for
    each name in `by`.
    """
    rows = _rows(text, file)
    lines = _column(rows[0], column, file, "--column")
    cells = [row.get(lines) or "" for row in rows]
    if by:
        owner = _column(rows[0], by, file, "--by")
        return _grouped([(row.get(owner) or "").strip() or "without a name" for row in rows], cells)
    if any("\n" in each.strip() or "\r" in each.strip() for each in cells):
        return tuple(Paper(f"row {place}", each) for place, each in enumerate(cells, 2) if each.strip())
    return (Paper("", "\n".join(cells)),)


def _rows(text: str, file: str) -> Sequence[Mapping[str, str | None]]:
    """The rows of a table by the names in its first line; commas, semicolons or tabs part them."""
    head = text.lstrip("\ufeff").partition("\n")[0]
    mark = max(",;\t", key=head.count)
    try:
        rows = list(csv.DictReader(io.StringIO(text.lstrip("\ufeff"), newline=""), delimiter=mark))
    except csv.Error as error:
        raise _fault(
            file,
            f"a table that cannot be read ({error})",
            "a .csv file with the names of its columns in the first line",
            "line,working",
        ) from None
    if not rows:
        raise _fault(file, "a table without rows", "the names of the columns, then a row for each line", "line,working")
    return rows


def _column(row: Mapping[str, str | None], name: str, file: str, option: str) -> str:
    names = [each for each in row if isinstance(each, str)]
    if name in names:
        return name
    listed = ", ".join(f'"{each}"' for each in names[:12])
    if name:
        raise _fault(
            file,
            f"no column {shown(name)}",
            f"one of the columns {listed}",
            f"{option} {nearest(name, names) or names[0]}",
        )
    folded = {each.strip().casefold(): each for each in names}
    usual = next((folded[each] for each in _USUAL if each in folded), names[0] if len(names) == 1 else "")
    if not usual:
        raise _fault(
            file,
            f"the columns {listed}, and none of them named",
            "which column holds the working",
            f"--column {names[-1]}",
        )
    return usual


def _grouped(owners: Iterable[str], cells: Iterable[str]) -> tuple[Paper, ...]:
    found: dict[str, list[str]] = {}
    for owner, cell in zip(owners, cells, strict=True):
        found.setdefault(owner, []).append(cell)
    return tuple(Paper(owner, "\n".join(lines)) for owner, lines in found.items())


def file_name(paper: Paper, stem: str) -> str:
    """A name to write a report under, whatever the working is called."""
    own = re.sub(r"[^\w-]+", "-", paper.name).strip("-_")[:60]
    return f"{stem}-{own}" if own else stem


def _fault(file: str, found: str, expected: str, example: str, advice: str = "") -> Fault:
    return Fault(file, None, "", found, expected, example, advice)
