"""A second reader of lines, made from a grammar and sharing nothing with the first: on every line that both take
they agree.
"""

from __future__ import annotations

import re
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from lark import Lark, LarkError, Token, Transformer
from test_reading_workings import LINES

from explain.equation.terms import Unit
from explain.marking.reading import (
    Call,
    Chain,
    Expr,
    Measured,
    Name,
    Negative,
    Number,
    Power,
    Product,
    Quotient,
    Sigma,
    Sum,
    UnknownName,
    Unread,
    read_line,
    vocabulary_of,
)

NAMES = ("F", "Fm", "F_m", "F_{m}", "d", "Wc", "R_x", "θ", "theta")
VOCABULARY = vocabulary_of(
    {
        "flexors.force": ("F_m", "F"),
        "at": ("d",),
        "can.weight": ("W_c",),
        "reaction.right": ("R_x",),
        "angle": ("theta",),
    }
)
DEGREES: Unit = (("deg", 1),)
UNITS: dict[str, Unit] = {
    "N": (("N", 1),),
    "newtons": (("N", 1),),
    "cm": (("cm", 1),),
    "m": (("m", 1),),
    "kg": (("kg", 1),),
    "lb": (("lbf", 1),),
    "Nm": (("N", 1), ("m", 1)),
    "N m": (("N", 1), ("m", 1)),
    "N·cm": (("N", 1), ("cm", 1)),
    "N*m": (("N", 1), ("m", 1)),
    "m/s^2": (("m", 1), ("s", -2)),
    "ft/s²": (("ft", 1), ("s", -2)),
    "°": DEGREES,
    "deg": DEGREES,
}
GRAMMAR = r"""
start: sum (_REL sum)*
?sum: first | sum "+" term -> add | sum MINUS term -> take
?first: term | MINUS term -> neg
?term: row | term _TIMES signed -> mul | term "/" signed -> div
?signed: row | signed_row
?signed_row: MINUS factor -> neg | signed_row other -> mul
?row: factor | row other -> mul
?factor: NUMBER -> number | NUMBER UNIT -> measured | NUMBER _UP EXPONENT -> number_power | other
?other: base | base _UP EXPONENT -> power | bracket UNIT -> group
?base: NAME -> name | bracket | call
bracket: "(" sum ")" | "[" sum "]"
?call: FUNC bracket -> call | FUNC NUMBER DEG? -> bare_call | FUNC NAME -> name_call | FUNC INVERSE bracket -> inverse
    | FUNC _UP EXPONENT bracket -> power_call | _ROOT bracket -> root
_REL: "=" | "≈"
_TIMES: "*" | "×" | "·" | /[xX](?=[ (.0-9])/
MINUS: "-" | "−" | "–"
NUMBER: /[0-9]+[.,][0-9]+|\.[0-9]+|[0-9]+/
UNIT.3: /(?:newtons|cm|kg|lb|N\*m|N·cm|Nm|N m|N|m\/s\^2|ft\/s²|m|°|deg)(?![A-Za-z])/
DEG.4: /°|deg(?![A-Za-z])/
NAME: /(?:F_\{m\}|F_m|Fm|F|d|Wc|R_x|theta|θ)(?![A-Za-z_])/
FUNC.2: /(?:arc|a)?(?:sin|cos|tan)/
INVERSE: "⁻¹" | "^-1" | "^{-1}"
_UP: "^" | "**"
_ROOT: "√" | "sqrt"
EXPONENT: /[234]/
%ignore " "
"""
PARSER = Lark(GRAMMAR, parser="lalr")


