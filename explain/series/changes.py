"""What differs between the tables of two problems, as rows of words: what it is, what it was, what it is now. Knows
keys, works nothing out.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, NamedTuple

from ..problem.directions import read as read_direction
from ..document.english import mass_of, noun_of, possessive, the, weight_of
from ..errors import Fault
from ..wording.phrases import way
from .steps import KINDS, SINGLE

Tables = Mapping[str, Any]
NOTHING, GONE = "–", "taken away"
_KEYS: Mapping[str, str] = {
    "at": "distance",
    "point": "place",
    "moment_arm": "moment arm",
    "turns": "turning sense",
    "limit": "limit",
    "area": "cross-section",
    "count": "number",
    "length": "length",
    "moment": "moment",
    "range": "range of angles",
    "toward": "point of aim",
    "on": "segment",
    "from": "segment before",
}
_SILENT = ("name", "title", "statement", "ask")


class Row(NamedTuple):
    what: str
    was: str
    now: str


def changes(old: Tables, new: Tables) -> tuple[Row, ...]:
    """Every difference but that of titles and questions, in the order of the tables."""
    return tuple((*_tables(old, new), *_singles(old, new)))


def _tables(old: Tables, new: Tables) -> Iterator[Row]:
    for kind in KINDS:
        before, after = _named(old, kind), _named(new, kind)
        alone = len(_named(new, "segment")) < 2 and len(_named(old, "segment")) < 2
        for name in dict.fromkeys((*before, *after)):
            yield from _rows(kind, name, before.get(name, {}), after.get(name, {}), alone)


def _rows(kind: str, name: str, was: Tables, now: Tables, alone: bool) -> Iterator[Row]:
    if was and not now:
        yield Row(the(name), "there", GONE)
        return
    for key in dict.fromkeys((*was, *now)):
        if key in _SILENT or (key == "on" and (alone or not was)) or was.get(key) == now.get(key):
            continue
        yield Row(_what(kind, name, key), _value(kind, name, key, was), _value(kind, name, key, now))
    if now and not was and not set(now) - {"name", "on"}:
        yield Row(the(name), NOTHING, "new")


def _singles(old: Tables, new: Tables) -> Iterator[Row]:
    for owner in SINGLE:
        was, now = (each.get(owner) or {} for each in (old, new))
        was, now = ({"from": each} if isinstance(each, str) else each for each in (was, now))
        for key in dict.fromkeys((*was, *now)):
            if was.get(key) != now.get(key):
                what = "g" if (owner, key) == ("course", "g") else f"{owner}: {key.replace('_', ' ')}"
                yield Row(what, _plain(was.get(key)), _plain(now.get(key)))
    for key in ("neglect", "balanced"):
        if old.get(key) != new.get(key):
            yield Row({"neglect": "left out", "balanced": "at rest"}[key], _plain(old.get(key)), _plain(new.get(key)))


def _named(tables: Tables, kind: str) -> dict[str, Tables]:
    return {" ".join(str(table.get("name", "")).split()): table for table in tables.get(kind, [])}


def _what(kind: str, name: str, key: str) -> str:
    match key:
        case "mass":
            return mass_of(name)
        case "weight":
            return weight_of(name)
        case "com":
            return f"{possessive(name)} centre of mass, from its near end"
        case "force":
            return noun_of("pull" if kind == "muscle" else "force", name)
        case "direction":
            return noun_of("direction of pull" if kind == "muscle" else "direction", name)
    return noun_of(_KEYS.get(key, key.replace("_", " ")), name)


def _value(kind: str, name: str, key: str, table: Tables) -> str:
    value = table.get(key)
    if value is None:
        return {
            "direction": "horizontally to the right" if kind == "segment" and table else NOTHING,
            "force": "sought" if kind == "muscle" and table else NOTHING,
        }.get(key, NOTHING)
    if key == "direction" and isinstance(value, str):
        return _direction(kind, value, str(table.get("on") or name))
    return _plain(value)


def _direction(kind: str, said: str, segment: str) -> str:
    try:
        return way(read_direction(said), segment, kind == "muscle")
    except Fault:
        return said


def _plain(value: object) -> str:
    """A value as it was typed, with the signs of print."""
    if isinstance(value, list | tuple):
        return ", ".join(map(_plain, value))
    if isinstance(value, Mapping):
        return ", ".join(f"{key} {_plain(each)}" for key, each in value.items())
    if isinstance(value, bool):
        return "yes" if value else "no"
    text = NOTHING if value is None else str(value)
    return (
        "sought"
        if text.strip() == "?"
        else text.replace(" deg", "°").replace("^2", "²").replace("-", "−").replace(" ", "\u00a0")
        if text[:1] in "-0123456789."
        else text
    )
