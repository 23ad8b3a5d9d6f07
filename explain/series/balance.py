"""What turns a body before anything is worked out: every moment as a fixed part and a part for each unit of what is
sought.

Knows the given values alone: no balance is settled here. Values are in kg, m, s; moments counter-clockwise positive.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from math import hypot

from ..mechanics.body import Body, Force
from ..mechanics.asked import key_of
from ..mechanics.settlement import Settling
from ..mechanics.truth import Truth

NOTHING = 1e-12  # of the largest term: the noise of floats


@dataclass(frozen=True, slots=True)
class Turner:
    """One force or couple: its moment is `fixed` + `per` times what is sought; `size` (of all alike) and signed `arm`
    where it has them fixed.

    `reach` is how far from the pivot it acts; `share` is how many times the sought force it is, 0.0 for one that is not
    of its kind.
    """

    name: str
    kind: str
    fixed: float
    per: float
    size: float | None
    arm: float | None
    share: float = 0.0
    reach: float = 0.0


@dataclass(frozen=True, slots=True)
class Balance:
    """The moments about the pivot, with one unknown `key`, which belongs to `owner`; it is minus `held` over `per`."""

    key: str
    owner: str
    turners: Mapping[str, Turner]
    parallel: bool

    @property
    def per(self) -> float:
        return sum(each.per for each in self.turners.values())

    @property
    def held(self) -> float:
        return sum(each.fixed for each in self.turners.values())

    @property
    def scale(self) -> float:
        """The size of the largest fixed moment."""
        return max([abs(each.fixed) for each in self.turners.values()] or [0.0])


def balance_of(body: Body, truth: Truth, name: str) -> Balance | None:
    """The moments about the pivot for an answer of that name; None where it does not stand in them alone and evenly."""
    key = key_of(body, name)
    sought = {each.letter.name for each in body.sought}
    if not body.problem.balanced or key not in sought or any(each.startswith("*angle ") for each in sought):
        return None
    settling = Settling(body, truth)
    others = {each: 0.5 for each in sought if each != key}
    at = [settling.values_with({**others, key: trial}) for trial in (0.0, 1.0, 2.0)]
    moved = settling.values_with({each: 1.5 for each in others} | {key: 1.0})
    turners = {}
    for each, moment in truth.moment.items():
        zero, one, two = (truth.size(moment, values) for values in at)
        noise = 1e-9 * max(abs(zero), abs(one), abs(two), 1e-12)
        if abs(two - 2 * one + zero) > noise or abs(truth.size(moment, moved) - one) > noise:
            return None
        if each != "reaction":
            reach = hypot(*(truth.size(part, at[1]) for part in truth.place[each])) if each in truth.place else 0.0
            turners[each] = replace(_turner(body, each, zero, one - zero, at), reach=reach)
    found = Balance(key, key.rpartition(".")[0] or key, turners, _parallel(body, truth, at[1]))
    largest = max([abs(each.per) for each in turners.values()] or [0.0])
    return found if abs(found.per) > NOTHING * largest and largest else None


def _turner(body: Body, name: str, fixed: float, per: float, at: list[dict[str, float]]) -> Turner:
    force = next((each for each in body.forces if each.name == name), None)
    if force is None:
        twist = next(each for each in body.twists if each.name == name)
        return Turner(name, "couple", fixed, per, None if per else at[0].get(twist.size.name, 0.0), float(twist.turns))
    zero, one = (values[force.size.name] * force.count for values in at[:2])
    if abs(one - zero) > NOTHING:
        return Turner(name, force.kind, fixed, per, None, per / (one - zero), one - zero)
    return Turner(name, force.kind, fixed, per, one, None if per else (fixed / one if one else 0.0))


def _parallel(body: Body, truth: Truth, values: Mapping[str, float]) -> bool:
    """Whether all forces are parallel and act along one straight line through the pivot, so that a slope is the same
    factor in every arm.
    """
    if not body.forces or body.twists or any(force.arm is not None or not force.directed for force in body.forces):
        return False
    ways = [
        _unit(
            truth.size(truth.level[each.name], _one(each, values)),
            truth.size(truth.upright[each.name], _one(each, values)),
        )
        for each in body.forces
    ]
    places = [_unit(*(truth.size(part, values) for part in truth.place[each.name])) for each in body.forces]
    return _on_one_line(ways) and _on_one_line([each for each in places if each != (0.0, 0.0)])


def _one(force: Force, values: Mapping[str, float]) -> Mapping[str, float]:
    return {**values, force.size.name: 1.0}


def _unit(x: float, y: float) -> tuple[float, float]:
    far = hypot(x, y)
    return (x / far, y / far) if far > NOTHING else (0.0, 0.0)


def _on_one_line(ways: list[tuple[float, float]]) -> bool:
    return all(abs(ways[0][0] * y - ways[0][1] * x) < 1e-9 for x, y in ways)
