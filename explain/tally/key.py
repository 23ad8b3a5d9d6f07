"""The key of a class's variants, read back: which problem file is whose, however the name is written. Reads files,
works nothing out.
"""

from __future__ import annotations

import json
import re
import unicodedata
from collections.abc import Iterable, Mapping, Sequence
from functools import cached_property
from hashlib import sha256
from pathlib import Path, PurePosixPath
from typing import Any, NamedTuple

from ..input import PROBLEM, Door, real_root
from ..errors import Fault, shown
from ..problem.toml_table import Fields
from ..problem.reader import opened, tables_of
from ..table import Table, table_lines, table_text, unguarded
from ..vary.class_list import LIST, folded_name, stem
from ..vary.source import whole

_HEADS = ("student", "file")
_NUMBERED = re.compile(r"(.+) \([^()]+\)")  # one of several of a name
_EXAMPLE = "student,file\nBirk Tallow,variants/birk-tallow.toml"
_KEY = Table("key", LIST.most, "the key.csv that explain vary writes, in its folder", _EXAMPLE)
ALIKE = "a name that several students of the key have"


class Variant(NamedTuple):
    """A student's own problem, fit to travel: what messages call it, its tables with the course in them, the files
    beside it. `digest` tells it from others.
    """

    name: str
    digest: str
    tables: Mapping[str, Any]
    beside: Mapping[str, bytes]


class Key:
    """Students and the files of their variants; `ids` are what a column of the class list called the students."""

    def __init__(
        self, path: Path, rows: Iterable[tuple[str, str]], root: str = "", ids: Iterable[tuple[str, str]] = ()
    ) -> None:
        self.path, self.rows, self.root, self.ids = path, tuple(dict.fromkeys(rows)), root, tuple(ids)

    def file(self, name: str) -> str:
        """The file of the student with a name, else of the one whose sheet was called so. Raises Fault where there
        is none, or more than one.
        """
        return self._one(
            name,
            (self._exact, _plain(name)),
            (self._folded, _folded(name)),
            (self._by_id, _folded(name)),
            (self._stems, name.strip()),
            (self._slugs, _slug(name)),
            (self._alike, _folded(name)),
        )

    def file_of_stem(self, stem: str) -> str:
        """The file of the student whose working is called as the sheet was, or as the student. Raises Fault."""
        return self._one(
            stem,
            (self._stems, stem),
            (self._exact, _plain(stem)),
            (self._folded, _folded(stem)),
            (self._by_id, _folded(stem)),
            (self._slugs, _slug(stem)),
            (self._alike, _slug(stem)),
        )

    def has(self, name: str, stem: bool = False) -> bool:
        """Whether there is one student of a name, or of a file's name."""
        try:
            return bool(self.file_of_stem(name) if stem else self.file(name))
        except Fault:
            return False

    def _one(self, name: str, *ways: tuple[Mapping[str, Sequence[str]], str]) -> str:
        found = next((each for names, wish in ways if wish and (each := names.get(wish))), ())
        if len(found) == 1:
            return found[0]
        said = (
            f"{shown(name)}, {ALIKE}"
            if found
            else f"no student {shown(name)}"
            if name.strip()
            else "no student without a name"
        )
        raise Fault(str(self.path), found=said, expected="a row of its own for each student", example=_EXAMPLE)

    @cached_property
    def _exact(self) -> dict[str, list[str]]:
        return _listed((_plain(name), file) for name, file in self.rows)

    @cached_property
    def _folded(self) -> dict[str, list[str]]:
        return _listed((_folded(name), file) for name, file in self.rows)

    @cached_property
    def _by_id(self) -> dict[str, list[str]]:
        return _listed((_folded(each), file) for each, file in self.ids)

    @cached_property
    def _alike(self) -> dict[str, list[str]]:
        """The files of students who have one name: what it is without the mark that tells them apart."""
        found = [(same[1], file) for name, file in self.rows if (same := _NUMBERED.fullmatch(_plain(name)))]
        files = _listed((each, file) for name, file in found for each in (_folded(name), _slug(name)))
        return {name: each for name, each in files.items() if len(each) > 1}

    @cached_property
    def _stems(self) -> dict[str, list[str]]:
        return _listed((PurePosixPath(file).stem, file) for _, file in self.rows)

    @cached_property
    def _slugs(self) -> dict[str, list[str]]:
        return _listed((_slug(name), file) for name, file in self.rows)

    def variant(self, file: str, course: Mapping[str, object] | None = None) -> Variant:
        """The variant in a file of the key; `course` goes before its own. Raises Fault where it is gone, cannot be
        read or lies somewhere else.
        """
        door = Door(str(self.path), self.root or real_root(self.path.parent))
        try:
            data = door.read(_inside(file), PROBLEM)
        except Fault as fault:
            raise Fault(
                str(self.path),
                None,
                "file",
                fault.found,
                "a path that stays in the folder of the key",
                "variants/birk-tallow.toml",
            ) from None
        return _variant(opened(data, door.path(file), Door(door.path(file), self.root), True), course)


