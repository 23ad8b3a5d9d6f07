"""One thing in a TOML text changed, all else kept to the byte: a value, a key, a table. Knows TOML, no key by name.

Each change is proved by reading: the new text must differ from the old in what was asked, and in nothing else.
Otherwise the text stays as it was, and it is said why.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from copy import deepcopy
from typing import Any

from .toml_lines import Path, line_of, statements
from .toml_values import assigned, key_text, value_text

_SPACE = re.compile(r"(?:[ \t\r\n]|#[^\n]*)*")  # what may stand between the values of a list
_STRING = re.compile(r'"""(?:\\.|[^\\])*?"{3,5}|\'\'\'.*?\'{3,5}|"(?:\\.|[^"\\\n])*"|\'[^\'\n]*\'', re.DOTALL)
_BARE = re.compile(r"[^\s,#\]\}]+(?: \d\d:[\d:.]+\S*)?")  # a number, true, a date with its time
_EQUALS = re.compile(r"[ \t]*=[ \t]*")


_NOT_PLAIN = "This value is written in a way that can be changed in the file only."


class NotPut(Exception):
    """The text stays as it was; the message says why, in a sentence."""


def put(text: str, path: Path, value: object) -> str:
    """The text with the value at a path changed, with the key put in where its table has none yet, or, for None, taken
    out. Raises NotPut.
    """
    before, wanted = _read(text)
    table = _at(before, path[:-1]) if path else None
    if not isinstance(table, dict | list) or (isinstance(table, list) and not _is_place(table, path[-1])):
        raise NotPut("There is no such table in the file.")
    there = isinstance(table, list) or path[-1] in table
    if value is None:
        if not there:
            return text
        del _at(wanted, path[:-1])[path[-1]]
        return _proved(_without(text, path), wanted)
    if there and _same(_at(before, path), value):
        return text
    _at(wanted, path[:-1])[path[-1]] = _plain(value)
    return _proved(_changed(text, path, value) if there else _with_key(text, path, value), wanted)


def add_table(text: str, kind: str, table: Mapping[str, object], many: bool = True) -> str:
    """The text with one table more behind all else: [[kind]], or [kind] where there is not to be another. Raises
    NotPut.
    """
    _, wanted = _read(text)
    new = {key: _plain(value) for key, value in table.items()}
    there = wanted.setdefault(kind, [] if many else new)
    if (many and not isinstance(there, list)) or (not many and there is not new):
        raise NotPut(f"{kind} is there already, or written otherwise: change it in the file.")
    if many:
        there.append(new)
    end = _line_end(text)
    gap = "" if not text or text.endswith("\n") else end
    head = f"[[{key_text(kind)}]]" if many else f"[{key_text(kind)}]"
    block = end.join((head, *assigned(table)))
    return _proved(text + gap + (end if text.strip() else "") + block + end, wanted)


def cut_table(text: str, path: Path) -> str:
    """The text without the table at a path such as ("load", 0): from its header to the next, and the comment directly
    above that is the next one's. Raises NotPut.
    """
    _, wanted = _read(text)
    around = _at(wanted, path[:-1]) if path else None
    if around is None or not isinstance(_at(wanted, path), dict):
        raise NotPut("There is no such table in the file.")
    del around[path[-1]]
    if isinstance(around, list) and not around and len(path) == 2:
        del wanted[str(path[0])]
    heads = [each for each in statements(text) if each.header]
    place = next((number for number, each in enumerate(heads) if each.path == path), None)
    if place is None:
        raise NotPut("This table has no header of its own: change it in the file.")
    behind = next((each.first for each in heads[place + 1 :] if each.path[: len(path)] != path), None)
    lines, start = _lines(text), heads[place].first - 1
    end = len(lines) if behind is None else _comment_above(lines, behind - 1)
    while behind is None and start and not lines[start - 1].strip():  # no blank lines at the end of a file
        start -= 1
    return _proved("".join(lines[:start] + lines[end:]), wanted)


# ---------------------------------------------------------------------- proof
def _read(text: str) -> tuple[dict[str, Any], dict[str, Any]]:
    """What a text says, and that once more, to be changed."""
    try:
        found = tomllib.loads(text)
        return found, deepcopy(found)
    except (ValueError, RecursionError):
        raise NotPut("The file is not TOML just now: mend it first.") from None


def _proved(text: str, wanted: Mapping[str, object]) -> str:
    """The text, known to say what is wanted. Raises NotPut."""
    try:
        found: object = tomllib.loads(text)
    except (ValueError, RecursionError):
        found = None
    if not _same(found, wanted):
        raise NotPut("More than this would change: change it in the file.")
    return text


def _same(one: object, other: object) -> bool:
    """Whether two values are written as the same: 1, 1.0 and true are three."""
    if isinstance(one, dict) and isinstance(other, Mapping):
        return one.keys() == other.keys() and all(_same(value, other[key]) for key, value in one.items())
    if isinstance(one, list) and isinstance(other, list | tuple):
        return len(one) == len(other) and all(map(_same, one, other))
    return type(one) is type(other) and (one == other or (one != one and other != other))


def _plain(value: object) -> object:
    return [_plain(each) for each in value] if isinstance(value, list | tuple) else value


def _is_place(of: list[object], step: object) -> bool:
    return isinstance(step, int) and 0 <= step < len(of)


def _at(top: Any, path: Path) -> Any:
    """What stands at a path, None where nothing does."""
    for step in path:
        if isinstance(top, dict) and step in top:
            top = top[step]
        elif isinstance(top, list) and _is_place(top, step):
            top = top[int(step)]
        else:
            return None
    return top


# ---------------------------------------------------------------------- places
def _changed(text: str, path: Path, value: object) -> str:
    start, end = _span(text, path)
    written = _written(value, text[start:end]).replace("\n", _line_end(text))
    return text[:start] + written + text[end:]


def _written(value: object, before: str) -> str:
    """A value as the file would write it: with the quotation marks, and in as many lines, as the one before."""
    if isinstance(value, str):
        literal = before.startswith("'") and not before.startswith("'''")
        if literal and "'" not in value and value.isprintable():
            return f"'{value}'"
        return value_text(value, long=before.startswith(('"""', "'''")) or "\n" in value)
    return value_text(value)


def _with_key(text: str, path: Path, value: object) -> str:
    """The text with a line more behind the last line of its table's own keys."""
    long = isinstance(value, str) and "\n" in value
    lines, end = _lines(text), _line_end(text)
    written = f"{key_text(str(path[-1]))} = {value_text(value, long)}".replace("\n", end) + end
    own = [each for each in statements(text) if each.table == path[:-1]]
    if own:
        at = own[-1].last
        lines[at - 1] += "" if lines[at - 1].endswith("\n") else end
        return "".join((*lines[:at], written, *lines[at:]))
    if path[:-1]:
        raise NotPut("This table has no header of its own: change it in the file.")
    first = next((each.first for each in statements(text)), None)
    at = len(lines) if first is None else _comment_above(lines, first - 1)
    if at and not lines[at - 1].endswith("\n"):
        lines[at - 1] += end
    return "".join((*lines[:at], written, "" if first is None else end, *lines[at:]))


def _without(text: str, path: Path) -> str:
    """The text without the lines of a key."""
    found = next((each for each in statements(text) if each.path == path and not each.header), None)
    if found is None:
        raise NotPut("This is written within another value: change it in the file.")
    lines = _lines(text)
    return "".join(lines[: found.first - 1] + lines[found.last :])


def _span(text: str, path: Path) -> tuple[int, int]:
    """Where the value at a path begins and ends. Raises NotPut where that is not plain."""
    line = line_of(text, path)
    found = next((each for each in statements(text) if each.first == line and not each.header), None)
    if line is None or found is None or found.path != path[: len(found.path)]:
        raise NotPut(_NOT_PLAIN)
    at = _behind_equals(text, sum(map(len, _lines(text)[: line - 1])))
    rest = path[len(found.path) :]
    while rest:
        step, at = next((each for each in _parted(text, at)[0] if each[0] == rest[: len(each[0])]), ((), at))
        if not step:
            raise NotPut(_NOT_PLAIN)
        rest = rest[len(step) :]
    return at, _parted(text, at)[1]


def _behind_equals(text: str, at: int) -> int:
    """Where the value of the key begins that stands here."""
    while at < len(text) and text[at] not in "=\n":
        string = _STRING.match(text, at)
        at = string.end() if string else at + 1
    found = _EQUALS.match(text, at)
    if found is None:
        raise NotPut(_NOT_PLAIN)
    return found.end()


def _parted(text: str, at: int) -> tuple[list[tuple[Path, int]], int]:
    """Of the value that begins here: the places of its list, or the keys of its table, with where their values begin;
    and where it ends.
    """
    opened = text[at : at + 1]
    if opened not in ("[", "{"):
        found = _STRING.match(text, at) or _BARE.match(text, at)
        if found is None:
            raise NotPut(_NOT_PLAIN)
        return [], found.end()
    out: list[tuple[Path, int]] = []
    here = _behind_space(text, at + 1)
    while here < len(text) and text[here] not in "]}":
        step: Path = (len(out),)
        if opened == "{":
            begins = _behind_equals(text, here)
            step, here = _keys_of(text[here:begins]), begins
        out.append((step, here))
        here = _behind_space(text, _parted(text, here)[1])
        if text[here : here + 1] == ",":
            here = _behind_space(text, here + 1)
    return out, here + 1


def _keys_of(head: str) -> Path:
    """The path of a key with its equals sign."""
    found: object = tomllib.loads(f"{head} 0")
    keys: list[str] = []
    while isinstance(found, dict):
        keys += list(found)
        found = found[keys[-1]]
    return tuple(keys)


def _behind_space(text: str, at: int) -> int:
    found = _SPACE.match(text, at)
    return found.end() if found else at


def _comment_above(lines: list[str], at: int) -> int:
    """The first of the lines of comment that stand directly above a line: they belong to it."""
    while at and lines[at - 1].lstrip().startswith("#"):
        at -= 1
    return at


def _lines(text: str) -> list[str]:
    return re.findall(r"[^\n]*\n|[^\n]+", text)


def _line_end(text: str) -> str:
    return "\r\n" if "\r\n" in text else "\n"
