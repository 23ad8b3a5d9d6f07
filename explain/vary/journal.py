"""What a run has done so far, a line for each student, so that it can be taken up again. Knows lines of JSON,
nothing of what they hold.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

from ..errors import Fault
from ..output import put_whole

NAME = "run.jsonl"


class Journal:
    """The record in a folder: first what the run is, then the students that are done, in the order in which they
    were.
    """

    def __init__(self, folder: Path, run: Mapping[str, Any]) -> None:
        self.path, self.run = folder / NAME, dict(run)

    def before(self) -> dict[str, Any] | None:
        """The first line of the record that is there: None where there is none."""
        lines = _lines(self.path, most=1)
        return lines[0] if lines else None

    def done(self) -> dict[int | str, dict[str, Any]]:
        """What is recorded of each student by number or name; a line that was cut short is passed over."""
        return {each["student"]: each for each in _lines(self.path)[1:] if isinstance(each.get("student"), int | str)}

    def begin(self, done: Iterable[Mapping[str, Any]]) -> None:
        """Write the record anew, whole: the run and what is done. Raises Fault."""
        put_whole(self.path, b"".join(map(_line, (self.run, *done))))

    def add(self, entries: Iterable[Mapping[str, Any]]) -> None:
        """Record what has been done since. Raises Fault."""
        try:
            with self.path.open("ab") as file:
                file.write(b"".join(map(_line, entries)))
        except OSError as error:
            raise Fault(
                file=str(self.path),
                found=f"a place that cannot be written ({error.strerror or error})",
                expected="a folder that may be written to, on a disk with room",
                example="-o class-5b",
                advice="What is done is kept: the same command goes on from there.",
            ) from error


def _line(entry: Mapping[str, Any]) -> bytes:
    return json.dumps(entry, ensure_ascii=True, sort_keys=True).encode() + b"\n"


def _lines(path: Path, most: int = 0) -> list[dict[str, Any]]:
    """The lines that are whole; none where there is no such file."""
    out: list[dict[str, Any]] = []
    try:
        with path.open("rb") as file:
            for line in file:
                try:
                    found = json.loads(line) if line.endswith(b"\n") else None
                except ValueError:
                    found = None
                if isinstance(found, dict):
                    out.append(found)
                if most and len(out) >= most:
                    break
    except OSError:
        return []
    return out
