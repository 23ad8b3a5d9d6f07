"""What is asked of a body: each answer's name and the letter whose value it is."""

from __future__ import annotations

from typing import NamedTuple

from ..equation import key as keys
from .body import Body
from ..problem.model import Unknown


class Asked(NamedTuple):
    """An answer wanted: its name, and the letter whose value it is ("" for the joint force as a whole)."""

    name: str
    key: str


def asked(body: Body) -> tuple[Asked, ...]:
    """The answers wanted, in order: as written in `ask`, else every "?"."""
    problem = body.problem
    if problem.ask:
        return tuple(Asked(name, key_of(body, name)) for name in problem.ask)
    out, sharing = [], [pull.name for pull in problem.pulls if pull.share]
    for each in body.sought:
        key = keys.of(each.letter.name)
        name = key.owner if key.what in ("force", "moment") else each.letter.name
        out.append(Asked(f"{key.owner}.direction" if key.is_angle else name, each.letter.name))
        if key.what == "force" and key.owner in sharing:
            out += [Asked(other, f"{other}.force") for other in sharing if other != key.owner]
    if isinstance(problem.pivot.friction, Unknown):
        out.append(Asked("reaction.friction", keys.FRICTION))
    return tuple(out)


def key_of(body: Body, name: str) -> str:
    """The letter of an answer's name."""
    sizes = {force.name: force.size.name for force in body.forces} | {
        twist.name: twist.size.name for twist in body.twists
    }
    if name in sizes:
        return sizes[name]
    if name == "reaction.friction":
        return keys.FRICTION
    if name == "reaction.direction":
        return "reaction"
    if name == "total.moment":
        return "total"
    owner, what = keys.of(name).owner, keys.of(name).what
    if what == "direction":
        return keys.angle(owner)
    if what == "moment" and owner in {force.name for force in body.forces}:
        return keys.moment(owner)
    return name
