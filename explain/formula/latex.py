"""Formulas as LaTeX that GitHub accepts. Knows which commands GitHub refuses and what people's letters must be
escaped to.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from ..equation.terms import DEGREE, Equation, Quantity, Terms, Unit
from ..document.passage import Row
from ..document.untrusted_text import one_line
from .notation import GREEK_NAME, INDICES, UNIT_NAMES, Side, Symbol, digits, unit_line
from .layout import row_sides, written

# inside backticks and table cells neither a backtick nor a bar may stand, and a bare less-than reads as a tag to some
_ESCAPED: Mapping[str, str] = {
    "\\": r"\backslash ",
    "{": r"\lbrace ",
    "}": r"\rbrace ",
    "$": r"\$",
    "&": r"\&",
    "#": r"\#",
    "%": r"\%",
    "_": r"\_",
    "^": r"\hat{\ }",
    "~": r"\sim ",
    "`": r"\backprime ",
    "'": "{'}",
    "|": r"\vert ",
    "<": r"\lt ",
    ">": r"\gt ",
    " ": r"\ ",
    "-": r"\text{-}",
    ",": "{,}",
    "+": "{+}",
    "=": "{=}",
    "*": "{*}",
    "−": "{-}",
    "⊥": r"\perp ",
    "∥": r"\parallel ",
    "\u00a0": r"\ ",
    "\u202f": r"\,",
    "\u2009": r"\,",
} | {letter: rf"\{name} " for letter, name in GREEK_NAME.items()}
_RELATION: Mapping[str, str] = {
    "=": "=",
    "≈": r"\approx",
    "≤": r"\le",
    "≥": r"\ge",
    "<": r"\lt",
    ">": r"\gt",
    "≠": r"\ne",
    "→": r"\to",
}
_UNIT: Mapping[str, str] = {**UNIT_NAMES, "deg": r"^\circ"}
_FUNCTIONS = frozenset({"sin", "cos", "tan"})


def latex(of: Terms | Equation, strokes: bool = False) -> str:
    """A sum or an equation as LaTeX without dollar signs; with `strokes` units that cancel in a fraction are struck
    out.
    """
    return written(of, _Latex(strokes))


def latex_rows(rows: Iterable[Row], strokes: bool = False) -> tuple[tuple[str, str], ...]:
    """What stands before, and from the first relation on, for every row of a derivation."""
    return tuple((left, rest.strip()) for left, rest in row_sides(rows, _Latex(strokes)))


def escaped(text: str) -> str:
    """People's text for the inside of a \\mathrm: it can neither leave the group nor the formula."""
    return "".join(_ESCAPED.get(letter, letter) for letter in one_line(text))


def _upright(text: str) -> str:
    return rf"\mathrm{{{escaped(text)}}}"


def _base(text: str) -> str:
    if text in GREEK_NAME:
        return rf"\{GREEK_NAME[text]}"
    return text if len(text) == 1 and text.isascii() and text.isalpha() else _upright(text)


def _subscript_piece(text: str) -> str:
    if text in INDICES:
        return text
    return _ESCAPED[text].strip() if text in ("⊥", "∥", ",") else _upright(text)


@dataclass(frozen=True, slots=True)
class _Latex:
    strokes: bool

    @property
    def stacked(self) -> bool:
        return True

    def quantity(self, of: Quantity, struck: frozenset[str]) -> str:
        number = digits(of.number, r"\,", "-").replace(",", "{,}").replace(r"\{,}", r"\,")
        if not of.unit:
            return number
        unit = self._unit(of.unit, struck if self.strokes else frozenset())
        if of.unit == DEGREE:
            return number + _UNIT["deg"]
        return rf"{number}\,\mathrm{{{unit}}}"

    def _unit(self, unit: Unit, struck: frozenset[str]) -> str:
        def one(name: str, power: int) -> str:
            text = _UNIT.get(name, escaped(name)) + ("" if power == 1 else f"^{{{power}}}")
            return rf"\cancel{{{text}}}" if name in struck else text

        return unit_line(unit, one, r"{\cdot}", "/", ("(", ")"))

    def letter(self, of: Symbol, exponent: int | None) -> str:
        text = (r"\Sigma " if of.summed else "") + _base(of.base)
        if of.subscript:
            text += "_{" + "".join(map(_subscript_piece, of.pieces)) + "}"
        return text if exponent is None else f"{text}^{{{exponent}}}"

    def function(self, name: str, argument: str, inverse: bool, bracketed: bool) -> str:
        spelled = rf"\{name}" if name in _FUNCTIONS else _upright(name)
        return spelled + ("^{-1}" if inverse else "") + ("" if bracketed else " ") + argument

    def fraction(self, top: Side, bottom: Side) -> str:
        return rf"\frac{{{top.text}}}{{{bottom.text}}}"

    def root(self, inner: str) -> str:
        return rf"\sqrt{{{inner}}}"

    def power(self, base: str, exponent: int) -> str:
        return f"{base}^{{{exponent}}}"

    def bracket(self, inner: str, tall: bool) -> str:
        return rf"\left({inner}\right)" if tall else f"({inner})"

    def aside(self, inner: str, tall: bool) -> str:
        return self.bracket(inner, tall)

    def product(self, pieces: Sequence[str], crossed: bool) -> str:
        return (r" \times " if crossed else r"\, ").join(pieces)

    def total(self, terms: Sequence[tuple[int, str]]) -> str:
        text = "".join((" + " if sign > 0 else " - ") + term for sign, term in terms)
        return text.removeprefix(" + ") if terms[0][0] > 0 else "-" + text.removeprefix(" - ")

    def relation(self, sign: str) -> str:
        return f" {_RELATION.get(sign) or _upright(sign)} "
