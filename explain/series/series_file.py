"""Series files: a base problem and the steps that lead on from it. Knows the keys and their kinds, not what a step
does to a problem.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from ..input import PROBLEM
from ..errors import Fault
from ..problem.toml_table import Fields
from ..problem.reader import named_file
from .sweep import Sweep, read_sweep

KEYS: Mapping[str, tuple[str, ...]] = {
    "": ("title", "intro", "base", "start", "step"),
    "start": ("title", "idea", "statement", "set", "add", "remove", "ask", "follow"),
    "step": ("title", "idea", "statement", "from", "set", "add", "remove", "ask", "follow", "compare", "sweep"),
    "add": ("segment", "load", "muscle", "force", "couple"),
}
CHANGES = ("set", "add", "remove", "ask", "sweep")
MOST_STEPS = 60
_EXAMPLE = (
    '[[step]]\ntitle = "A heavier jug"\nidea = "the same equation, a new number"\nset = { "jug.mass" = "4.0 kg" }'
)
_STEP = re.compile(r"^step\[(\d+)\]\.?")


@dataclass(frozen=True)
class Step:
    """One step as written. `number` 0 is the start. `origin` is the step it begins from, `compare` the one it is set
    beside.

    `set` maps (owner, key) to a value, the owner "" for a key at the top of a problem; `remove` holds (owner, key), key
    "" for all of it.
    """

    number: int
    title: str
    idea: str = ""
    statement: str = ""
    origin: int = 0
    compare: int = 0
    set: Mapping[tuple[str, str], object] = field(default_factory=dict)
    add: Mapping[str, tuple[Mapping[str, object], ...]] = field(default_factory=dict)
    remove: tuple[tuple[str, str], ...] = ()
    ask: tuple[str, ...] | None = None
    follow: str = ""
    sweep: Sweep | None = None
    fields: Fields | None = None

    def fault(self, key: str, found: str, expected: str, example: str, advice: str = "") -> Fault:
        """A fault of this step, placed in the series file; `key` may lead into its tables ("sweep.of")."""
        assert self.fields is not None
        *outer, last = key.split(".")
        inside = replace(self.fields, path=(*self.fields.path, *outer))
        return stepped(inside.fault(last, found, expected, example, advice))


@dataclass(frozen=True)
class Series:
    """A series file. `base` holds the keys of the problem it begins from; `steps` begins with the start, number 0."""

    title: str
    intro: str
    base: Fields
    steps: tuple[Step, ...]
    file: str = ""


def read_series(top: Fields) -> Series:
    """The series that a file's keys state. Raises Fault; one of a step has "step 3" for its key."""
    try:
        return _series(top)
    except Fault as fault:
        raise stepped(fault) from None


def stepped(fault: Fault) -> Fault:
    """The fault with the key of a step written as people say it: "step 3: set" for "step[3].set"."""
    key = _STEP.sub(lambda found: f"step {found[1]}: ", fault.key).removesuffix(": ")
    return fault.placed(fault.file, fault.line, key)


def _series(top: Fields) -> Series:
    top.only(KEYS[""])
    title, tables = top.text("title", "From one weight to the whole arm"), top.tables("step")
    if not title:
        raise top.missing("title", "a title for the series", 'title = "From one weight to the whole arm"')
    base = _base(top)
    if not tables:
        raise top.missing("step", "the steps of the series, each headed [[step]]", _EXAMPLE)
    if len(tables) > MOST_STEPS:
        raise top.fault("step", f"{len(tables)} steps", f"at most {MOST_STEPS} steps", _EXAMPLE)
    start = top.table("start")
    steps = [start_of(start) if start else Step(0, "", fields=top)]
    steps += [step_of(fields, number) for number, fields in enumerate(tables, 1)]
    return Series(title, top.text("intro", "") or "", base, tuple(steps), top.origin.file)


def _base(top: Fields) -> Fields:
    said, example = top.text("base", "milk-jug.toml"), 'base = "milk-jug.toml"'
    if not said:
        raise top.missing("base", "the path of the problem file that the series begins from", example)
    return named_file(top, "base", said, PROBLEM, example)


def start_of(fields: Fields) -> Step:
    """The start from its table. Raises Fault."""
    fields.only(KEYS["start"])
    return _changes(fields, Step(0, fields.text("title", "One load, one muscle") or "", fields=fields))


def step_of(fields: Fields, number: int) -> Step:
    """One step from its table. Raises Fault."""
    fields.only(KEYS["step"])
    title = fields.text("title", "A heavier jug")
    if not title:
        raise fields.missing("title", "a title for the page of this step", 'title = "A heavier jug"')
    if not any(fields.has(key) for key in CHANGES):
        raise fields.fault(
            "",
            "a step that changes nothing",
            f"a change: one of {', '.join(CHANGES)}",
            'set = { "jug.mass" = "4.0 kg" }',
        )
    origin = _earlier(fields, "from", number, number - 1)
    step = Step(number, title, origin=origin, compare=_earlier(fields, "compare", number, origin), fields=fields)
    sweep = fields.table("sweep")
    return replace(_changes(fields, step), sweep=read_sweep(sweep) if sweep else None)


def _earlier(fields: Fields, key: str, number: int, otherwise: int) -> int:
    """The number of an earlier step, 0 for the start."""
    if not fields.has(key):
        return otherwise
    value = fields.values[key]
    if isinstance(value, bool) or not isinstance(value, int) or not 0 <= value < number:
        which = "0, the start" if number == 1 else f"a whole number from 0 (the start) to {number - 1}"
        raise fields.wrong(key, f"the number of an earlier step: {which}", f"{key} = {number - 1}")
    return value


def _changes(fields: Fields, step: Step) -> Step:
    idea = fields.text("idea", "the same equation, a new number") or ""
    return replace(
        step,
        idea=" ".join(idea.split()).rstrip("."),
        statement=fields.text("statement", "") or "",
        set=_settings(fields),
        add=_added(fields),
        remove=tuple(map(_place, fields.texts("remove", "hand") or ())),
        ask=fields.texts("ask", "biceps"),
        follow=" ".join((fields.text("follow", "biceps") or "").split()),
    )


def _settings(fields: Fields) -> Mapping[tuple[str, str], object]:
    """The key `set`, written with quotation marks ("jug.mass" = ...) or without (jug.mass = ...)."""
    table = fields.table("set")
    out: dict[tuple[str, str], object] = {}
    for key, value in table.values.items() if table else ():
        owner, last = _place(key)
        if not owner and isinstance(value, Mapping):
            out |= {(" ".join(key.split()), inner): each for inner, each in value.items()}
        elif not owner:
            out["", " ".join(key.split())] = value
        else:
            out[owner, last] = value
    return out


def _place(text: str) -> tuple[str, str]:
    """("jug", "mass") for "jug.mass", ("jug", "") for "jug" — which at the left of a setting is a key at the top."""
    owner, dot, key = text.rpartition(".")
    return (" ".join(owner.split()), key.strip()) if dot else ("", " ".join(text.split()))


def _added(fields: Fields) -> Mapping[str, tuple[Mapping[str, object], ...]]:
    table = fields.table("add")
    if table is None:
        return {}
    table.only(KEYS["add"])
    return {
        kind: (one,)
        if isinstance(one := table.values[kind], Mapping)
        else tuple(each.values for each in table.tables(kind))
        for kind in table.values
    }
