"""The one door to the files that people name: which may be opened, and how much of them is read. Knows no file's
meaning.

A name that stands in a file may have been written by anyone. It leads on from where it stands, to a regular file of a
kind that was expected, and
never out of the root where there is one; what is behind it is quoted by nobody before it is known to be what was
expected.
"""

from __future__ import annotations

import errno
import os
import stat
from dataclasses import dataclass
from pathlib import PurePosixPath, PureWindowsPath
from typing import NamedTuple

from .errors import Fault, shown

LONGEST = 1_000  # bytes of a name
_READ = os.O_RDONLY | sum(getattr(os, each, 0) for each in ("O_NONBLOCK", "O_NOCTTY", "O_CLOEXEC", "O_BINARY"))
_FOLDER = getattr(os, "O_PATH", os.O_RDONLY) | getattr(os, "O_DIRECTORY", 0) | getattr(os, "O_CLOEXEC", 0)
_NO_LINK = getattr(os, "O_NOFOLLOW", 0)
_HANDED_OVER = ("/dev/stdin", "/dev/fd/")  # what a shell puts in the place of a file: <(...)
_WHY = {
    errno.ENOENT: "there is no such file",
    errno.ENOTDIR: "there is no such file",
    errno.ENAMETOOLONG: "the name is too long",
    errno.ELOOP: "its links lead nowhere",
    errno.EISDIR: "that is a folder",
}


class Kind(NamedTuple):
    """A kind of file: what it is called, how its name ends, and the most bytes that one may have."""

    what: str
    suffixes: tuple[str, ...]
    most: int


PROBLEM = Kind("a problem file", (".toml",), 1_000_000)
COURSE = Kind("a course file", (".toml",), 1_000_000)
CHAPTER = Kind("a Markdown file", (".md", ".markdown"), 10_000_000)
TABLE = Kind("a CSV file", (".csv",), 1_000_000)


@dataclass(frozen=True, slots=True)
class Door:
    """The way from a file to those that it names. `file` is where the names stand; `root` is the folder that none may
    lead out of, "" for none.

    Where it is `shut`, as for a text that came from no file, nothing is opened.
    """

    file: str = ""
    root: str = ""
    shut: bool = False

    def path(self, name: str) -> str:
        return os.path.join(os.path.dirname(self.file), name)

    def behind(self, name: str) -> Door:
        """The door of a file that is named here."""
        return Door(self.path(name), self.root, self.shut)

    def read(self, name: str, kind: Kind) -> bytes:
        """What a file that is named holds. Raises Fault, which says nothing of what is in it."""
        why = self._refused(name, kind)
        if not why:
            try:
                data = _content(self._opened(self.path(name)), kind.most)
                why = f"it has more than {kind.most / 1_000_000:g} MB" if len(data) > kind.most else ""
            except (OSError, ValueError) as error:
                why = _WHY.get(getattr(error, "errno", None) or 0, "that is no file that can be read")
        if why:
            raise Fault(
                found=f"{shown(name)}, but {why}",
                expected=f"the path of {kind.what} ({kind.suffixes[0]}), from where this file is",
            )
        return data

    def _refused(self, name: str, kind: Kind) -> str:
        """Why a name is not even looked up, "" where it may be."""
        if self.shut:
            return "this text came from no file, and was given no folder (root) to open files in"
        if not name or any(each < " " or each == "\x7f" for each in name):
            return "that is no name of a file"
        if len(name.encode("utf-8", "replace")) > LONGEST:
            return "the name is too long"
        if PurePosixPath(name).is_absolute() or PureWindowsPath(name).anchor:
            return "that is not a path from where this file is"
        if not name.lower().endswith(kind.suffixes):
            return f"its name does not end in {' or '.join(kind.suffixes)}"
        return ""

    def _opened(self, path: str) -> int:
        """A descriptor. Below a root, links are resolved first, and then none is followed: what changes meanwhile is
        not reached.
        """
        if not self.root:
            return os.open(path, _READ)
        real = os.path.realpath(path)
        if os.path.commonpath((self.root, real)) != self.root:
            raise PermissionError(errno.EACCES, "out of the root")
        if os.open not in os.supports_dir_fd:
            return os.open(real, _READ)
        here = os.open(self.root, _FOLDER)
        try:
            *folders, last = os.path.relpath(real, self.root).split(os.sep)
            for folder in folders:
                there = os.open(folder, _FOLDER | _NO_LINK, dir_fd=here)
                os.close(here)
                here = there
            return os.open(last, _READ | _NO_LINK, dir_fd=here)
        finally:
            os.close(here)


SHUT = Door(shut=True)
Root = str | os.PathLike[str] | None


def real_root(root: Root) -> str:
    """A folder by its real path, "" for none. Raises Fault where it is no folder."""
    if root is None:
        return ""
    try:
        real = os.path.realpath(root)
        there = os.path.isdir(real)
    except (OSError, ValueError):
        there = False
    if not there:
        raise Fault(
            found=f"{shown(os.fspath(root))} as the root, but there is no such folder",
            expected="the folder that holds all files that are named",
            example="--root .",
        )
    return real


def given(path: str | os.PathLike[str], most: int) -> bytes:
    """What a file that a person chose holds, at most one byte more than `most`. Raises OSError or ValueError; a pipe
    or device is none.
    """
    handed_over = os.fspath(path).startswith(_HANDED_OVER)
    handle = os.open(path, _READ)
    if handed_over:
        os.set_blocking(handle, True)
    return _content(handle, most, handed_over)


def _content(handle: int, most: int, anything: bool = False) -> bytes:
    """What an open regular file holds, at most one byte more than `most`; closes it."""
    try:
        mode = os.fstat(handle).st_mode
        if stat.S_ISDIR(mode):
            raise IsADirectoryError(errno.EISDIR, os.strerror(errno.EISDIR))
        if not (anything or stat.S_ISREG(mode)):
            raise OSError(errno.EINVAL, "a pipe or a device")
        with os.fdopen(handle, "rb", closefd=False) as stream:
            return stream.read(most + 1) or b""
    finally:
        os.close(handle)


def text_of(data: bytes) -> str:
    """The text of a file: UTF-8, UTF-16 with its mark, else Windows Latin; bytes that are none of these become
    characters that are refused.
    """
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        return data.decode("utf-16", "replace")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("cp1252", "replace")
