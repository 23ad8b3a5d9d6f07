"""Where in a TOML text a table or a key stands. Knows the outline of TOML, not its values; the text is known to be
TOML.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from typing import NamedTuple

from ..errors import legible

Path = tuple[str | int, ...]

_PIECE = re.compile(
    r'''(?x)
    """ (?: \\. | [^\\] )*? "{3,5}  |  \'\'\' .*? \'{3,5}  |  " (?: \\. | [^"\\\n] )* "  |  \' [^\'\n]* \'
  | \# [^\n]*  |  [\[\]{}]  |  \n  |  [^"'\#\[\]{}\n]+  |  .''',
    re.DOTALL,
)
_KEY = re.compile(r"""[ \t]*(?:"((?:\\.|[^"\\])*)"|'([^']*)'|([A-Za-z0-9_-]+))[ \t]*""")


class Statement(NamedTuple):
    """A header or a key with its value: its path, that of the table it stands in (a header stands in its own), and
    the lines, from 1, that it takes up.
    """

    path: Path
    table: Path
    first: int
    last: int

    @property
    def header(self) -> bool:
        return self.path == self.table


def written(path: Path) -> str:
    """A path as it is told to people, the first table of a kind being 1: ("muscle", 0, "force") is
    "muscle[1].force".
    """
    said = "".join(f"[{step + 1}]" if isinstance(step, int) else f".{step}" for step in path)
    return legible(said.removeprefix(".")[:120])


def path_before(text: str) -> Path:
    """The table that a key would belong to which came next after this text."""
    here: Path = ()
    met: dict[Path, int] = {}
    for _, _, statement in _pieces(text):
        here = _headed(statement, met) or here
    return here


def statements(text: str) -> Iterator[Statement]:
    """The headers and keys of a text in their order."""
    here: Path = ()
    met: dict[Path, int] = {}
    for first, last, statement in _pieces(text):
        header = _headed(statement, met)
        here = header or here
        yield Statement(header or here + _keys(statement), here, first, last)


def line_of(text: str, path: Path) -> int | None:
    """The line (from 1) of the key or, where it is missing or inside another value, of the nearest thing around it.

    None where nothing around it has a line of its own.
    """
    best, best_line = 0, None
    for each in statements(text):
        shared = min(len(each.path), len(path))
        if shared > best and path[:shared] == each.path[:shared]:
            best, best_line = shared, each.first
    return best_line


def _headed(statement: str, met: dict[Path, int]) -> Path:
    """The table that a header begins, counted in `met`; () for what is no header."""
    if not statement.startswith("["):
        return ()
    if not statement.startswith("[["):
        return _numbered(_keys(statement[1:]), met)
    many = _numbered(_keys(statement[2:]), met)
    met[many] = met.get(many, -1) + 1
    return (*many, met[many])


def _numbered(keys: Path, met: dict[Path, int]) -> Path:
    """A header's path with the number of the latest table wherever one of its steps (but the last) is an array of
    tables.
    """
    path: Path = ()
    for place, key in enumerate(keys):
        path = (*path, key)
        if place < len(keys) - 1 and path in met:
            path = (*path, met[path])
    return path


def _keys(text: str) -> Path:
    keys: list[str] = []
    start = 0
    while found := _KEY.match(text, start):
        keys.append(_named(*found.groups()))
        if text[found.end() : found.end() + 1] != ".":
            break
        start = found.end() + 1
    return tuple(keys)


def _named(basic: str | None, literal: str | None, bare: str | None) -> str:
    """A key as it is meant, of which one of three spellings is there."""
    if basic is not None and "\\" in basic:
        try:
            return str(tomllib.loads(f'key = "{basic}"')["key"])
        except ValueError:  # in a text that turns out to be no TOML
            return basic
    return next((each for each in (basic, literal, bare) if each is not None), "")


def _pieces(text: str) -> Iterator[tuple[int, int, str]]:
    """Each header or key with its value, and the lines where it begins and ends."""
    line, start, depth, parts = 1, 1, 0, list[str]()
    for found in _PIECE.finditer(text):
        piece = found[0]
        depth += (piece in "[{") - (piece in "]}")
        if piece == "\n" and depth == 0:
            yield from _whole(start, line, parts)
            parts, start = [], line + 1
        elif not piece.startswith("#"):
            parts.append(piece)
        line += piece.count("\n")
    yield from _whole(start, line, parts)


def _whole(start: int, line: int, parts: list[str]) -> Iterator[tuple[int, int, str]]:
    statement = "".join(parts).strip()
    if statement:
        yield start, line, statement
