"""Problem files as a tutor's page loads and saves them: whole or not at all, inside the folder, through no link, and
never over what somebody else wrote meanwhile. Knows no problem.
"""

from __future__ import annotations

import errno
import os
import stat
import threading
from hashlib import sha256
from pathlib import Path
from typing import NamedTuple

from ..errors import Fault
from ..input import PROBLEM
from ..output import put_new, put_whole

MOST_BYTES = 100_000  # of a file that a page may edit
_READ = os.O_RDONLY | sum(getattr(os, each, 0) for each in ("O_NONBLOCK", "O_NOCTTY", "O_CLOEXEC", "O_NOFOLLOW"))
_MARK = b"\xef\xbb\xbf"  # of order of bytes, at the head of a file
_saving = threading.Lock()  # one at a time, so that nothing is written between the look and the replacing
_WHY = {
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "the disk is full",
    errno.EACCES: "the folder may only be read",
    errno.EPERM: "the folder may only be read",
    errno.EROFS: "the folder may only be read",
}


class Loaded(NamedTuple):
    """A text as it stands on the disk, with a digest of its bytes; no digest where there is no such file."""

    text: str = ""
    digest: str = ""


class Unsaved(Exception):
    """Nothing was changed; the message says why, in a sentence."""


class Changed(Exception):
    """Nothing was changed, because the file is not the one that was loaded: `there` is what it is now."""

    def __init__(self, there: Loaded) -> None:
        super().__init__(there)
        self.there = there


def load(path: Path) -> Loaded:
    """The text of a problem file, "" where there is none. Raises Unsaved where it cannot be shown as text."""
    data = _bytes(path)
    return Loaded() if data is None else Loaded(_text(data), sha256(data).hexdigest())


def save(path: Path, text: str, digest: str) -> Loaded:
    """Write a text where the file is still the one with that digest ("": none). Line ends stay as they are. Raises
    Changed and Unsaved, and then nothing was written.
    """
    with _saving:
        before = _bytes(path)
        there = "" if before is None else sha256(before).hexdigest()
        if there != digest:
            raise Changed(Loaded() if before is None else Loaded(_text(before), there))
        data = _encoded(text, before or b"")
        if before is not None and not os.access(path, os.W_OK):
            raise Unsaved("It could not be saved: the file may only be read. Nothing was changed.")
        try:
            if before is None:
                put_new(((path, data),))
            else:
                put_whole(path, data)
        except Fault as fault:
            raise _unsaved(fault) from None
        return Loaded(text, sha256(data).hexdigest())


def _unsaved(fault: Fault) -> Unsaved:
    number = getattr(fault.__cause__, "errno", None)
    if number is None:
        return Unsaved("It could not be saved: there is a file of that name already. Nothing was changed.")
    why = _WHY.get(number, "the folder cannot be written")
    return Unsaved(f"It could not be saved: {why}. Nothing was changed.")


def _bytes(path: Path) -> bytes | None:
    """What a regular file holds, None where there is nothing of that name. A link is never followed."""
    try:
        handle = os.open(path, _READ)
    except FileNotFoundError:
        return None
    except OSError:
        raise Unsaved("This file cannot be read here: it is a link, or may not be read.") from None
    with os.fdopen(handle, "rb") as stream:
        if not stat.S_ISREG(os.fstat(handle).st_mode):
            raise Unsaved("This is no plain file.")
        data = stream.read(PROBLEM.most + 1)
    if len(data) > MOST_BYTES:
        raise Unsaved(f"This file is too long for this page: more than {MOST_BYTES:,} bytes.")
    return data


def _text(data: bytes) -> str:
    """The text, with the line ends that a text box has."""
    try:
        return data.decode("utf-8-sig").replace("\r\n", "\n")
    except UnicodeDecodeError:
        raise Unsaved("This file is not text in UTF-8: save it as that with the program that wrote it.") from None


def _encoded(text: str, before: bytes) -> bytes:
    """The bytes of a text, each line with the end that it had before; new ones have that of most lines."""
    try:
        lines = [each.encode() for each in text.replace("\r\n", "\n").split("\n")]
    except UnicodeEncodeError:
        raise Unsaved("It could not be saved: there is half a character in it. Nothing was changed.") from None
    old = before.removeprefix(_MARK).split(b"\n")
    returns = [each.endswith(b"\r") for each in old[:-1]]
    usual = 2 * sum(returns) > len(returns)
    kept = [each.removesuffix(b"\r") for each in old]
    ahead = _alike(lines, kept)
    behind = min(_alike(lines[::-1], kept[::-1]), min(len(lines), len(kept)) - ahead)
    ends = [usual] * (len(lines) - 1)
    for place in range(len(lines) - 1):
        if place < ahead:
            ends[place] = returns[place] if place < len(returns) else usual
        elif place >= len(lines) - behind:
            ends[place] = returns[place - len(lines) + len(old)]
    body = b"".join(line + (b"\r\n" if end else b"\n") for line, end in zip(lines, ends, strict=False)) + lines[-1]
    return _MARK * before.startswith(_MARK) + body


def _alike(one: list[bytes], other: list[bytes]) -> int:
    """How many lines are the same from the first on."""
    return next((n for n, (a, b) in enumerate(zip(one, other, strict=False)) if a != b), min(len(one), len(other)))
