"""Solves an equation for one letter in the problem and its twins at once. Knows no mechanics."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np

from .formula import Expr, Node, has, value, within
from .quantities import Row

_HIDDEN = "§function"


class NoAngle(ArithmeticError):
    """No angle has a sine or cosine above one; `ratio` is what it would have to be."""

    def __init__(self, ratio: Row) -> None:
        super().__init__("no angle")
        self.ratio = ratio


def solved(
    left: Node,
    right: Node,
    numbers: tuple[Sequence[Any], Sequence[Any]],
    letters: Mapping[str, Any],
    unknown: str,
    n: int,
) -> Row | None:
    """The letter, where it enters by its first power or inside one function of it alone; None else. Raises NoAngle."""
    function = next(
        (
            each
            for node in (left, right)
            for each in within(node)
            if each[0] == "f" and each[1] != "sqrt" and _bare(each[2]) == ("v", unknown)
        ),
        None,
    )
    if function is not None:
        left, right = _without(left, function), _without(right, function)
        if has(left, unknown) or has(right, unknown):
            return None
        unknown = _HIDDEN
    elif any(each[0] == "f" and has(each, unknown) for node in (left, right) for each in within(node)):
        return _root(left, right, numbers, letters, unknown, n)
    found = _linear(left, right, numbers, letters, unknown, n)
    if found is None:
        return _root(left, right, numbers, letters, unknown, n)
    return _angle(function[1], found) if function is not None else found


def _bare(node: Node) -> Node:
    return _bare(node[1]) if node[0] == "p" else node


def _without(node: Node, function: Node) -> Node:
    if node == function:
        return ("v", _HIDDEN)
    return tuple(_without(each, function) if isinstance(each, tuple) else each for each in node)


def _gap(
    left: Node,
    right: Node,
    numbers: tuple[Sequence[Any], Sequence[Any]],
    letters: Mapping[str, Any],
    unknown: str,
    at: Any,
) -> Any:
    named = {**letters, unknown: at}
    return value(left, numbers[0], named) - value(right, numbers[1], named)


def _linear(
    left: Node,
    right: Node,
    numbers: tuple[Sequence[Any], Sequence[Any]],
    letters: Mapping[str, Any],
    unknown: str,
    n: int,
) -> Row | None:
    one = np.ones(n)
    nothing, first, second = (_gap(left, right, numbers, letters, unknown, k * one) * one for k in (0.0, 1.0, 2.0))
    with np.errstate(invalid="ignore"):
        slope = first - nothing
    if (
        not np.all(np.isfinite([nothing, first, second]))
        or np.any(np.abs(slope) < 1e-14)
        or not np.allclose(second - first, slope, rtol=1e-7)
    ):
        return None
    return np.asarray(-nothing / slope)


def _root(
    left: Node,
    right: Node,
    numbers: tuple[Sequence[Any], Sequence[Any]],
    letters: Mapping[str, Any],
    unknown: str,
    n: int,
) -> Row | None:
    """A square: the positive root."""
    for a, b, which in ((left, right, 1), (right, left, 0)):
        if a[0] == "^" and _bare(a[1]) == ("v", unknown) and not has(b, unknown):
            made = np.asarray(value(b, numbers[which], letters), float) * np.ones(n)
            return np.sqrt(made) if np.all(made > 0) else None
    return None


def _angle(function: str, found: Row) -> Row | None:
    if function in ("sin", "cos") and np.any(np.abs(found) > 1):
        if abs(found[0]) <= 1:
            return None  # only in a twin, by what its numbers were rounded to
        raise NoAngle(found)
    if function in ("asin", "acos", "atan"):
        return None
    inverse = {"sin": np.arcsin, "cos": np.arccos, "tan": np.arctan}[function]
    return np.asarray(inverse(found) * 180 / np.pi)


def factor_of(expr: Expr, numbers: Sequence[Any], letters: Mapping[str, Any], unknown: str, n: int) -> Row | None:
    """What stands before a letter, where it enters by its first power."""
    one = np.ones(n)
    try:
        nothing, first, second = (
            np.asarray(value(expr.node, numbers, {**letters, unknown: k * one}), float) * one for k in (0.0, 1.0, 2.0)
        )
    except KeyError:
        return None
    if not np.all(np.isfinite([nothing, first, second])) or not np.allclose(second - first, first - nothing, rtol=1e-7):
        return None
    return first - nothing
