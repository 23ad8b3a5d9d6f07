"""How an answer must move through a sweep, told from the moments before anyone looks at the plot; an honest word where
they do not tell.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from ..solve.outcome import Outcome
from .balance import Balance, balance_of
from .comparison_words import called
from .sweep import Sweep
from .worked_steps import Point, Worked


def swept_noun(each: Worked) -> str:
    """What is swept: "the mass of the jug", "g"; of an angle only that it is one."""
    sweep = each.step.sweep
    assert sweep is not None
    if sweep.is_angle:
        return "the angle"
    if sweep.owner in ("course", "person"):
        return "g" if sweep.owner == "course" else f"the body {sweep.key}"
    return called(each.outcome.body, sweep.owner if sweep.key in ("force", "moment") else f"{sweep.owner}.{sweep.key}")


def known_points(each: Worked) -> list[tuple[Point, Outcome]]:
    """The values of a sweep that balance, each with its working."""
    return [(point, point.outcome) for point in each.points if point.outcome is not None]


def foreseen(each: Worked) -> str:
    """How the answer must move through the range, from the moments alone; an honest word where they do not tell."""
    known, sweep = known_points(each), each.step.sweep
    assert sweep is not None
    found = [balance_of(outcome.body, outcome.working.truth, each.follow) for _, outcome in known]
    balances = [one for one in found if one is not None]
    noun = called(each.outcome.body, each.follow)
    if len(balances) < len(found) or len(found) < 2:
        return ""
    if not sweep.is_angle:
        return _of_number(sweep, known, balances, noun, swept_noun(each))
    if all(one.parallel for one in balances) and _same_size(balances):
        return (
            "All forces are parallel and act along one straight line through the pivot, so the angle stands as the "
            "same factor in every lever arm: "
            f"{noun} must be the same at every angle."
        )
    if _steady(balances) and _one_sided(balances):
        return _by_the_arms(known, balances, noun)
    return (
        "More than one lever arm changes with the angle, those of the weights and that of the pull, so signs alone "
        "do not tell where "
        f"{noun} is greatest: only the numbers can."
    )


def _of_number(
    sweep: Sweep, known: Sequence[tuple[Point, Outcome]], balances: Sequence[Balance], noun: str, what: str
) -> str:
    ends = [sweep.told(known[place][0].value) for place in (0, -1)]
    if _steady(balances) and _one_sided(balances):
        held = [abs(one.held) for one in balances]
        line = " in a straight line" if _is_line([float(point.value) for point, _ in known], held) else ""
        if max(held) - min(held) <= 1e-12 * max(held):
            return f"No moment changes with {what}: {noun} must be the same throughout."
        if held in (sorted(held), sorted(held, reverse=True)):
            grows = held[-1] > held[0]
            return (
                f"The lever arm of what is sought stays the same, so {noun} can only follow the moments of the rest. "
                f"These {'grow' if grows else 'shrink'}{line} as {what} grows: {noun} must be "
                f"{_extreme(not grows)} at {ends[0]} and {_extreme(grows)} at {ends[1]}."
            )
    per = [abs(one.per) for one in balances]
    same_way = len({one.per > 0 for one in balances}) == len({one.held > 0 for one in balances}) == 1
    if same_way and _held_steady(balances) and per in (sorted(per), sorted(per, reverse=True)):
        longer = per[-1] > per[0]
        return (
            f"The other moments stay the same; only the lever arm of what is sought changes. As {what} grows it gets "
            f"{'longer' if longer else 'shorter'}, so {noun} must be {_extreme(longer)} at {ends[0]} "
            f"and {_extreme(not longer)} at {ends[1]}; twice the arm, half the force."
        )
    return (
        f"More than one moment changes with {what}, or not all one way, so signs alone do not tell where {noun} is "
        "greatest: only the numbers can."
    )


def _extreme(largest: bool) -> str:
    return "largest" if largest else "smallest"


def _held_steady(balances: Sequence[Balance]) -> bool:
    return all(abs(one.held - balances[0].held) <= 1e-9 * abs(balances[0].held) for one in balances)


def _is_line(at: Sequence[float], held: Sequence[float]) -> bool:
    """Whether moments grow in proportion to what is swept."""
    slope = (held[-1] - held[0]) / (at[-1] - at[0])
    return all(abs(one - held[0] - slope * (x - at[0])) <= 1e-9 * max(held) for x, one in zip(at, held, strict=True))


def _same_size(balances: Sequence[Balance]) -> bool:
    return all(one.turners.keys() == other.turners.keys() for one, other in pairwise(balances))


def _steady(balances: Sequence[Balance]) -> bool:
    """Whether what is sought has the same lever arm throughout, so that the answer follows the other moments alone."""
    return all(abs(one.per - balances[0].per) <= 1e-12 * abs(balances[0].per) for one in balances)


def _one_sided(balances: Sequence[Balance]) -> bool:
    """Whether the other moments turn the same way at every angle where they turn at all."""
    least = 1e-9 * max(abs(one.held) for one in balances)
    return len({one.held > 0 for one in balances if abs(one.held) > least}) == 1


def _by_the_arms(known: Sequence[tuple[Point, Outcome]], balances: Sequence[Balance], noun: str) -> str:
    held = [abs(one.held) for one in balances]
    most, least = (known[held.index(value)][0].value for value in (max(held), min(held)))
    return (
        f"The lever arm of what is sought stays the same, so {noun} can only follow the moments of the rest: it "
        "must be largest where their lever arms are "
        f"longest, at {most:f}°, and smallest where they are shortest, at {least:f}°."
    )
