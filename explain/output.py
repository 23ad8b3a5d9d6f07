"""Files that come out: which format a name asks for, and writing whole or not at all."""

from __future__ import annotations

import errno
import os
import stat
import sys
from collections.abc import Iterable, Sequence
from pathlib import Path
from secrets import token_hex

from .errors import Fault

FORMS = {
    ".md": "markdown",
    ".markdown": "markdown",
    ".html": "html",
    ".htm": "html",
    ".pdf": "pdf",
    ".tex": "latex",
    ".txt": "text",
    ".json": "json",
    ".jsonl": "json",
}
SUFFIXES = {"markdown": ".md", "html": ".html", "pdf": ".pdf", "latex": ".tex", "text": ".txt", "json": ".json"}
FORMATS = tuple(SUFFIXES)


def form_of(path: Path) -> str:
    """The format a file's suffix asks for. Raises Fault for a suffix that stands for none."""
    form = FORMS.get(path.suffix.lower())
    if form is None:
        raise Fault(
            file=str(path),
            found=f'the suffix "{path.suffix}"',
            expected="one of " + ", ".join(FORMS),
            example=str(path.with_suffix(".md").name),
        )
    return form


def drawing_only(path: Path) -> None:
    """Refuse a suffix that stands for anything but an SVG. Raises Fault."""
    if path.suffix.lower() not in ("", ".svg"):
        raise Fault(
            file=str(path),
            found=f'the suffix "{path.suffix}" for a drawing',
            expected="the suffix .svg: drawings are written as SVG only",
            example=f"-o {path.with_suffix('.svg').name}",
        )


def same(one: Path, other: Path) -> bool:
    """Whether two paths lead to one file that is there."""
    try:
        return os.path.samefile(one, other)
    except (OSError, ValueError):
        return False


def put_whole(path: Path, content: bytes) -> None:
    """Write a file whole or not at all: an existing file stays as it was until the new one is complete. Raises
    Fault.
    """
    put_all(((path, content),))


def put_all(files: Iterable[tuple[Path, bytes]]) -> None:
    """Write several files, all of them or none: each is complete beside its place before the first takes its place.
    Raises Fault.
    """
    waiting: list[tuple[str, Path]] = []
    try:
        for path, content in files:
            _lay_beside(path, content, waiting)
        while waiting:
            name, path = waiting[0]
            os.replace(name, path)
            del waiting[0]
    except OSError as error:
        raise no_room(str(path), error) from error
    finally:
        for name, _ in waiting:
            Path(name).unlink(missing_ok=True)


def put_new(files: Sequence[tuple[Path, bytes]]) -> None:
    """Write several new files, all of them or none; what is there is left as it is. Raises Fault."""
    written: list[Path] = []
    try:
        for path, content in files:
            with path.open("xb") as file:
                written.append(path)
                file.write(content)
    except OSError as error:
        for path in written:
            path.unlink(missing_ok=True)
        if not isinstance(error, FileExistsError):
            raise no_room(str(error.filename or files[0][0]), error) from error
        there = Path(str(error.filename))
        raise Fault(
            file=str(there),
            found="a file of that name, which is left as it is",
            expected="a name that nothing has yet",
            example=f"explain new {files[0][0].stem}-2",
        ) from None


def fit(path: Path) -> None:
    """See that a file can have this name, before anything else is written for its sake. Raises Fault."""
    try:
        _mode(path)
    except OSError as error:
        raise no_room(str(path), error) from error


def _lay_beside(path: Path, content: bytes, waiting: list[tuple[str, Path]]) -> None:
    """Write a new file beside a path, with this content, for a device the device itself. Its name is among those that
    wait before there is such a file: wherever a Ctrl-C comes, none is left behind. Raises OSError.
    """
    mode = _mode(path)
    if not stat.S_ISREG(mode):
        path.write_bytes(content)
        return
    name = str(path.parent / f".{path.name[:40]}.{token_hex(4)}")
    waiting.append((name, path))
    with os.fdopen(_new(name), "wb") as file:
        file.write(content)
    os.chmod(name, mode & 0o777)


def _new(name: str) -> int:
    """A descriptor of a file that was not there. Raises OSError."""
    return os.open(name, os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0), 0o600)


def _mode(path: Path) -> int:
    """What a file is to be, and for whom: as the one that is there. Raises OSError for a folder, and for a name that
    no file can have.
    """
    try:
        mode = os.stat(path).st_mode
    except FileNotFoundError:
        return stat.S_IFREG | 0o644
    if stat.S_ISDIR(mode):
        raise IsADirectoryError(errno.EISDIR, os.strerror(errno.EISDIR))
    return mode


def no_room(place: str, error: OSError) -> Fault:
    """What is said where something cannot be written."""
    return Fault(
        file=place,
        found=f"a place that cannot be written ({error.strerror or error})",
        expected="a folder that exists and may be written to, on a disk with room",
        example="-o page.md",
    )


def put_out(content: bytes) -> None:
    """Write to standard output, with a line break at the end. Raises Fault where it takes no more; a reader that has
    gone is not our affair.
    """
    stream = sys.stdout.buffer
    try:
        stream.write(content if content.endswith(b"\n") else content + b"\n")
        stream.flush()
    except BrokenPipeError:
        raise
    except OSError as error:
        give_up_output()
        raise no_room("standard output", error) from error


def give_up_output() -> None:
    """Lead standard output nowhere, so that what it did not take is not offered once more at the end."""
    try:
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, sys.stdout.fileno())
        os.close(nowhere)
    except (OSError, ValueError):
        return


def make_folder(folder: Path) -> None:
    """A folder to write into, made where it is not there yet. Raises Fault."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise Fault(
            file=str(folder),
            found=f"a place where no folder can be made ({error.strerror or error})",
            expected="the name of a folder",
            example="-o pages",
        ) from error