class Neutral(Transformer[Token, Any]):
    """Trees of tuples: the name of the node first."""

    def start(self, sides: list[Any]) -> list[Any]:
        return [_flat(_whole(each)) for each in sides]

    def number(self, found: list[Token]) -> Any:
        return ("number", Decimal(found[0].replace(",", ".")))

    def measured(self, found: list[Token]) -> Any:
        return ("unit", self.number(found), UNITS[found[1]])

    def group(self, found: list[Any]) -> Any:
        return ("unit", found[0], UNITS[found[1]])

    def name(self, found: list[Token]) -> Any:
        return ("name", str(found[0]))

    def bracket(self, found: list[Any]) -> Any:
        return ("bracket", found[0])

    def add(self, found: list[Any]) -> Any:
        return ("sum", found[0], found[1])

    def take(self, found: list[Any]) -> Any:
        return ("sum", found[0], ("minus", found[2]))

    def neg(self, found: list[Any]) -> Any:
        return ("minus", found[1])

    def mul(self, found: list[Any]) -> Any:
        return ("row", *found)

    def div(self, found: list[Any]) -> Any:
        return ("over", *found)

    def power(self, found: list[Any]) -> Any:
        return ("power", found[0], int(found[1]))

    def number_power(self, found: list[Token]) -> Any:
        return ("power", self.number(found), int(found[1]))

    def call(self, found: list[Any]) -> Any:
        return _called(str(found[0]), found[1])

    def bare_call(self, found: list[Any]) -> Any:
        return _called(str(found[0]), self.number([found[1]]))

    def name_call(self, found: list[Any]) -> Any:
        return _called(str(found[0]), ("name", str(found[1])))

    def inverse(self, found: list[Any]) -> Any:
        return ("call", "a" + str(found[0])[-3:], found[2])

    def power_call(self, found: list[Any]) -> Any:
        return ("power", _called(str(found[0]), found[2]), int(found[1]))

    def root(self, found: list[Any]) -> Any:
        return ("call", "sqrt", found[0])


def _called(function: str, argument: Any) -> Any:
    """A sine of a bare number is of degrees."""
    if len(function) > 3:
        return ("call", "a" + function[-3:], argument)
    bare = not {"name", "unit"} & {each[0] for each in _nodes(argument)}
    return ("call", function, ("unit", argument, DEGREES) if bare else argument)


def _nodes(node: Any) -> list[Any]:
    return [
        node,
        *(
            inner
            for each in node
            if isinstance(each, tuple) and each and isinstance(each[0], str)
            for inner in _nodes(each)
        ),
    ]


def _whole(side: Any) -> Any:
    """One unit at the very end of a side without letters is that of all of it."""
    sizes = [each for each in _nodes(side) if each[0] == "unit" and each[2] != DEGREES]
    if side[0] not in ("row", "over", "sum") or len(sizes) != 1 or any(each[0] == "name" for each in _nodes(side)):
        return side
    bare = _without(side, sizes[0])
    return side if bare is None else ("unit", bare, sizes[0][2])


def _without(node: Any, unit: Any) -> Any:
    """The node without the unit at its end; None where the unit stands elsewhere."""
    if node is unit:
        return node[1]
    if node[0] not in ("row", "over", "sum", "minus"):
        return None
    inner = _without(node[-1], unit)
    return None if inner is None else (*node[:-1], inner)


def _flat(node: Any) -> Any:
    """Without brackets, products in products as one row, sums in sums as one sum."""
    if not (isinstance(node, tuple) and node and isinstance(node[0], str)) or node[0] in ("number", "name"):
        return node
    if node[0] == "bracket":
        return _flat(node[1])
    inner = [_flat(each) for each in node[1:]]
    if node[0] not in ("row", "sum"):
        return (node[0], *inner)
    return (node[0], *(part for each in inner for part in (each[1:] if each[0] == node[0] else (each,))))


def neutral(expr: Expr) -> Any:
    """The first reader's tree in the same tuples."""
    match expr:
        case Number(value=value):
            return ("number", value)
        case Name(text=text) | UnknownName(text=text) | Sigma(text=text):
            return ("name", text)
        case Measured(of, unit):
            return ("unit", neutral(of), unit)
        case Call(function, argument):
            return ("call", function, neutral(argument))
        case Power(base, exponent):
            return ("power", neutral(base), exponent)
        case Negative(of):
            return ("minus", neutral(of))
        case Quotient(top, bottom):
            return ("over", neutral(top), neutral(bottom))
        case Product(factors):
            return ("row", *(neutral(each) for each in factors))
        case Sum(terms):
            return ("sum", *(neutral(each) for each in terms))


def by_grammar(line: str) -> list[Any] | None:
    """The sides as the grammar reads them; None where it does not take the line."""
    try:
        sides: list[Any] = Neutral().transform(PARSER.parse(line))
    except LarkError:
        return None
    return sides


def by_hand(line: str) -> list[Any]:
    """The sides as the first reader reads them."""
    (piece,) = read_line(line, VOCABULARY).pieces
    assert isinstance(piece, Chain), piece
    return [_flat(neutral(each)) for each in piece.sides]


