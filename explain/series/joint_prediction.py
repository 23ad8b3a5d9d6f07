"""Which way the joint force must move, told before anything is worked out from what each force adds to it. Never a
guess: where that does not tell, it says so.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from .balance import NOTHING, Turner
from .effects import FALLS, RISES, Effect
from .joint_force import JointForce
from .prediction import LESS, MORE, OPEN, SAME, Prediction, weights_scaled


def predict_joint(old: Sequence[JointForce], new: Sequence[JointForce], question_only: bool = False) -> Prediction:
    """The way of the change of one part, along its earlier sense, or of the size where there are two parts."""
    if question_only:
        return Prediction(SAME, "question")
    if not old or len(old) != len(new):
        return Prediction(OPEN, "no single balance")
    if (factor := _all_scaled(old, new)) is not None:
        return Prediction(MORE if factor > 1 else LESS, "weights", (), factor)
    found = [_part(one, other) for one, other in zip(old, new, strict=True)]
    if len(found) == 1:
        return found[0]
    changing = [(each, other) for each, other in zip(found, new, strict=True) if each.way != SAME]
    if not changing:
        return found[0]
    ways = {each.way for each, _ in changing}
    effects = tuple(dict.fromkeys(effect for each, _ in changing for effect in each.effects))
    if ways == {MORE} or (ways == {LESS} and all(_one_sense(other) for _, other in changing)):
        return Prediction(ways.pop(), changing[0][0].ground, effects)
    if ways == {OPEN} or len(changing) == 1 and OPEN in ways:
        return changing[0][0]
    return Prediction(OPEN, "two parts")


def _all_scaled(old: Sequence[JointForce], new: Sequence[JointForce]) -> float | None:
    """The factor of all weights, where nothing else acts and nothing else has changed."""
    factor = weights_scaled(old[0].balance, new[0].balance)
    if factor is None:
        return None
    same = all(
        _near(other.own[name], part * factor, max(one.scale, other.scale))
        for one, other in zip(old, new, strict=True)
        for name, part in one.own.items()
    )
    return factor if same and all(_same_pull(*pair) for pair in zip(old, new, strict=True)) else None


def _part(old: JointForce, new: JointForce) -> Prediction:
    size, was = max(old.scale, new.scale), sum(old.parts.values())
    if old.balance.per * new.balance.per < 0:
        return Prediction(OPEN, "turned over")
    if _known_same(old, new, size) and not _same_pull(old, new):
        return _by_the_pull(old, new, was)
    before, after = old.parts, new.parts
    changed = {
        name: after.get(name, 0.0) - before.get(name, 0.0)
        for name in dict.fromkeys((*before, *after))
        if not _near(after.get(name, 0.0), before.get(name, 0.0), size)
    }
    if not changed:
        return Prediction(SAME, "forces kept")
    way = _sense(was, size)
    found: list[Effect] = []
    for name, by in changed.items():
        sense = RISES if by * way > 0 or not way else FALLS
        found += _why(name, old.balance.turners.get(name), new.balance.turners.get(name), sense)
    if len({each.sense for each in found}) > 1 or (not way and len({by > 0 for by in changed.values()}) > 1):
        return Prediction(OPEN, "opposite", tuple(found))
    if any(each.cause == "both" for each in found):
        return Prediction(OPEN, "several")
    return Prediction(MORE if found[0].sense == RISES else LESS, "joint", tuple(found))


def _by_the_pull(old: JointForce, new: JointForce, was: float) -> Prediction:
    """Where the pull alone is placed otherwise: all moments that it holds stay, so its part changes by one factor."""
    balance = old.balance
    if -balance.held * balance.per <= 0:
        return Prediction(OPEN, "turned over")
    by = (new.per_moment - old.per_moment) * balance.held
    way = _sense(was, max(old.scale, new.scale))
    sense = RISES if by * way > 0 or not way else FALLS
    longer = abs(new.balance.per) - abs(balance.per)
    cause = "turned" if abs(longer) <= NOTHING * abs(balance.per) else "longer arm" if longer > 0 else "shorter arm"
    turner = new.balance.turners.get(new.balance.owner)
    effect = Effect(new.balance.owner, cause, sense, None, turner.kind if turner else "")
    return Prediction(MORE if sense == RISES else LESS, "pull", (effect,))


def _why(name: str, before: Turner | None, after: Turner | None, sense: int) -> Iterator[Effect]:
    known = after or before
    kind = known.kind if known else ""
    if before is None or after is None:
        yield Effect(name, "new" if before is None else "gone", sense, None, kind)
        return
    if before.size is None or after.size is None:
        yield Effect(name, "other", sense, None, kind)
        return
    grown = _sense(after.size - before.size, max(before.size, after.size))
    arms = [0.0 if each.arm is None else abs(each.arm) for each in (before, after)]
    longer = _sense(arms[1] - arms[0], max(arms))
    if grown and longer:
        yield Effect(name, "both", sense, None, kind)
    elif grown:
        yield Effect(name, "larger" if grown > 0 else "smaller", sense, None, kind)
    elif longer:
        yield Effect(name, "farther" if longer > 0 else "nearer", sense, None, kind)
    else:
        yield Effect(name, "turned", sense, None, kind)


# ---------------------------------------------------------------------- alike
def _known_same(old: JointForce, new: JointForce, size: float) -> bool:
    """Whether every force but the pull has the part and the moment that it had."""
    before, after = old.balance.turners, new.balance.turners
    turning = max(old.balance.scale, new.balance.scale)
    return old.own.keys() == new.own.keys() and all(
        _near(old.own[name], new.own[name], size) and _near(before[name].fixed, after[name].fixed, turning)
        for name in old.own
    )


def _same_pull(old: JointForce, new: JointForce) -> bool:
    return _near(old.per_moment, new.per_moment, max(abs(old.per_moment), abs(new.per_moment)))


def _one_sense(force: JointForce) -> bool:
    """Whether all forces push the joint the same way, so that their sum cannot turn over."""
    return len({part > 0 for part in force.parts.values() if abs(part) > NOTHING * force.scale}) == 1


def _near(one: float, other: float, size: float) -> bool:
    return abs(one - other) <= 1e-9 * max(size, 1e-12)


def _sense(value: float, size: float) -> int:
    return 0 if abs(value) <= 1e-9 * max(size, 1e-12) else 1 if value > 0 else -1
