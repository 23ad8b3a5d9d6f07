"""Which angle a sine, cosine or tangent may be turned back into: the principal one, or the one that the balance needs. Believed by the checker."""
from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

from .equation import Equation, Factor, Inverse, Letter, Quantity, Shown, Term, Terms, Trig, letters, lone
from .interval import Sizes, middle

ANGLES = ("*angle ", "*fold ", "*inclination ")
DEGREE = (("deg", 1),)
SAME_ANGLE = 1e-9                                 # degrees: both angles with a sine of one are the same
HALF_TURN = Term(1, (Quantity.of("180", "deg"),))


def is_angle(factor: Factor) -> bool:
    """Whether a factor is an angle: by the name of its letter, by its unit, or as an inverse function."""
    match factor:
        case Letter(name=name):
            return name.startswith(ANGLES)
        case Quantity(unit=unit) | Shown(value=Quantity(unit=unit)):
            return unit == DEGREE
    return isinstance(factor, Inverse)


def inverted(before: Equation, after: Equation, other: bool, sizes: Sizes, angles: Mapping[str, float]) -> bool:
    """Whether `after` is the principal angle of `before`, or with `other` the one nearest to what the balances need (degrees).

    Raises interval.Undefined where no angle has this sine or cosine.
    """
    ratio = lone(before.left)
    if not isinstance(ratio, Trig) or after.left != _angle_of(ratio) or letters(after.right):
        return False
    return _right_branch(ratio, before.right or (Term(1, (Quantity.of("0"),)),), after, other, sizes, angles)


def _right_branch(ratio: Trig, right: Terms, after: Equation, other: bool, sizes: Sizes, angles: Mapping[str, float]) -> bool:
    """The principal angle as it is written, or of all angles with this value the nearest to the one the balance needs."""
    principal = Term(1, (Inverse(ratio.name, right),))
    sizes.sum((principal,))                       # there is one
    if not other:
        return after.right == (principal,)
    turned = {"sin": (HALF_TURN, principal.flipped()), "cos": (principal.flipped(),), "tan": (HALF_TURN, principal)}[ratio.name]
    wanted = Sizes({name: (Term(1, (Quantity(Decimal(repr(angles[name])), DEGREE),)),) for name in letters(after.left)}).sum(after.left)
    apart = {(base, turns): abs(middle(sizes.sum(base)) + 360 * turns - middle(wanted))
             for base in ((principal,), turned) for turns in (-2, -1, 0, 1, 2)}
    nearest = min(apart.values())
    return any(after.right == _turned(*each) for each, far in apart.items() if far <= nearest + SAME_ANGLE)


def _angle_of(ratio: Trig) -> Terms:
    terms = getattr(ratio.angle, "terms", None)
    return terms if terms is not None else (Term(1, (ratio.angle,)),)


def _turned(base: Terms, turns: int) -> Terms:
    """An angle with so many whole turns as they are written."""
    whole = Term(1 if turns > 0 else -1, (Quantity(Decimal(360 * abs(turns)), DEGREE),))
    return (whole, *base) if turns > 0 else (*base, whole) if turns < 0 else base
