"""How a piece was read, in plain text with every bracket: what is shown to the student as "I read this as". Judges
nothing.
"""

from __future__ import annotations

from collections.abc import Mapping

from ...equation.terms import Unit
from .piece import Chain, Piece, Unread, Words
from .tree import Call, Expr, Measured, Name, Negative, Number, Power, Product, Quotient, Sigma, Sum, UnknownName

_RAISED = str.maketrans("0123456789-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁻")
_SHOWN: Mapping[str, str] = {"lbf": "lb", "deg": "°"}
_CLOSE = frozenset(("°", "%"))


def read_back(piece: Piece) -> str:
    """One line: "cuff: 6.0 × 9.81 = 58.86 N (down)"; words as they are; of what was not read the reason."""
    match piece:
        case Words(text=text):
            return text
        case Unread(why=why):
            return f"not read: {why}"
        case Chain():
            return _chain(piece)


def _chain(chain: Chain) -> str:
    out = [f"{chain.label}: " if chain.label else "", f"{chain.leads} " if chain.leads else ""]
    for place, (side, remark) in enumerate(zip(chain.sides, chain.remarks, strict=True)):
        out.append(f" {chain.relations[place - 1]} " if place else "")
        out.append(written(side) + (f" ({remark.text})" if remark else ""))
    return "".join(out) + (f" {chain.trails}" if chain.trails else "")


def written(expr: Expr) -> str:
    """An expression on one line. Sums, products and quotients inside others stand in brackets, but for a product in
    a sum.
    """
    match expr:
        case Number():
            return f"{expr.value:f}" if abs(expr.places) < 40 and "e" not in expr.text.lower() else f"{expr.text}"
        case Name(text=text) | UnknownName(text=text):
            return text
        case Sigma(letter):
            return f"Σ{letter}"
        case Measured(of, unit):
            return _measured(of, unit)
        case Call("sqrt", argument):
            return f"√({written(argument)})"
        case Call(function, argument):
            return f"{function}({written(argument)})"
        case Power(base, exponent):
            return f"{_atom(base)}{str(exponent).translate(_RAISED)}"
        case Negative(of):
            return f"−{_factor(of)}"
        case Quotient(top, bottom):
            return f"{_factor(top)} / {_factor(bottom)}"
        case Product(factors):
            return " × ".join(_factor(each) for each in factors)
        case Sum(terms):
            return "".join(_term(each, first=not place) for place, each in enumerate(terms))


def _term(expr: Expr, first: bool) -> str:
    if isinstance(expr, Negative):
        return f"−{_inside_sum(expr.of)}" if first else f" − {_inside_sum(expr.of)}"
    return f"{'' if first else ' + '}{_inside_sum(expr)}"


def _inside_sum(expr: Expr) -> str:
    return f"({written(expr)})" if isinstance(expr, Sum | Negative) else written(expr)


def _factor(expr: Expr) -> str:
    return f"({written(expr)})" if isinstance(expr, Sum | Product | Quotient | Negative) else written(expr)


def _atom(expr: Expr) -> str:
    return (
        f"({written(expr)})"
        if isinstance(expr, Sum | Product | Quotient | Negative | Measured | Power)
        else written(expr)
    )


def _measured(of: Expr, unit: Unit) -> str:
    inner = written(of) if isinstance(of, Number | Name | UnknownName | Call | Power) else f"({written(of)})"
    text = written_unit(unit)
    return f"{inner}{'' if text in _CLOSE else ' '}{text}"


def written_unit(unit: Unit) -> str:
    """N·m, ft/s², kg·m/s², lb·in, °; both pounds are lb."""
    above = "·".join(_unit(name, power) for name, power in unit if power > 0)
    below = "·".join(_unit(name, -power) for name, power in unit if power < 0)
    return f"{above or '1'}/{below}" if below else above


def _unit(name: str, power: int) -> str:
    return _SHOWN.get(name, name) + ("" if power == 1 else str(power).translate(_RAISED))
