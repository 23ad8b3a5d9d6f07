"""What the joint force is made of before anything is worked out: each known force's own part, and the part of the pull
that holds its moment.

With one thing sought that stands evenly in the balances, every part of the joint force is a sum over the known forces
alone: the pull is put in from the moments. Values are in kg, m, s. No balance is settled here.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import cos, radians, sin

from ..mechanics.body import Body
from ..mechanics.settlement import Settling
from ..mechanics.truth import Truth
from .balance import NOTHING, Balance, balance_of

PARTS = ("reaction.right", "reaction.up", "reaction.along", "reaction.across")
NAMES = ("reaction", *PARTS)
Vector = tuple[float, float]


@dataclass(frozen=True, slots=True)
class JointForce:
    """The joint force along one axis: `own` are the parts of the known forces, turned about; `moments` theirs about the
    pivot; `per_moment` is the part that the pull has for each unit of moment that it holds. `parts` is their sum by
    force.
    """

    balance: Balance
    own: Mapping[str, float]
    per_moment: float

    @property
    def parts(self) -> Mapping[str, float]:
        """By force, what it adds to the joint force: by itself and by the pull that holds it."""
        turners = self.balance.turners
        return {name: self.per_moment * turners[name].fixed - part for name, part in self.own.items()}

    @property
    def scale(self) -> float:
        """The largest size that any term has."""
        turners = self.balance.turners
        terms = [abs(each) for each in self.own.values()]
        return max([*terms, *(abs(self.per_moment * turners[name].fixed) for name in self.own)] or [0.0])


def joint_force(body: Body, truth: Truth, name: str) -> tuple[JointForce, ...]:
    """The joint force along the axes of an answer: one for a part, two for its size; none where they cannot be told
    from one thing sought.
    """
    sought = [each.letter.name for each in body.sought if not each.letter.name.startswith("reaction")]
    if name not in NAMES or len(sought) != 1 or not set(truth.moment) - {"reaction"} <= set(truth.level):
        return ()
    balance = balance_of(body, truth, sought[0].removesuffix(".force"))
    if balance is None:
        return ()
    settling = Settling(body, truth)
    at = [settling.values_with({balance.key: trial}) for trial in (0.0, 1.0)]
    vectors = [
        {each: (truth.size(truth.level[each], one), truth.size(truth.upright[each], one)) for each in balance.turners}
        for one in at
    ]
    return tuple(_along(balance, vectors, axis) for axis in _axes(body, name))


def _axes(body: Body, name: str) -> tuple[Vector, ...]:
    if name == "reaction":
        return (1.0, 0.0), (0.0, 1.0)
    if name in PARTS[:2]:
        return ((1.0, 0.0),) if name == PARTS[0] else ((0.0, 1.0),)
    bone = body.bearings.get(body.problem.course.axes)
    if bone is None or bone.unknown:  # an axis that is itself sought
        return ()
    right, up = cos(radians(float(bone.degrees))), sin(radians(float(bone.degrees)))
    return ((right, up),) if name == PARTS[2] else ((-up, right),)


def _along(balance: Balance, vectors: list[dict[str, Vector]], axis: Vector) -> JointForce:
    zero, one = ({name: x * axis[0] + y * axis[1] for name, (x, y) in each.items()} for each in vectors)
    per = sum(one[name] - zero[name] for name in zero)
    largest = max([abs(one[name] - zero[name]) for name in zero] or [0.0])
    return JointForce(balance, zero, per / balance.per if abs(per) > NOTHING * largest else 0.0)
