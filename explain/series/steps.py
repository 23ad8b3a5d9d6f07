"""What a step does to the tables of a problem: takes away, sets, adds, asks. Knows tables and keys, and works
nothing out.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from copy import deepcopy
from dataclasses import replace
from typing import Any

from ..problem.answer_names import sought
from ..errors import Fault, nearest, shown
from ..problem.toml_table import Fields, Origin
from ..problem.reader import problem_of
from ..problem.problem_tables import KEYS
from ..problem.model import Problem
from .series_file import Step

KINDS = ("segment", "load", "muscle", "force", "couple")
SINGLE = ("pivot", "person", "course")
TOP = ("neglect", "balanced", "course", "g")
INSTEAD = (
    ("mass", "weight"),
    ("at", "point", "spread"),
    ("direction", "toward"),
    ("force", "hung"),
)  # to set one takes the other away
Tables = dict[str, Any]


def changed(before: Mapping[str, object], step: Step) -> Tables:
    """The tables of the earlier problem with the change of a step made. Raises Fault for what is not there and what
    does not change.
    """
    tables: Tables = deepcopy(dict(before))
    tables.pop("mark", None)  # how a problem is marked says nothing of its steps
    tables.pop("accept", None)
    tables["title"] = step.title or tables.get("title", "")
    if step.statement:
        tables["statement"] = step.statement
    _pin(tables)
    for owner, key in step.remove:
        _remove(tables, step, owner, key)
    for (owner, key), value in step.set.items():
        _set(tables, step, owner, key, value)
    for kind, added in step.add.items():
        tables[kind] = [*_listed(tables, kind), *(deepcopy(dict(each)) for each in added)]
    _pin(tables)
    if step.ask is not None:
        tables["ask"] = list(step.ask)
    return tables


def as_read(
    tables: Tables, earlier: Problem | None, step: Step, origin: Origin, course: Mapping[str, object] | None
) -> Problem:
    """The problem that the changed tables state. Raises Fault, placed at the step; also where nothing has changed."""
    try:
        if step.ask is None and earlier is not None:
            _ask_again(tables, earlier, origin, course)
        problem = of_tables(tables, origin, course)
    except Fault as fault:
        raise at_step(step, fault) from None
    if earlier is not None and step.number and step.sweep is None and _same(problem, earlier):
        raise step.fault(
            "",
            "a step that changes nothing: the problem is what it was before",
            "a value that is not the one it has already",
            'set = { "jug.mass" = "4.0 kg" }',
        )
    return problem


def at_step(step: Step, fault: Fault) -> Fault:
    """A fault of the changed problem, told as one of its step."""
    where = f" ({fault.key})" if fault.key else ""
    advice = (
        fault.advice
        or "The change of a step is made first, and the whole is then read and worked as a problem file of its own."
    )
    return step.fault("", f"{fault.found}{where}, once the change is made", fault.expected, fault.example, advice)


def _same(one: Problem, other: Problem) -> bool:
    return replace(one, title="", statement="") == replace(other, title="", statement="")


def of_tables(tables: Tables, origin: Origin, course: Mapping[str, object] | None) -> Problem:
    """The problem that tables state which came from a file that was read as it stood, and are not as they stand
    there. Raises Fault.
    """
    return problem_of(Fields(tables, replace(origin, text="", named=False)), course)


def _ask_again(tables: Tables, earlier: Problem, origin: Origin, course: Mapping[str, object] | None) -> None:
    """Where a step moves the "?" and does not say what to ask, the new "?" is asked, with what was asked of the
    joint force.
    """
    free = of_tables(
        {key: value for key, value in tables.items() if key != "ask"} | {"ask": ["total.moment"]}, origin, course
    )
    if set(sought(free)) == set(sought(earlier)):
        return
    kept = [each for each in tables.get("ask", ()) if each.partition(".")[0] == "reaction"]
    tables["ask"] = [*sought(free), *kept]


# ---------------------------------------------------------------------- tables
def _listed(tables: Tables, kind: str) -> list[Tables]:
    found = tables.get(kind, [])
    return list(found) if isinstance(found, list | tuple) else []


def _named(tables: Tables) -> Iterator[tuple[str, Tables]]:
    for kind in KINDS:
        for table in _listed(tables, kind):
            if isinstance(table, dict):
                yield kind, table


def _name(table: Mapping[str, object]) -> str:
    return " ".join(str(table.get("name", "")).split())


def find(tables: Tables, step: Step, word: str, owner: str) -> tuple[str, Tables]:
    """The table of a name, with its kind. Raises Fault for a name that nothing has."""
    for kind, table in _named(tables):
        if _name(table) == owner:
            return kind, table
    if owner in SINGLE and (word != "remove" or tables.get(owner)):
        return owner, _single(tables, owner)
    names = [*(_name(table) for _, table in _named(tables)), *SINGLE]
    near = nearest(owner, names) or names[0]
    raise step.fault(
        word,
        f"{shown(owner)}, which is not there",
        "the name of something in the problem: " + ", ".join(f'"{each}"' for each in names[:12]),
        {"remove": f'remove = ["{near}"]', "sweep.of": f'of = "{near}.mass"'}.get(
            word, f'set = {{ "{near}.mass" = "4.0 kg" }}'
        ),
    )


def _single(tables: Tables, owner: str) -> Tables:
    """[pivot], [person] or [course]; a course that is a file becomes a table that starts from it."""
    found = tables.get(owner)
    table = {"from": found} if isinstance(found, str) else dict(found) if isinstance(found, Mapping) else {}
    tables[owner] = table
    return table


def _remove(tables: Tables, step: Step, owner: str, key: str) -> None:
    if not owner:
        _remove_all(tables, step, key)
        return
    _, table = find(tables, step, "remove", owner)
    if key not in table:
        near = nearest(key, table) or next(iter(table), "mass")
        raise step.fault(
            "remove",
            f'"{owner}.{key}", which is not there',
            f"a key that {shown(owner)} has: {', '.join(map(str, table))}",
            f'remove = ["{owner}.{near}"]',
        )
    del table[key]


def _remove_all(tables: Tables, step: Step, name: str) -> None:
    if name in TOP and name in tables:
        del tables[name]
        return
    kind, table = find(tables, step, "remove", name)
    if kind in SINGLE:
        del tables[kind]
        return
    tables[kind] = [each for each in tables[kind] if each is not table]
    asked = [each for each in tables.get("ask", ()) if each != name and not str(each).startswith(f"{name}.")]
    if "ask" in tables:
        tables["ask"] = asked
    if not asked:
        tables.pop("ask", None)


def _set(tables: Tables, step: Step, owner: str, key: str, value: object) -> None:
    kind, table = ("", tables) if not owner else find(tables, step, "set", owner)
    known = TOP if not owner else KEYS.get(kind, ())
    if kind != "course" and key not in known:
        near = nearest(key, known)
        said = f"{owner}.{key}" if owner else key
        raise step.fault(
            "set",
            f"{shown(said)}, a key that is not known here",
            f"the key {near}" if near else f"one of the keys {', '.join(known)}",
            f'set = {{ "{owner or "jug"}.{near or known[0] if owner else "mass"}" = ... }}',
        )
    if key in table and table[key] == value:
        raise step.fault(
            "set",
            f'{shown(value)} for "{owner}.{key}", which it is already',
            "another value",
            'set = { "jug.mass" = "4.0 kg" }',
        )
    put(table, key, value)


def put(table: Tables, key: str, value: object) -> None:
    """Set a key, and take away the one that stands for the same."""
    for several in INSTEAD:
        for other in several if key in several else ():
            table.pop(other, None)
            if other == "spread":
                table.pop("spread_to", None)
    table[key] = deepcopy(value)


def _pin(tables: Tables) -> None:
    """Say of everything on which segment it is, so that a segment added or taken away moves nothing else."""
    segments = _listed(tables, "segment")
    last = _name(segments[-1]) if segments else ""
    for kind, table in _named(tables):
        if kind in ("load", "muscle", "force") and last and not table.get("on") and len(segments) > 0:
            table["on"] = last
