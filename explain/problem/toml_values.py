"""Keys and values as a person would type them in TOML. Knows no table's outline."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping

_BARE = re.compile(r"[A-Za-z0-9_-]+")


def assigned(table: Mapping[str, object], long: str = "") -> Iterator[str]:
    """A line for each key; a text of several lines under the key `long` keeps them."""
    yield from (f"{key_text(key)} = {value_text(value, key == long)}" for key, value in table.items())


def key_text(key: str) -> str:
    """A key, in quotation marks where it needs them."""
    return key if _BARE.fullmatch(key) else _quoted(key)


def value_text(value: object, long: bool = False) -> str:
    """A value; a table within a table stands in one line. A `long` text keeps its lines."""
    match value:
        case bool():
            return "true" if value else "false"
        case int() | float():
            return repr(value)
        case list() | tuple():
            return "[" + ", ".join(map(value_text, value)) + "]"
        case Mapping():
            return "{ " + ", ".join(assigned(value)) + " }"
    text = str(value)
    if long and "\n" in text:
        return '"""\n' + "\n".join(_quoted(line)[1:-1] for line in text.split("\n")) + '"""'
    return _quoted(text)


def _quoted(text: str) -> str:
    """A basic string: JSON escapes are TOML's too, but for the one character that only TOML wants escaped."""
    return json.dumps(text.encode("utf-8", "replace").decode("utf-8"), ensure_ascii=False).replace("\x7f", "\\u007f")
