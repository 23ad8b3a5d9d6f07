"""Replacing inside written sums, to the letter: values for letters. Knows no arithmetic."""

from __future__ import annotations

from collections.abc import Collection, Mapping

from .terms import Factor, Group, Letter, Number, Power, Term, Terms, changed, lone, term


def put(terms: Terms, values: Mapping[str, Terms]) -> Terms:
    """A sum with values in place of letters, exactly as they are written in `values`; a value of () is zero."""
    out = []
    for each in terms:
        if each.letters.isdisjoint(values):
            out.append(each)
            continue
        sign_, factors, gone = each.sign, list[Factor](), False
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


def in_brackets(values: Mapping[str, Terms], names: Collection[str]) -> dict[str, Terms]:
    """The values, those of some names in brackets that keep their sign."""
    return {name: (term(Group(value)),) if name in names else value for name, value in values.items()}


def _nothing(factor: Factor, values: Mapping[str, Terms]) -> bool:
    """Whether a factor is a power of a letter that is zero."""
    return (
        isinstance(factor, Power)
        and factor.exponent > 0
        and isinstance(factor.base, Letter)
        and values.get(factor.base.name) == ()
    )


def _put(factor: Factor, values: Mapping[str, Terms]) -> Factor:
    if isinstance(factor, Letter) and factor.name in values:
        alone = lone(values[factor.name])
        return alone if isinstance(alone, Number | Letter) else Group(values[factor.name])
    return changed(factor, lambda terms: put(terms, values), lambda inner: _put(inner, values))
