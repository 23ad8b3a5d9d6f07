"""A force of which both size and angle are sought: what level and upright forces leave for it, in floats, and its
two parts in letters.
"""

from __future__ import annotations

from cmath import phase, rect
from collections.abc import Mapping, Sequence
from math import cos, degrees, radians, sin
from typing import NamedTuple

from ..equation import key as keys
from .balances import Conditions
from ..equation.terms import Factor, Group, Quantity, Term, Terms, Trig, leaves, term
from ..exact.linear import NOTHING
from .sine_roots import NoRoot, key_of_angle
from .undetermined import Undetermined, plain

BALANCES = ("level", "upright")
SMALL = 0.5  # a cosine below this is a poor divisor: what is rounded in the angle grows in the size
TRIED, EVEN = (41.0, 77.0, 157.0, 263.0), 1e-6  # degrees
CLOSE = 1e-7  # degrees
ODD = 12.3  # an angle at which no sine or cosine of it and a right angle vanishes


class Polar(NamedTuple):
    """A force and its angle by name. Right and up are the real and the imaginary part of a number."""

    size: str
    angle: str
    left: complex  # what the other forces leave over for it
    one: complex  # what one newton of it gives where the angle is nothing
    turn: int  # +1 where it turns counter-clockwise as the angle grows


def alone(at: Conditions, conditions: Sequence[str]) -> Polar | None:
    """The one force and its angle on which the level and upright forces depend, where these go with it as with a
    single arrow.
    """
    if not set(BALANCES) <= set(conditions):
        return None
    found = [name for name in at.pending if any(at.depends(each, name) for each in BALANCES)]
    sizes, angles = ([name for name in found if angular == keys.of(name).is_angle] for angular in (False, True))
    if len(sizes) != 1 or len(angles) != 1 or not keys.of(sizes[0]).is_force:
        return None
    return _arrow(at, sizes[0], angles[0])


def _arrow(at: Conditions, size: str, angle: str) -> Polar | None:
    """What the balances say of a force, where it turns as a whole with its angle and the rest does not."""
    others = dict.fromkeys(at.pending, 0.5)

    def sums(force: float, turned: float) -> complex:
        return complex(*(at.evaluate(each, {**others, size: force, angle: turned}) for each in BALANCES))

    rest = sums(0.0, 0.0)
    step = max(1.0, abs(rest))  # beside a huge constant a newton is lost
    one = (sums(step, 0.0) - rest) / step
    for turn in (1, -1):
        if one and all(
            abs(sums(step, each) - rest - step * one * rect(1, radians(turn * each))) < EVEN * step * abs(one)
            and abs(sums(0.0, each) - rest) < EVEN * step
            for each in TRIED
        ):
            return Polar(size, angle, -rest, one, turn)
    return None


def polar_values(at: Conditions, polar: Polar, posture: Mapping[str, float]) -> tuple[float, float]:
    """The size, which is positive, and the angle. Raises Undetermined where nothing is left for the force to hold,
    NoRoot where a posture does not fit.
    """
    file, key = at.body.problem.file, key_of_angle(polar.angle)
    scale = max(at.scale(each, {**dict.fromkeys(at.pending, 0.5), polar.size: 0.0}) for each in BALANCES)
    if abs(polar.left) < NOTHING * scale:
        raise Undetermined(
            file=file,
            key=key,
            found="every angle balances: the other forces balance without this one, so it is zero",
            expected="forces that leave something over for it to hold",
            example='force = "12 N"',
        )
    angle = round(polar.turn * degrees(phase(polar.left / polar.one)), 9) % 360
    given = posture.get(polar.angle, angle)
    if abs((given - angle + 180) % 360 - 180) > CLOSE:
        raise NoRoot(
            file=file,
            key=key,
            found=f"forces that do not balance at {plain(given)} degrees",
            expected="an angle that balances",
        )
    return abs(polar.left) / abs(polar.one), given


# ---------------------------------------------------------------------- in letters
def ratio_of(side: Terms, angle: str) -> Trig:
    """The sine or cosine of the sought angle in a balance of forces."""
    return next(leaf for leaf in leaves(side) if isinstance(leaf, Trig) and angle in leaf.letters)


def is_small(ratio: Trig, degrees_: float) -> bool:
    """Whether a sine or cosine is too small to divide by."""
    at = radians(_size(ratio.angle, degrees_))
    return abs(cos(at) if ratio.name == "cos" else sin(at)) < SMALL


def one_angle(level: Terms, upright: Terms, angle: str) -> Terms:
    """The level parts with the cosine of the angle of which the upright ones have the sine: sin(70° − x) beside
    sin(x + 20°) is cos(x + 20°).
    """
    shown, here = ratio_of(upright, angle).angle, ratio_of(level, angle)
    if here.angle == shown:
        return level
    same = sin(radians(_size(here.angle, ODD))) * cos(radians(_size(shown, ODD))) > 0
    return tuple(_with_cosine(each, here, Trig("cos", shown), same) if here in each.factors else each for each in level)


def _with_cosine(each: Term, sine: Trig, cosine: Trig, same: bool) -> Term:
    """A term with the cosine in place of the sine of an angle that is a right angle away."""
    factors = tuple(cosine if factor == sine else factor for factor in each.factors)
    return Term(each.sign if same else -each.sign, factors, each.source)


def _size(angle: Factor, sought: float) -> float:
    """An angle in degrees, where the sought one in it has this value."""
    terms = angle.terms if isinstance(angle, Group) else (term(angle),)
    return sum(
        each.sign * (float(factor.number) if isinstance(factor := each.factors[0], Quantity) else sought)
        for each in terms
    )
