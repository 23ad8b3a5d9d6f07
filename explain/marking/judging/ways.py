"""All ways to trace the numbers of an expression together, worked out at once. Chooses nothing."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import product

import numpy as np

from .formula import Expr, Node, Rows, angles_in, value, within
from .limits import MOST_WAYS
from .quantities import Row
from .trace import Trace
from .values import Value, all_deps

MOST_EACH = 5
_A_CHOICE = 60  # steps


@dataclass(frozen=True, slots=True, eq=False)
class Way:
    """One way: the values taken for the numbers, and what the formula gives."""

    leaves: tuple[Value, ...]
    letters: Mapping[str, Value]
    f: Row
    r: Row

    @property
    def free(self) -> bool:
        return any(each.free for each in self.leaves)

    def rests_on(self, node: Node) -> tuple[frozenset[int], frozenset[int]]:
        """The lines and suspicions that a part of the expression rests on."""
        return all_deps(self.used(node))

    def used(self, node: Node) -> list[Value]:
        return [
            self.leaves[each[1]] if each[0] == "n" else self.letters[each[1]]
            for each in within(node)
            if each[0] == "n" or each[0] == "v" and each[1] in self.letters
        ]


def choices(trace: Trace, exprs: Sequence[Expr], most: int = MOST_WAYS) -> list[tuple[Value, ...]]:
    """Every choice of values for the numbers of some expressions together, the likeliest first."""
    lists: list[list[Value]] = []
    for expr in exprs:
        turned = angles_in(expr.node)
        lists += [
            trace.candidates(token, turned.get(place, False))[:MOST_EACH] for place, token in enumerate(expr.leaves)
        ]
    count = int(np.prod([len(each) for each in lists], dtype=float)) if lists else 1
    while count > most:
        place = max(range(len(lists)), key=lambda each: len(lists[each]))
        count = count // len(lists[place]) * (len(lists[place]) - 1)
        lists[place] = lists[place][:-1]
    trace.effort.spend(_A_CHOICE + count * (len(lists) + 1) // 2)
    out = list(product(*lists))
    ranks = {id(value): place for each in lists for place, value in enumerate(each)}
    return sorted(out, key=lambda some: sum(ranks[id(each)] for each in some)) if len(out) > 1 else out


def letters_of(trace: Trace, expr: Expr, unknown: Sequence[str] = ()) -> dict[str, Value] | None:
    """The values of an expression's letters; None where one has none."""
    out: dict[str, Value] = {}
    for name in expr.names:
        if name in unknown:
            continue
        found = (
            trace.before if name == "§before" else trace.names.get(name) or (trace.gravity() if name == "g" else None)
        )
        if found is None:
            return None
        out[name] = found
    return out


def in_another_unit(letters: Mapping[str, Value]) -> Iterator[dict[str, Value]]:
    """The letters with their lengths in metres for centimetres, and in centimetres for metres: a letter stands for a
    length, not for its number.
    """
    for unit, factor in (("cm", 0.01), ("m", 100.0)):
        if any(each.unit == unit for each in letters.values()):
            yield {key: each.times(factor) if each.unit == unit else each for key, each in letters.items()}


def stacked(some: Sequence[tuple[Value, ...]], which: str) -> list[Rows]:
    """For each number the values of all ways, one below the other."""
    if not some or not some[0]:
        return []
    return [np.array([getattr(way[place], which) for way in some]) for place in range(len(some[0]))]


def ways(trace: Trace, expr: Expr, letters: Mapping[str, Value], node: Node | None = None) -> Iterator[Way]:
    """Every way to trace an expression that has a value, the likeliest first."""
    some = choices(trace, [expr])
    node = node or expr.node
    first = some[:1]
    for batch in (first, some[1:]):
        if not batch:
            continue
        f = _worked(
            node, stacked(batch, "f"), {key: each.f for key, each in letters.items()}, len(batch), trace.known.n
        )
        apart = any(each.apart for way in batch for each in way) or any(each.apart for each in letters.values())
        r = (
            _worked(
                node, stacked(batch, "r"), {key: each.r for key, each in letters.items()}, len(batch), trace.known.n
            )
            if apart
            else f
        )
        good = [bool(np.isfinite(a).all() and np.isfinite(b).all()) for a, b in zip(f, r, strict=True)]
        for place, leaves in enumerate(batch):
            if good[place]:
                yield Way(leaves, letters, f[place], r[place] if apart else f[place])


def _worked(node: Node, numbers: Sequence[Rows], letters: Mapping[str, Row], count: int, n: int) -> Rows:
    found = np.asarray(value(node, numbers, letters), float)
    return np.broadcast_to(found, (count, n))


def of_part(way: Way, node: Node, n: int) -> tuple[Row, Row, float]:
    """What a part of an expression gives: by its formula, had all before been right, and in numbers."""
    f = np.broadcast_to(
        np.asarray(
            value(node, [each.f for each in way.leaves], {key: each.f for key, each in way.letters.items()}), float
        ),
        (n,),
    )
    r = np.broadcast_to(
        np.asarray(
            value(node, [each.r for each in way.leaves], {key: each.r for key, each in way.letters.items()}), float
        ),
        (n,),
    )
    number = float(
        value(node, [each.number for each in way.leaves], {key: each.number for key, each in way.letters.items()})
    )
    return f, r, number
