"""Personal variants of a problem, each under a code: what `explain vary` wrote into a folder beside the problems.

A code is drawn once, from the system's own source of chance, and kept in a file that the lecturer hands the codes out
from; a student who joins later gets a new one, and nobody's changes.
"""

from __future__ import annotations

import csv
import io
import re
import secrets
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import NamedTuple

from ..errors import Fault
from ..output import put_whole
from ..table import csv_file, unguarded
from .shelf import Item, name_of, read_text, title_of

KEY, CODES, WRITTEN = "key.csv", "codes.csv", "variants"
LETTERS = "abcdefghjkmnpqrstuvwxyz23456789"  # none that is taken for another when it is read out
LONG = 8  # letters of a code: a trillion of them, so that nobody meets another's by trying
CODE = re.compile(rf"[{LETTERS}]{{{LONG}}}")
MOST = 10_000_000  # bytes of a key


class Handed(NamedTuple):
    """A student's variant: whose it is, its code, and its file."""

    student: str
    code: str
    file: str


def variants_of(folder: Path) -> Mapping[str, Mapping[str, Item]]:
    """By name in addresses, then by code, the variants in the folders below a folder. Codes that are not there yet are
    written. Raises Fault where they cannot be.
    """
    out: dict[str, Mapping[str, Item]] = {}
    for key in sorted(folder.glob(f"*/{KEY}")):
        name = name_of(key.parent.name)
        found = {each.code: item for each in _codes(key.parent) for item in _item(key.parent, name, each)}
        if found:
            out[name] = found
    return out


def _item(folder: Path, name: str, each: Handed) -> Iterator[Item]:
    """The variant of a student; none where its file is none that `explain vary` writes."""
    path = folder / WRITTEN / Path(each.file).name
    try:
        found, title = path.lstat(), title_of(path)
    except OSError:
        return
    if title and not path.is_symlink():
        yield Item(f"{name}/{each.code}", path, title, (found.st_mtime_ns, found.st_size))


def _codes(folder: Path) -> list[Handed]:
    """The codes of all students of a key, old ones as they are."""
    before = {each.file: each for each in (Handed(*row) for row in _rows(folder / CODES, ("student", "code", "file")))}
    taken = {each.code for each in before.values()}
    out: list[Handed] = []
    for student, file in _rows(folder / KEY, ("student", "file")):
        known = before.get(file)
        code = known.code if known is not None and CODE.fullmatch(known.code) else _new(taken)
        out.append(Handed(student, code, file))
    if out != list(before.values()):
        gone = [each for file, each in before.items() if file not in {each.file for each in out}]
        _write(folder / CODES, [*out, *gone])
    return out


def _new(taken: set[str]) -> str:
    while (code := "".join(secrets.choice(LETTERS) for _ in range(LONG))) in taken:
        pass
    taken.add(code)
    return code


def _rows(path: Path, columns: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    """The rows of a table that has these columns; none where there is no such table."""
    try:
        rows = list(csv.DictReader(io.StringIO(read_text(path, MOST), newline="")))
    except (OSError, ValueError, csv.Error):
        return
    for row in rows:
        if all(row.get(each) for each in columns):
            yield tuple(unguarded(row[each]) for each in columns)


def _write(path: Path, codes: list[Handed]) -> None:
    try:
        put_whole(path, csv_file([Handed._fields, *codes]))
    except Fault as fault:
        raise fault.placed(str(path), None, "") from None
