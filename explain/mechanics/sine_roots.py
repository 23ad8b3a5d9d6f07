"""The angles at which a balance vanishes that depends on the sine and cosine of one angle, and what to change where
there is none.
"""

from __future__ import annotations

from collections.abc import Callable
from math import acos, atan2, cos, degrees, hypot, radians, sin

from ..equation import key as keys
from .balances import Conditions
from ..errors import Fault, NoWay
from ..exact.linear import NOTHING
from .undetermined import Undetermined, plain

TOUCHING = 1e-12  # a sine may be this much beyond one in floats


class NoRoot(Fault):
    """No angle balances."""


def key_of_angle(unknown: str) -> str:
    return f"{keys.of(unknown).owner}.direction"


def roots_of(
    conditions: Conditions, balance: str, unknown: str, at: Callable[[float], float], scale: float
) -> list[float]:
    """The angles of one turn at which a cos + b sin + c = 0, in degrees from 0 to 360, ascending. Raises
    Undetermined, NoRoot and NoWay.
    """
    a, c = (at(0.0) - at(180.0)) / 2, (at(0.0) + at(180.0)) / 2
    b = at(90.0) - c
    if abs(at(211.0) - a * cos(radians(211.0)) - b * sin(radians(211.0)) - c) > 1e-6 * scale:
        raise NoWay(
            f"The {balance} do not go with the sine and cosine of {conditions.name_of(unknown)} alone, so this "
            "working cannot settle it."
        )
    size, file = hypot(a, b), conditions.body.problem.file
    if size < NOTHING * scale:
        same = abs(c) < NOTHING * scale
        raise Undetermined(
            file=file,
            key=key_of_angle(unknown),
            found="every angle balances" if same else "no angle balances",
            expected="a problem in which the angle matters: where all forces stay parallel, or keep their angle to the "
            "bone, it cancels",
            example='moment_arm = "4.0 cm", with a pull of given size',
        )
    if abs(c) > size * (1 + TOUCHING):
        raise NoRoot(
            file=file,
            key=key_of_angle(unknown),
            found=f"an angle whose sine or cosine would be {plain(abs(c) / size)}",
            expected="a sine between -1 and 1: no angle has one beyond that, so this balance cannot be reached at "
            "any angle",
            example='force = "?"',
            advice=f"Try {_remedy(conditions, balance, unknown)}; or give the angle, and ask for a force.",
        )
    first, step = degrees(atan2(b, a)), degrees(acos(max(-1.0, min(1.0, -c / size))))
    return sorted({round(first + step, 9) % 360, round(first - step, 9) % 360})


def _remedy(conditions: Conditions, balance: str, unknown: str) -> str:
    """Which forces are too strong, told from the terms: those that stay the same at every angle outdo those that
    change with it.
    """
    truth, kinds = conditions.truth, {force.name: force.kind for force in conditions.body.forces}
    side = {"level": truth.level, "upright": truth.upright}.get(balance, truth.moment)
    here, there = ({**dict.fromkeys(conditions.pending, 0.5), unknown: angle} for angle in (10.0, 131.0))
    values = [conditions.values_with(trial) for trial in (here, there)]
    terms = {name: [truth.size(each, at) for at in values] for name, each in side.items() if name != "reaction"}
    changing = {name for name, (one, other) in terms.items() if abs(one - other) > NOTHING * max(abs(one), abs(other))}
    pulls = {name for name in terms if kinds.get(name) not in ("weight", "load")}
    if pulls and not pulls & changing:
        return "a smaller pull, or a larger load"
    if pulls and pulls <= changing and not changing - pulls:
        return "a larger pull, or a smaller load"
    return "sizes with which those that change with the angle can outdo the rest"
