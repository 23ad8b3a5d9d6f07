"""One side of a line, from tokens to a tree, by the order of operations. Knows no mechanics and works nothing out.

Where a side can be meant in two ways the likelier is read and the other is named in `met`; reading again with that name
in `flipped` gives the other.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from ...equation.terms import Unit
from .cursor import SIGNS, Cursor, Unreadable
from .functions import Inner
from .limits import DEPTH
from .names import may_follow
from .operands import bare_operand, exponent, operand
from .tokens import Token
from .tree import Expr, Measured, Negative, Product, Quotient, Sum, times
from .vocabulary import Vocabulary


class Parsed(NamedTuple):
    """An expression, the number of tokens it took, and where it could be meant in another way."""

    expr: Expr
    taken: int
    met: frozenset[str]


def expression(
    tokens: Sequence[Token],
    vocabulary: Vocabulary,
    flipped: frozenset[str] = frozenset(),
    pound: str = "lbf",
    first: bool = True,
) -> Parsed:
    """The expression in front of the tokens, `first` in its chain or not. Raises Unreadable where none stands there."""
    cursor = Cursor(tokens, vocabulary, flipped, pound, first)
    found = _sum(cursor)
    if (
        cursor.units == 1
        and cursor.unit_end == cursor.at
        and not cursor.names
        and isinstance(found, Sum | Product | Quotient)
        and not cursor.choose("unit")
    ):
        found = Measured(*_lifted(found))
    return Parsed(found, cursor.at, frozenset(cursor.met))


def _lifted(expr: Expr) -> tuple[Expr, Unit]:
    """The expression without the unit at its end, and the unit."""
    match expr:
        case Measured(of, unit):
            return of, unit
        case Negative(of):
            inner, unit = _lifted(of)
            return Negative(inner), unit
        case Quotient(top, bottom):
            inner, unit = _lifted(bottom)
            return Quotient(top, inner), unit
        case Sum(terms=row) | Product(factors=row):
            inner, unit = _lifted(row[-1])
            return (Sum if isinstance(expr, Sum) else Product)((*row[:-1], inner)), unit
    raise ValueError("no unit at the end")


def _sum(cursor: Cursor) -> Expr:
    terms = [_signed(cursor)]
    while cursor.here.kind in SIGNS and cursor.starts(1):
        terms.append(_signed(cursor))
    return terms[0] if len(terms) == 1 else Sum(tuple(terms))


def _signed(cursor: Cursor) -> Expr:
    """A term with the signs in front of it, at most two."""
    minus, signs = False, 0
    while cursor.here.kind in SIGNS:
        minus, signs = minus ^ (cursor.take().kind == "minus"), signs + 1
        if signs > 2:
            raise Unreadable(cursor.before, "three signs in a row", "Which sign is meant?")
    term = _term(cursor)
    return Negative(term) if minus else term


def _term(cursor: Cursor) -> Expr:
    found, divisions = _row(cursor), 0
    while (sign := _operator(cursor)) is not None:
        if sign == "times":
            found = times(found, _row(cursor, signs=True))
            continue
        divisions += 1
        if divisions > DEPTH:
            raise Unreadable(
                cursor.before, f"more than {DEPTH} divisions in a row", "Can it be split into several lines?"
            )
        if _is_fraction(cursor) != ("slash" in cursor.flipped):
            found = Quotient(found, _factor(cursor, signs=True))
            while _goes_on(cursor):
                cursor.met.add("slash")
                found = times(found, _factor(cursor))
        else:
            found = Quotient(found, _row(cursor, signs=True, behind_slash=True))
    return found


def _is_fraction(cursor: Cursor) -> bool:
    """Whether the stroke just read is that of a small fraction, "1/2(75)(9.81)", and not of "971/4(9.81)"."""
    top, stroke, bottom = cursor.tokens[cursor.at - 2], cursor.before, cursor.here
    return (
        len(top.text) == len(bottom.text) == 1
        and top.kind == bottom.kind == "number"
        and not stroke.spaced
        and not bottom.spaced
    )


def _operator(cursor: Cursor) -> str | None:
    """ "times" or "over", and the step behind it; an x between two operands is a multiplication, an "of" between
    numbers too.
    """
    token = cursor.here
    share = token.text == "of" and cursor.before.kind in ("percent", "number") and cursor.ahead().kind == "number"
    spoken = token.kind == "word" and (token.text in ("x", "X") or share)
    if token.kind not in ("times", "over") and not spoken:
        return None
    if spoken and not share and _is_letter_x(cursor):
        return None
    if not cursor.starts(1):
        cursor.take()
        raise cursor.missing()
    if _may_be_x(cursor) and cursor.ahead().kind != "number" and cursor.choose("times"):
        return None
    cursor.take()
    return "over" if token.kind == "over" else "times"


def _is_letter_x(cursor: Cursor) -> bool:
    """Whether the x here has no operand behind it: "4x = 9", "29.43 x + 15.7"; but "3 x -4", and "29.4 x arm" is
    refused.
    """
    after, operand = cursor.ahead(), cursor.ahead(2)
    if after.kind in SIGNS:
        return after.kind == "plus" or operand.spaced or not after.spaced or cursor.known(cursor.here.text)
    return not cursor.starts(1) and not cursor.is_word(after)


def _may_be_x(cursor: Cursor) -> bool:
    """Whether an x stands here and the problem has a letter x."""
    return cursor.here.text in ("x", "X") and cursor.known(cursor.here.text)


def _row(cursor: Cursor, signs: bool = False, behind_slash: bool = False) -> Expr:
    """Factors side by side."""
    found = _factor(cursor, signs)
    while _goes_on(cursor):
        if behind_slash:
            cursor.met.add("slash")
        found = times(found, _factor(cursor))
    return found


def _goes_on(cursor: Cursor) -> bool:
    """Whether the next token is one more factor of the row."""
    token = cursor.here
    match token.kind:
        case "open" | "function" | "root":
            return not cursor.long or token.kind != "open" or not token.spaced and cursor.ahead().kind == "number"
        case "number":
            return cursor.before.kind == "close" and not token.spaced
        case "word" if token.text in ("x", "X"):
            return _is_letter_x(cursor) or "times" in cursor.flipped and cursor.known(token.text)
        case "word":
            return may_follow(cursor)
    return False


def _factor(cursor: Cursor, signs: bool = False) -> Expr:
    minus = signs and cursor.here.kind in SIGNS and cursor.take().kind == "minus"
    found = operand(cursor, _INNER)
    return Negative(found) if minus else found


def _bare(cursor: Cursor) -> Expr:
    return bare_operand(cursor, _INNER)


_INNER = Inner(_sum, _term, _bare, exponent)
