"""Formulas as they are read aloud: "F sub B times 0.045 metres times sine of 70 degrees". Knows the names of units
and signs.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal

from ..equation.terms import Equation, Quantity, Terms, Unit
from ..document.passage import Row
from ..document.untrusted_text import one_line
from .notation import GREEK_NAME, Side, Symbol, digits
from .layout import chain, side, written

UNIT_WORDS: Mapping[str, tuple[str, str]] = {
    "m": ("metre", "metres"),
    "cm": ("centimetre", "centimetres"),
    "mm": ("millimetre", "millimetres"),
    "in": ("inch", "inches"),
    "ft": ("foot", "feet"),
    "kg": ("kilogram", "kilograms"),
    "g": ("gram", "grams"),
    "lb": ("pound", "pounds"),
    "lbf": ("pound", "pounds"),
    "N": ("newton", "newtons"),
    "kN": ("kilonewton", "kilonewtons"),
    "s": ("second", "seconds"),
    "rad": ("radian", "radians"),
    "deg": ("degree", "degrees"),
    "%": ("per cent", "per cent"),
    "Pa": ("pascal", "pascals"),
}
_LENGTHS = frozenset({"m", "cm", "mm", "in", "ft"})
_BEFORE: Mapping[int, str] = {2: "square ", 3: "cubic "}
_BEHIND: Mapping[int, str] = {1: "", 2: " squared", 3: " cubed"}
_FUNCTIONS: Mapping[str, str] = {"sin": "sine", "cos": "cosine", "tan": "tangent"}
_RELATIONS: Mapping[str, str] = {
    "=": "equals",
    "≈": "is about",
    "≤": "is at most",
    "≥": "is at least",
    "<": "is less than",
    ">": "is more than",
    "≠": "is not equal to",
    "→": "so",
}
_PIECES: Mapping[str, str] = {",": "", "⊥": "perpendicular", "∥": "parallel"}


def speech(of: Terms | Equation) -> str:
    """A sum or an equation in words. People's letters stand in it as they are: it is plain text, to be escaped where
    it goes.
    """
    return written(of, _SPEECH)


def speech_row(row: Row) -> str:
    """One row in words; with an empty left it starts at its relation."""
    left = side(row.left, _SPEECH) if row.left else ""
    return (left + chain(row, _SPEECH)).strip()


def _unit_words(unit: Unit, singular: bool) -> str:
    above = [(name, power) for name, power in unit if power > 0]
    below = [(name, -power) for name, power in unit if power < 0]
    words = [_one_unit(name, power, singular or place < len(above) - 1) for place, (name, power) in enumerate(above)]
    words += ["per"] * bool(below) + [_one_unit(name, power, True) for name, power in below]
    return " ".join(words)


def _one_unit(name: str, power: int, singular: bool) -> str:
    one, many = UNIT_WORDS.get(name, (one_line(name), one_line(name)))
    word = one if singular else many
    if name in _LENGTHS and power in _BEFORE:
        return _BEFORE[power] + word
    return word + _exponent(power)


def _exponent(power: int) -> str:
    sign = "minus " if power < 0 else ""
    return _BEHIND.get(power, f" to the power {sign}{abs(power)}")


class _Speech:
    stacked = True

    def quantity(self, of: Quantity, struck: frozenset[str]) -> str:
        number = digits(of.number, "", "minus ")
        return f"{number} {_unit_words(of.unit, of.number == Decimal(1) and number == '1')}".strip()

    def letter(self, of: Symbol, exponent: int | None) -> str:
        words = ["sum of"] * of.summed + [GREEK_NAME.get(of.base, of.base)]
        if of.subscript:
            words += ["sub"] + [_PIECES.get(piece, piece) for piece in of.pieces]
        return " ".join(filter(None, words)) + ("" if exponent is None else _exponent(exponent))

    def function(self, name: str, argument: str, inverse: bool, bracketed: bool) -> str:
        return ("inverse " if inverse else "") + f"{_FUNCTIONS.get(name, name)} of {argument}"

    def fraction(self, top: Side, bottom: Side) -> str:
        if top.bare and bottom.bare:
            return f"{top.text} divided by {bottom.text}"
        return f"the fraction {top.text} over {bottom.text} end fraction"

    def root(self, inner: str) -> str:
        return f"the square root of {inner} end root"

    def power(self, base: str, exponent: int) -> str:
        return base + _exponent(exponent)

    def bracket(self, inner: str, tall: bool) -> str:
        return f"open bracket {inner} close bracket"

    def aside(self, inner: str, tall: bool) -> str:
        return inner

    def product(self, pieces: Sequence[str], crossed: bool) -> str:
        return " times ".join(pieces)

    def total(self, terms: Sequence[tuple[int, str]]) -> str:
        text = "".join((" plus " if sign > 0 else " minus ") + term for sign, term in terms)
        return text.removeprefix(" plus ").strip()

    def relation(self, sign: str) -> str:
        return f" {_RELATIONS.get(sign, sign)} "


_SPEECH = _Speech()
