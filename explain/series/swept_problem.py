"""A problem at one value of a sweep: the value put in, and of an angle the moment arms that belong to it. Knows
tables, and works nothing out.
"""

from __future__ import annotations

from collections.abc import Mapping
from copy import deepcopy
from decimal import Decimal
from typing import Any

from ..problem import directions
from ..equation.terms import Quantity
from ..errors import nearest, shown
from ..problem.problem_tables import KEYS
from ..problem.quantity import written_unit
from .series_file import Step
from .steps import KINDS, Tables, find, put
from .sweep import Arms, Sweep

NUMBERS = ("mass", "weight", "at", "com", "length", "moment_arm", "force", "hung", "limit", "area", "moment", "height")


def put_at(before: Mapping[str, Any], step: Step, sweep: Sweep, value: Decimal) -> Tables:
    """The tables with a value of the sweep. Raises Fault."""
    return _turned(before, step, sweep, value) if sweep.is_angle else _with_number(before, step, sweep, value)


def _with_number(before: Mapping[str, Any], step: Step, sweep: Sweep, value: Decimal) -> Tables:
    tables: Tables = deepcopy(dict(before))
    kind, table = find(tables, step, "sweep.of", sweep.owner)
    known = [key for key in NUMBERS if key in KEYS.get(kind, ())] if kind != "course" else ["g"]
    if sweep.key not in known:
        near = nearest(sweep.key, known) or (known or ["mass"])[0]
        raise step.fault(
            "sweep.of",
            f"{shown(f'{sweep.owner}.{sweep.key}')}, which is no number of {shown(sweep.owner)}",
            f"one of its numbers: {', '.join(known) or 'it has none'}",
            f'of = "{sweep.owner}.{near}"',
        )
    now = table.get(sweep.key, "?" if (kind, sweep.key) == ("muscle", "force") else None)
    if isinstance(now, str) and "?" in now:
        raise step.fault(
            "sweep.of",
            f'"{sweep.owner}.{sweep.key}", which is sought here',
            "a number that is given",
            f'set = {{ "{sweep.owner}.{sweep.key}" = "..." }}',
        )
    put(table, sweep.key, f"{value:f} {sweep.unit}".rstrip())
    return tables


def _turned(before: Mapping[str, Any], step: Step, sweep: Sweep, angle: Decimal) -> Tables:
    """The tables with the angle, and with each arm that belongs to it. Raises Fault."""
    tables: Tables = deepcopy(dict(before))
    table = _named(tables, step, sweep.owner, "of", ("segment", "muscle", "force"))
    table["direction"] = _pattern(table, step, sweep).replace("?", f"{angle:f} deg")
    table.pop("range", None)
    for arms in sweep.arms:
        _put_arm(tables, step, arms, angle)
    return tables


def _pattern(table: Mapping[str, Any], step: Step, sweep: Sweep) -> str:
    """The direction with "?" for its angle: the one the sweep tells, or the present one."""
    if sweep.direction:
        return sweep.direction
    said = str(table.get("direction", "right"))
    turn = directions.read(said).turn
    if isinstance(turn, Quantity):
        words = said.split()
        start = next(place for place, word in enumerate(words) if word in ("above", "below", "left", "right", "from"))
        return " ".join(("?", *words[start:]))
    if "?" in said:
        return said
    raise step.fault(
        "sweep.direction",
        f"nothing, and {sweep.owner} has the direction {shown(said)}, without an angle",
        'a direction with "?" for the angle',
        'direction = "? below right"',
    )


def _put_arm(tables: Tables, step: Step, arms: Arms, angle: Decimal) -> None:
    table = _named(tables, step, arms.muscle, f"arms.{arms.muscle}", ("muscle", "force"))
    found = arms.at(angle)
    if found is None:
        first, last = arms.pairs[0][0], arms.pairs[-1][0]
        raise step.fault(
            f"sweep.arms.{arms.muscle}",
            f"arms from {first:f} to {last:f} deg, but the sweep has {angle:f} deg",
            "arms for every angle of the sweep",
            f'from = "{first:f} deg"\nto = "{last:f} deg"',
        )
    if not table.get("turns"):
        raise step.fault(
            f"sweep.arms.{arms.muscle}",
            f"moment arms, but nothing tells which way {arms.muscle} turns",
            "turns beside the moment arm",
            f'set = {{ "{arms.muscle}.turns" = "counter-clockwise" }}',
        )
    table["moment_arm"] = f"{found.number:f} {written_unit(found.unit)}"


def _named(tables: Tables, step: Step, name: str, key: str, kinds: tuple[str, ...]) -> Tables:
    found: list[Tables] = [
        table
        for kind in KINDS
        if kind in kinds
        for table in tables.get(kind, [])
        if " ".join(str(table.get("name", "")).split()) == name
    ]
    if found:
        return found[0]
    names = [str(table.get("name", "")) for kind in kinds for table in tables.get(kind, [])]
    near = nearest(name, names) or next(iter(names), "forearm")
    example = f'of = "{near}.direction"' if key == "of" else f'{near} = [["0 deg", "2.0 cm"], ["90 deg", "4.5 cm"]]'
    raise step.fault(
        f"sweep.{key}",
        f"{shown(name)}, which is not there",
        "the name of one of: " + ", ".join(f'"{each}"' for each in names),
        example,
    )
