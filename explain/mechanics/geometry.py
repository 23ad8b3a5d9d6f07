"""Angles and lever arms as a class writes them: acute angles, sines and cosines of the angles that were stated. Knows
no balance.

An arm is written as a sum over the steps from the pivot to the force: distance times the sine of the angle between step
and pull.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal
from fractions import Fraction
from itertools import product
from operator import mul
from typing import NamedTuple

from .body import Bearing, Body, Force, Step, turned_back
from ..equation.terms import DEGREE, Factor, Group, Quantity, Quotient, Term, Terms, Trig, term


class Fold(NamedTuple):
    """sin of an angle as it is written: `sign` times `factors` (none: one); sign 0 where it vanishes.

    `derived` is the acute angle where it was not stated and needs a line of its own.
    """

    sign: int
    factors: tuple[Factor, ...] = ()
    derived: Fraction | None = None


class Stated(NamedTuple):
    """An angle that the author stated, and whose direction it is in."""

    whose: str
    angle: Quantity


def quantity(degrees: Fraction) -> Quantity:
    return Quantity(Decimal(degrees.numerator) / Decimal(degrees.denominator), DEGREE)


def sine(angle: Bearing, stated: Sequence[Stated]) -> Fold:
    """The sine of an angle, as the sine or cosine of an acute angle; of one that was stated where that can be."""
    if angle.unknown:
        return _unknown_sine(angle)
    degrees = angle.degrees % 360
    sign = 0 if degrees % 180 == 0 else 1 if degrees < 180 else -1
    acute = min(degrees % 180, 180 - degrees % 180)
    if acute in (0, 90):
        return Fold(sign)
    fitting = [
        (function, each)
        for function, wanted in (("sin", acute), ("cos", 90 - acute))
        for each in stated
        if Fraction(each.angle.number) == wanted
    ]
    if not fitting:
        return Fold(sign, (Trig("sin", quantity(acute)),), acute)
    function, found = next((pair for pair in fitting if _goes_with(angle, *pair)), fitting[0])
    return Fold(sign, (Trig(function, found.angle),))


def _goes_with(angle: Bearing, function: str, stated: Stated) -> bool:
    """Whether the acute angle grows (sine) or shrinks (cosine) with the stated one: at 45 degrees only this tells
    which was drawn.
    """
    widens = 1 if int(angle.degrees % 360 // 90) % 2 == 0 else -1
    return dict(angle.within).get(stated.whose, 0) * widens == (1 if function == "sin" else -1)


def _unknown_sine(angle: Bearing) -> Fold:
    if len(angle.unknown) == 1 and abs(angle.unknown[0][1]) == 1 and angle.degrees % 90 == 0:
        letter, k = angle.unknown[0]
        quarter = int(angle.degrees // 90) % 4
        function, sign = (("sin", k), ("cos", 1), ("sin", -k), ("cos", -1))[quarter]
        return Fold(sign, (Trig(function, letter),))
    quarter = int(angle.degrees // 90) % 4
    sign, offset, turn = (
        (1, angle.degrees, 1),
        (1, 180 - angle.degrees, -1),
        (-1, angle.degrees - 180, 1),
        (-1, 360 - angle.degrees, -1),
    )[quarter]
    terms = tuple(
        term(*((Quantity(Decimal(abs(k)), ()),) if abs(k) > 1 else ()), letter, sign=turn if k > 0 else -turn)
        for letter, k in angle.unknown
    )
    constant = (term(quantity(offset)),) if offset else ()
    ordered = sorted((*terms, *constant), key=lambda each: -each.sign)
    return Fold(sign, (Trig("sin", Group(tuple(ordered))),))


def bookkeeping(acute: Fraction, stated: Sequence[Stated]) -> Terms:
    """An acute angle as a sum of quarter turns and stated angles, the shortest there is; () where there is none."""
    options, numbers = [], [Fraction(each.angle.number) for each in stated]
    for signs in product((-1, 0, 1), repeat=len(stated)):
        quarters = (acute - sum(map(mul, signs, numbers))) / 90
        if quarters.denominator == 1 and abs(quarters) <= 4:
            size = sum(map(abs, signs))
            options.append((size + abs(quarters), -size, int(quarters), signs))
    if not options:
        return ()
    _, _, quarters, signs = min(options)
    terms = [term(each.angle, sign=s) for s, each in zip(signs, stated, strict=True) if s]
    if quarters:
        terms.append(term(quantity(Fraction(abs(quarters) * 90)), sign=1 if quarters > 0 else -1))
    by_size = sorted(terms, key=lambda each: -float(each.factors[0].number))  # type: ignore[union-attr]
    return tuple(sorted(by_size, key=lambda each: -each.sign))


def stated_angles(body: Body, force: Force) -> tuple[Stated, ...]:
    """The angles the author stated for a pull and for the bones, an angle stated twice twice."""
    pull = [(force.name, force.bearing)] if force.bearing else []
    bones = reversed(body.bearings.items())
    return tuple(Stated(whose, bearing.stated) for whose, bearing in (*pull, *bones) if bearing.stated is not None)


class Lever(NamedTuple):
    """A lever arm: how it turns (+1 counter-clockwise), its terms (positive in all), the derived angles it needs."""

    sense: int
    terms: Terms
    derived: tuple[tuple[Bearing, Bearing, Fraction], ...]


def lever(body: Body, force: Force, values: Mapping[str, float], about: Force | None = None) -> Lever:
    """The perpendicular distance of a force from the pivot, or from the point where `about` acts."""
    if force.arm is not None:
        return Lever(force.turns, (term(force.arm),), ())
    steps = [(1, step) for step in force.steps] + [(-1, step) for step in (about.steps if about else ())]
    steps = _without_common(steps)
    if force.toward is not None:
        return _toward(body, force, steps, values)
    assert force.bearing is not None
    stated, terms, derived, total = stated_angles(body, force), [], [], 0.0
    for k, step in steps:
        between = turned_back(force.bearing, step.bearing)
        fold = sine(between, stated)
        if not fold.sign:
            continue
        terms.append(Term(k * fold.sign, (step.distance, *fold.factors)))
        total += k * values.get(step.distance.name, 1.0) * _value(between, values)
        if fold.derived is not None:
            derived.append((force.bearing, step.bearing, fold.derived))
    sense = _sense(total, terms)
    return Lever(sense, _positive(terms, sense), tuple(derived))


def _without_common(steps: list[tuple[int, Step]]) -> list[tuple[int, Step]]:
    """Steps that are walked out and back cancel."""
    out = list(steps)
    for k, step in steps:
        if (k, step) in out and (-k, step) in out:
            out.remove((k, step))
            out.remove((-k, step))
    return out


def _value(angle: Bearing, values: Mapping[str, float]) -> float:
    from math import radians, sin

    return sin(radians(float(angle.degrees) + sum(k * values.get(letter.name, 45.0) for letter, k in angle.unknown)))


def _sense(total: float, terms: Sequence[Term]) -> int:
    if len(terms) == 1:
        return terms[0].sign
    return 1 if total >= 0 else -1


def _positive(terms: Sequence[Term], sense: int) -> Terms:
    signed = tuple(Term(sense * each.sign, each.factors) for each in terms)
    return tuple(sorted(signed, key=lambda each: -each.sign))


def _toward(body: Body, force: Force, steps: Sequence[tuple[int, Step]], values: Mapping[str, float]) -> Lever:
    assert force.toward is not None
    stated, terms, total = stated_angles(body, force), [], 0.0
    pull = force.toward
    for k, step in steps:
        for turned, other, sense in ((90, pull.rise, pull.up), (0, pull.across, -pull.right)):
            angle = step.bearing.turned(turned)
            fold = sine(angle, stated)
            if not fold.sign or not sense:
                continue
            terms.append(Term(k * fold.sign * sense, (step.distance, *fold.factors, other)))
            total += k * sense * values[step.distance.name] * _value(angle, values) * values[other.name]
    if not terms:
        return Lever(1, (), ())
    sense = _sense(total, terms)
    return Lever(sense, (term(Quotient(_positive(terms, sense), (term(pull.line),))),), ())


class Part(NamedTuple):
    """A component of a force along an axis: sign and factors beside the force; sign 0 where it has none."""

    sign: int
    factors: tuple[Factor, ...]
    derived: tuple[tuple[Bearing, Bearing, Fraction], ...]


def part(body: Body, force: Force, axis: Bearing, first: bool) -> Part:
    """The component of a force along an axis; one angle serves both axes, measured from the `first` one: cosine
    there, sine across.
    """
    if force.toward is not None:
        return _toward_part(body, force, axis)
    assert force.bearing is not None
    fold = sine(turned_back(force.bearing, axis).turned(90), stated_angles(body, force))
    if fold.derived is None:
        return Part(fold.sign, fold.factors, ())
    if first:
        beside = 90 - fold.derived
        return Part(fold.sign, (Trig("cos", quantity(beside)),), ((force.bearing, axis, beside),))
    return Part(fold.sign, fold.factors, ((force.bearing, axis.turned(90), fold.derived),))


def _toward_part(body: Body, force: Force, axis: Bearing) -> Part:
    assert force.toward is not None
    stated, pull, terms = stated_angles(body, force), force.toward, []
    for turned, side, sense in ((90, pull.across, pull.right), (0, pull.rise, pull.up)):
        fold = sine(axis.turned(turned), stated)
        if fold.sign and sense:
            terms.append(Term(fold.sign * sense, (side, *fold.factors)))
    if not terms:
        return Part(0, (), ())
    if len(terms) == 1:
        return Part(terms[0].sign, (Quotient((Term(1, terms[0].factors),), (term(pull.line),)),), ())
    return Part(1, (Quotient(tuple(terms), (term(pull.line),)),), ())
