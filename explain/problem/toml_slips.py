"""What is wrong with a line that is no TOML, as far as the line shows it, and how it would be right. Knows no key."""

from __future__ import annotations

import re
import tomllib
from typing import NamedTuple

from ..errors import legible, shown
from .toml_lines import Path, path_before, written

_LONGEST = 200
_LINE = re.compile(r"\s*([A-Za-z0-9_.-]+|\"[^\"]*\")\s*([=:])?\s*(.*?)\s*")
_HEADING = re.compile(r"\s*(\[{1,2})\s*([A-Za-z0-9_.-]{1,60})\s*(\]{0,3})\s*(?:#.*)?")
_CURLY = str.maketrans({"“": '"', "”": '"', "„": '"', "«": '"', "»": '"', "‘": "'", "’": "'", "‚": "'"})
_BEHIND = re.compile(r"\s+#[^\"']*$")


class Slip(NamedTuple):
    """The key that begins the line, what was found there, the line as it would be right, and what to do about it."""

    key: str
    found: str
    example: str
    advice: str = ""


def slip_in(text: str, number: int) -> Slip | None:
    """What a line (from 1) of a text shows; None where it does not begin with a key."""
    lines = text.splitlines()
    line = lines[number - 1][:_LONGEST] if 0 < number <= len(lines) else ""
    if heading := _HEADING.fullmatch(line):
        right = f"[[{heading[2]}]]" if heading[1] == "[[" else f"[{heading[2]}]"
        whole = heading[1] + heading[3] in ("[]", "[[]]")
        return None if whole else Slip(legible(heading[2]), "a heading whose brackets do not match", right)
    found = _LINE.fullmatch(line)
    if found is None or line.lstrip().startswith("["):
        return None
    key, sign, value = found.groups()
    path: Path = (*path_before("\n".join(lines[: number - 1])), *key.strip('"').split("."))
    return Slip(written(path), *_seen(line.strip(), key, sign or "", value))


def _seen(line: str, key: str, sign: str, value: str) -> tuple[str, str, str]:
    if line != line.translate(_CURLY):
        advice = "Word processors curl quotation marks as they are typed; a plain text editor leaves them straight."
        return "curly quotation marks", _right(line.translate(_CURLY), key), advice
    bare = _BEHIND.sub("", value)
    if sign == ":":
        return "a colon behind the key", _right(f"{key} = {value}", f"{key} = {_quoted(bare)}", key), ""
    if not sign or not bare:
        return f"{shown(line)}, a key without a value", _right("", key), ""
    if bare[0] not in "\"'[{":
        return f"{_told(bare)} without quotation marks", _right(f"{key} = {_quoted(bare)}", key), ""
    if bare[0] in "\"'" and bare.count(bare[0]) % 2:
        return "a quotation mark that is not closed", _right(f"{key} = {_quoted(bare)}", key), ""
    return _told(line), _right(f"{key} = {bare}", key), ""


def _right(*lines: str) -> str:
    """The first of these lines that is TOML; the last of them is a key, for an example where none is."""
    *candidates, key = lines
    return next((legible(line) for line in candidates if _is_toml(line)), f'{key} = "text or number with unit"')


def _is_toml(line: str) -> bool:
    try:
        return bool(tomllib.loads(line))
    except (tomllib.TOMLDecodeError, RecursionError, ValueError):
        return False


def _quoted(value: str) -> str:
    return '"' + value.strip("\"'").replace("\\", "").replace('"', "") + '"'


def _told(text: str) -> str:
    return legible(text[:60]) + ("..." if len(text) > 60 else "")
