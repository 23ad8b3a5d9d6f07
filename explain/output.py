"""Files that come out: which format a name asks for, and writing whole or not at all."""
from __future__ import annotations

import os
import tempfile
from pathlib import Path

from .faults import Fault

FORMS = {".md": "markdown", ".markdown": "markdown", ".html": "html", ".htm": "html", ".pdf": "pdf", ".txt": "text",
         ".json": "json", ".jsonl": "json"}
SUFFIXES = {"markdown": ".md", "html": ".html", "pdf": ".pdf", "text": ".txt", "json": ".json"}


def form_of(path: Path) -> str:
    """The format a file's suffix asks for. Raises Fault for a suffix that stands for none."""
    form = FORMS.get(path.suffix.lower())
    if form is None:
        raise Fault(file=str(path), found=f'the suffix "{path.suffix}"', expected="one of " + ", ".join(FORMS),
                    example=str(path.with_suffix(".md").name))
    return form


def drawing_only(path: Path) -> None:
    """Refuse a suffix that stands for anything but an SVG. Raises Fault."""
    if path.suffix.lower() not in ("", ".svg"):
        raise Fault(file=str(path), found=f'the suffix "{path.suffix}" for a drawing', expected="the suffix .svg: drawings are written as SVG only",
                    example=f"-o {path.with_suffix('.svg').name}")


def put_whole(path: Path, content: bytes) -> None:
    """Write a file whole or not at all: an existing file stays as it was until the new one is complete. Raises Fault."""
    try:
        handle, name = tempfile.mkstemp(dir=path.parent or Path("."), prefix=f".{path.name[:40]}.")
        try:
            with os.fdopen(handle, "wb") as file:
                file.write(content)
            os.chmod(name, 0o644 if not path.exists() else path.stat().st_mode & 0o777)
            os.replace(name, path)
        except BaseException:
            os.unlink(name)
            raise
    except OSError as error:
        raise Fault(file=str(path), found=f"a place that cannot be written ({error.strerror or error})",
                    expected="a folder that exists and may be written to, on a disk with room", example="-o page.md") from error


def refused(error: OSError) -> Fault:
    """The fault for a file or a stream that the system would not read or write: a full disk, a name that is too long."""
    said, name = error.strerror or type(error).__name__, os.fspath(error.filename) if isinstance(error.filename, str | os.PathLike) else ""
    return Fault(file=name, found=f"a file or a stream that cannot be read or written ({said})",
                 expected="a name that the system takes, and a disk with room", example="-o page.md")


def make_folder(folder: Path) -> None:
    """A folder to write into, made where it is not there yet. Raises Fault."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise Fault(file=str(folder), found=f"a place where no folder can be made ({error.strerror or error})", expected="the name of a folder",
                    example="-o pages") from error
