"""Which files a problem file names: its course, and its class's own table. Opens none but the problem itself."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator, Mapping
from pathlib import Path

from ..input import PROBLEM, given

_KEYS = (("course", ""), ("course", "from"), ("person", "table"))
_SUFFIXES = (".toml", ".csv")


def named_files(problem: Path) -> tuple[Path, ...] | None:
    """The paths, whether or not there is such a file; None where the problem cannot be read as TOML just now."""
    try:
        keys = tomllib.loads(given(problem, PROBLEM.most)[: PROBLEM.most].decode("utf-8-sig"))
    except (OSError, ValueError, RecursionError):
        return None
    return tuple(dict.fromkeys(problem.parent / name for name in _names(keys)))


def _names(keys: Mapping[str, object]) -> Iterator[str]:
    for key, inner in _KEYS:
        value = keys.get(key)
        name = value.get(inner) if inner and isinstance(value, Mapping) else value if not inner else None
        if isinstance(name, str) and "\0" not in name and name.lower().endswith(_SUFFIXES):
            yield name
