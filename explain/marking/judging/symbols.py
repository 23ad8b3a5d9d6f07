"""Letters that are given their numbers only later: a formula in letters stands for the numbers of the line that puts
numbers into it, sign by sign. Judges nothing.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from .clauses import Clause
from .formula import Expr, Node
from .reading import Line
from .tokens import Token

_FEWEST = 3  # letters and numbers of a formula that is found again by its shape


def bound(lines: Sequence[Line]) -> dict[str, Token]:
    """By letter the number that a later line of the same shape has in its place; none for a letter that has two."""
    parts = [(clause, expr) for line in lines for clause in line.clauses for expr in clause.exprs]
    numeric: dict[tuple[str, Node], tuple[Clause, Expr]] = {}
    for clause, expr in parts:
        if not expr.names and len(expr.leaves) >= _FEWEST:
            for letter in called(clause):
                numeric.setdefault((letter, shape(expr.node)), (clause, expr))
    out: dict[str, Token] = {}
    twice: set[str] = set()
    for letter, token in _in_one_line(lines):
        twice |= {letter} if letter in out and out[letter].text != token.text else set()
        out.setdefault(letter, token)
    for clause, expr in parts:
        if len(expr.names) < 2 or len(expr.names) + len(expr.leaves) < _FEWEST:
            continue
        made = shape(expr.node)
        found = next((numeric[each, made] for each in called(clause) if (each, made) in numeric), None)
        for letter, token in _pairs(expr, found[1]) if found is not None and found[0] is not clause else ():
            twice |= {letter} if letter in out and out[letter].text != token.text else set()
            out.setdefault(letter, token)
    return {letter: token for letter, token in out.items() if letter not in twice and letter != "g"}


def _in_one_line(lines: Sequence[Line]) -> Iterator[tuple[str, Token]]:
    """The letters of a fraction with the numbers that the same statement has in their places: e/r = 11/6.5."""
    for clause in (each for line in lines for each in line.clauses):
        for one, other in zip(clause.exprs, clause.exprs[1:], strict=False):
            fraction = one.node[0] == "/" and len(one.names) == 2 and not one.leaves and not other.names
            if fraction and len(other.leaves) == 2 and shape(one.node) == shape(other.node):
                yield from _pairs(one, other)


def called(clause: Clause) -> list[str]:
    """The letters that a clause says its expressions are."""
    return [side.expr.letter for side in clause.sides if side.expr is not None and side.expr.letter]


def shape(node: Node) -> Node:
    """A tree without brackets, in which letters and numbers are alike and a product is a product."""
    if node[0] in ("n", "v"):
        return ("?",)
    if node[0] == "p":
        return shape(node[1])
    kind = "*" if node[0] == "i*" else node[0]
    return (kind, *(shape(each) if isinstance(each, tuple) else each for each in node[1:]))


def _pairs(letters: Expr, numbers: Expr) -> list[tuple[str, Token]]:
    """Each letter with the number in its place; nothing where a number of the formula is another there."""
    out: list[tuple[str, Token]] = []
    for one, other in zip(_ends(letters.node), _ends(numbers.node), strict=True):
        token = numbers.leaves[other[1]]
        if one[0] == "v":
            out.append((str(one[1]), token))
        elif letters.leaves[one[1]].text != token.text:
            return []
    return out


def _ends(node: Node) -> list[Node]:
    if node[0] in ("n", "v"):
        return [node]
    return [end for each in node[1:] if isinstance(each, tuple) for end in _ends(each)]


def put_in(expr: Expr, numbers: Mapping[str, Token]) -> Expr:
    """The expression with these numbers in the place of letters."""
    leaves = list(expr.leaves)

    def put(node: Node) -> Node:
        if node[0] == "v" and node[1] in numbers:
            leaves.append(replace(numbers[node[1]]))
            return ("n", len(leaves) - 1)
        return tuple(put(each) if isinstance(each, tuple) else each for each in node)

    return Expr(put(expr.node), leaves, [name for name in expr.names if name not in numbers])
