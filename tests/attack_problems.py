"""The problems that are attacked: every one that is shipped or tested, and random ones."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

from attack_world import World
from random_problems import problems as random_tables
from worked import CONTRACT, EXTRA, SAMPLES, extra, worked

import rules
from explain.errors import Fault, NoWay
from explain.problem.reader import read_problem
from explain.mechanics.free_body import cut_free
from explain.solve.engine import Broken, Working, work_through


def shipped() -> Mapping[str, Any]:
    """Every problem of the samples, of the contract and of the extra ones, by name."""
    return {**{path.stem: path for path in (*SAMPLES, *CONTRACT)}, **{name: name for name in EXTRA}}


@cache
def working_of(name: str) -> Working:
    found = shipped()[name]
    return extra(found) if isinstance(found, str) else worked(found)


@cache
def world_of(name: str) -> World:
    return World(working_of(name))


def random_workings(count: int, seed: int) -> Iterator[tuple[dict[str, Any], Working]]:
    """Random problems that could be worked, each with its table."""
    for table in tables(count, seed):
        try:
            yield table, work_through(cut_free(read_problem(table)), rules.MOVES)
        except (Fault, NoWay, Broken):
            continue


def tables(count: int, seed: int) -> list[dict[str, Any]]:
    """So many random problems, the same for the same seed."""
    from hypothesis import HealthCheck, Phase, given, settings
    from hypothesis import seed as seeded

    out: list[dict[str, Any]] = []
    checks = list(HealthCheck)

    @seeded(seed)
    @settings(max_examples=count, database=None, phases=(Phase.generate,), deadline=None, suppress_health_check=checks)
    @given(random_tables())
    def collect(table: dict[str, Any]) -> None:
        out.append(table)

    collect()
    return out
