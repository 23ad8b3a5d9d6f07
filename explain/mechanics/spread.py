"""A spread load as one force: how much it weighs, and where it acts as a whole. Knows no balance."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import NamedTuple

from .body import Relation
from ..equation.terms import Factor, Group, Letter, Quantity, Quotient, Term, Terms, flipped, term
from ..exact.interval import Sizes, sign
from ..problem.magnitudes import in_metres
from ..problem.model import Spread

_TWO, _THREE = Quantity.of("2"), Quantity.of("3")


class End(NamedTuple):
    """One end of a spread load that is not at the near end of its segment: its letter is a distance, `place` has its
    sign.
    """

    letter: Letter
    place: Quantity


def resultant_place(letter: Letter, ends: Sequence[End], spread: Spread) -> tuple[Fraction, Relation]:
    """Where a spread load acts, in metres from the near end, and how that distance follows from the two ends: the
    middle; of one that grows from nothing, two thirds of the way.
    """
    shares = (Fraction(1, 3), Fraction(2, 3)) if spread.growing else (Fraction(1, 2), Fraction(1, 2))
    place = sum((share * in_metres(end) for share, end in zip(shares, spread.ends, strict=True)), Fraction(0))
    kind, side = "third" if spread.growing else "middle", -1 if place < 0 else 1
    by = dict(zip(spread.ends, shares, strict=True))
    parts = tuple((side * _side(end) * by[end.place], ((end.letter, 1),)) for end in ends)
    return place, Relation(kind, letter, tuple(end.letter for end in ends), parts=parts)


def whole_weight(letter: Letter, each: Letter, ends: Sequence[End], spread: Spread) -> Relation:
    """The weight of all of a load from that of each length; of one that grows, half of what it would be if all of it
    weighed as much as at its second end.
    """
    first, second = map(in_metres, spread.ends)
    share = (1 if second > first else -1) * (Fraction(1, 2) if spread.growing else Fraction(1))
    parts = tuple(
        ((share if end.place == spread.ends[1] else -share) * _side(end), ((each, 1), (end.letter, 1))) for end in ends
    )
    return Relation("per length", letter, (each, *(end.letter for end in ends)), parts=parts)


def _side(end: End) -> int:
    return -1 if end.place.number < 0 else 1


# ---------------------------------------------------------------------- in writing
def spread_terms(sizes: Sizes, relation: Relation) -> Terms:
    """How the place or the weight of a spread load is written: the right side, every bracket positive."""
    ends = tuple(Term(1 if number > 0 else -1, (of[-1][0],)) for number, of in relation.parts)
    match relation.kind:
        case "middle":
            return (term(Quotient(_ordered(ends), (term(_TWO),))),)
        case "per length":
            growing = abs(relation.parts[0][0]) != 1
            whole = term(relation.of[0], *_bracket(ends))
            return (term(Quotient((whole,), (term(_TWO),))),) if growing else (whole,)
    if len(ends) == 1:
        times = (_TWO,) if abs(relation.parts[0][0]).numerator == 2 else ()
        return (term(Quotient((term(*times, *ends[0].factors),), (term(_THREE),))),)
    first, second = ends
    way = (second, first.flipped())
    side = sign(sizes.sum(way))
    run = Quotient((term(_TWO, *_bracket(way if side > 0 else flipped(way))),), (term(_THREE),))
    return _ordered((first, Term(side, (run,))))


def _bracket(ends: Terms) -> tuple[Factor, ...]:
    """A sum of two as a factor, one alone without brackets."""
    return ends[0].factors if len(ends) == 1 else (Group(_ordered(ends)),)


def _ordered(terms: Terms) -> Terms:
    return tuple(sorted(terms, key=lambda each: -each.sign))
