"""The folder of problems as a table of names: what an address may name. Works nothing.

A name is a key of this table, never a path. Regular files of the folder itself alone are in it, no links.
"""

from __future__ import annotations

import os
import re
import stat
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from itertools import chain, count
from pathlib import Path

from ..input import PROBLEM

NAME = re.compile(r"[a-z0-9][a-z0-9-]{0,63}")
_READ = os.O_RDONLY | sum(getattr(os, each, 0) for each in ("O_NONBLOCK", "O_NOCTTY", "O_CLOEXEC", "O_NOFOLLOW"))
_PROBLEM = frozenset(("pivot", "segment", "muscle", "load"))  # keys of problems
_NO_PROBLEM = ("base", "chapter", "step", "problem")  # of series and books


@dataclass(frozen=True, slots=True)
class Item:
    """A problem of the shelf: its name in addresses, its file, its title, and when it was written last."""

    name: str
    path: Path
    title: str
    stamp: tuple[int, int]


class Shelf:
    """The problems of a folder, in the order of their files' names; looked through again where it may have changed."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._seen: dict[Path, tuple[tuple[int, int], str | None]] = {}
        self._last: Mapping[str, Item] = {}

    def items(self) -> Mapping[str, Item]:
        """By name. A file that is no TOML is there, so that its fault can be told; one that is a course, a series or
        a book is not.
        """
        out: dict[str, Item] = {}
        for path in sorted(self.folder.glob("*.toml"), key=lambda each: each.name):
            stamp = _stamp(path)
            if stamp is None:
                continue
            if self._seen.get(path, (None, None))[0] != stamp:
                self._seen[path] = (stamp, title_of(path))
            title = self._seen[path][1]
            if title is not None:
                name = _free(path.stem, out)
                out[name] = Item(name, path, title or path.stem, stamp)
        self._last = out
        return out

    def item(self, name: str) -> Item | None:
        """The problem of a name; the folder is looked through only where its file is not as it was."""
        known = self._last.get(name)
        return known if known is not None and _stamp(known.path) == known.stamp else self.items().get(name)


def read_text(path: Path, most: int = PROBLEM.most) -> str:
    """The text of a regular file that is no link, of `most` bytes. Raises OSError, ValueError."""
    handle = os.open(path, _READ)
    with os.fdopen(handle, "rb") as stream:
        if not stat.S_ISREG(os.fstat(handle).st_mode):
            raise OSError("no regular file")
        data = stream.read(most + 1)
    if len(data) > most:
        raise ValueError("too large")
    return data.decode("utf-8-sig")


def _stamp(path: Path) -> tuple[int, int] | None:
    try:
        found = path.lstat()
    except OSError:
        return None
    return (found.st_mtime_ns, found.st_size) if stat.S_ISREG(found.st_mode) else None


def title_of(path: Path) -> str | None:
    """The title of a problem, "" where it has none or cannot be read; None where the file is something else."""
    try:
        keys = tomllib.loads(read_text(path))
    except (OSError, ValueError, RecursionError):
        return ""
    if not _PROBLEM & keys.keys() or any(each in keys for each in _NO_PROBLEM):
        return None
    title = keys.get("title", "")
    return title if isinstance(title, str) else ""


def name_of(stem: str) -> str:
    """The name in addresses of a file or folder."""
    return re.sub(r"[^a-z0-9]+", "-", stem.lower()).strip("-")[:56] or "problem"


def _free(stem: str, taken: Mapping[str, Item]) -> str:
    """A name that nothing has yet."""
    name = name_of(stem)
    return next(each for each in chain((name,), (f"{name}-{n}" for n in count(2))) if each not in taken)
