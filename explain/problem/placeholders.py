"""Slots in an author's words, such as {jug.mass}, and the values of the same file that fill them. Knows tables, not
what a value means.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Any

LISTED = ("segment", "load", "muscle", "force", "couple")
SINGLE = ("pivot", "person")
NUMBER = re.compile(r"\s*([+-]?(?:\d+(?:\.\d*)?|\.\d+))\s*(.*)", re.DOTALL)
_SLOT = re.compile(r"\{([^{}.\n]{1,60})\.([a-z_]{1,20})\}")
_UNIT = re.compile(r"°|[A-Za-z²]+(?:[\^/·][A-Za-z0-9^]+)*(?: (?:m|cm|in|ft|lb|s)\b(?:\^-?[12])?)?|%")
_ANGLE = re.compile(r"(?:°|deg(?:rees?)?\b)")


def owners(tables: Mapping[str, Any]) -> Iterator[tuple[str, str, Mapping[str, Any]]]:
    """(name, kind, table) of everything whose keys can be named, in the order of a file."""
    for kind in LISTED:
        found = tables.get(kind, ())
        for table in found if isinstance(found, list | tuple) else ():
            if isinstance(table, Mapping):
                yield " ".join(str(table.get("name", "")).split()), kind, table
    for kind in SINGLE:
        if isinstance(table := tables.get(kind), Mapping):
            yield kind, kind, table


def slots(text: str) -> tuple[tuple[str, str], ...]:
    """Every slot of a text as (owner, key), in order."""
    return tuple((" ".join(owner.split()), key) for owner, key in _SLOT.findall(text))


def filled(text: str, tables: Mapping[str, Any]) -> str:
    """The text with each slot that names a value of these tables filled; one that names none stays as it stands."""
    if "{" not in text:
        return text
    known = {name: table for name, _, table in owners(tables)}

    def value(found: re.Match[str]) -> str:
        table = known.get(" ".join(found[1].split()), {})
        return told(table[found[2]]) if found[2] in table else found[0]

    return _SLOT.sub(value, text)


def told(value: object) -> str:
    """A value as it is said in a sentence: "3.4 kg", "70°" of a direction, "0.80" of a share of another force."""
    if isinstance(value, list | tuple):
        return "(" + ", ".join(map(told, value)) + ")"
    number = NUMBER.fullmatch(value) if isinstance(value, str) else None
    if number is None:
        return str(value)
    figures, rest = number[1].lstrip("+-"), number[2]
    if _ANGLE.match(rest):
        return f"{figures}°"
    unit = _UNIT.match(rest)
    said = (
        unit[0].replace("^2", "²").replace("^-2", "⁻²").replace("^-1", "⁻¹").replace(" ", "·").replace("N m", "N·m")
        if unit
        else ""
    )
    return f"{figures} {said}".strip()
