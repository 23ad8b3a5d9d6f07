"""What cannot be settled, and why: unknowns that are left over, values that do not matter, conditions that
contradict each other.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NoReturn

from ..equation import key as keys
from .balances import Conditions
from ..errors import Fault, NoWay
from ..exact.linear import rank


class Undetermined(Fault):
    """More unknowns than conditions, or conditions that contradict each other."""


def not_settled(at: Conditions, open_conditions: Sequence[str]) -> NoReturn:
    """Say why unknowns are left over. Raises Undetermined, or NoWay where the conditions would be enough."""
    idle = [
        name
        for name in at.pending
        if not any(at.depends(each, name) for each in at.conditions)
        or (keys.of(name).what == "force" and at.body.problem.pivot.reaction and not at.depends("moments", name))
    ]
    muscles = [name for name in idle if keys.of(name).what == "force" and not at.depends("moments", name)]
    if muscles:
        name = keys.of(muscles[0]).owner
        raise Undetermined(
            file=at.body.problem.file,
            key=name,
            found=f"a line of pull of {name} that passes through the pivot: no arm, no moment",
            expected="a pull that passes the pivot at some distance, so that it can balance anything",
            example='at = "4.0 cm", direction = "70 deg from back toward up"',
        )
    alone = len(at.pending) == 1 + sum(keys.of(each).is_joint for each in at.pending)
    for name in at.pending:
        if alone and not any(at.depends(each, name) for each in at.conditions):
            _no_matter(at, name)
    free = [name for name in at.pending if not keys.of(name).is_joint] or at.pending
    independent = [each for each in open_conditions if not each.startswith("moments about")]
    heard = [each for each in independent if any(at.depends(each, name) for name in at.pending)]
    angles = any(keys.of(name).is_angle for name in at.pending)
    system = at.changes(heard, at.pending) if angles else at.system(independent, at.pending)
    enough = len(at.pending) <= len(heard)
    if enough and (not system or rank(system) == len(at.pending)):
        raise NoWay(
            f"The conditions settle {_listed(map(at.name_of, at.pending))} only together, and no way to separate "
            "them was found. "
            + (
                "Give the value of one of them, and ask for the rest."
                if angles or not at.body.problem.pivot.reaction
                else "Try cutting the body free at the point where one of the unknown forces acts: make that point "
                "the pivot."
            )
        )
    count = "one unknown" if len(free) == 1 else f"{len(free)} unknowns"
    raise Undetermined(
        file=at.body.problem.file,
        found=f"{count} that the balances cannot settle: {_listed(map(at.name_of, free))}",
        expected=_remedy(at, free),
        example='force = "120 N"' if angles and len(free) > 1 else 'force = "0.70 * biceps"',
    )


def _no_matter(at: Conditions, name: str) -> NoReturn:
    """An unknown on which nothing depends: every value balances, or none."""
    balance = next(iter(at.conditions))
    rest = at.evaluate(balance, {each: 37.0 for each in at.pending})
    every = abs(rest) < 1e-9 * at.scale(balance, {each: 37.0 for each in at.pending})
    what = "angle" if keys.of(name).is_angle else "value"
    key = f"{keys.of(name).owner}.direction" if what == "angle" else name
    idle = "" if what == "angle" else f": {at.name_of(name)} does not matter"
    raise Undetermined(
        file=at.body.problem.file,
        key=key,
        found=f"{'every' if every else 'no'} {what} balances{idle}",
        expected="a problem in which the angle matters: where all forces stay parallel, or keep their angle to "
        "the bone, the angle cancels"
        if what == "angle"
        else "an unknown that the balances depend on",
        example='moment_arm = "4.0 cm", with a pull of given size',
    )


def _remedy(at: Conditions, free: Sequence[str]) -> str:
    if len(free) < 2:
        return "an unknown that the balances depend on"
    if not any(keys.of(name).is_angle for name in free):
        return (
            "no more unknowns than conditions: a value for one of them, or how they share (a force as a stated "
            "multiple of another)"
        )
    if at.body.problem.pivot.reaction:
        return (
            f"a value for {'one' if len(free) == 2 else 'all but one'} of them: only the moments about the "
            f"{at.body.problem.pivot.name} are free of "
            "the force there, and one balance settles one unknown. With reaction = false, horizontal and vertical "
            "forces "
            "count too"
        )
    return "no more unknowns than conditions: a value for one of them"


def consistent(at: Conditions, open_conditions: Iterable[str]) -> None:
    """Refuse conditions that contradict each other. Raises Undetermined."""
    for balance in open_conditions:
        if balance.startswith("moments about"):
            continue
        rest = at.evaluate(balance, {})
        if abs(rest) > 1e-6 * at.scale(balance, {}):
            if at.used_up:
                raise Undetermined(
                    file=at.body.problem.file,
                    key="pivot.slips",
                    found="slips, and no unknown for it to settle: with all of the friction used the body is not at "
                    "rest",
                    expected="one unknown more beside slips; or no slips, and the friction is checked",
                    example='at = "?"',
                )
            unit = "N m" if balance == "moments" else "N"
            what = {"moments": "moments about the pivot", "level": "horizontal forces", "upright": "vertical forces"}[
                balance
            ]
            raise Undetermined(
                file=at.body.problem.file,
                found=f"conditions that contradict each other: the {what} add to {plain(rest)} {unit}, "
                "and no unknown is left that could balance them",
                expected='forces that balance, or an unknown ("?") in place of one of the numbers',
                example='force = "?"',
            )


def _listed(names: Iterable[str]) -> str:
    all_names = list(names)
    return all_names[0] if len(all_names) == 1 else ", ".join(all_names[:-1]) + " and " + all_names[-1]


def plain(value: float) -> str:
    """A number in a message."""
    return f"{value:.4g}"
