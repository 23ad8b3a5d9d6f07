"""Class lists: who gets a sheet, and the name of each student's files. Reads a table in any usual encoding; knows
nothing of problems.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import NamedTuple

from ..errors import Fault, nearest, shown
from ..table import Table, table_lines, table_text

MOST = 100_000  # students
LONGEST = 120  # characters of a name
_WHOLE = ("name", "student", "full name", "names", "students")
_FIRST = ("first name", "forename", "given name", "first names", "first")
_LAST = ("surname", "last name", "family name", "last")
_KEPT = re.compile(r"con|prn|aux|nul|com\d|lpt\d")  # names that one system keeps for devices
_EXAMPLE = "name\nAda Quill\nBirk Tallow"
LIST = Table("class list", 20_000_000, "a .csv file with names in one of its columns", _EXAMPLE)


class Student(NamedTuple):
    """One student: number from 0, name as it stands on the sheet, and the stem of the files."""

    number: int
    name: str
    file: str


def numbered(count: int) -> tuple[Student, ...]:
    """Students without names, by numbers alike in length."""
    wide = max(3, len(str(count)))
    return tuple(Student(place, f"Student {place + 1}", f"student-{place + 1:0{wide}d}") for place in range(count))


def read_roll(path: Path, column: str = "") -> tuple[Student, ...]:
    """The students of a class list, in its order; `column` holds the names. Raises Fault."""
    names = [_name(each, path) for each in _names(_rows(path), path, column)]
    if not names:
        raise _fault(path, "no name", "a name a line under a heading", _EXAMPLE)
    if len(names) > MOST:
        raise _fault(path, f"{len(names):,} names", f"at most {MOST:,}", _EXAMPLE)
    return tuple(Student(place, name, file) for place, (name, file) in enumerate(zip(names, stems(names), strict=True)))


def stems(names: Sequence[str]) -> Iterator[str]:
    """A file name for each, of small letters, figures and hyphens, none twice; a name that is given twice gets a
    number.
    """
    used: set[str] = set()
    for place, name in enumerate(names):
        plain = unicodedata.normalize(
            "NFKD", name.replace("ß", "ss").replace("ø", "o").replace("Ø", "O").replace("ł", "l").replace("Ł", "L")
        )
        letters = plain.encode("ascii", "ignore").decode().casefold().replace("'", "")
        stem = re.sub(r"[^a-z0-9]+", "-", letters).strip("-")[:60].strip("-")
        if not stem or _KEPT.fullmatch(stem):
            stem = f"student-{stem or place + 1}"
        own, count = stem, 1
        while own in used:
            count += 1
            own = f"{stem}-{count}"
        used.add(own)
        yield own


def _rows(path: Path) -> list[list[str]]:
    lines = table_lines(table_text(path, LIST), str(path), LIST)
    return [[" ".join(cell.split()) for cell in row] for _, row in lines]


def _names(rows: list[list[str]], path: Path, column: str) -> Iterable[str]:
    """The names: of the column asked for, of a usual one, of first and last name together, or of the only column
    there is.
    """
    if not rows:
        return ()
    head = [cell.casefold() for cell in rows[0]]
    if column:
        if column.casefold() not in head:
            known = [each for each in rows[0] if each]
            raise _fault(
                path,
                f"no column {shown(column)}",
                "one of the columns " + ", ".join(f'"{each}"' for each in known[:12]),
                f'--column "{nearest(column, known) or known[0]}"',
            )
        return _of(rows[1:], (head.index(column.casefold()),))
    places = [next((head.index(each) for each in usual if each in head), None) for usual in (_WHOLE, _FIRST, _LAST)]
    if places[0] is not None:
        return _of(rows[1:], (places[0],))
    parts = tuple(each for each in places[1:] if each is not None)
    if parts:
        return _of(rows[1:], parts)
    if any(len(row) > 1 for row in rows):
        raise _fault(
            path,
            f"the columns {', '.join(shown(each) for each in rows[0][:8])}, and none of them called name or student",
            "a column called name, or which column it is",
            f'--column "{rows[0][0]}"',
        )
    return _of(rows, (0,))


def _of(rows: Iterable[list[str]], places: Sequence[int]) -> Iterator[str]:
    for row in rows:
        name = " ".join(row[place] for place in places if place < len(row) and row[place])
        if name:
            yield name


def _name(text: str, path: Path) -> str:
    """A name as it may stand on a sheet: without characters that cannot be printed."""
    name = " ".join("".join(each if each.isprintable() else " " for each in text).split())
    if len(name) > LONGEST:
        raise _fault(
            path, f"the name {shown(name, 40)} of {len(name)} characters", f"names of at most {LONGEST}", _EXAMPLE
        )
    return name or "?"


def _fault(path: Path, found: str, expected: str, example: str) -> Fault:
    return Fault(file=str(path), found=found, expected=expected, example=example)
