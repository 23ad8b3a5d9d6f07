"""The verdict on a line that is right in size when its words name a direction. Knows which ways a quantity has by
`senses`.
"""

from __future__ import annotations

from .piece_verdict import Found
from .unit_frames import kind_of
from .piece_test import alone
from .directions import agrees
from .compare_sides import CLOSE
from .alternatives import World


def sensed(found: Found, world: World, flipped: bool, bone: str) -> Found:
    """The same, or a slip where the words name another way than the quantity has. `flipped`: the class gives the
    force on the other bone.
    """
    chain, holding = found.chain, found.holding
    if chain is None or holding is None:
        return found
    ways = tuple(way for each in chain.remarks if each for way in each.directions)
    name, fit = alone(chain.sides[0]), holding.fits[0] if holding.fits else None
    if (
        not ways
        or name is None
        and not (chain.label and holding.states)
        or name is not None
        and (fit is None or name.text not in fit.meanings)
    ):
        return found
    if name is None or fit is None:
        return _of_label(found, holding.states, ways, world, flipped, bone)
    key = fit.meanings[name.text].key
    text = " ".join([*(each.text for each in chain.remarks if each), chain.label]).casefold()
    other = flipped or bool(bone) and f"on the {bone.casefold()}" in text
    size = abs(fit.meanings[name.text].value)
    same = [
        each
        for each in getattr(name, "keys", ())
        if each in world.values
        and kind_of(each) == kind_of(key)
        and abs(abs(world.values[each]) - size) <= CLOSE * size
    ]
    if any(agrees(each, ways, world, other) is not False for each in (key, *same)):
        return found
    return found._replace(
        verdict="slips",
        slips=_names(key, agrees(key, ways, world, not other)),
        why="sense",
        worlds=(world,) if world.slips else (),
    )


def _of_label(
    found: Found, keys: tuple[str, ...], ways: tuple[str, ...], world: World, flipped: bool, bone: str
) -> Found:
    """The same for a quantity that a label in words names."""
    text = " ".join(each.text for each in found.chain.remarks if each).casefold() if found.chain else ""
    other = flipped or bool(bone) and f"on the {bone.casefold()}" in text
    if any(agrees(key, ways, world, other) is not False for key in keys):
        return found
    return found._replace(
        verdict="slips",
        slips=_names(keys[0], agrees(keys[0], ways, world, not other)),
        why="sense",
        worlds=(world,) if world.slips else (),
    )


def _names(key: str, turned_over: bool | None) -> tuple[str, ...]:
    """The slips that give a quantity another direction; `turned_over` where it is just the opposite one."""
    joint = key.startswith(("reaction", "*angle reaction"))
    if key == "*angle reaction":
        return "wrong-quadrant", "reaction-on-other-body", "reaction-wrong-sense"
    if turned_over:
        return ("reaction-on-other-body", "reaction-wrong-sense") if joint else ("sign-of-a-term",)
    return ("wrong-quadrant",) if key in ("reaction", "*angle reaction") else ()
