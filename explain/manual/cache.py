"""Worked problems kept on disk, by what they were made from. Trusts no file: what is not whole, or not of this version,
is not there.

An entry is JSON behind its own digest, and only plain records of passages may come out of it: a file that asks for
anything else is passed over.
"""

from __future__ import annotations

import re
from contextlib import suppress
from functools import lru_cache
from hashlib import sha256
from pathlib import Path

from .. import __version__
from ..errors import Fault
from ..output import put_whole
from . import record_json
from .task import Worked

_MARK = b"worked problem 2\n"
_SUFFIX, PIECE = ".worked", ".piece"  # the latter of pages on paper, which `kept_pieces` looks after
_ENTRY = re.compile(r"\.?([0-9a-f]{32})[.-].*")


@lru_cache(maxsize=1)
def program() -> str:
    """A digest of the program itself: what another version kept is of no use to this one."""
    digest = sha256(__version__.encode())
    root = Path(__file__).resolve().parents[2]
    for package in ("explain", "rules"):
        for path in sorted((root / package).rglob("*")):
            if path.suffix in (".py", ".csv", ".css"):
                digest.update(path.relative_to(root).as_posix().encode() + b"\0" + path.read_bytes())
    return digest.hexdigest()


class Cache:
    """A folder of worked problems; `folder` "" keeps nothing."""

    def __init__(self, folder: str) -> None:
        self.folder = Path(folder) if folder else None

    def read(self, key: str) -> Worked | None:
        """What was kept under a key, or None."""
        if self.folder is None or not key:
            return None
        try:
            data = (self.folder / (key + _SUFFIX)).read_bytes()
        except OSError:
            return None
        body = data[len(_MARK) + 32 :]
        if not data.startswith(_MARK) or data[len(_MARK) : len(_MARK) + 32] != sha256(key.encode() + body).digest():
            return None
        try:
            return record_json.read(body)
        except ValueError:
            return None

    def keep(self, key: str, worked: Worked) -> None:
        """Keep a worked problem; a disk that takes nothing more is no reason to stop."""
        if self.folder is None or not key:
            return
        body = record_json.written(worked)
        with suppress(Fault):
            put_whole(self.folder / (key + _SUFFIX), _MARK + sha256(key.encode() + body).digest() + body)

    def only(self, keys: set[str]) -> None:
        """Forget all problems but those of these keys, and what a killed process left half written."""
        if self.folder is None:
            return
        for path in self.folder.iterdir():
            entry = _ENTRY.fullmatch(path.name)
            if path.suffix == PIECE and not path.name.startswith("."):
                continue
            if entry and (entry[1] not in keys or path.suffix != _SUFFIX):
                with suppress(OSError):
                    path.unlink()
