"""A formula as a small tree, and its value for rows of numbers at once. Knows no letters and no units.

Nodes are tuples: ("n", place of a number), ("v", letter), ("p", bracket), ("neg", x), ("f", function, x), and two-sided
"+", "-", "*", "i*" (no sign
written), "/", "^".
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

import numpy as np
from numpy.typing import NDArray

from .tokens import Token

Node = tuple[Any, ...]
Rows = NDArray[np.float64]
TURNS = {"deg": np.pi / 180, "rad": 1.0, "grad": np.pi / 200}
_INVERSE = {"asin": np.arcsin, "acos": np.arccos, "atan": np.arctan}
_DIRECT: dict[str, Callable[[Any], Any]] = {
    "sin": np.sin,
    "cos": np.cos,
    "tan": np.tan,
    "cot": lambda at: 1 / np.tan(at),
}


@dataclass(slots=True, eq=False)
class Expr:
    """An expression: its tree, its numbers in order, its letters."""

    node: Node
    leaves: list[Token] = field(default_factory=list)
    names: list[str] = field(default_factory=list)

    @property
    def lone(self) -> bool:
        """Whether it is one number, perhaps with a sign or in brackets."""
        node = self.node
        while node[0] in ("neg", "p"):
            node = node[1]
        return bool(node[0] == "n")

    @property
    def number(self) -> float:
        """The value of a lone number, with its sign."""
        return self.sign * self.leaves[0].share

    @property
    def sign(self) -> int:
        sign, node = 1, self.node
        while node[0] in ("neg", "p"):
            sign, node = -sign if node[0] == "neg" else sign, node[1]
        return sign

    @property
    def unit(self) -> str:
        return self.leaves[0].unit if self.lone else ""

    @property
    def letter(self) -> str:
        """The letter that it is and nothing else."""
        node = self.node[1] if self.node[0] == "p" else self.node
        return str(node[1]) if node[0] == "v" else ""


def value(node: Node, numbers: Sequence[Any], letters: Mapping[str, Any], mode: str = "deg") -> Any:
    """The value of a tree. What has none comes out as nan or inf."""
    with np.errstate(all="ignore"):
        return _value(node, numbers, letters, mode)


def _value(node: Node, numbers: Sequence[Any], letters: Mapping[str, Any], mode: str) -> Any:
    kind = node[0]
    if kind == "n":
        return numbers[node[1]]
    if kind == "v":
        return letters[node[1]]
    if kind == "k":
        return node[1]
    if kind == "p":
        return _value(node[1], numbers, letters, mode)
    if kind == "neg":
        return -_value(node[1], numbers, letters, mode)
    if kind == "f":
        return _function(node[1], _value(node[2], numbers, letters, mode), mode)
    one, other = _value(node[1], numbers, letters, mode), _value(node[2], numbers, letters, mode)
    if kind == "+":
        return one + other
    if kind == "-":
        return one - other
    if kind in ("*", "i*"):
        return one * other
    if kind == "/":
        return np.divide(one, other)
    return _power(one, other)


def _function(name: str, at: Any, mode: str) -> Any:
    if name in _DIRECT:
        return _DIRECT[name](at * TURNS[mode])
    if name == "sqrt":
        return np.sqrt(np.abs(at))
    return _INVERSE[name](at) / TURNS[mode]


def _power(base: Any, exponent: Any) -> Any:
    return np.power(np.abs(base), np.clip(exponent, -12, 12)) * np.where(
        (np.asarray(base) < 0) & (np.asarray(exponent) % 2 == 1), -1.0, 1.0
    )


def within(node: Node) -> Iterator[Node]:
    """A tree and all its parts."""
    yield node
    for each in node[1:]:
        if isinstance(each, tuple):
            yield from within(each)


def has(node: Node, letter: str) -> bool:
    return any(each == ("v", letter) for each in within(node))


def angles_in(node: Node, inside: bool = False) -> dict[int, bool]:
    """By place of a number, whether it stands inside a sine, cosine or tangent."""
    if node[0] == "n":
        return {node[1]: inside}
    out: dict[int, bool] = {}
    for each in node[1:]:
        if isinstance(each, tuple):
            out.update(angles_in(each, inside or node[0] == "f" and node[1] in _DIRECT))
    return out


def left_to_right(node: Node) -> Node:
    """a / b c read from left to right: (a / b) c."""
    if node[0] in ("/", "*") and node[2][0] == "i*":
        return ("i*", left_to_right((node[0], node[1], node[2][1])), left_to_right(node[2][2]))
    return tuple(left_to_right(each) if isinstance(each, tuple) else each for each in node)


def product_first(node: Node) -> Node:
    """a / b x c read with the product below the line: a / (b c)."""
    if node[0] in ("*", "i*"):
        left, right = product_first(node[1]), product_first(node[2])
        if left[0] == "/":
            return ("/", left[1], ("i*", left[2], right))
        return (node[0], left, right)
    return tuple(product_first(each) if isinstance(each, tuple) else each for each in node)


def readings(node: Node) -> list[Node]:
    """The ways to read a fraction with a product behind it, the one as written first."""
    if not any(each[0] == "/" for each in within(node)):
        return [node]
    return list(dict.fromkeys((node, left_to_right(node), product_first(node))))


def shown(expr: Expr, node: Node | None = None) -> str:
    """A tree as text, the way it was read."""
    node = node or expr.node
    kind = node[0]
    if kind == "n":
        token = expr.leaves[node[1]]
        return token.text + ({"deg": "°", "%": " %"}.get(token.unit, f" {token.unit}") if token.unit else "")
    if kind == "v":
        return str(node[1]).lstrip("§")
    if kind == "p":
        return f"({shown(expr, node[1])})"
    if kind == "neg":
        return "−" + shown(expr, node[1])
    if kind == "f":
        return f"{node[1]} {shown(expr, node[2])}"
    sign = {"i*": " × ", "*": " × ", "/": " / ", "^": "^", "+": " + ", "-": " − "}[kind]
    return shown(expr, node[1]) + sign + shown(expr, node[2])
