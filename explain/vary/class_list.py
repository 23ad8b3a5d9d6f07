"""Class lists: who gets a sheet, what tells each student from all others, and the name of each student's files. Reads
a table in any usual encoding; knows nothing of problems.
"""

from __future__ import annotations

import re
import unicodedata
from collections import Counter
from collections.abc import Iterator, Sequence
from hashlib import blake2b
from pathlib import Path
from typing import NamedTuple

from ..errors import Fault, nearest, shown
from ..table import Line, Table, table_lines, table_text

MOST = 100_000  # students
LONGEST = 120  # characters of a name
_WHOLE = ("name", "student", "full name", "names", "students")
_FIRST = ("first name", "forename", "given name", "first names", "first")
_LAST = ("surname", "last name", "family name", "last")
_KEPT = re.compile(r"con|prn|aux|nul|com\d|lpt\d")  # names that one system keeps for devices
_EXAMPLE = "name\nAda Quill\nBirk Tallow"
_WITH_ID = "name,email\nAda Quill,a.quill@quay.example\nAda Quill,ada2@quay.example"
_PART = "\x1f"  # stands in no name: it is not printable
LIST = Table("class list", 20_000_000, "a .csv file with names in one of its columns", _EXAMPLE)


class Student(NamedTuple):
    """One student: number from 0, name as it stands on the sheet, and the stem of the files.

    `own` is what the numbers are drawn by, so that they stay while a class list changes: the name, or the `id` where
    the list has one; "" for a student who has a number alone.
    """

    number: int
    name: str
    file: str
    own: str = ""
    id: str = ""

    @property
    def key(self) -> int | str:
        """What the record of a run calls this student."""
        return self.own or self.number

    def ticket(self, seed: int) -> int:
        """Where this student begins in the shuffled order of all sets of numbers."""
        if not self.own:
            return self.number
        return int.from_bytes(blake2b(f"{seed}:{self.own}".encode(), digest_size=12).digest(), "big")


def numbered(count: int) -> tuple[Student, ...]:
    """Students without names, by numbers alike in length."""
    wide = max(3, len(str(count)))
    return tuple(Student(place, f"Student {place + 1}", f"student-{place + 1:0{wide}d}") for place in range(count))


def enrolled(names: Sequence[str], ids: Sequence[str] = ()) -> tuple[Student, ...]:
    """Students of these names. Those of one name are told apart by their `ids`, else by a number.

    But for their numbers nothing hangs on the order, where no name comes twice or `ids` are given.
    """
    folded = [folded_name(name) for name in names]
    often, so_far, students = Counter(folded), Counter[str](), list[Student]()
    for place, (name, plain) in enumerate(zip(names, folded, strict=True)):
        so_far[plain] += 1
        mark = ids[place] if ids else str(so_far[plain])
        label = f"{name} ({mark})" if often[plain] > 1 else name
        own = folded_name(ids[place]) if ids else plain if so_far[plain] == 1 else f"{plain}{_PART}{mark}"
        students.append(Student(place, label, stem(label), own, ids[place] if ids else ""))
    alike = Counter(each.file for each in students)
    return tuple(
        each if alike[each.file] == 1 else each._replace(file=f"{each.file}-{_sign(each.own)}") for each in students
    )


def namesakes(students: Sequence[Student]) -> tuple[str, ...]:
    """The students who are told from others of the same name by their places in the list alone."""
    return tuple(each.name for each in students if each.own and not each.id and folded_name(each.name) != each.own)


# ---------------------------------------------------------------------- the file
def read_roll(path: Path, column: str = "", id: str = "") -> tuple[Student, ...]:
    """The students of a class list, in its order. `column` holds the names, `id` what tells students apart for good.
    Raises Fault.
    """
    lines = table_lines(table_text(path, LIST), str(path), LIST)
    rows = [(line, [" ".join(cell.split()) for cell in row]) for line, row in lines]
    found = _by_id(rows, path, column, id) if id else [(name, "") for _, name in _names(rows, path, column)]
    if not found:
        raise _fault(path, "no name", "a name a line under a heading", _EXAMPLE)
    if len(found) > MOST:
        raise _fault(path, f"{len(found):,} names", f"at most {MOST:,}", _EXAMPLE)
    return enrolled([_name(name, path) for name, _ in found], [each for _, each in found] if id else ())


