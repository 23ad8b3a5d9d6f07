"""What is asked of a body: each answer's name and the letter whose value it is."""

from __future__ import annotations

from typing import NamedTuple

from .body import Body


class Asked(NamedTuple):
    """An answer wanted: its name, and the letter whose value it is ("" for the joint force as a whole)."""

    name: str
    key: str


def asked(body: Body) -> tuple[Asked, ...]:
    """The answers wanted, in order: as written in `ask`, else every "?"."""
    problem = body.problem
    if problem.ask:
        return tuple(Asked(name, key_of(body, name)) for name in problem.ask)
    out = []
    for each in body.sought:
        key = each.letter.name
        if key.startswith("*angle "):
            out.append(Asked(key.removeprefix("*angle ") + ".direction", key))
        elif key.endswith((".force", ".moment")):
            out.append(Asked(key.rpartition(".")[0], key))
        else:
            out.append(Asked(key, key))
    return tuple(out)


def key_of(body: Body, name: str) -> str:
    """The letter of an answer's name."""
    sizes = {force.name: force.size.name for force in body.forces} | {
        twist.name: twist.size.name for twist in body.twists
    }
    if name in sizes:
        return sizes[name]
    if name in ("reaction", "reaction.direction"):
        return "reaction"
    if name == "total.moment":
        return "total"
    owner, _, what = name.rpartition(".")
    if what == "direction":
        return f"*angle {owner}"
    if what == "moment" and owner in {force.name for force in body.forces}:
        return f"*moment {owner}"
    return name
