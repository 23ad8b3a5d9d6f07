"""Work done in the head: sums of earlier results, products and quotients of two, sums of two lengths, that come to a
number.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cache
from itertools import combinations, product

import numpy as np
from numpy.typing import NDArray

from .kinds import UNIT_KIND
from .quantities import Row
from .values import Value

MOST = 9  # earlier results that are put together
Found = tuple[float, Row, Row, tuple[Value, ...]]


def _of_all(own: Sequence[Value]) -> Iterator[NDArray[np.float64]]:
    """The last five to nine results, all added."""
    for size in range(5, len(own) + 1):
        row = np.zeros(len(own))
        row[:size] = 1.0
        yield row


@cache
def _signs(count: int) -> NDArray[np.float64]:
    """Every sum of two, three or four of so many, a row of signs each; of four, all are added."""
    rows = []
    for size in range(2, min(4, count) + 1):
        for some in combinations(range(count), size):
            for signs in product((1.0, -1.0), repeat=size - 1) if size < 4 else [(1.0,) * 3]:
                row = np.zeros(count)
                row[list(some)] = (1.0, *signs)
                rows.append(row)
    return np.array(rows)


def sums(own: Sequence[Value], number: float, step: float) -> Iterator[Found]:
    """Sums and differences of two to four results."""
    if len(own) < 2:
        return
    signs = np.vstack([_signs(len(own)), *_of_all(own)])
    made = signs @ np.array([each.number for each in own])
    within = np.abs(signs) @ np.array([max(each.half, each.spread) for each in own])
    near = (np.abs(np.abs(made) - number) <= step * 1.02 + within + 1e-9) & (within < 0.02 * number)
    for place in np.nonzero(near)[0][:12]:
        row, turn = signs[place], 1.0 if made[place] > 0 else -1.0
        some = tuple(each for each, sign in zip(own, row, strict=True) if sign)
        if len({UNIT_KIND.get(each.unit, each.unit) for each in some if each.unit}) > 1:
            continue
        f = sum((turn * sign * each.f for each, sign in zip(own, row, strict=True) if sign), np.zeros(len(own[0].f)))
        r = sum((turn * sign * each.r for each, sign in zip(own, row, strict=True) if sign), np.zeros(len(own[0].f)))
        yield 0.1 * len(some) + 0.5 * bool(np.any(row < 0)), f, r, some


def squares(own: Sequence[Value], number: float, step: float, lone: bool) -> Iterator[Found]:
    """Roots of two squares; where the number stands alone, angles of two parts."""
    for one, other in combinations(own, 2):
        within = max(one.half, one.spread) + max(other.half, other.spread)
        if (
            one.unit == other.unit
            and abs(float(np.hypot(one.number, other.number)) - number) <= step * 1.02 + within
            and within + step < 0.012 * number
        ):
            yield 0.7, np.hypot(one.f, other.f), np.hypot(one.r, other.r), (one, other)
        for a, b in ((one, other), (other, one)) if lone else ():
            if abs(float(np.degrees(np.arctan2(abs(a.number), abs(b.number)))) - number) <= step * 1.02 + 0.05:
                yield (
                    0.75,
                    np.degrees(np.arctan2(np.abs(a.f), np.abs(b.f))),
                    np.degrees(np.arctan2(np.abs(a.r), np.abs(b.r))),
                    (a, b),
                )


def products(own: Sequence[Value], given: Sequence[Value], number: float, step: float) -> Iterator[Found]:
    """Products and quotients of two results, or of a result and a datum; products of two data, or of a result of few
    figures, only where they come to the number exactly.
    """
    every = [*own, *given]
    sizes = np.abs([each.number for each in every])
    near = np.array([max(each.half, each.spread) for each in every]) / sizes
    plain = np.array([each.exact and each.source != "earlier" for each in every])
    upper = np.triu(np.ones((len(every), len(every)), bool), 1)
    within = near[:, None] + near[None, :]
    both = plain[:, None] & plain[None, :]
    for made, sign in (
        (np.outer(sizes, sizes), "*"),
        (sizes[:, None] / sizes[None, :], "/"),
        (sizes[None, :] / sizes[:, None], "\\"),
    ):
        hit = (
            upper
            & ~both
            & (np.abs(made - number) <= step * 1.02 + made * within + 1e-9)
            & (made * within + step < 0.012 * number)
        )
        if sign == "*":
            hit |= upper & (np.abs(made - number) < 1e-9)
        for i, j in np.argwhere(hit)[:6]:
            one, other = every[i], every[j]
            with np.errstate(all="ignore"):
                f, r = (
                    a * b if sign == "*" else a / b if sign == "/" else b / a
                    for a, b in ((one.f, other.f), (one.r, other.r))
                )
            yield 0.8, f, r, (one, other)


def parts(own: Sequence[Value], shares: Sequence[Row], number: float, step: float) -> Iterator[Found]:
    """The two parts of a force among the results, by the sines and cosines of the problem: what a calculator gives at
    once.
    """
    forces = [each for each in own if UNIT_KIND.get(each.unit, "force") == "force"]
    if not forces or not shares:
        return
    first = np.abs([share[0] for share in shares])
    gap = np.abs(np.outer(np.abs([each.number for each in forces]), first) - number)
    for i, j in np.argwhere(gap <= step * 1.02 + np.outer([each.half for each in forces], first)):
        force, share = forces[i], shares[j]
        yield 0.65, force.f * share, force.r * share, (force,)
