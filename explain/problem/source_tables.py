"""A problem beside the tables it was read from, so that a fault can say where. Knows names, nothing of what they
mean.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from ..errors import Fault, nearest, shown
from .toml_table import Fields
from .model import Problem, Pull, Segment


@dataclass(frozen=True)
class Sheet:
    """A problem with the table each name comes from, so that a fault can say where."""

    problem: Problem
    top: Fields
    tables: Mapping[str, Fields]

    @cached_property
    def segments(self) -> Mapping[str, Segment]:
        return {each.name: each for each in self.problem.segments}

    @cached_property
    def pulls(self) -> Mapping[str, Pull]:
        return {each.name: each for each in self.problem.pulls}

    @cached_property
    def forces(self) -> tuple[str, ...]:
        """The names of all forces but the reaction: pulls, loads, and segments that weigh something."""
        loads = (each.name for each in self.problem.loads)
        return (*self.pulls, *loads, *(each.name for each in self.problem.segments if each.mass or each.weight))

    @cached_property
    def before(self) -> Mapping[str, str]:
        """The name of the segment each one starts from, "" at the pivot."""
        order = self.problem.segments
        return {
            each.name: each.start or last
            for each, last in zip(order, ("", *(each.name for each in order)), strict=False)
        }

    def segment(self, on: str) -> Segment | None:
        """The segment that `on` names, the last one where it names none."""
        return self.segments.get(on) if on else next(reversed(self.problem.segments), None)


def by_name(tables: Mapping[str, tuple[Fields, ...]], names: Mapping[str, tuple[str, ...]]) -> Mapping[str, Fields]:
    """The table of each name. Raises Fault where a name stands twice, whatever the tables."""
    met: dict[str, Fields] = {}
    folded: dict[str, Fields] = {}
    for kind in tables:
        for fields, name in zip(tables[kind], names[kind], strict=True):
            first = folded.setdefault(name.casefold(), fields)
            if first is not fields:
                raise fields.fault(
                    "name",
                    f"the name {shown(name)} a second time",
                    "a name that nothing else in the problem has",
                    f'name = "{name} 2"',
                    f"The first is {_place_of(first)}.",
                )
            met[name] = fields
    return met


def unknown_name(fields: Fields, key: str, name: str, known: list[str], what: str = "the name of a segment") -> Fault:
    """The fault for a name that nothing has, with the nearest that something has."""
    near = nearest(name, known) or (known[0] if known else "")
    listed = ", ".join(f'"{each}"' for each in known[:12])
    return fields.fault(
        key,
        f"{shown(name)}, which nothing here is called",
        f"{what}: {listed or 'there is none'}",
        f'{key} = "{near}"' if known else f"no {key}",
    )


def _place_of(fields: Fields) -> str:
    where = fields.fault("name", "", "", "")
    return where.key + (f" in line {where.line}" if where.line else "")


def directed(pull: Pull) -> bool:
    return pull.direction is not None or pull.toward is not None
