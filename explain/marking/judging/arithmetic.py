"""Whether the numbers that a line shows come to each other, by its own figures alone, and what explains it where
they do not. Knows no mechanics.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from ...reference.gravity import IN_CLASSES
from .formula import Expr, Node, angles_in, left_to_right, product_first, readings, value, within
from .kinds import FACTORS
from .repairs import divides, edits
from .trace import Trace
from .values import Value
from .ways import letters_of

Sized = tuple[float, float]  # a number and how far off its figures leave it
CLOSE = 0.0025
_UNITS = (
    100.0,
    1000.0,
    10.0,
    4.4482216,
    4.45,
    4.448,
    2.204622622,
    2.2,
    2.205,
    2.54,
    12.0,
    39.37007874,
    3.28084,
    30.48,
    *IN_CLASSES[:3],
    1e4,
)
_DOUBLE = ((4.4482216, 2.2046, 100.0, IN_CLASSES[0]), (100.0, 0.01, IN_CLASSES[0], 2.54, 12.0))
_SHIFTED = (10.0, 100.0, 1000.0, 1e4)
_SMALLER = frozenset(("m", "Nm", "kgm", "kg"))
_LARGER = frozenset(("cm", "Ncm", "mm", "gram"))


def _stresses(units: set[str], unit: str) -> list[float]:
    """How many of a unit of stress go to one of the others, or to newtons over a unit of area."""
    made, areas = FACTORS["stress"], FACTORS["area"]
    if unit not in made:
        return []
    others = [1 / made[each] for each in units if each in made and each != unit]
    return [made[unit] * each for each in (*others, *(areas[each] for each in units if each in areas))]


@dataclass(frozen=True, slots=True)
class False_:
    """Two sides that do not come to the same: the expression, what is said to be equal to it, and their numbers."""

    left: Expr
    right: Expr
    made: Sized
    said: Sized


class Arithmetic:
    """The figures of one working."""

    def __init__(self, trace: Trace) -> None:
        self.trace = trace

    def number(
        self, expr: Expr, node: Node | None = None, mode: str = "deg", letters: Mapping[str, Value] | None = None
    ) -> Sized | None:
        """What an expression comes to by the student's own numbers; None where a letter has none."""
        known = letters_of(self.trace, expr) if letters is None else letters
        if known is None:
            return None
        node = node or expr.node
        turned = angles_in(expr.node)
        numbers = [token.share for token in expr.leaves]
        named = {key: each.number for key, each in known.items()}
        made = float(value(node, numbers, named, mode))
        spread = 0.0
        for place in range(len(expr.leaves)):
            step = self._step(expr, place, turned.get(place, False))
            if step:
                spread += abs(
                    float(value(node, [*numbers[:place], numbers[place] + step, *numbers[place + 1 :]], named, mode))
                    - made
                )
        for key, each in known.items():
            step = max(each.half, each.spread)
            if step:
                spread += abs(float(value(node, numbers, {**named, key: each.number + step}, mode)) - made)
        return (made, spread) if np.isfinite(spread) else (made, 0.0)

    def _step(self, expr: Expr, place: int, turned: bool) -> float:
        token = expr.leaves[place]
        first = self.trace.candidates(token, turned)[0]
        if first.exact or first.source in ("g", "constant", "angle"):
            return 0.0
        return 0.0 if token.half == 0.5 and (first.source == "number" or token.figures < 3) else token.step

    def runs(self, exprs: Sequence[Expr]) -> tuple[list[list[Expr]], False_ | None]:
        """The sides in groups: a side that goes on with what the one before came to starts a new one. And the first
        two that do not agree.
        """
        groups, now, wrong = [], [exprs[0]], None
        for left, right in zip(exprs, exprs[1:], strict=False):
            made, said = self.number(left), self.number(right)
            if made is not None and said is not None and not self.agree(left, right, made, said):
                first = right.leaves[0] if right.leaves else None
                if (
                    first is not None
                    and len(right.leaves) > 1
                    and abs(first.share - abs(made[0])) <= max(first.step, 0.002 * abs(made[0])) * 1.05 + made[1]
                ):
                    groups.append(now)
                    now = []
                elif wrong is None:
                    wrong = False_(left, right, made, said)
            now.append(right)
        return [*groups, now], wrong

    def agree(self, left: Expr, right: Expr, made: Sized | None, said: Sized | None) -> bool:
        """Whether two sides are equal, under any reading of a fraction with a product behind it."""
        if self.equal(made, said, left, right):
            return True
        for node in (product_first(left.node), left_to_right(left.node)):
            if (
                node != left.node
                and not (node == left_to_right(left.node) and left.node[0] == "/" and _turns(left.node))
                and self.equal(self.number(left, node), said, left, right)
            ):
                return True
        return any(
            node != right.node and self.equal(made, self.number(right, node), left, right)
            for node in readings(right.node)
        )

    def equal(self, made: Sized | None, said: Sized | None, left: Expr, right: Expr) -> bool:
        """Whether two numbers are the same in their rounding, or in two units."""
        if made is None or said is None:
            return True
        (p, near_p), (q, near_q) = made, said
        if not (np.isfinite(p) and np.isfinite(q)):
            return False
        within_ = near_p + near_q + CLOSE * max(abs(p), abs(q), self._gross(left), self._gross(right)) + 1e-12
        if right.lone:
            within_ += right.leaves[0].step * (0.05 if near_q else 1.05)
        if abs(abs(p) - abs(q)) <= within_:
            return True
        if right.unit == "deg" and abs(abs(p - q) - 360) <= within_:
            return True  # the same direction
        tokens = [*left.leaves, *right.leaves]
        units = {each.unit for each in tokens if each.unit} - {"deg", "%"}
        if "BW" in units and len(units) > 1:
            return True
        if any(each.unit in ("%", "BW") for each in tokens) and any(
            abs(abs(p) - abs(q) * k) <= within_ * max(1, k) for k in (100, 0.01)
        ):
            return True
        return bool(p and q) and self._other_unit(left, right, abs(q / p), units, within_ / max(abs(p), abs(q)))

    @staticmethod
    def _other_unit(left: Expr, right: Expr, ratio: float, units: set[str], near: float) -> bool:
        """Whether the sides are one quantity in two units, as far as their units allow it."""
        if "kN" in units and min(abs(ratio * 1000 - 1), abs(ratio / 1000 - 1)) < 0.006 + near:
            return True
        if any(abs(ratio / by - 1) < 0.004 + near for by in _stresses(units, right.unit)):
            return True
        for factor in _UNITS if units else (100.0,):
            for by in (factor, 1 / factor):
                if (
                    abs(ratio / by - 1) >= 0.004 + near
                    or factor == 10.0
                    and not ("kg" in units and units - {"kg"})
                    or factor in (1000.0, 1e4)
                    and not units
                ):
                    continue
                if (
                    factor not in (100.0, 1000.0)
                    or right.unit in _SMALLER
                    and by < 1
                    or right.unit in _LARGER
                    and by > 1
                ):
                    return True
        many = units & {"lb", "in", "ft", "lbin", "lbft"} or "kg" in units and len(units - {"acc"}) > 2
        return (
            bool(many)
            and len(units) > 1
            and any(
                min(abs(ratio / (a * b) - 1), abs(ratio * a * b - 1), abs(ratio / a * b - 1), abs(ratio * a / b - 1))
                < 0.004
                for a in _DOUBLE[0]
                for b in _DOUBLE[1]
            )
        )

    def _gross(self, expr: Expr) -> float:
        """The terms of a sum, all taken as positive: what rounding goes by."""
        if expr.node[0] not in ("+", "-", "p", "neg"):
            return 0.0
        letters = letters_of(self.trace, expr) or {}
        numbers, named = [each.share for each in expr.leaves], {key: each.number for key, each in letters.items()}

        def gross(node: Node) -> float:
            if node[0] in ("+", "-") and len(node) == 3:
                return gross(node[1]) + gross(node[2])
            if node[0] in ("p", "neg"):
                return gross(node[1])
            try:
                return abs(float(value(node, numbers, named)))
            except KeyError:
                return 0.0

        found = gross(expr.node)
        return found if np.isfinite(found) else 0.0

    def explained(self, wrong: False_) -> list[str]:
        """The slips that make the number that is shown, the likeliest first."""
        left, right = wrong.left, wrong.right
        said = abs(wrong.said[0])
        near = wrong.said[1] + 0.004 * said + (right.leaves[0].step if right.lone else 0.0)

        def like(node: Node, mode: str = "deg") -> bool:
            self.trace.effort.spend(20 * (1 + len(left.leaves)))
            made = self.number(left, node, mode)
            return made is not None and bool(np.isfinite(made[0])) and abs(abs(made[0]) - said) <= made[1] + near

        names = [
            slip
            for mode, slip in (("rad", "radian-mode"), ("grad", "grad-mode"))
            if _turns(left.node) and like(left.node, mode)
        ]
        names += [] if names else [slip for node, slip in edits(left.node) if like(node)]
        if like(left_to_right(left.node)) or divides(left.node) and like(left_to_right(product_first(left.node))):
            names.insert(0, "calculator-order")
        if left.node[0] in ("i*", "*") and any(each[0] in "+-" for each in within(left.node)) and not names:
            names.append("bracket-slip")
        ratio = abs(wrong.said[0] / wrong.made[0]) if wrong.made[0] else 0.0
        shifted = any(abs(ratio / k - 1) < 0.01 or abs(ratio * k - 1) < 0.01 for k in _SHIFTED)
        exchanged = right.lone and transposed(
            f"{abs(wrong.made[0]):.{len(right.leaves[0].text.partition('.')[2])}f}", right.leaves[0].text
        )
        names += (
            ["decimal-shift"] * shifted
            + ["digit-transposed"] * exchanged
            + ["arithmetic-slip"]
            + ["mixed-length-units"] * shifted
        )
        return list(dict.fromkeys(names))


def _turns(node: Node) -> bool:
    return any(each[0] == "f" and each[1] != "sqrt" for each in within(node))


def transposed(good: str, typed: str) -> bool:
    """Whether two figures changed places."""

    def plain(text: str) -> str:
        return (text.rstrip("0").rstrip(".") if "." in text else text).lstrip("0")

    one, other = plain(good), plain(typed)
    differ = [place for place, (a, b) in enumerate(zip(one, other, strict=False)) if a != b]
    if len(one) != len(other) or len(differ) != 2:
        return False
    i, j = differ
    return one[i] == other[j] and one[j] == other[i] and bool(re.fullmatch(r"\d\d", one[i] + one[j]))
