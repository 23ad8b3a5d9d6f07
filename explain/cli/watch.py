"""Doing something again whenever one of several files is saved. Knows no problem, and what is done only by its name."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator, Mapping, Sequence
from pathlib import Path
from time import sleep
from types import MappingProxyType

PAUSE = 0.25  # seconds between two looks
Stamp = tuple[int, int, int] | None


def _pause() -> None:
    sleep(PAUSE)


def saves(
    files: Callable[[], Sequence[Path]],
    rest: Callable[[], object] = _pause,
    before: Mapping[Path, Stamp] = MappingProxyType({}),
) -> Iterator[tuple[Path, ...]]:
    """The files that were saved, once for each time that any of them was and all have come to rest since. What is to be
    watched is asked for anew each time; a file that is only begun to be watched counts as seen. `rest` is what is done
    between two looks. `before` are stamps taken earlier: what was saved since then counts.
    """
    seen = {file: before.get(file, stamp(file)) for file in files()}
    while True:
        rest()
        now = {file: stamp(file) for file in seen}
        changed = tuple(file for file in seen if now[file] != seen[file])
        if not changed:
            continue
        while True:  # an editor may take its file away for a moment, or write it in pieces
            rest()
            later = {file: stamp(file) for file in seen}
            if later == now:
                break
            now = later
        seen = now
        yield changed
        seen = {file: seen.get(file, stamp(file)) for file in files()}


def stamp(file: Path) -> Stamp:
    """What changes about a file when it is saved; None where there is none."""
    try:
        found = os.stat(file)
    except (OSError, ValueError):
        return None
    return found.st_mtime_ns, found.st_size, found.st_ino