def _inside(file: str) -> str:
    """The path of a file, once it is seen not to lead upward. Raises Fault."""
    if ".." in PurePosixPath(file).parts or "\\" in file:
        raise Fault(found=shown(file))
    return file


def variant_in(file: Path, course: Mapping[str, object] | None = None, root: str = "") -> Variant:
    """The problem of a file, made fit to travel; `course` goes before its own. Raises Fault."""
    return _variant(tables_of(file, root), course)


def _variant(top: Fields, course: Mapping[str, object] | None) -> Variant:
    tables, beside = whole(top, course)
    told = json.dumps(
        [tables, sorted((name, content.hex()) for name, content in beside.items())], default=str, sort_keys=True
    )
    return Variant(top.origin.file, sha256(told.encode()).hexdigest(), tables, beside)


def read_key(path: Path, root: str = "") -> Key:
    """The key as `explain vary` writes it, or as a spreadsheet has saved it again. Raises Fault."""
    rows = [row for _, row in table_lines(table_text(path, _KEY), str(path), _KEY)]
    heads = [each.strip().casefold() for each in rows[0]] if rows else []
    missing = [each for each in _HEADS if each not in heads]
    if missing:
        there = ", ".join(shown(each) for each in rows[0][:8]) if rows else "none at all"
        raise _KEY.fault(
            str(path),
            f"the columns {there}, and none called {' or '.join(missing)}" if rows else "nothing: the file is empty",
        )
    who, where = (heads.index(each) for each in _HEADS)
    found = [
        (row[who], row[where].strip())
        for row in rows[1:]
        if len(row) > max(who, where) and row[who].strip() and row[where].strip()
    ]
    if not found:
        raise _KEY.fault(str(path), "no student with a file")
    place = heads.index("id") if "id" in heads else len(rows[0])
    ids = [(row[place], row[where].strip()) for row in rows[1:] if len(row) > max(place, where) and row[place].strip()]
    return Key(path, found, root, ids)


# ---------------------------------------------------------------------- names
def _listed(pairs: Iterable[tuple[str, str]]) -> dict[str, list[str]]:
    out: dict[str, list[str]] = {}
    for name, file in pairs:
        if file not in out.setdefault(name, []):
            out[name].append(file)
    return out


def _plain(name: str) -> str:
    """A name as it was written, in one form of Unicode, with single spaces."""
    return " ".join(unicodedata.normalize("NFC", unguarded(name)).split())


def _folded(name: str) -> str:
    return folded_name(_plain(name))


def _slug(name: str) -> str:
    """What a file of the student would be called; "" for a name without a letter or figure that files have."""
    plain = unicodedata.normalize("NFKD", name)
    return stem(_plain(name)) if any(each.isascii() and each.isalnum() for each in plain) else ""
