"""The variants of a problem as `explain vary` wrote them, in the order of their key. No student's name goes on from
here: a variant is known by its number.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import NamedTuple

from ..errors import Fault
from ..tally.key import Key, read_key

KEY = "key.csv"
_LONG = 60  # letters of a name


class Source(NamedTuple):
    """A problem file that becomes a question: its name in the package, its number among variants (0 for none), and what
    sees that it may be read, which raises Fault.
    """

    file: Path
    name: str
    variant: int = 0
    fit: Callable[[], object] = bool


def problems(files: Sequence[Path]) -> tuple[Source, ...]:
    """Problem files by themselves."""
    return tuple(Source(file, plain(file.stem)) for file in files)


def bank(folder: Path, root: str = "") -> tuple[Source, ...]:
    """The variants in a folder. Raises Fault where it has no key."""
    key = read_key(folder / KEY, root)
    files = tuple(dict.fromkeys(file for _, file in key.rows))
    name, wide = plain(folder.resolve().name), max(3, len(str(len(files))))
    return tuple(
        Source(folder / file, f"{name}-{place:0{wide}}", place, _seen(key, file)) for place, file in enumerate(files, 1)
    )


def _seen(key: Key, file: str) -> Callable[[], object]:
    return lambda: key.variant(file)


def told_apart(sources: Sequence[Source]) -> tuple[Source, ...]:
    """The same sources. Raises Fault where two would have one name."""
    names = [each.name.casefold() for each in sources]
    twice = [str(each.file) for each in sources if names.count(each.name.casefold()) > 1]
    if twice:
        raise Fault(
            found=f"{' and '.join(twice[:4])}, which would have one name in the package",
            expected="files and folders whose names differ in letters and figures",
            example="explain export jug.toml tin.toml -o week-3.zip",
        )
    return tuple(sources)


def plain(name: str) -> str:
    """A name fit for a file and an identifier: letters, figures and hyphens, a letter first."""
    found = re.sub(r"[^A-Za-z0-9]+", "-", name)[:_LONG].strip("-")
    return found if found[:1].isalpha() else f"problem-{found}" if found else "problem"
