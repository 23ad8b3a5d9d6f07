"""Small changes of a formula, each with the slips that it undoes. Judges nothing."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from .formula import Node, within

_TRIG = {"sin": "cos", "cos": "sin"}
Put = Callable[[Node], Node]


def edits(node: Node) -> Iterator[tuple[Node, str]]:
    """Every formula that one change makes of this one, with the slip that the change undoes."""
    yield from _inside(node, lambda each: each)


def _inside(node: Node, put: Put) -> Iterator[tuple[Node, str]]:
    for changed, slip in _here(node):
        yield put(changed), slip
    for place, part in enumerate(node[1:], 1):
        if isinstance(part, tuple):
            yield from _inside(part, lambda each, place=place: put((*node[:place], each, *node[place + 1 :])))  # type: ignore[misc]


def _here(node: Node) -> Iterator[tuple[Node, str]]:
    kind = node[0]
    if kind in ("+", "-"):
        yield ("-" if kind == "+" else "+", node[1], node[2]), "sign-of-a-term"
    if kind in ("*", "i*"):
        yield ("/", node[1], node[2]), "divide-by-trig" if _core(node[2])[0] == "f" else "multiply-for-divide"
        if node[1][0] == "/":
            yield ("/", node[1][1], ("*", node[1][2], node[2])), "calculator-order"
    if kind == "/" and node[2][0] == "p" and node[2][1][0] in ("*", "i*"):
        inner = node[2][1]
        yield ("*", ("/", node[1], inner[1]), inner[2]), "calculator-order"
    if kind == "/":
        yield ("*", node[1], node[2]), "divide-by-trig" if _core(node[2])[0] == "f" else "torque-by-division"
        yield ("/", node[2], node[1]), "divide-wrong-way"
    if kind == "f":
        yield from _function(node)


def _function(node: Node) -> Iterator[tuple[Node, str]]:
    name, inner = node[1], _core(node[2])
    if name in _TRIG:
        yield ("f", _TRIG[name], node[2]), "sine-cosine-swap-load"
    elif name == "tan":
        yield ("f", "sin", node[2]), "tangent-for-sine"
        yield ("f", "cos", node[2]), "tangent-for-sine"
    elif name == "atan" and inner[0] == "/":
        yield ("f", "atan", ("/", inner[2], inner[1])), "arctan-upside-down"
    elif name == "sqrt" and inner[0] == "-":
        yield ("f", "sqrt", ("+", inner[1], inner[2])), "pythagoras-broken"
    elif name == "sqrt" and inner[0] == "+":
        yield ("f", "sqrt", ("+", _squared(inner[1]), _squared(inner[2]))), "pythagoras-broken"


def added(node: Node) -> Iterator[tuple[Node, str]]:
    """Parts of a force that were added where they stand across each other."""
    if node[0] == "+":
        yield ("f", "sqrt", ("+", _squared(node[1]), _squared(node[2]))), "resultant-by-adding"


def without_a_term(node: Node) -> Iterator[tuple[Node, str]]:
    """A sum with one of its terms left out: what it is true without should not be there."""
    if node[0] in ("+", "-"):
        yield node[1], "sign-of-a-term"


def _core(node: Node) -> Node:
    return _core(node[1]) if node[0] == "p" else node


def _squared(node: Node) -> Node:
    return node if node[0] == "^" else ("^", node, ("k", 2.0))


def divides(node: Node) -> bool:
    return any(each[0] == "/" for each in within(node))
