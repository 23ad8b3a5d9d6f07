"""How a typed line was read, as MathML: the tree of its formulas in written order. Judges nothing.

Everything typed is cleaned and escaped.
"""

from __future__ import annotations

from ..marking.judging.clauses import PREVIOUS, Clause
from ..marking.judging.formula import Expr, Node
from ..marking.judging.reading import Line
from ..marking.judging.tokens import Token
from ..write.html.elements import text

_UNITS = {  # by the words of the reader
    "deg": "°",
    "%": "%",
    "Nm": "N·m",
    "Ncm": "N·cm",
    "kgm": "kg·m",
    "gram": "g",
    "acc": "m/s²",
    "lbin": "lb·in",
    "lbft": "lb·ft",
    "N/cm2": "N/cm²",
}
_SIGNS = {"+": "+", "-": "−", "*": "×", "i*": "×"}
_SPACE = '<mspace width="0.2em"/>'


def echo(line: Line) -> str:
    """A line as it was read, as elements; words alone, or nothing, are told in words."""
    if line.trouble:
        return f'<span class="unread">not read: {text(line.trouble)}</span>'
    if line.struck:
        return '<span class="words">taken back</span>'
    read = [found for each in line.clauses if (found := _clause(each))]
    return '<span class="then">; </span>'.join(read) or ('<span class="words">words</span>' * bool(line.text.strip()))


def _clause(clause: Clause) -> str:
    if all(side.expr is None for side in clause.sides):
        return ""
    out = [_words(clause.label + ":")] if clause.label else []
    for place, side in enumerate(clause.sides):
        out += ["<mo>=</mo>"] if place or clause.lead == "=" else []
        out += [_words(side.before)] if side.before else []
        out += [_of(side.expr.node, side.expr)] if side.expr is not None else []
        out += [_words(side.after)] if side.after else []
    return f"<math><mrow>{''.join(out)}</mrow></math>"


def _words(words: str) -> str:
    said = text(words.lstrip("§")).strip()
    return f"<mtext>{said}</mtext>{_SPACE}" if said else ""


def _of(node: Node, expr: Expr) -> str:
    kind = node[0]
    if kind == "n":
        return _number(expr.leaves[node[1]])
    if kind == "v":
        return _letter(str(node[1]))
    if kind == "p":
        return _fenced(_of(node[1], expr))
    if kind == "neg":
        return f'<mrow><mo form="prefix">−</mo>{_of(node[1], expr)}</mrow>'
    if kind == "f":
        return _function(node, expr)
    if kind == "/":
        return f"<mfrac>{_bare(node[1], expr)}{_bare(node[2], expr)}</mfrac>"
    if kind == "^":
        return f"<msup>{_of(node[1], expr)}{_bare(node[2], expr)}</msup>"
    return f"<mrow>{_of(node[1], expr)}<mo>{_SIGNS.get(kind, '')}</mo>{_of(node[2], expr)}</mrow>"


def _bare(node: Node, expr: Expr) -> str:
    """Without brackets, where a line or a place says as much."""
    return _of(node[1] if node[0] == "p" else node, expr)


def _function(node: Node, expr: Expr) -> str:
    name, inner = str(node[1]), node[2]
    if name == "sqrt":
        return f"<msqrt>{_bare(inner, expr)}</msqrt>"
    lone = inner[0] in ("n", "v", "p")
    shown = f"<mi>{text(name.removeprefix('a'))}</mi>"
    if name.startswith("a"):
        shown = f"<msup>{shown}<mrow><mo>−</mo><mn>1</mn></mrow></msup>"
    argument = _of(inner, expr) if lone else _fenced(_of(inner, expr))
    return f"<mrow>{shown}{_SPACE}{argument}</mrow>"


def _fenced(inner: str) -> str:
    return f"<mrow><mo>(</mo>{inner}<mo>)</mo></mrow>"


def _number(token: Token) -> str:
    number = f"<mn>{text(token.text)}</mn>"
    if not token.unit:
        return number
    unit = text(_UNITS.get(token.unit, token.unit))
    return f'<mrow>{number}{"" if unit == "°" else _SPACE}<mi mathvariant="normal">{unit}</mi></mrow>'


def _letter(name: str) -> str:
    """A letter with what stands below it, "F_B" or "F1"; a thing named in words stays words."""
    if name == PREVIOUS:
        return "<mtext>…</mtext>"
    if name.startswith("§") or " " in name:
        return f"<mtext>{text(name.lstrip('§'))}</mtext>"
    head, _, tail = name.partition("_")
    if not tail and len(name) > 1 and name[1:].isdigit():
        head, tail = name[0], name[1:]
    return f"<msub><mi>{text(head)}</mi><mtext>{text(tail)}</mtext></msub>" if tail else f"<mi>{text(head)}</mi>"
