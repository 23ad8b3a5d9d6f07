"""Which way an answer must move, told from signs before anything is worked out. Never a guess: where signs do not
tell, it says so.
"""

from __future__ import annotations

from dataclasses import dataclass

from .balance import NOTHING, Balance
from .effects import RISES, Effect, effects, scaled

WEIGHTS = ("weight", "load")
MORE, LESS, SAME, OPEN, NONE = "more", "less", "same", "open", "none"


@dataclass(frozen=True, slots=True)
class Prediction:
    """`way` is one of more, less, same, open (signs do not tell) and none (nothing to set beside it).

    `ground` says why: "effects" · "slope" (parallel forces on a straight line) · "factor" (all moments changed alike) ·
    "weights" (every weight by the same factor, and nothing else acts) · "joint" and "pull" (what is added to the joint
    force, by a known force or by the pull alone) · "forces kept" · "two parts" and "several" (of the joint force) ·
    "question" (only the
    question is new) · "no arm" (what changed passes through the pivot) · "not in it" (what changed does not turn) ·
    "opposite" · "turned over" ·
    "no single balance" · "another quantity".
    """

    way: str
    ground: str
    effects: tuple[Effect, ...] = ()
    factor: float = 1.0


def predict(
    old: Balance | None,
    new: Balance | None,
    was: float,
    question_only: bool = False,
    touched: frozenset[str] = frozenset(),
) -> Prediction:
    """The way of the change from the moments alone. `was` is the earlier answer; `touched` are the names that the
    step speaks of.
    """
    if question_only:
        return Prediction(SAME, "question")
    if old is None or new is None:
        return Prediction(OPEN, "no single balance")
    if old.per * new.per < 0:
        return Prediction(OPEN, "turned over")
    found = effects(old, new)
    if not found:
        return Prediction(SAME, "no arm" if _at_the_pivot(new, old, touched) else "not in it")
    if (weights := weights_scaled(old, new)) is not None and was > 0:
        return Prediction(MORE if weights > 1 else LESS, "weights", (), weights)
    factor = scaled(old, new)
    if factor is not None and abs(factor - 1.0) > 1e-9:
        return Prediction(
            SAME, "slope" if old.parallel and new.parallel and _sizes_kept(old, new) else "factor", found, factor
        )
    senses = {each.sense for each in found}
    sharing = any(each.against is None for each in found)
    if len(senses) > 1 or (sharing and was <= 0):
        return Prediction(OPEN, "opposite" if len(senses) > 1 else "turned over", found)
    return Prediction(MORE if senses == {RISES} else LESS, "effects", found)


def weights_scaled(old: Balance, new: Balance) -> float | None:
    """The factor by which every weight has changed, where there are at least two,
    nothing but weights acts with a known size, and nothing else has changed; None where there is none.
    """
    if old.turners.keys() != new.turners.keys() or abs(old.per - new.per) > NOTHING * abs(old.per):
        return None
    factors = list[float]()
    for name, before in old.turners.items():
        after = new.turners[name]
        if abs(before.per - after.per) > NOTHING * abs(old.per) or (before.per and before.fixed):
            return None
        if before.per:
            continue
        if not (before.size and after.size and before.kind in WEIGHTS and before.arm is not None):
            return None
        if after.arm is None or abs(after.arm - before.arm) > NOTHING * max(abs(before.arm), abs(after.arm)):
            return None
        factors.append(after.size / before.size)
    alike = len(factors) > 1 and max(factors) - min(factors) <= 1e-9 * max(factors)
    return factors[0] if alike and abs(factors[0] - 1) > 1e-9 else None


def cancels(old: Balance, new: Balance) -> bool:
    """Whether opposite changes of known moments make up for each other exactly, what is sought turning as before."""
    size = max(old.scale, new.scale)
    return abs(old.held - new.held) <= NOTHING * size and abs(old.per - new.per) <= NOTHING * abs(old.per)


def _sizes_kept(old: Balance, new: Balance) -> bool:
    """Whether no force has changed its size or its distance from the pivot: only the slope of both has changed the
    arms.
    """
    for name, each in old.turners.items():
        size = new.turners[name].size
        if abs(each.reach - new.turners[name].reach) > 1e-9 * each.reach:
            return False
        if (each.size is None) is not (size is None):
            return False
        if each.size is not None and size is not None and abs(each.size - size) > NOTHING * max(each.size, size):
            return False
        if abs(each.share - new.turners[name].share) > NOTHING * abs(each.share):
            return False
    return True


def _at_the_pivot(new: Balance, old: Balance, touched: frozenset[str]) -> bool:
    """Whether everything the step speaks of that is a force has no moment, before and after."""
    named = [each for balance in (old, new) for name, each in balance.turners.items() if name in touched]
    size = max(old.scale, new.scale)
    return bool(named) and all(abs(each.fixed) <= NOTHING * size and not each.per for each in named)
