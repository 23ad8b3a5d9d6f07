"""What a change does to the moments, one effect at a time: which force, how, and whether that raises or lowers the
answer. Knows signs alone.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from .balance import NOTHING, Balance, Turner

RISES, FALLS = 1, -1


class Effect(NamedTuple):
    """One reason for the answer to rise (`sense` 1) or to fall (-1). `cause` is a key of the wording; `against` is
    whether the force turns
    against what is sought (None for one that shares in it)."""

    name: str
    cause: str
    sense: int
    against: bool | None
    kind: str
    ratio: float = 0.0  # new size over old size, where that alone has changed


def effects(old: Balance, new: Balance) -> tuple[Effect, ...]:
    """Every effect of the change, for a sought value above zero. Where the sought one turns the other way now,
    no effect can be named.
    """
    return tuple((*_of_held(old, new), *_of_sharing(old, new)))


def scaled(old: Balance, new: Balance) -> float | None:
    """The factor by which all moments have changed alike, None where there is none."""
    if set(old.turners) != set(new.turners) or old.per * new.per <= 0:
        return None
    factor = new.per / old.per
    same = all(
        _near(new.turners[name].fixed, each.fixed * factor, max(new.scale, abs(factor) * old.scale))
        and _near(new.turners[name].per, each.per * factor, abs(new.per))
        for name, each in old.turners.items()
    )
    return factor if same else None


def _near(one: float, other: float, size: float) -> bool:
    return abs(one - other) <= NOTHING * max(size, 1e-12)


def _pairs(old: Balance, new: Balance) -> Iterator[tuple[str, Turner | None, Turner | None]]:
    """Each force before and after; what was sought is set beside what is sought now, whatever the two are called."""
    yield new.owner, old.turners.get(old.owner), new.turners.get(new.owner)
    for name in dict.fromkeys((*old.turners, *new.turners)):
        before, after = (None if name == each.owner else each.turners.get(name) for each in (old, new))
        if before or after:
            yield name, before, after


def _of_held(old: Balance, new: Balance) -> Iterator[Effect]:
    """Of forces whose moment is known: what grows against the sought one raises it."""
    way = 1 if old.per > 0 else -1
    size = max(old.scale, new.scale)
    for name, before, after in _pairs(old, new):
        one, other = before.fixed if before else 0.0, after.fixed if after else 0.0
        if _near(one, other, size) and not _made_up_for(before, after, size):
            continue
        sense = RISES if (other - one) * way < 0 else FALLS
        against = (other if abs(other) > NOTHING * size else one) * way < 0
        yield from _why(name, before, after, sense, against)


def _made_up_for(before: Turner | None, after: Turner | None, size: float) -> bool:
    """Whether a moment is what it was although the force and its lever arm have both changed."""
    if before is None or after is None or not before.size or not after.size or abs(after.fixed) <= NOTHING * size:
        return False
    return _sign(before.size, after.size) != 0


def _why(name: str, before: Turner | None, after: Turner | None, sense: int, against: bool) -> Iterator[Effect]:
    kind = _kind(before, after)
    if before is None or after is None:
        yield Effect(name, "new" if before is None else "gone", sense, against, kind)
        return
    if before.size is None or after.size is None or before.arm is None or after.arm is None:
        yield Effect(name, "other", sense, against, kind)
        return
    if before.arm * after.arm < 0:
        yield Effect(name, "other side", sense, against, kind)
        return
    grown, longer = _sign(before.size, after.size), _sign(abs(before.arm), abs(after.arm))
    toward = RISES if against else FALLS
    if grown:
        ratio = after.size / before.size if not longer and before.size else 0.0
        yield Effect(name, "larger" if grown > 0 else "smaller", grown * toward, against, kind, ratio)
    if longer:
        yield Effect(name, "farther" if longer > 0 else "nearer", longer * toward, against, kind)


def _kind(before: Turner | None, after: Turner | None) -> str:
    known = after or before
    return known.kind if known else ""


def _sign(one: float, other: float) -> int:
    if abs(one - other) <= NOTHING * max(abs(one), abs(other)):
        return 0
    return 1 if other > one else -1


def _of_sharing(old: Balance, new: Balance) -> Iterator[Effect]:
    """Of the sought one and what shares in it: what turns more for each unit lowers it."""
    way = 1 if old.per > 0 else -1
    size = max(*(abs(each.per) for each in old.turners.values()), *(abs(each.per) for each in new.turners.values()))
    for name, before, after in _pairs(old, new):
        one, other = before.per if before else 0.0, after.per if after else 0.0
        if _near(one, other, size) and not _shared_otherwise(before, after):
            continue
        sense = FALLS if (other - one) * way > 0 else RISES
        kind = _kind(before, after)
        yield from (
            Effect(name, cause, each, None, kind) for cause, each in _shares(before, after, one, other, way, sense)
        )


def _shared_otherwise(before: Turner | None, after: Turner | None) -> bool:
    """Whether as much is turned for each unit as before, although share and lever arm have both changed."""
    return (
        before is not None
        and after is not None
        and bool(before.share and after.share)
        and _sign(abs(before.share), abs(after.share)) != 0
    )


def _shares(
    before: Turner | None, after: Turner | None, one: float, other: float, way: int, sense: int
) -> Iterator[tuple[str, int]]:
    if before is None or after is None or not one or not other:
        yield ("shares" if not one else "shares no more"), sense
        return
    if before.arm is None or after.arm is None or before.arm * after.arm < 0:
        yield ("heavier" if abs(other) > abs(one) else "lighter"), sense
        return
    toward = FALLS if other * way > 0 else RISES
    longer, more = _sign(abs(before.arm), abs(after.arm)), _sign(abs(before.share), abs(after.share))
    if longer:
        yield ("longer arm" if longer > 0 else "shorter arm"), longer * toward
    if more:
        yield ("larger share" if more > 0 else "smaller share"), more * toward
