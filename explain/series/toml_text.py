"""Series files written out: tables as TOML that a person would type. Knows the outline of TOML and the order of
keys, nothing of what they mean.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping

_BARE = re.compile(r"[A-Za-z0-9_-]+")
_INLINE = ("set",)


def written(top: Mapping[str, object], comment: str = "") -> str:
    """A series file with its start and its steps; `comment` stands above it, a line each."""
    lines = [f"# {line}" for line in comment.splitlines()]
    lines += _keys({key: value for key, value in top.items() if key not in ("start", "step")})
    if start := top.get("start"):
        lines += ["", "[start]", *_table(start, "start")]
    steps = top.get("step")
    for step in steps if isinstance(steps, list) else ():
        lines += ["", "[[step]]", *_table(step, "step")]
    return "\n".join(lines) + "\n"


def _table(table: object, path: str) -> Iterator[str]:
    """The plain keys of a table, and behind them the tables in it."""
    if not isinstance(table, Mapping):
        return
    inner = {key: value for key, value in table.items() if isinstance(value, Mapping) and key not in _INLINE}
    yield from _keys({key: value for key, value in table.items() if key not in inner})
    for key, value in inner.items():
        yield from _inner(value, f"{path}.{_name(key)}")


def _inner(value: Mapping[str, object], path: str) -> Iterator[str]:
    listed = {
        key: each for key, each in value.items() if isinstance(each, list) and each and isinstance(each[0], Mapping)
    }
    if len(listed) < len(value):
        yield f"[{path}]"
        yield from _keys({key: each for key, each in value.items() if key not in listed})
    for key, tables in listed.items():
        for table in tables:
            yield f"[[{path}.{_name(key)}]]"
            yield from _keys(table)


def _keys(table: Mapping[str, object]) -> Iterator[str]:
    yield from (f"{_name(key)} = {_value(value)}" for key, value in table.items())


def _name(key: str) -> str:
    return key if _BARE.fullmatch(key) else _text(key)


def _value(value: object) -> str:
    match value:
        case bool():
            return "true" if value else "false"
        case int() | float():
            return str(value)
        case list() | tuple():
            return "[" + ", ".join(map(_value, value)) + "]"
        case Mapping():
            return "{ " + ", ".join(f"{_name(key)} = {_value(each)}" for key, each in value.items()) + " }"
    return _text(str(value))


def _text(text: str) -> str:
    """A basic string: JSON escapes are TOML's too, but for the one character that only TOML wants escaped."""
    return json.dumps(text.encode("utf-8", "replace").decode("utf-8"), ensure_ascii=False).replace("\x7f", "\\u007f")
