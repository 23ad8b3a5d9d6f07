"""Two lines side by side: how far apart their sides are, and whether only numbers took the place of what they stand
for. Believed by the checker.
"""

from __future__ import annotations

from fractions import Fraction

from ..equation.terms import Equation, Shown, Term
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


def largest(equation: Equation, sizes: Sizes) -> Value:
    """The largest term of either side."""
    return max(
        (sizes.sum((each,)) for each in (*equation.left, *equation.right)),
        key=lambda value: abs(fraction(value)),
        default=Fraction(0),
    )


def alike(after: Equation, new: Term, before: Equation, old: Term, sizes: Sizes) -> bool:
    """Whether two lines, each times its multiplier, agree to every digit that the intervals settle."""
    a, b = sizes.sum((new,)), sizes.sum((old,))
    apart = plus(times(a, gap(after, sizes)), negative(times(b, gap(before, sizes))))
    scales = (abs(fraction(times(a, largest(after, sizes)))), abs(fraction(times(b, largest(before, sizes)))))
    return abs(fraction(apart)) <= DIGITS * min(filter(None, scales), default=Fraction(0))
