"""Formulas as one line of plain text: "F_B (0.045 m) sin 70° − (16.677 N)(0.16 m) = 0". Knows no mechanics."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ..equation.terms import Equation, Quantity, Terms, Unit
from ..document.passage import Row
from ..document.untrusted_text import clean as clean
from .notation import UNIT_NAMES, Side, Symbol, digits, unit_line
from .layout import row_sides, written

_RAISED = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")
_GAP = "\u202f"  # the thin space at which no line breaks


def plain(of: Terms | Equation) -> str:
    """A sum or an equation as plain text, with a true minus (U+2212) and a narrow space from five digits on."""
    return written(of, _PLAIN)


def plain_rows(rows: Iterable[Row]) -> tuple[tuple[str, str], ...]:
    """What stands before, and from the first relation on, for every row of a derivation."""
    return tuple((left, rest.strip()) for left, rest in row_sides(rows, _PLAIN))


def raised(exponent: int) -> str:
    """An exponent in superscript digits."""
    return str(exponent).translate(_RAISED)


def unit_text(unit: Unit) -> str:
    """A unit as written: "N·m", "m/s²", "lb", "°"."""
    return unit_line(unit, _one_unit, "·", "/", ("(", ")"))


def _one_unit(name: str, power: int) -> str:
    spelled = UNIT_NAMES.get(name, clean(name))
    return spelled if power == 1 else spelled + raised(power)


class _Plain:
    stacked = False

    def quantity(self, of: Quantity, struck: frozenset[str]) -> str:
        number, unit = digits(of.number, _GAP, "−"), unit_text(of.unit)
        return f"{number} {unit}" if unit and unit != "°" else number + unit

    def letter(self, of: Symbol, exponent: int | None) -> str:
        text = ("Σ" if of.summed else "") + of.base + (f"_{of.subscript}" if of.subscript else "")
        return text if exponent is None else text + raised(exponent)

    def function(self, name: str, argument: str, inverse: bool, bracketed: bool) -> str:
        return name + ("⁻¹" if inverse else "") + ("" if bracketed else " ") + argument

    def fraction(self, top: Side, bottom: Side) -> str:
        return " / ".join(part.text if part.bare else f"({part.text})" for part in (top, bottom))

    def root(self, inner: str) -> str:
        return f"√({inner})"

    def power(self, base: str, exponent: int) -> str:
        return base + raised(exponent)

    def bracket(self, inner: str, tall: bool) -> str:
        return f"({inner})"

    def aside(self, inner: str, tall: bool) -> str:
        return f"({inner})"

    def product(self, pieces: Sequence[str], crossed: bool) -> str:
        return " × ".join(pieces) if crossed else " ".join(pieces).replace(") (", ")(")

    def total(self, terms: Sequence[tuple[int, str]]) -> str:
        text = "".join((" + " if sign > 0 else " − ") + term for sign, term in terms)
        return text.removeprefix(" + ") if terms[0][0] > 0 else "−" + text.removeprefix(" − ")

    def relation(self, sign: str) -> str:
        return f" {sign} "


_PLAIN = _Plain()
