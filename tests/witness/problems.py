"""Knows how to draw a problem that has a solution: a recipe, a course, and the witness's own answer."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import dataclass

from .courses import course, up_is_valid
from .draw import Draw, Table
from .kinds import KINDS
from .roots import Unsolved
from .solution import Root, Solution, Statics

TRIES = 200


@dataclass
class Case:
    """A drawn problem with its solution; `rows` is the class's own table, where it has one."""

    name: str
    kind: str
    problem: Table
    rows: list[list[str]]
    solution: Solution
    refused: bool | None = False  # "up is positive" where it is not valid; None: it may be refused


def table_rows(rows: list[list[str]]) -> dict[str, tuple[float, float]]:
    return {name: (float(mass) / 100, float(com) / 100) for name, mass, com in rows}


def is_plain(root: Root, problem: Table) -> bool:
    """Sizes of one scale: nothing huge beside the known forces, nothing so small that its sign is left to chance."""
    known = [abs(pull.size) for pull in root.pulls if not pull.shares and pull.size]
    largest = max(known, default=0.0)
    sizes = [abs(root.sizes[pull.name]) for pull in root.pulls if pull.right is not None and pull.shares]
    return all(1e-4 * largest < size < 300 * (largest or 1e3) for size in sizes)


def is_usual(root: Root, problem: Table, bent: str) -> bool:
    """Muscles that pull, masses and distances that are positive: what a teacher means to set."""
    muscles = [root.sizes[muscle["name"]] for muscle in problem.get("muscle", [])]
    sought = [value for name, value in root.values.items() if name.endswith((".mass", ".weight", ".hung"))]
    distance = [root.unknown] if bent and not bent.endswith(".direction") else []
    return all(value > 0 for value in [*muscles, *sought, *distance])


def draw_case(kind: str, seed: int) -> Case:
    """The first problem of a kind that can be solved, from a seed."""
    for attempt in range(TRIES):
        draw = Draw(f"{kind}/{seed}/{attempt}")
        problem = KINDS[kind](draw)
        problem.pop("spare", None)
        rows = problem.pop("rows", [])
        problem["course"] = course(draw, problem)
        try:
            solution = Statics(problem, table_rows(rows)).solve()
        except Unsolved:
            continue
        wanted = draw.chance(0.06) or is_usual(solution.roots[0], problem, solution.bent)
        if wanted and all(is_plain(root, problem) for root in solution.roots):
            return Case(f"{kind.replace(' ', '-')}-{seed}", kind, problem, rows, solution, refusal(problem, solution))
    raise AssertionError(f"no problem of the kind {kind} in {TRIES} tries")


def refusal(problem: Table, solution: Solution) -> bool | None:
    """Whether the course's sign rule must be refused for this problem."""
    if problem["course"].get("positive") != "up":
        return False
    if solution.bent:
        return None
    valid = up_is_valid(problem, solution.roots[0].pulls)
    return None if valid is None else not valid


def numbered(start: int, count: int) -> list[tuple[str, int]]:
    """So many problems of the endless list, all kinds in turn: each its kind and its seed."""
    kinds = list(KINDS)
    return [(kinds[at % len(kinds)], at // len(kinds)) for at in range(start, start + count)]


def cases(count: int, start: int = 0) -> Iterator[Case]:
    for kind, seed in numbered(start, count):
        yield draw_case(kind, seed)


def toml(problem: Table) -> str:
    """A problem as the file a person would write; JSON strings and lists are TOML too."""
    top = [
        f"{key} = {json.dumps(value)}"
        for key, value in problem.items()
        if not isinstance(value, dict) and not is_tables(value)
    ]
    for key, value in problem.items():
        for entry in [value] if isinstance(value, dict) else value if is_tables(value) else []:
            top += ["", f"[{key}]" if isinstance(value, dict) else f"[[{key}]]"]
            top += [f"{name} = {inline(item)}" for name, item in entry.items()]
    return "\n".join(top) + "\n"


def is_tables(value: object) -> bool:
    return isinstance(value, list) and bool(value) and isinstance(value[0], dict)


def inline(item: object) -> str:
    if isinstance(item, dict):
        return "{ " + ", ".join(f"{json.dumps(k)} = {json.dumps(v)}" for k, v in item.items()) + " }"
    return json.dumps(item)
