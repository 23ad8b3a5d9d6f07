"""Which angle a sine, cosine or tangent may be turned back into: the principal one, or the one that the balance
needs. Believed by the checker.
"""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

from ..equation import key as keys
from ..equation.terms import (
    DEGREE,
    Equation,
    Factor,
    Inverse,
    Letter,
    Number,
    Quantity,
    Term,
    Terms,
    Trig,
    letters,
    lone,
)
from ..exact.interval import Sizes, middle

SAME_ANGLE = 1e-9  # degrees: both angles with a sine of one are the same
HALF_TURN = Term(1, (Quantity.of("180", "deg"),))


def is_angle(factor: Factor) -> bool:
    """Whether a factor is an angle: by the name of its letter, by its unit, or as an inverse function."""
    if isinstance(factor, Letter):
        return keys.of(factor.name).is_angle
    return factor.written.unit == DEGREE if isinstance(factor, Number) else isinstance(factor, Inverse)


def inverted(before: Equation, after: Equation, sizes: Sizes, angles: Mapping[str, float]) -> bool:
    """Whether `after` is the angle of `before`: of all with its sine, cosine or tangent the one nearest to what the
    balances need.

    The angle of the joint force is the acute one. Raises interval.Undefined where no angle has this sine or cosine.
    """
    ratio = lone(before.left)
    if not isinstance(ratio, Trig) or after.left != _angle_of(ratio) or letters(after.right):
        return False
    right = before.right or (Term(1, (Quantity.of("0"),)),)
    principal = Term(1, (Inverse(ratio.name, right),))
    sizes.sum((principal,))  # there is one
    if isinstance(ratio.angle, Letter) and ratio.angle.name == keys.JOINT_ANGLE:
        return after.right == (principal,)
    return any(after.right == each for each in _nearest(ratio.name, principal, after.left, sizes, angles))


def _nearest(function: str, principal: Term, angle: Terms, sizes: Sizes, angles: Mapping[str, float]) -> list[Terms]:
    """The angles with this value that lie nearest to the one the balances need, each as it is written."""
    turned = {"sin": (HALF_TURN, principal.flipped()), "cos": (principal.flipped(),), "tan": (HALF_TURN, principal)}[
        function
    ]
    wanted = Sizes({name: (Term(1, (Quantity(Decimal(repr(angles[name])), DEGREE),)),) for name in letters(angle)}).sum(
        angle
    )
    apart = {
        (base, turns): abs(middle(sizes.sum(base)) + 360 * turns - middle(wanted))
        for base in ((principal,), turned)
        for turns in (-1, 0, 1)
    }
    least = min(apart.values())
    return [_turned(*each) for each, far in apart.items() if far <= least + SAME_ANGLE]


def _angle_of(ratio: Trig) -> Terms:
    terms = getattr(ratio.angle, "terms", None)
    return terms if terms is not None else (Term(1, (ratio.angle,)),)


def _turned(base: Terms, turns: int) -> Terms:
    """An angle with so many whole turns as they are written."""
    whole = Term(1 if turns > 0 else -1, (Quantity(Decimal(360 * abs(turns)), DEGREE),))
    return (whole, *base) if turns > 0 else (*base, whole) if turns < 0 else base
