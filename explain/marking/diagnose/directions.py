"""Which way a quantity points in a world, and whether a student's words for it agree. Knows directions, no line."""

from __future__ import annotations

from collections.abc import Sequence
from math import atan2, degrees, hypot

from .alternatives import World

SMALL = 0.03  # of the size: a part too small to point anywhere
_WAYS = {"up": (0, 1), "down": (0, -1), "right": (1, 0), "left": (-1, 0)}


def vector(key: str, world: World) -> tuple[float, float] | None:
    """A force's parts to the right and up, where the key is of one that points somewhere."""
    values = world.values
    if key == "reaction" and "reaction.right" in values:
        return values["reaction.right"], values["reaction.up"]
    if key == "reaction.right" or key.startswith("*level "):
        return values[key], 0.0
    if key == "reaction.up" or key.startswith("*upright "):
        return 0.0, values[key]
    name, _, what = key.rpartition(".")
    if what in ("force", "weight") and f"*level {name}" in values:
        return values[f"*level {name}"], values[f"*upright {name}"]
    return None


def agrees(key: str, ways: Sequence[str], world: World, flipped: bool = False) -> bool | None:
    """Whether the ways that are named are those of a quantity; None where they say nothing of it. `flipped`: the
    pair on the other body.
    """
    if key.startswith("*moment "):
        turns = [1 if way == "counter-clockwise" else -1 for way in ways if way.endswith("clockwise")]
        return turns[0] * world.values[key] > 0 if turns and world.values[key] else None
    found = vector(key, world)
    if key == "*angle reaction":
        found = vector("reaction", world)
    if found is None:
        return None
    right, up = (-found[0], -found[1]) if flipped else found
    size = hypot(right, up)
    said: list[bool] = []
    for way in ways:
        if way in _WAYS:
            x, y = _WAYS[way]
            along = x * right + y * up
            if abs(along) > SMALL * size:
                said.append(along > 0)
            elif size:
                said.append(not key.startswith("reaction.") and len(ways) > 1)
        if way in ("below horizontal", "above horizontal") and abs(up) > SMALL * size:
            said.append((up > 0) == way.startswith("above"))
        if way in ("left of vertical", "right of vertical") and abs(right) > SMALL * size:
            said.append((right > 0) == way.startswith("right"))
    return all(said) if said else None


def acute_angles(key: str, world: World, ways: Sequence[str]) -> tuple[float, ...]:
    """The numbers that may rightly stand for an angle: to the level where the words say so, to the upright, else
    either, and the whole turn.
    """
    value = world.values[key]
    if key != "*angle reaction":
        return (value, 90 - value) if any("vertical" in way or "horizontal" in way for way in ways) else (value,)
    right, up = world.values["reaction.right"], world.values["reaction.up"]
    true = degrees(atan2(abs(up), abs(right)))
    level = value if world.account.bone is None else true
    turn = degrees(atan2(up, right)) % 360
    if any("horizontal" in way for way in ways):
        return (level, 180 - level)
    if any("vertical" in way for way in ways):
        return (90 - level, 90 + level)
    both = (level, 90 - level, 180 - level, 180 + level, 90 + level, turn, turn - 360, (turn + 180) % 360, -level)
    return (value, 90 - value, 180 - value, *both)
