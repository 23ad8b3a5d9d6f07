"""Formulas as MathML, in flat rows, for a browser and for whoever draws it for paper. Knows no LaTeX."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from xml.sax.saxutils import escape

from ..equation.terms import DEGREE, Equation, Quantity, Terms, Unit
from ..document.passage import Row
from ..document.untrusted_text import one_line
from .notation import INDICES, UNIT_NAMES, Side, Symbol, digits, unit_line
from .layout import chain, side, written

_NAMESPACE = 'xmlns="http://www.w3.org/1998/Math/MathML"'
_THIN = '<mspace width="0.2em"/>'
_NO_SPACE = 'lspace="0em" rspace="0em"'
_PREFIX, _POSTFIX = 'form="prefix"', 'form="postfix"'
_SPACED = 'form="infix" lspace="0.222em" rspace="0.222em"'
_GAP = "\u202f"


def mathml(of: Terms | Equation, display: bool = False, strokes: bool = False) -> str:
    """A sum or an equation as one <math> element; with `strokes` units that cancel stand in <menclose
    class="cancel">.
    """
    return _math(written(of, _MathML(strokes)), display)


def mathml_row(row: Row, display: bool = False, strokes: bool = False) -> str:
    """One row as one <math> element; with an empty left it starts at its relation."""
    notation = _MathML(strokes)
    return _math((side(row.left, notation) if row.left else "") + chain(row, notation), display)


def _math(inner: str, display: bool, large: bool = False) -> str:
    size = ' displaystyle="true"' if large else ""
    return f'<math {_NAMESPACE} display="{"block" if display else "inline"}"{size}>{inner}</math>'


def _words(text: str) -> str:
    """Upright text; a run of hyphen-minus is drawn as a rule by some, so it becomes the hyphen proper."""
    return f"<mtext>{escape(one_line(text).replace('-', chr(0x2010)))}</mtext>"


def _sign(text: str, attributes: str) -> str:
    return f"<mo {attributes}>{escape(text)}</mo>"


def _minus() -> str:
    return _sign("−", f"{_PREFIX} {_NO_SPACE}")


def _exponent(exponent: int) -> str:
    digits_only = f"<mn>{abs(exponent)}</mn>"
    return digits_only if exponent >= 0 else f"<mrow>{_minus()}{digits_only}</mrow>"


def _raised(base: str, exponent: int) -> str:
    return f"<msup>{base}{_exponent(exponent)}</msup>"


def _subscript(symbol: Symbol) -> str:
    pieces = "".join(f"<mi>{piece}</mi>" if piece in INDICES else _words(piece) for piece in symbol.pieces)
    return pieces if len(symbol.pieces) == 1 else f"<mrow>{pieces}</mrow>"


@dataclass(frozen=True, slots=True)
class _MathML:
    strokes: bool

    @property
    def stacked(self) -> bool:
        return True

    def quantity(self, of: Quantity, struck: frozenset[str]) -> str:
        number = (_minus() if of.number < 0 else "") + f"<mn>{digits(abs(of.number), _GAP, '')}</mn>"
        if not of.unit:
            return number
        space = "" if of.unit == DEGREE else '<mspace width="0.22em"/>'
        return number + space + self._unit(of.unit, struck if self.strokes else frozenset())

    def _unit(self, unit: Unit, struck: frozenset[str]) -> str:
        def one(name: str, power: int) -> str:
            text = _words(UNIT_NAMES.get(name, name))
            text = text if power == 1 else _raised(text, power)
            return f'<menclose notation="updiagonalstrike" class="cancel">{text}</menclose>' if name in struck else text

        return unit_line(unit, one, "<mtext>·</mtext>", "<mtext>/</mtext>", ("<mtext>(</mtext>", "<mtext>)</mtext>"))

    def letter(self, of: Symbol, exponent: int | None) -> str:
        base = f"<mi>{escape(of.base)}</mi>" if len(of.base) == 1 and of.base.isalpha() else _words(of.base)
        before = "<mtext>Σ</mtext>" + _THIN if of.summed else ""
        match of.subscript, exponent:
            case "", None:
                return before + base
            case "", int(power):
                return before + _raised(base, power)
            case _, None:
                return f"{before}<msub>{base}{_subscript(of)}</msub>"
            case _, int(power):
                return f"{before}<msubsup>{base}{_subscript(of)}{_exponent(power)}</msubsup>"
        raise AssertionError(exponent)

    def function(self, name: str, argument: str, inverse: bool, bracketed: bool) -> str:
        spelled = _raised(_words(name), -1) if inverse else _words(name)
        return spelled + ("" if bracketed else _THIN) + argument

    def fraction(self, top: Side, bottom: Side) -> str:
        return f"<mfrac><mrow>{top.text}</mrow><mrow>{bottom.text}</mrow></mfrac>"

    def root(self, inner: str) -> str:
        return f"<msqrt>{inner}</msqrt>"

    def power(self, base: str, exponent: int) -> str:
        return _raised(base if base.startswith("<mrow>") else f"<mrow>{base}</mrow>", exponent)

    def bracket(self, inner: str, tall: bool) -> str:
        low = f'stretchy="{"true" if tall else "false"}" {_NO_SPACE}'
        row = _sign("(", f"{_PREFIX} {low}") + inner + _sign(")", f"{_POSTFIX} {low}")
        return f"<mrow>{row}</mrow>" if tall else row  # a fence grows with its own row

    def aside(self, inner: str, tall: bool) -> str:
        return self.bracket(inner, tall)

    def product(self, pieces: Sequence[str], crossed: bool) -> str:
        return (_sign("×", _SPACED) if crossed else _THIN).join(pieces)

    def total(self, terms: Sequence[tuple[int, str]]) -> str:
        first = ("" if terms[0][0] > 0 else _minus()) + terms[0][1]
        return first + "".join(_sign("+" if sign > 0 else "−", _SPACED) + term for sign, term in terms[1:])

    def relation(self, sign: str) -> str:
        return _sign(sign, 'form="infix" lspace="0.278em" rspace="0.278em"')
