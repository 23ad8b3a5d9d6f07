"""What a written line is worth to fifty digits: an evaluator that shares no arithmetic with the program.

Units are read from a table of its own (NIST SP 811, Appendix B.8), and kilogram, metre, second and degree may be given
any
size, so that a line right in its numbers and wrong in its units is found out.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from decimal import ROUND_HALF_EVEN, ROUND_HALF_UP, Context, Decimal
from functools import lru_cache, cache
from math import prod
from typing import Any, NamedTuple

from mpmath import MPContext

from explain.equation.terms import (
    Equation,
    Factor,
    Group,
    Inverse,
    Letter,
    Power,
    Quantity,
    Quotient,
    Root,
    Shown,
    Terms,
    Trig,
    Unit,
    leaves,
)

mp = MPContext()
mp.dps = 140  # a factor of 1e60 on both sides takes as many away
ONE = mp.mpf(1)
NEAR = mp.mpf(10) ** -45  # two sides this near, against their largest term or one, are equal
NOTHING = mp.mpf(10) ** -100
TABLE = {
    "kg": ("1", 1, 0, 0),
    "g": ("0.001", 1, 0, 0),
    "lb": ("0.45359237", 1, 0, 0),
    "m": ("1", 0, 1, 0),
    "cm": ("0.01", 0, 1, 0),
    "mm": ("0.001", 0, 1, 0),
    "in": ("0.0254", 0, 1, 0),
    "ft": ("0.3048", 0, 1, 0),
    "s": ("1", 0, 0, 1),
    "N": ("1", 1, 1, -2),
    "kN": ("1000", 1, 1, -2),
    "lbf": ("4.4482216152605", 1, 1, -2),
    "%": ("0.01", 0, 0, 0),
}


class Base(NamedTuple):
    """How large a kilogram, a metre, a second and a degree are."""

    kg: str = "1"
    m: str = "1"
    s: str = "1"
    deg: str = "1"


SI, ODD = Base(), Base("1.7320508", "2.2360679", "0.6180339", "1.4142135")


class Worthless(ArithmeticError):
    """An expression without a value: a division by zero, a sine beyond one, the root of a negative number, an
    unknown letter.
    """


@cache
def unit_size(unit: Unit, base: Base = SI) -> Any:
    """One of this unit, in the base."""
    out = mp.mpf(1)
    for name, power in unit:
        if name == "deg":
            out *= mp.mpf(base.deg) ** power
            continue
        factor, kg, m, s = TABLE[name]
        one = mp.mpf(factor) * mp.mpf(base.kg) ** kg * mp.mpf(base.m) ** m * mp.mpf(base.s) ** s
        out *= one**power
    return out


@lru_cache(maxsize=20_000)
def size(quantity: Quantity, base: Base = SI) -> Any:
    return mp.mpf(str(quantity.number)) * unit_size(quantity.unit, base)


def degrees(radians: Any) -> Any:
    return radians * 180 / mp.pi


def ratio(name: str, angle: Any, base: Base = SI) -> Any:
    """The sine, cosine or tangent of an angle."""
    turned = angle / mp.mpf(base.deg) * mp.pi / 180
    if name == "tan":
        return over(mp.sin(turned), mp.cos(turned))
    return mp.sin(turned) if name == "sin" else mp.cos(turned)


def over(top: Any, bottom: Any) -> Any:
    if abs(bottom) < NOTHING:
        raise Worthless("a division by zero")
    return top / bottom


def worth(terms: Terms, values: Mapping[str, Any], base: Base = SI) -> Any:
    """A sum, in the base."""
    return mp.fsum(parts(terms, values, base))


def parts(terms: Terms, values: Mapping[str, Any], base: Base) -> list[Any]:
    """Each term of a sum."""
    return [prod((of(factor, values, base) for factor in each.factors), start=each.sign * ONE) for each in terms]


def of(factor: Factor, values: Mapping[str, Any], base: Base = SI) -> Any:
    """One factor, in the base."""
    match factor:
        case Letter(name=name):
            if name not in values:
                raise Worthless(f"no value for {name}")
            return values[name]
        case Quantity():
            return size(factor, base)
        case Shown(of=term):
            return worth((term,), values, base)
        case Trig(name, angle):
            return ratio(name, of(angle, values, base), base)
        case Inverse(name, terms):
            return _angle(name, worth(terms, values, base)) * mp.mpf(base.deg)
        case Quotient(top, bottom):
            return over(worth(top, values, base), worth(bottom, values, base))
        case Group(terms):
            return worth(terms, values, base)
        case Power(inner, exponent):
            powered = of(inner, values, base) ** abs(exponent)
            return powered if exponent >= 0 else over(ONE, powered)
        case Root(terms):
            value = worth(terms, values, base)
            if value < 0:
                raise Worthless("the root of a negative number")
            return mp.sqrt(value)


def _angle(name: str, value: Any) -> Any:
    if name == "tan":
        return degrees(mp.atan(value))
    if abs(value) > 1 + NEAR:
        raise Worthless("a sine or cosine beyond one")
    inside = max(mp.mpf(-1), min(mp.mpf(1), value))
    return degrees(mp.asin(inside) if name == "sin" else mp.acos(inside))


def balances(line: Equation, values: Mapping[str, Any], base: Base = SI) -> bool:
    """Whether both sides are worth the same; what rounded numbers stand for is taken for them."""
    try:
        both = [*parts(line.left, values, base), *(-each for each in parts(line.right, values, base))]
    except Worthless:
        return False
    return bool(abs(mp.fsum(both)) <= NEAR * max([mp.mpf(1), *(abs(each) for each in both)]))


def shown_numbers(line: Equation) -> Iterator[Shown]:
    return (leaf for leaf in (*leaves(line.left), *leaves(line.right)) if isinstance(leaf, Shown))


def rightly_rounded(shown: Shown, ties: str) -> bool:
    """Whether the number shown is what it stands for, rounded at its last place, in its unit whatever the base."""
    try:
        exact, odd = (over(worth((shown.of,), {}, base), unit_size(shown.value.unit, base)) for base in (SI, ODD))
    except Worthless:
        return False
    if abs(exact - odd) > NEAR * abs(exact):
        return False
    decimal = Context(prec=50).create_decimal(mp.nstr(exact, 50))
    place = Decimal((0, (1,), int(shown.value.number.as_tuple().exponent)))
    way = ROUND_HALF_UP if ties == "up" else ROUND_HALF_EVEN
    return decimal.quantize(place, way, Context(prec=60)) == shown.value.number


def true(line: Equation, in_si: Mapping[str, Any], in_odd: Mapping[str, Any], ties: str) -> bool:
    """Whether a line holds in numbers, in units and in every rounding."""
    return (
        balances(line, in_si)
        and balances(line, in_odd, ODD)
        and all(rightly_rounded(each, ties) for each in shown_numbers(line))
    )
