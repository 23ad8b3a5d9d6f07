"""What an expression comes to in float, with how much its displayed figures leave open, and its dimension. Knows no
mechanics.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from ...equation.terms import Unit
from ...exact.prime_field import UNITS
from .tree import Call, Expr, Measured, Name, Negative, Number, Power, Product, Quotient, Sigma, Sum, UnknownName

Dimension = tuple[int, int, int]  # the powers of kg, m and s
_NONE: Dimension = (0, 0, 0)
_FORCE: Dimension = (1, 1, -2)
_STANDARD_G = 9.80665  # of the kilogram-force and the slug (NIST SP 811, Appendix B.8)
_MORE: Mapping[str, tuple[float, Dimension]] = {
    "kgf": (_STANDARD_G, _FORCE),
    "daN": (10.0, _FORCE),
    "dm": (0.1, (0, 1, 0)),
    "deg": (1.0, _NONE),
    "rad": (180 / math.pi, _NONE),
    "slug": (0.45359237 * _STANDARD_G / 0.3048, (1, 0, 0)),
}
_SIZES: Mapping[str, tuple[float, Dimension]] = {
    **{name: (float(size), of) for name, (size, of) in UNITS.items()},
    **_MORE,
}


class Undefined(ArithmeticError):
    """What has no value: a letter without one, a division by zero, a root of a negative number, a number too large
    for float.
    """


@dataclass(frozen=True, slots=True)
class Result:
    """A value, and to first order how far the displayed figures leave it open.

    `spread`: half a unit of the last displayed place of each number typed with a decimal point or an exponent.
    `widest`: of every number,
    whole ones too. `dimension`: the powers of kg, m and s, None where a number without a unit or a letter without a
    dimension took part.
    """

    value: float
    spread: float
    widest: float
    dimension: Dimension | None


class _Worth(NamedTuple):
    value: float
    spread: float
    widest: float
    dimension: Dimension | None


class _Letters(NamedTuple):
    values: Mapping[str, float]
    spreads: Mapping[str, float]
    dimensions: Mapping[str, Dimension]
    degrees: bool
    units: bool
    scale: Callable[[Dimension], float] | None
    exact: Callable[[Number], bool] | None
    turn: float


def evaluate(
    expr: Expr,
    values: Mapping[str, float],
    *,
    degrees: bool = True,
    units: bool = True,
    spreads: Mapping[str, float] | None = None,
    dimensions: Mapping[str, Dimension] | None = None,
    scale: Callable[[Dimension], float] | None = None,
    exact: Callable[[Number], bool] | None = None,
    turn: float = math.pi / 180,
) -> Result:
    """The value of an expression. Raises Undefined.

    `values` has the letters by key, a new letter or a sum by its text ("V", "ΣM"); of a name that can stand for several
    keys the first that
    has a value is taken. With `units` a number in centimetres counts in metres and so on (kg, m, s; angles stay in
    degrees), without them
    numbers count as typed; per cent is always a hundredth. With `degrees=False` a sine takes its angle for radians,
    whatever stands there.
    `spreads` are what the letters leave open themselves. `scale` gives the unit that numbers without one are counted
    in, by dimension: values come
    out in it. `exact` tells numbers that leave nothing open (data as given). `turn` is what a calculator takes one
    degree for, in radians.
    """
    letters = _Letters(values, spreads or {}, dimensions or {}, degrees, units, scale, exact, turn)
    try:
        found = _worth(expr, letters)
    except (OverflowError, ZeroDivisionError, ValueError) as error:
        raise Undefined(str(error)) from error
    if not math.isfinite(found.value):
        raise Undefined("a number too large")
    return Result(found.value, abs(found.spread), abs(found.widest), found.dimension)


def _worth(expr: Expr, letters: _Letters) -> _Worth:
    match expr:
        case Number():
            return _number(expr, letters.exact)
        case Name(keys=keys):
            return _letter(next((key for key in keys if key in letters.values), keys[0]), expr.text, letters)
        case UnknownName(text=text):
            return _letter(text, text, letters)
        case Sigma(letter):
            return _letter(f"Σ{letter}", f"Σ{letter}", letters)
        case Measured(of, unit):
            return _measured(_worth(of, letters), unit, letters)
        case Negative(of):
            found = _worth(of, letters)
            return found._replace(value=-found.value)
        case Sum(terms):
            return _sum([_worth(each, letters) for each in terms])
        case Product(factors):
            return _product([_worth(each, letters) for each in factors])
        case Quotient(top, bottom):
            return _quotient(_worth(top, letters), _worth(bottom, letters))
        case Power(base, exponent):
            return _power(_worth(base, letters), exponent)
        case Call(function, argument):
            return _call(function, _worth(argument, letters), letters.turn if letters.degrees else 1.0)


def _number(number: Number, exact: Callable[[Number], bool] | None) -> _Worth:
    half = 0.0 if exact is not None and exact(number) else 0.5 * 10.0 ** (_zeros(number) - number.places)
    shown = number.point or "e" in number.text.lower()
    return _Worth(float(number.value), half if shown else 0.0, half, None)


def _zeros(number: Number) -> int:
    """The zeros at the end of a whole number that may only fill it up, where three figures are left: 1400 is 1.40
    thousand.
    """
    if number.point or number.places:
        return 0
    digits = number.text.lstrip("0")
    return min(len(digits) - len(digits.rstrip("0")), max(len(digits) - 3, 0)) if digits.isdigit() else 0


def _letter(key: str, text: str, letters: _Letters) -> _Worth:
    if key not in letters.values:
        raise Undefined(f'"{text}" has no value here')
    spread = letters.spreads.get(key, 0.0)
    return _Worth(letters.values[key], spread, spread, letters.dimensions.get(key))


def _measured(of: _Worth, unit: Unit, letters: _Letters) -> _Worth:
    size, dimension = 1.0, [0, 0, 0]
    for name, power in unit:
        each, powers = _SIZES[name]
        size *= each**power if letters.units or name == "%" else 1.0
        dimension = [total + power * one for total, one in zip(dimension, powers, strict=True)]
    of_kind: Dimension = (dimension[0], dimension[1], dimension[2])
    if letters.scale is not None and letters.units:
        size /= letters.scale(of_kind)
    return _Worth(of.value * size, of.spread * size, of.widest * size, of_kind)


def _sum(terms: list[_Worth]) -> _Worth:
    dimensions = {each.dimension for each in terms}
    return _Worth(
        math.fsum(each.value for each in terms),
        sum(each.spread for each in terms),
        sum(each.widest for each in terms),
        dimensions.pop() if len(dimensions) == 1 else None,
    )


def _product(factors: list[_Worth]) -> _Worth:
    found = factors[0]
    for each in factors[1:]:
        a, b = abs(found.value), abs(each.value)
        found = _Worth(
            found.value * each.value,
            found.spread * b + each.spread * a,
            found.widest * b + each.widest * a,
            _added(found.dimension, each.dimension, 1),
        )
    return found


def _added(first: Dimension | None, second: Dimension | None, sign: int) -> Dimension | None:
    if first is None or second is None:
        return None
    return first[0] + sign * second[0], first[1] + sign * second[1], first[2] + sign * second[2]


def _quotient(top: _Worth, bottom: _Worth) -> _Worth:
    value = top.value / bottom.value
    each = 1 / abs(bottom.value)
    return _Worth(
        value,
        (top.spread + abs(value) * bottom.spread) * each,
        (top.widest + abs(value) * bottom.widest) * each,
        _added(top.dimension, bottom.dimension, -1),
    )


def _power(base: _Worth, exponent: int) -> _Worth:
    value = base.value**exponent
    slope = abs(exponent * base.value ** (exponent - 1)) if exponent else 0.0
    powers = (
        None
        if base.dimension is None
        else (base.dimension[0] * exponent, base.dimension[1] * exponent, base.dimension[2] * exponent)
    )
    return _Worth(value, slope * base.spread, slope * base.widest, powers)


def _halved(of: Dimension | None) -> Dimension | None:
    return None if of is None or any(each % 2 for each in of) else (of[0] // 2, of[1] // 2, of[2] // 2)


_INVERSES: Mapping[str, tuple[Callable[[float], float], Callable[[float], float]]] = {
    "asin": (math.asin, lambda x: 1 / math.sqrt(1 - x * x) if abs(x) < 1 else 0.0),
    "acos": (math.acos, lambda x: 1 / math.sqrt(1 - x * x) if abs(x) < 1 else 0.0),
    "atan": (math.atan, lambda x: 1 / (1 + x * x)),
}
_DIRECT: Mapping[str, tuple[Callable[[float], float], Callable[[float], float]]] = {
    "sin": (math.sin, math.cos),
    "cos": (math.cos, math.sin),
    "tan": (math.tan, lambda x: 1 + math.tan(x) ** 2),
}


def _call(function: str, of: _Worth, turn: float) -> _Worth:
    if function == "sqrt":
        value = math.sqrt(of.value)
        slope = 0.5 / value if value else 0.0
        return _Worth(value, slope * of.spread, slope * of.widest, _halved(of.dimension))
    if function in _DIRECT:
        size, slope_of = _DIRECT[function]
        value = size(of.value * turn)
        slope = abs(slope_of(of.value * turn)) * turn
        if function == "tan" and abs(value) > 1e12:
            raise Undefined("the tangent of a right angle")
        return _Worth(value, slope * of.spread, slope * of.widest, _NONE)
    inverse, slope_of = _INVERSES[function]
    slope = slope_of(of.value) / turn
    return _Worth(inverse(of.value) / turn, slope * of.spread, slope * of.widest, _NONE)