def _by_id(rows: Sequence[Line], path: Path, column: str, id: str) -> list[tuple[str, str]]:
    """Each name with its id; a row that comes twice is one student. Raises Fault where an id is missing or has two
    names.
    """
    place, out = _column(rows, path, id, "--id"), dict[str, tuple[str, str]]()
    cells = dict(rows)
    for line, name in _names(rows, path, column):
        own = cells[line][place] if place < len(cells[line]) else ""
        if not own:
            raise _fault(path, f"nothing in the column {shown(id)} for {shown(name)}", _OWN, _WITH_ID, line)
        known, _ = out.setdefault(folded_name(own), (name, own))
        if folded_name(known) != folded_name(name):
            raise _fault(path, f"{shown(own)} for {shown(known)} and for {shown(name)}", _OWN, _WITH_ID, line)
    return list(out.values())


_OWN = "one that is the student's own, in every row"


def _names(rows: Sequence[Line], path: Path, column: str) -> Iterator[tuple[int, str]]:
    """The names, each with its line: of the column asked for, of a usual one, of first and last name together, or of
    the only column there is.
    """
    if not rows:
        return
    places, headed = ((_column(rows, path, column, "--column"),), True) if column else _usual(rows, path)
    for line, row in rows[headed:]:
        name = " ".join(row[place] for place in places if place < len(row) and row[place])
        if name:
            yield line, name


def _usual(rows: Sequence[Line], path: Path) -> tuple[tuple[int, ...], bool]:
    """Where names stand, and whether a heading says so. Raises Fault."""
    heads = rows[0][1]
    folded = [cell.casefold() for cell in heads]
    whole, *parts = (
        next((folded.index(each) for each in usual if each in folded), None) for usual in (_WHOLE, _FIRST, _LAST)
    )
    if whole is not None:
        return (whole,), True
    if some := tuple(each for each in parts if each is not None):
        return some, True
    if any(len(row) > 1 for _, row in rows):
        raise _fault(
            path,
            f"the columns {', '.join(shown(each) for each in heads[:8])}, and none of them called name or student",
            "a column called name, or which column it is",
            f'--column "{heads[0]}"',
        )
    return (0,), False


def _column(rows: Sequence[Line], path: Path, name: str, option: str) -> int:
    """The place of a column. Raises Fault where no column has this name."""
    heads = rows[0][1] if rows else []
    folded = [cell.casefold() for cell in heads]
    if name.casefold() in folded:
        return folded.index(name.casefold())
    known = [each for each in heads if each] or ["name"]
    raise _fault(
        path,
        f"no column {shown(name)}",
        "one of the columns " + ", ".join(f'"{each}"' for each in known[:12]),
        f'{option} "{nearest(name, known) or known[0]}"',
    )


def _name(text: str, path: Path) -> str:
    """A name as it may stand on a sheet: without characters that cannot be printed."""
    name = " ".join("".join(each if each.isprintable() else " " for each in text).split())
    if len(name) > LONGEST:
        raise _fault(
            path, f"the name {shown(name, 40)} of {len(name)} characters", f"names of at most {LONGEST}", _EXAMPLE
        )
    return name or "?"


def _fault(path: Path, found: str, expected: str, example: str, line: int | None = None) -> Fault:
    return Fault(file=str(path), line=line, found=found, expected=expected, example=example)


# ---------------------------------------------------------------------- names
def folded_name(name: str) -> str:
    """A name however it is written: in one form of Unicode, small and capital letters alike, with single spaces."""
    return " ".join(unicodedata.normalize("NFKC", name).casefold().split())


def stem(name: str) -> str:
    """A file name for a name, of small letters, figures and hyphens."""
    plain = unicodedata.normalize(
        "NFKD", name.replace("ß", "ss").replace("ø", "o").replace("Ø", "O").replace("ł", "l").replace("Ł", "L")
    )
    letters = plain.encode("ascii", "ignore").decode().casefold().replace("'", "")
    found = re.sub(r"[^a-z0-9]+", "-", letters).strip("-")[:60].strip("-")
    return found if found and not _KEPT.fullmatch(found) else f"student-{found or _sign(folded_name(name))}"


def _sign(own: str) -> str:
    """A few letters that hang on a name alone."""
    return blake2b(own.encode("utf-8", "replace"), digest_size=3).hexdigest()