# ---------------------------------------------------------------------- lines as students might type them
NUMBERS = st.one_of(
    st.integers(10, 9999).map(str),
    st.decimals("0.01", "999", places=2).map(str),
    st.integers(10, 99).map(lambda n: f".{n}"),
    st.integers(0, 99).map(lambda n: f"{n},{n % 9 + 1}"),
)
FACTORS = re.compile(r"N[*·]c?m ?\(")  # the first reader takes 5 N*m(3) for 5 N times m times 3
RAISED_TWICE = re.compile(r"(?:\^|\*\*)[23].*\)(?:\^|\*\*)[23]")
SPACE = st.sampled_from(("", " "))
MEASURED = st.tuples(NUMBERS, SPACE, st.sampled_from(sorted(UNITS))).map("".join)
NAMED = st.sampled_from(NAMES)
TIMES = st.sampled_from(("*", " * ", "×", " × ", " · ", " x ", " X ", "·"))
PLUS = st.sampled_from(("+", " + ", " - ", "-", " − ", " – "))


def _function(inner: st.SearchStrategy[str]) -> st.SearchStrategy[str]:
    word, inverse = st.sampled_from(("sin", "cos", "tan")), st.sampled_from(("⁻¹", "^-1", "^{-1}"))
    return st.one_of(
        st.tuples(word, SPACE, NUMBERS, st.sampled_from(("", "°", " deg"))).map("".join),
        st.tuples(word, st.just(" "), NAMED).map("".join),
        st.builds(lambda name, of: f"{name}({of})", word, inner),
        st.builds(lambda name, of: f"arc{name}({of})", word, inner),
        st.builds(lambda name, up, of: f"{name}{up}({of})", word, inverse, inner),
        st.builds(lambda name, of: f"{name}^2({of})", word, inner),
        st.builds(lambda sign, of: f"{sign}({of})", st.sampled_from(("√", "sqrt")), inner),
    )


def _larger(inner: st.SearchStrategy[str]) -> st.SearchStrategy[str]:
    bracket = inner.map(lambda of: f"({of})")
    raised = st.tuples(st.one_of(bracket, NAMED), st.sampled_from(("^2", "**2", "^3"))).map("".join)
    first = st.one_of(NUMBERS, MEASURED, NAMED, bracket, raised, _function(inner))
    behind = st.one_of(
        bracket,
        raised.map(lambda of: f" {of}"),
        NAMED.map(lambda of: f" {of}"),
        _function(inner).map(lambda of: f" {of}"),
    )
    row = st.builds(lambda head, tail: head + "".join(tail), first, st.lists(behind, max_size=2))
    term = st.builds(
        lambda head, tail: head + "".join(tail),
        row,
        st.lists(
            st.one_of(
                st.tuples(TIMES, row), st.tuples(st.sampled_from(("/", " / ")), row), st.tuples(st.just(" * -"), row)
            ).map("".join),
            max_size=2,
        ),
    )
    return st.builds(
        lambda sign, head, tail: sign + head + "".join(tail),
        st.sampled_from(("", "", "-")),
        term,
        st.lists(st.tuples(PLUS, term).map("".join), max_size=2),
    )


SIDES = st.recursive(st.one_of(NUMBERS, MEASURED, NAMED), _larger, max_leaves=6)
CHAINS = st.lists(SIDES, min_size=1, max_size=3).map(" = ".join)


@settings(max_examples=250)
@given(CHAINS.filter(lambda line: any(each.isdigit() for each in line) and not FACTORS.search(line)))
def test_both_readers_agree_on_any_line(line: str) -> None:
    (piece,) = read_line(line, VOCABULARY).pieces
    if isinstance(piece, Unread):
        assert (piece.why, bool(RAISED_TWICE.search(line))) == ("a power of a power", True)
        return
    assert by_grammar(line) == by_hand(line)


@pytest.mark.parametrize("line", [typed for _, typed, _ in LINES if by_grammar(typed) is not None])
def test_both_readers_agree_on_students_lines(line: str) -> None:
    assert by_grammar(line) == by_hand(line)


def test_the_grammar_takes_many_of_the_students_lines() -> None:
    assert sum(by_grammar(typed) is not None for _, typed, _ in LINES) >= 15
