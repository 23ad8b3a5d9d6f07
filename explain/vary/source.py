"""A problem file made fit to travel: its course written into it, its table beside it, so that it can be worked
anywhere. Works nothing out.
"""

from __future__ import annotations

from collections.abc import Mapping
from copy import deepcopy
from pathlib import Path
from typing import Any

from ..problem.toml_table import Fields
from ..problem.reader import named_course
from ..problem.placeholders import filled, owners
from ..problem.person_table import own_table
from ..problem.toml_values import assigned, key_text
from .ranges import Range

Tables = dict[str, Any]


def whole(top: Fields, overlay: Mapping[str, object] | None = None) -> tuple[Tables, dict[str, bytes]]:
    """The tables of a problem with its course in them, and the files that must stand beside it, by name. Raises
    Fault.
    """
    tables = deepcopy(dict(top.values))
    course: Mapping[str, object] = {}
    own = tables.get("course")
    if isinstance(own, str):
        course = named_course(top)
    elif isinstance(own, Mapping):
        start = named_course(Fields(own, top.origin, ("course",)), "from") if "from" in own else {}
        course = {**start, **{key: value for key, value in own.items() if key != "from"}}
    course = {**course, **(overlay or {})}
    if course:
        tables["course"] = dict(course)
    return tables, _beside(tables, top)


def _beside(tables: Tables, top: Fields) -> dict[str, bytes]:
    """The class's own segment table, which is then named without its folder."""
    person = top.table("person")
    text = own_table(person) if person else None
    if text is None:
        return {}
    name = Path(tables["person"]["table"].strip()).name
    tables["person"]["table"] = name
    return {name: text.encode()}


def with_values(tables: Tables, ranges: tuple[Range, ...], places: tuple[int, ...]) -> Tables:
    """The tables with a value from each range, without the ranges, and without accepted lines: they have the numbers
    of the problem as written.
    """
    out = deepcopy({key: value for key, value in tables.items() if key not in ("vary", "accept")})
    known = {name: table for name, _, table in owners(out)}
    for each, place in zip(ranges, places, strict=True):
        value = each.values[place]
        known[each.owner][each.key] = list(value) if isinstance(value, tuple) else value  # type: ignore[index]
    for key in ("title", "statement"):
        if isinstance(out.get(key), str):
            out[key] = filled(out[key], out)
    return out


# ---------------------------------------------------------------------- as text
def text_of(tables: Tables, comment: str) -> str:
    """A problem file: the keys of the top, then table by table, as a person would write it. `comment` stands above,
    a line each.
    """
    lines = [f"# {line}" for line in comment.splitlines()]
    lines += assigned({key: value for key, value in tables.items() if not _is_table(value)}, "statement")
    for key, value in tables.items():
        for table in value if _is_list(value) else (value,) if isinstance(value, Mapping) else ():
            name = key_text(key)
            lines += ["", f"[[{name}]]" if _is_list(value) else f"[{name}]", *assigned(table)]
    return "\n".join(lines) + "\n"


def _is_list(value: object) -> bool:
    return isinstance(value, list) and bool(value) and isinstance(value[0], Mapping)


def _is_table(value: object) -> bool:
    return isinstance(value, Mapping) or _is_list(value)
