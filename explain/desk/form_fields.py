"""The fields beside a problem file: one for each key that is there, made from the schema, each with its path; and what
is typed into one as the value that the file is to have.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping, Sequence
from functools import cache, lru_cache
from typing import Any, NamedTuple

from ..document.english import a
from ..problem.schema import schema
from ..problem.toml_lines import Path
from ..write.html.elements import text as escaped

MANY = ("segment", "load", "muscle", "force", "couple")  # tables that may stand several times
LONE = ("pivot", "person")
TITLES = {"": "The problem", "pivot": "Pivot", "person": "Person", "course": "The class"}
_WHOLE = re.compile(r"[+-]?[0-9]{1,9}")
_GIST = ("direction", "mass", "weight", "force", "moment", "at", "length")  # told of a table that is folded
_LONG = ("statement",)  # keys whose text has lines of its own
_BEGIN = {"course": "course.toml", "statement": "The problem in words.", "neglect": "friction"}

# What a table has when it is begun; `at` gives way to `point` where nothing has a length that it could be along.
NEW: Mapping[str, Mapping[str, object]] = {
    "segment": {"length": "10 cm"},
    "load": {"mass": "1.0 kg", "at": "10 cm"},
    "muscle": {"at": "5.0 cm", "direction": "up", "force": "20 N"},
    "force": {"at": "10 cm", "direction": "up", "force": "10 N"},
    "couple": {"moment": "1.0 N m", "turns": "clockwise"},
    "pivot": {"name": "pivot"},
    "person": {"mass": "70 kg"},
}
_POINT = ["10 cm", "0 cm"]


class Field(NamedTuple):
    """One key of a table: its path, how it is typed (text, long, lines, whole, choice), its value as it is typed, the
    words to choose from, what it means.
    """

    path: Path
    kind: str
    value: str
    choices: tuple[str, ...]
    help: str


class Group(NamedTuple):
    """The fields of one table, and the keys that it might have besides, each with a value to begin with."""

    path: Path
    title: str
    gist: str
    fields: tuple[Field, ...]
    more: tuple[tuple[str, str, str], ...]


# ---------------------------------------------------------------------- what the schema says
@cache
def _schema() -> Mapping[str, Any]:
    found: Mapping[str, Any] = json.loads(schema("problem"))
    return found


def _plain(node: Mapping[str, Any]) -> Mapping[str, Any]:
    """What a place of the schema says, what it refers to put in."""
    if "$ref" in node:
        there = _schema()["$defs"][str(node["$ref"]).rpartition("/")[2]]
        return {**_plain(there), **{key: value for key, value in node.items() if key != "$ref"}}
    return node


def _properties(path: Path, keys: Mapping[str, Any]) -> Mapping[str, Any]:
    """The keys that the table at a path may have."""
    top: Mapping[str, Any] = _schema()["properties"]
    if not path:
        return top
    node = _plain(top.get(str(path[0]), {}))
    if path[0] == "course":
        node = next((each for each in node["anyOf"] if "properties" in each), node)
    found: Mapping[str, Any] = node.get("items", node).get("properties", {})
    return found


def _required(path: Path) -> Sequence[str]:
    node = _schema() if not path else _schema()["properties"].get(str(path[0]), {})
    found: Sequence[str] = node.get("items", node).get("required", ())
    return found


def _kind(key: str, node: Mapping[str, Any]) -> str:
    """How a value is typed, "" where it is written in the file only."""
    node = _plain(node)
    ways = [_plain(each) for each in node.get("anyOf", ())] or [node]
    way = next((each for each in ways if each.get("type") != "object" and "enum" not in each), ways[0])
    if "enum" in node or way.get("type") == "boolean":
        return "choice"
    if way.get("type") == "integer":
        return "whole"
    if way.get("type") == "array":
        inner = _plain(way.get("items", {}))
        return "" if inner.get("type") == "object" else "lines"
    if way.get("type") == "object":
        return ""
    return "long" if key in _LONG else "text"


def _choices(node: Mapping[str, Any]) -> tuple[str, ...]:
    node = _plain(node)
    return ("true", "false") if node.get("type") == "boolean" else tuple(map(str, node.get("enum", ())))


def _example(key: str, node: Mapping[str, Any]) -> str:
    """A value to begin with, as it is typed."""
    node = _plain(node)
    choices = _choices(node)
    if choices:
        return choices[-1] if choices == ("true", "false") else choices[0]
    inner = _plain(node.get("items", {}))
    repeated = [[each] * node.get("minItems", 1) for each in inner.get("examples", ())]
    found = next(iter((*node.get("examples", ()), *repeated)), None)
    return typed(found) if found is not None else str(node.get("minimum", "")) or _BEGIN.get(key, "?")


# ---------------------------------------------------------------------- what the file says
def typed(value: object) -> str:
    """A value of the file as it is typed into a field."""
    match value:
        case bool():
            return str(value).lower()
        case list():
            return "\n".join(map(typed, value))
    return str(value)


def meant(keys: Mapping[str, Any], path: Path, words: str) -> object:
    """What is typed into a field as a value of the file; None where nothing is."""
    words = words.replace("\r\n", "\n").replace("\r", "\n")
    if not words.strip():
        return None
    properties = _properties(path[:-1], keys)
    node = properties.get(str(path[-1]), {}) if path else {}
    match _kind(str(path[-1]), node):
        case "lines":
            return [line.strip() for line in words.split("\n") if line.strip()]
        case "whole" if _WHOLE.fullmatch(words.strip()):
            return int(words)
        case "choice" if _choices(node) == ("true", "false") and words.strip() in ("true", "false"):
            return words.strip() == "true"
        case "long":
            before = keys.get(str(path[-1]))
            ends = isinstance(before, str) and before.endswith("\n")
            return words.rstrip("\n") + "\n" * ends
    return " ".join(words.split())


def begun(keys: Mapping[str, Any], kind: str) -> dict[str, object] | None:
    """A new table of a kind, with a name that nothing has; None for a kind that is none."""
    if kind not in NEW:
        return None
    table = dict(NEW[kind])
    if kind in LONE:
        return table
    taken = {each.get("name") for many in MANY for each in _tables(keys, many)}
    name = next(each for each in (f"{kind} {number}" for number in range(1, 1000)) if each not in taken)
    if "at" in table and not any("length" in each for each in _tables(keys, "segment")):
        table = {"point" if key == "at" else key: _POINT if key == "at" else value for key, value in table.items()}
    return {"name": name, **table}


def _tables(keys: Mapping[str, Any], kind: str) -> list[Mapping[str, Any]]:
    found = keys.get(kind)
    return [each for each in found if isinstance(each, dict)] if isinstance(found, list) else []


def groups(keys: Mapping[str, Any]) -> Iterator[Group]:
    """The tables of a file in the order in which it is thought, each with its fields."""
    yield _group((), keys, keys)
    for key in ("pivot", "person", "course"):
        if isinstance(keys.get(key), dict):
            yield _group((key,), keys[key], keys)
    for kind in MANY:
        if isinstance(keys.get(kind), list):
            for number, each in enumerate(keys[kind]):
                if isinstance(each, dict):
                    yield _group((kind, number), each, keys)


def _group(path: Path, table: Mapping[str, Any], keys: Mapping[str, Any]) -> Group:
    properties, required = _properties(path, keys), _required(path)
    fields, more = [], []
    for key, node in properties.items():
        kind, help = _kind(key, node), str(_plain(node).get("description", ""))
        value = table.get(key)
        if not kind or isinstance(value, dict) or (isinstance(value, list) and any(isinstance(e, dict) for e in value)):
            continue
        if key in table or key in required:
            kind = "lines" if isinstance(value, list) else kind
            shown = "" if value is None else typed(value)
            fields.append(Field((*path, key), kind, shown.rstrip("\n"), _choices(node), help))
        else:
            more.append((key, _example(key, node), help))
    return Group(path, _title(path, table), _gist(path, table), tuple(fields), tuple(more))


def _title(path: Path, table: Mapping[str, Any]) -> str:
    head = str(path[0]) if path else ""
    name = table.get("name")
    if head not in TITLES:
        return f"{head.capitalize()}: {name}" if isinstance(name, str) and name.strip() else head.capitalize()
    named = head == "pivot" and isinstance(name, str) and name.strip()
    return f"{TITLES[head]}: {name}" if named else TITLES[head]


def _gist(path: Path, table: Mapping[str, Any]) -> str:
    return ", ".join(str(table[key]) for key in _GIST if path and isinstance(table.get(key), str))


# ---------------------------------------------------------------------- as elements
class Form(NamedTuple):
    """All fields of a file as elements; what stands in each field, by its identifier on the page; and what each table
    is called, with what is told of it while it is folded.
    """

    fields: str
    values: Mapping[str, str]
    heads: Mapping[str, tuple[str, str]]


def form_of(keys: Mapping[str, Any]) -> Form:
    """The fields of a file: for each of its tables one part that folds, and buttons for more."""
    found = tuple(groups(keys))
    new = [*(kind for kind in LONE if kind not in keys), *MANY]
    button = '<button type="button" class="second" data-add="{}">{}</button>'
    buttons = "".join(button.format(kind, kind.capitalize()) for kind in new)
    add = f'<div class="add" role="group" aria-label="Add a part"><span>Add</span>{buttons}</div>'
    return Form(
        "".join(map(_group_html, found)) + add,
        {ident(field.path): field.value for group in found for field in group.fields},
        {ident(group.path, "part"): (group.title, group.gist) for group in found},
    )


def ident(path: Path, what: str = "field") -> str:
    return "-".join((what, *map(str, path)))


@lru_cache(maxsize=256)
def _group_html(group: Group) -> str:
    name = ident(group.path, "part")
    return (
        f'<details class="part" id="{name}"><summary><span id="{name}-title">{escaped(group.title)}</span>'
        f'<span class="gist">{escaped(group.gist)}</span></summary>'
        f'<div class="fields" role="group" aria-labelledby="{name}-title">{"".join(map(_field_html, group.fields))}'
        f"{_more_html(group)}</div></details>"
    )


def _field_html(field: Field) -> str:
    name = ident(field.path)
    data = f'id="{name}" data-path="{escaped(json.dumps(field.path))}" aria-describedby="{name}-help"'
    match field.kind:
        case "choice":
            words = dict.fromkeys(("", *field.choices, field.value))
            options = "".join(_option(each, each == field.value) for each in words)
            box = f"<select {data}>{options}</select>"
        case "long" | "lines":
            rows = min(max(field.value.count("\n") + 2, 2), 10)
            box = f'<textarea {data} rows="{rows}" spellcheck="false">\n{escaped(field.value)}</textarea>'
        case _:
            box = f'<input type="text" {data} value="{escaped(field.value)}" autocomplete="off" spellcheck="false">'
    label = escaped(str(field.path[-1]).replace("_", " "))
    lines = " One a line." if field.kind == "lines" else ""
    return (
        f'<div class="field"><label for="{name}">{label}</label>{box}'
        f'<p class="help" id="{name}-help">{escaped(field.help)}{lines}</p></div>'
    )


def _option(word: str, chosen: bool) -> str:
    return f'<option value="{escaped(word)}"{" selected" * chosen}>{escaped(word) or "not said"}</option>'


def _more_html(group: Group) -> str:
    name = ident(group.path, "more")
    options = "".join(
        f'<option value="{escaped(json.dumps([*group.path, key]))}" data-value="{escaped(value)}">'
        f"{escaped(key.replace('_', ' '))}</option>"
        for key, value, _ in group.more
    )
    kind = str(group.path[0]) if group.path else ""
    cut = (
        f'<button type="button" class="second" data-cut="{escaped(json.dumps(group.path))}">Remove '
        f"{escaped(f'this {kind}' if kind in MANY else a(kind))}</button>"
        if kind in (*MANY, "person")
        else ""
    )
    pick = (
        f'<label for="{name}">more</label><span class="pick"><select id="{name}">{options}</select>'
        f'<button type="button" class="second" data-more="{name}">Add</button></span>'
        if options
        else ""
    )
    return f'<div class="field more">{pick}</div>' + (f'<p class="cut">{cut}</p>' if cut else "")
