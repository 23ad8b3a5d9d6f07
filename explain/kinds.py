"""Of what kind a written number expression is: its powers of kilogram, metre and second."""
from __future__ import annotations

from fractions import Fraction

from .equation import Factor, Group, Power, Quantity, Quotient, Root, Shown, Terms, Trig
from .field import dimension

Kind = tuple[Fraction, Fraction, Fraction]
NUMBER: Kind = (Fraction(0), Fraction(0), Fraction(0))


class Unlike(ValueError):
    """A sum of unlike kinds, such as newtons and metres."""


def kind_of(terms: Terms) -> Kind:
    """The kind of a sum of numbers; every term must have it. Raises Unlike."""
    kinds = {kind_of_product(each.factors) for each in terms}
    if len(kinds) > 1:
        raise Unlike("terms of unlike kinds are added")
    return kinds.pop() if kinds else NUMBER


def kind_of_product(factors: tuple[Factor, ...]) -> Kind:
    found = [_kind(factor) for factor in factors]
    return (sum((k[0] for k in found), Fraction(0)), sum((k[1] for k in found), Fraction(0)), sum((k[2] for k in found), Fraction(0)))


def _scaled(kind: Kind, by: Fraction) -> Kind:
    return kind[0] * by, kind[1] * by, kind[2] * by


def _kind(factor: Factor) -> Kind:
    match factor:
        case Quantity(unit=unit) | Shown(value=Quantity(unit=unit)):
            return NUMBER if unit == (("deg", 1),) else tuple(map(Fraction, dimension(unit)))  # type: ignore[return-value]
        case Quotient(top, bottom):
            over, under = kind_of(top), kind_of(bottom)
            return over[0] - under[0], over[1] - under[1], over[2] - under[2]
        case Group(terms):
            return kind_of(terms)
        case Power(base, exponent):
            return _scaled(_kind(base), Fraction(exponent))
        case Root(terms):
            return _scaled(kind_of(terms), Fraction(1, 2))
        case Trig():
            return NUMBER
    return NUMBER
