"""Two lines side by side: how far apart their sides are, and whether only numbers took the place of what they stand
for. Believed by the checker.
"""

from __future__ import annotations

from fractions import Fraction
from functools import reduce

from ..equation.terms import Equation, Shown, Term, flipped
from ..exact.interval import Sizes, Value, fraction, negative, plus, times

DIGITS = Fraction(1, 10**45)  # of the largest term, of the smaller line; the bounds of sizes are some 60 digits deep


def only_worked_out(before: Equation, after: Equation) -> bool:
    """Whether the lines are the same but for numbers that stand for just the terms they took the place of."""
    return (
        before.left == after.left
        and len(before.right) == len(after.right)
        and all(was == now or _stands_for(now, was) for was, now in zip(before.right, after.right, strict=True))
    )


def _stands_for(now: Term, was: Term) -> bool:
    if len(now.factors) != 1 or not isinstance(now.factors[0], Shown):
        return False
    of = now.factors[0].of
    return now.sign * of.sign == was.sign and of.factors == was.factors


def gap(equation: Equation, sizes: Sizes) -> Value:
    """Left less right."""
    return plus(sizes.sum(equation.left), negative(sizes.sum(equation.right)))


def alike(after: Equation, new: Term, before: Equation, old: Term, sizes: Sizes) -> bool:
    """Whether two lines, each times its multiplier, agree to every digit that the intervals settle."""
    (one, most), (other, more) = _measured(after, new, sizes), _measured(before, old, sizes)
    least = min(filter(None, (most, more)), default=Fraction(0))
    return abs(fraction(plus(one, negative(other)))) <= DIGITS * least


def _measured(line: Equation, by: Term, sizes: Sizes) -> tuple[Value, Fraction]:
    """Left less right, and the size of the largest term, of a line times a multiplier."""
    times_, found = sizes.sum((by,)), [sizes.sum((each,)) for each in (*line.left, *flipped(line.right))]
    nothing: Value = Fraction(0)
    largest = max((abs(fraction(each)) for each in found), default=Fraction(0))
    return times(times_, reduce(plus, found, nothing)), abs(fraction(times_)) * largest
