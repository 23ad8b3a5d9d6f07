"""Which way an answer must move, told from signs before anything is worked out. Never a guess: where signs do not
tell, it says so.
"""

from __future__ import annotations

from dataclasses import dataclass

from .balance import NOTHING, Balance
from .effects import RISES, Effect, effects, scaled

MORE, LESS, SAME, OPEN, NONE = "more", "less", "same", "open", "none"


@dataclass(frozen=True, slots=True)
class Prediction:
    """`way` is one of more, less, same, open (signs do not tell) and none (nothing to set beside it).

    `ground` says why: "effects" · "slope" (parallel forces on a straight line) · "factor" (all moments changed alike) ·
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
