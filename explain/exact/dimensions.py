"""Of what kind a written expression is, and whether it can be read in one way only: its powers of kilogram, metre,
second and degree; its form.
"""

from __future__ import annotations

from functools import lru_cache

from ..equation.terms import Factor, Group, Inverse, Letter, Power, Quantity, Quotient, Root, Shown, Terms, Trig, Unit
from .prime_field import dimension

Kind = tuple[int, int, int, int]  # twice the powers, so that a square root stays whole
NUMBER: Kind = (0, 0, 0, 0)
ANGLE: Kind = (0, 0, 0, 2)
FUNCTIONS = ("sin", "cos", "tan")


class Unlike(ValueError):
    """A sum of unlike kinds, such as newtons and metres."""


def kind_of(terms: Terms) -> Kind:
    """The kind of a sum of numbers; every term must have it. Raises Unlike."""
    kinds = {kind_of_product(each.factors) for each in terms}
    if len(kinds) > 1:
        raise Unlike("terms of unlike kinds are added")
    return kinds.pop() if kinds else NUMBER


def kind_of_product(factors: tuple[Factor, ...]) -> Kind:
    """The kind of a product: the powers of its factors added."""
    out = NUMBER
    for factor in factors:
        out = _plus(out, _kind(factor), 1)
    return out


def _plus(a: Kind, b: Kind, times: int) -> Kind:
    return a[0] + times * b[0], a[1] + times * b[1], a[2] + times * b[2], a[3] + times * b[3]


def _kind(factor: Factor) -> Kind:
    match factor:
        case Quantity(unit=unit) | Shown(value=Quantity(unit=unit)):
            return _of_unit(unit)
        case Quotient(top, bottom):
            return _plus(kind_of(top), kind_of(bottom), -1)
        case Group(terms):
            return kind_of(terms)
        case Power(base, exponent):
            return _plus(NUMBER, _kind(base), exponent)
        case Root(terms):
            a, b, c, d = kind_of(terms)
            if a % 2 or b % 2 or c % 2 or d % 2:
                raise Unlike("the square root of a quantity that is no square")
            return a // 2, b // 2, c // 2, d // 2
        case Inverse():
            return ANGLE
    return NUMBER


@lru_cache(maxsize=1024)
def _of_unit(unit: Unit) -> Kind:
    return ANGLE if unit == (("deg", 1),) else _plus(NUMBER, (*dimension(unit), 0), 2)


def well_formed(terms: Terms) -> bool:
    """Whether a sum means what is read: signs are plus or minus one, functions are known, exponents are whole. Looks
    into no rounded number.
    """
    return all(each.sign in (1, -1) and all(map(_well_formed, each.factors)) for each in terms)


def _well_formed(factor: Factor) -> bool:
    match factor:
        case Letter() | Quantity() | Shown():
            return True
        case Trig(name, angle):
            return name in FUNCTIONS and _well_formed(angle)
        case Inverse(name, terms):
            return name in FUNCTIONS and well_formed(terms)
        case Quotient(top, bottom):
            return well_formed(top) and well_formed(bottom)
        case Group(terms) | Root(terms):
            return well_formed(terms)
        case Power(base, exponent):
            return isinstance(exponent, int) and _well_formed(base)
    return False
