"""Letters that are given their numbers only later: a formula in letters stands for the numbers of the line that puts
numbers into it, sign by sign. Judges nothing.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from .clauses import Clause
from .formula import Expr, Node
from .reading import Line
from .tokens import Token

_FEWEST = 3  # letters and numbers of a formula that is found again by its shape


def bound(lines: Sequence[Line]) -> dict[str, Token]:
    """By letter the number that a later line of the same shape has in its place; none for a letter that has two."""
    parts = [_Part(clause, expr) for line in lines for clause in line.clauses for expr in clause.exprs]
    numeric = [each for each in parts if not each.expr.names and len(each.expr.leaves) > 1]
    out: dict[str, Token] = {}
    twice: set[str] = set()
    for each in parts:
        found = next((other.expr for other in numeric if _puts_numbers_in(other, each)), None)
        for letter, token in _pairs(each.expr, found) if found is not None and len(each.expr.names) > 1 else ():
            twice |= {letter} if letter in out and out[letter].text != token.text else set()
            out.setdefault(letter, token)
    return {letter: token for letter, token in out.items() if letter not in twice and letter != "g"}


@dataclass(slots=True)
class _Part:
    """An expression with its clause and its shape."""

    clause: Clause
    expr: Expr

    @property
    def shape(self) -> Node:
        return shape(self.expr.node)

    @property
    def called(self) -> frozenset[str]:
        """The letters that its clause says it is."""
        return frozenset(side.expr.letter for side in self.clause.sides if side.expr is not None and side.expr.letter)


def _puts_numbers_in(numbers: _Part, letters: _Part) -> bool:
    """Whether one is the other with numbers in it: in another line, for the same letter."""
    return (
        numbers.clause is not letters.clause
        and len(letters.expr.names) + len(letters.expr.leaves) >= _FEWEST
        and bool(numbers.called & letters.called)
        and numbers.shape == letters.shape
    )


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
