"""Replacing inside written sums, to the letter: values for letters, written numbers for what they stand for. Knows
no arithmetic.
"""

from __future__ import annotations

from collections.abc import Mapping

from .terms import Factor, Group, Inverse, Letter, Power, Quantity, Quotient, Root, Shown, Term, Terms, Trig, lone


def put(terms: Terms, values: Mapping[str, Terms]) -> Terms:
    """A sum with values in place of letters, exactly as they are written in `values`; a value of () is zero."""
    out = []
    for each in terms:
        sign_, factors, gone = each.sign, [], False
        for factor in each.factors:
            value = values.get(factor.name) if isinstance(factor, Letter) else None
            if value is None:
                gone = gone or _nothing(factor, values)
                factors.append(_put(factor, values))
            elif len(value) == 1:
                sign_ *= value[0].sign
                factors.extend(value[0].factors)
            else:
                gone = gone or not value
                factors.append(Group(value))
        if not gone:
            out.append(Term(sign_, tuple(factors), each.source))
    return tuple(out)


def _nothing(factor: Factor, values: Mapping[str, Terms]) -> bool:
    """Whether a factor is a power of a letter that is zero."""
    return (
        isinstance(factor, Power)
        and factor.exponent > 0
        and isinstance(factor.base, Letter)
        and values.get(factor.base.name) == ()
    )


def _put(factor: Factor, values: Mapping[str, Terms]) -> Factor:
    match factor:
        case Letter(name=name) if name in values:
            alone = lone(values[name])
            return alone if isinstance(alone, Quantity | Shown | Letter) else Group(values[name])
        case Trig(name, angle):
            return Trig(name, _put(angle, values))
        case Power(base, exponent):
            return Power(_put(base, values), exponent)
        case Quotient(top, bottom):
            return Quotient(put(top, values), put(bottom, values))
        case Group(terms):
            return Group(put(terms, values))
        case Root(terms):
            return Root(put(terms, values))
        case Inverse(name, terms):
            return Inverse(name, put(terms, values))
    return factor


def settled(terms: Terms) -> Terms:
    """A sum in which each rounded number stands for itself: how a class that carries what is shown goes on."""
    return tuple(Term(each.sign, tuple(_settled(factor) for factor in each.factors), each.source) for each in terms)


def _settled(factor: Factor) -> Factor:
    match factor:
        case Shown(value=value):
            return value
        case Trig(name, angle):
            return Trig(name, _settled(angle))
        case Power(base, exponent):
            return Power(_settled(base), exponent)
        case Quotient(top, bottom):
            return Quotient(settled(top), settled(bottom))
        case Group(terms):
            return Group(settled(terms))
        case Root(terms):
            return Root(settled(terms))
        case Inverse(name, terms):
            return Inverse(name, settled(terms))
    return factor
