"""One operand of a side with its power and its unit: numbers, brackets, functions, names. What stands in brackets is
read by `inner`.
"""

from __future__ import annotations

from ...equation.terms import Unit
from .cursor import Cursor, Unreadable
from .functions import DEGREES, Inner, call, root
from .limits import EXPONENT_FIGURES, POWER
from .names import name, sigma
from .tree import Call, Expr, Measured, Name, Number, Power, Sigma, UnknownName
from .units import read_unit, spells_unit

_NO_SIZE = frozenset(("deg", "rad", "%"))
_NEVER_SQUARED = frozenset(("N", "lbf", "kg", "kN"))  # the square is that of the number


def operand(cursor: Cursor, inner: Inner) -> Expr:
    """The operand that starts here, with its power and its unit. Raises Unreadable."""
    found = bare_operand(cursor, inner)
    return found if isinstance(found, Sigma) else _measured(cursor, found)


def bare_operand(cursor: Cursor, inner: Inner) -> Expr:
    """The operand that starts here with its power, but no unit. Raises Unreadable."""
    cursor.long = False
    match cursor.here.kind:
        case "number":
            found: Expr = number(cursor)
        case "open":
            found = bracket(cursor, inner)
        case "function":
            found = call(cursor, inner)
        case "root":
            cursor.take()
            found = root(cursor, inner)
        case "sigma":
            return sigma(cursor)
        case "word":
            found = name(cursor)
        case _:
            raise cursor.missing()
    return _raised(cursor, found)


def number(cursor: Cursor) -> Number:
    token = cursor.take()
    if token.number is None:
        raise Unreadable(token, token.why, "Which number is meant?")
    return token.other if token.other is not None and cursor.choose("comma") else token.number


def bracket(cursor: Cursor, inner: Inner) -> Expr:
    opened = cursor.here
    cursor.deeper()
    cursor.take()
    found = inner.sum(cursor)
    if cursor.here.kind == "end":
        raise Unreadable(opened, "a bracket that is never closed", "Where does the bracket end?")
    if cursor.here.kind != "close":
        raise Unreadable(
            cursor.here, f'"{cursor.here.text}" inside a bracket', f'What does "{cursor.here.text}" stand for?'
        )
    cursor.take()
    cursor.depth -= 1
    cursor.long = False
    return found


# ---------------------------------------------------------------------- powers
def _raised(cursor: Cursor, base: Expr) -> Expr:
    if cursor.here.kind != "power":
        return base
    sign = cursor.here
    power = exponent(cursor)
    if cursor.here.kind == "power" or isinstance(base, Power):
        raise Unreadable(sign, "a power of a power", "Can it be worked out in steps?")
    if power is None:
        return Call("sqrt", base)
    ten = isinstance(base, Number) and base.value == 10
    if abs(power) > (10**EXPONENT_FIGURES - 1 if ten else POWER):
        raise Unreadable(sign, f"a power beyond {POWER}", "Which power is meant?")
    return Power(base, power)


def exponent(cursor: Cursor) -> int | None:
    """The whole number behind a power sign, in brackets or not; None for one half. Raises Unreadable."""
    sign = cursor.take()
    bracketed = cursor.here.kind == "open"
    start = cursor.at + bracketed
    minus = cursor.tokens[start].kind == "minus"
    figure = cursor.tokens[start + minus]
    after = start + minus + 1
    half = (
        bracketed and figure.text == "1" and (cursor.tokens[after].kind, cursor.tokens[after + 1].text) == ("over", "2")
    )
    after += 2 * half
    if bracketed and cursor.tokens[after].kind != "close" or figure.number is None:
        raise Unreadable(sign, "a power that is no whole number", "Which power is meant?")
    cursor.at = after + bracketed
    if half or figure.number.value * 2 == 1 and not minus:
        return None
    if figure.number.point or len(figure.text) > EXPONENT_FIGURES:
        raise Unreadable(sign, "a power that is no small whole number", "Which power is meant?")
    return -int(figure.text) if minus else int(figure.text)


# ---------------------------------------------------------------------- units
def _measured(cursor: Cursor, found: Expr) -> Expr:
    """The operand with the unit behind it, where one stands."""
    token, named = cursor.here, isinstance(found, Name | UnknownName)
    if token.kind == "open":
        return _unit_in_brackets(cursor, found)
    if (
        named
        and token.kind != "degree"
        and (token.kind != "word" or cursor.known(token.text) or len(token.text) == 1 and token.text != "N")
    ):
        return found
    read = read_unit(cursor.tokens, cursor.at, cursor.known, cursor.pound)
    if read is None or read[1] == cursor.at + 1 and _is_rather_a_letter(cursor):
        return found
    return _with_unit(cursor, found, *read)


def _with_unit(cursor: Cursor, found: Expr, unit: Unit, at: int) -> Expr:
    cursor.at = at
    if unit == DEGREES and isinstance(found, Call) and found.function in ("sin", "cos", "tan"):
        return found  # sin(40)°: the sign belongs inside
    if not {base for base, _ in unit} <= _NO_SIZE:
        cursor.units, cursor.unit_end = cursor.units + 1, at
    (base, power), *more = unit
    if power == 2 and not more and base in _NEVER_SQUARED:
        return Power(Measured(found, ((base, 1),)), 2)
    return Measured(found, unit)


def _unit_in_brackets(cursor: Cursor, found: Expr) -> Expr:
    """ "242.8 (N)", "242.8 [N]", "242.8 (in N)"; behind a name, "F (N)", it tells the unit and is no factor."""
    start = cursor.at + 1
    if cursor.tokens[start].text == "in" and cursor.tokens[start + 1].kind == "word":
        start += 1
    word = cursor.tokens[start]
    read = (
        read_unit(cursor.tokens, start, cursor.known, cursor.pound)
        if word.kind == "word" and not cursor.known(word.text)
        else None
    )
    if read is None or cursor.tokens[read[1]].kind != "close":
        return found
    if isinstance(found, Name | UnknownName):
        cursor.at = read[1] + 1
        return found
    return _with_unit(cursor, found, read[0], read[1] + 1)


def _is_rather_a_letter(cursor: Cursor) -> bool:
    """Whether a lone unit is a letter of the problem: 3.0 m g, 3.0 g × 0.33, 3.72 Ft; but 400 g, 0.33 m, 3.72 ft."""
    token, after = cursor.here, cursor.ahead()
    if token.kind != "word" or not cursor.known(token.text):
        return False
    if len(token.text) > 1:
        return not spells_unit(token.text) and not cursor.choose("letter")
    if token.text == "g":
        alone = cursor.at == 1 and (after.kind == "end" or after.kind == "word" and cursor.is_word(after))
        return cursor.choose("letter") == alone
    return cursor.choose("letter") != (after.text == "g" and token.text == "m")
