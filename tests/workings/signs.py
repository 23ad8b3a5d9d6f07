"""How a student puts numbers, products, functions and units on paper, by the style. Knows no mechanics and no
problem.
"""

from __future__ import annotations

from decimal import ROUND_HALF_EVEN, ROUND_HALF_UP, Decimal
from typing import NamedTuple

from .style import Style

POUND = 4.4482216152605
UNITS = {"m": 1.0, "cm": 0.01, "in": 0.0254, "ft": 0.3048, "mm": 0.001}


class Bit(NamedTuple):
    """A piece of a product: its text, its kind (number, letter, trig, sum), and its unit where one stands behind it."""

    text: str
    kind: str = "number"
    unit: str = ""


def rounded(value: float, style: Style, figures: str = "") -> tuple[str, float]:
    """The number as it is shown (no sign, a decimal point) and its value."""
    figures = figures or style.figures
    exact = Decimal(repr(abs(value)))
    if not exact:
        return "0", 0.0
    places = 2 if figures == "2d" and abs(value) >= 1 else int(figures.replace("2d", "3")) - 1 - exact.adjusted()
    mode = ROUND_HALF_UP if style.ties == "up" else ROUND_HALF_EVEN
    shown = exact.quantize(Decimal(1).scaleb(-places), mode)
    return format(shown, "f"), float(shown)


def datum(value: float) -> str:
    """A given number as it stands in the problem."""
    return f"{value:.6g}" if 1e-4 <= abs(value) < 1e6 else format(Decimal(repr(value)), "f")


def put(text: str, style: Style) -> str:
    """A number in the student's signs."""
    if not style.zero and text.startswith("0.") and len(text) > 2:
        text = text[1:]
    text = text.replace("-", style.minus)
    return text.replace(".", ",") if style.comma else text


def unit_text(unit: str, style: Style) -> str:
    if style.layout in ("latex", "dollars"):
        return f"\\ \\text{{{unit}}}"
    return f" {unit}"


def trig(function: str, angle: str, style: Style) -> str:
    """A function of an angle in degrees, or of a letter."""
    if style.layout in ("latex", "dollars"):
        return f"\\{function} {angle}{'' if angle.startswith(chr(92)) else style.degree}"
    name = function.title() if style.trig.startswith("S") else function
    degree = style.degree if angle[:1].isdigit() or "." in angle or "," in angle else ""
    inner = f"{angle}{degree}"
    if style.trig.endswith(")"):
        return f"{name}{' ' if ' ' in style.trig else ''}({inner})"
    if not degree and not angle[:1].isdigit():
        return f"{name} {inner}"
    return f"{name}{' ' if ' ' in style.trig else ''}{inner}"


def inverse(function: str, inner: str, style: Style, way: int) -> str:
    if style.layout in ("latex", "dollars"):
        return f"\\{function}^{{-1}}({inner})" if way % 2 else f"\\arc{function}({inner})"
    names = (f"{function}⁻¹", f"arc{function}", f"{function}^-1", f"a{function}", f"inv {function}")
    return f"{names[way % 5]}({inner})"


def root(inner: str, style: Style, way: int) -> str:
    if style.layout in ("latex", "dollars"):
        return f"\\sqrt{{{inner}}}"
    return (f"√({inner})", f"sqrt({inner})", f"({inner})^(1/2)", f"√({inner})", f"({inner})^0.5")[way % 5]


def square(text: str, style: Style, way: int) -> str:
    if style.layout in ("latex", "dollars"):
        return f"{text}^2"
    return text + ("²", "^2", "**2" if "*" in style.times else "^2", "²")[way % 4]


def product(bits: list[Bit], style: Style) -> str:
    """Factors in a row: with a sign, in brackets, side by side where letters allow."""
    texts = [_wrapped(each, len(bits)) for each in bits]
    if len(bits) == 1:
        return texts[0] if bits[0].kind != "sum" else bits[0].text
    if style.times == ")(":
        if all(each.kind != "letter" for each in bits):
            return "".join(f"({each.text})" for each in bits)
        return bits[0].text + "".join(f"({each.text})" for each in bits[1:])
    out = texts[0]
    for before, bit, text in zip(bits, bits[1:], texts[1:], strict=False):
        if style.times == "()":
            out += (
                f" {text}"
                if bit.kind == "trig" and not text.startswith("(")
                else text
                if bit.kind == "sum"
                else f"({bit.text})"
            )
        elif bit.kind == "trig" and before.kind == "number" and not before.unit and len(bits) < 4:
            out += f" {text}"
        elif style.times == "x" and "letter" in (bit.kind, before.kind):
            out += f" x {text}"
        else:
            out += f"{style.times}{text}"
    return out


def _wrapped(bit: Bit, count: int) -> str:
    return f"({bit.text})" if bit.kind == "sum" and count > 1 else bit.text


def quotient(top: str, bottom: str, style: Style, *, row_above: bool = False, row_below: bool = False) -> str:
    """A fraction; `row_above`: the numerator needs brackets, `row_below`: the denominator does."""
    if style.divide == "\\frac":
        return f"\\frac{{{top}}}{{{bottom}}}"
    sign = style.divide[1:-1]
    return (f"({top})" if row_above else top) + sign + (f"({bottom})" if row_below else bottom)


def sum_of(terms: list[tuple[int, str]], style: Style) -> str:
    """Signed terms in a row."""
    out = ""
    for place, (sign, text) in enumerate(terms):
        if place:
            out += f" {style.minus if sign < 0 else '+'} {text}"
        else:
            out = f"{style.minus}{text}" if sign < 0 else text
    return out or "0"
