"""The few LaTeX commands that a line of working needs, as plain text, by a closed table. Knows no other LaTeX."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from .limits import DEPTH
from .normal import REFUSED, Places
from .words import GREEK

_LOOKS_SO = re.compile(r"\\[A-Za-z(\[\\,;:%]|\$")
_TOKEN = re.compile(r"\\[A-Za-z]+\*?|\\.|[{}$&^_~]|[^\\{}$&^_~]+|\\$", re.DOTALL)
_IN_SUBSCRIPTS = r"[\s,{}()_]"
WIDEST = 30  # characters of a command that a message repeats
_SPACES = frozenset(
    (",", ";", ":", "!", " ", "quad", "qquad", "displaystyle", "limits", "nolimits", "textstyle", "nonumber", "hline")
)
_NOTHING = frozenset(
    ("left", "right", "big", "Big", "bigl", "bigr", "Bigl", "Bigr", "bigg", "Bigg", "(", ")", "[", "]")
)
_CONTENT = frozenset(
    (
        "text",
        "mathrm",
        "textrm",
        "textbf",
        "textit",
        "mathbf",
        "mathit",
        "mathsf",
        "operatorname",
        "boxed",
        "vec",
        "hat",
        "bar",
        "overline",
        "underline",
        "mbox",
        "emph",
        "bm",
        "boldsymbol",
        "overrightarrow",
        "ensuremath",
    )
)
_FUNCTIONS = frozenset(("sin", "cos", "tan", "arcsin", "arccos", "arctan"))
_SIGNS: Mapping[str, str] = {
    "times": "*",
    "cdot": "*",
    "ast": "*",
    "div": "/",
    "degree": "°",
    "circ": "°",
    "approx": "≈",
    "simeq": "≈",
    "cong": "≈",
    "sim": "≈",
    "equiv": "=",
    "Rightarrow": "⇒",
    "implies": "⇒",
    "to": "→",
    "rightarrow": "→",
    "longrightarrow": "→",
    "Longrightarrow": "⇒",
    "therefore": "⇒",
    "because": "⇒",
    "iff": "⇒",
    "Leftrightarrow": "⇒",
    "sum": "Σ",
    "Sigma": "Σ",
    "uparrow": " up ",
    "downarrow": " down ",
    "leftarrow": " left ",
    "perp": "⊥",
    "circlearrowleft": " counter-clockwise ",
    "circlearrowright": " clockwise ",
    "le": "≤",
    "leq": "≤",
    "ge": "≥",
    "geq": "≥",
    "ne": "≠",
    "neq": "≠",
    "lt": "<",
    "gt": ">",
    "prime": "'",
    "%": "%",
    "#": "#",
    "&": "and",
    "$": "",
    "_": "_",
    "{": "(",
    "}": ")",
    "ldots": "...",
    "dots": "...",
    "angle": " angle ",
    "colon": ":",
}
_GREEK: Mapping[str, str] = {
    **GREEK,
    "varepsilon": "ε",
    "vartheta": "θ",
    "varphi": "φ",
    "Gamma": "Γ",
    "Delta": "Δ",
    "Theta": "Θ",
    "Lambda": "Λ",
    "Xi": "Ξ",
    "Pi": "Π",
    "Phi": "Φ",
    "Psi": "Ψ",
    "Omega": "Ω",
}


def is_latex(text: str) -> bool:
    """Whether a line has a command or a dollar sign in it."""
    return _LOOKS_SO.search(text) is not None


class _Untold(ValueError):
    """A command that is not in the table, or one without its braces; `at` is its place."""

    def __init__(self, at: int) -> None:
        super().__init__(at)
        self.at = at


@dataclass(slots=True)
class _Writing:
    """A line on its way to plain text: the tokens with their places, and what is written so far."""

    tokens: list[tuple[str, int]]
    next: int = 0
    out: list[str] = field(default_factory=list)
    places: list[int] = field(default_factory=list)

    def put(self, text: str, at: int, spread: bool = False) -> None:
        self.out.append(text)
        self.places += range(at, at + len(text)) if spread else [at] * len(text)

    def take(self) -> tuple[str, int]:
        token = (
            self.tokens[self.next] if self.next < len(self.tokens) else ("", self.tokens[-1][1] if self.tokens else 0)
        )
        self.next += 1
        return token


def plain(text: str) -> tuple[str, Places, Mapping[int, str]]:
    """The line without LaTeX, the place of each character in the line as typed, and what was refused, by place in
    the plain text.
    """
    line = _Writing([(found[0], found.start()) for found in _TOKEN.finditer(text)])
    try:
        while line.next < len(line.tokens):
            _one(line, 0)
    except _Untold as fault:
        command = next(iter(_TOKEN.findall(text, fault.at)), "")
        refused = {len("".join(line.out)): f"the LaTeX {command[:WIDEST]}"}
        line.put(REFUSED, fault.at)
        return "".join(line.out), [*line.places, len(text)], refused
    return "".join(line.out), [*line.places, len(text)], {}


def _one(line: _Writing, depth: int) -> None:
    """One token with what belongs to it."""
    token, at = line.take()
    if depth > DEPTH:
        raise _Untold(at)
    match token:
        case "{":
            _group(line, depth, at)
        case "}" | "$" | "&":
            return
        case "~":
            line.put(" ", at)
        case "^" | "_":
            _script(line, token, at, depth)
        case _ if token[0] == "\\":
            _command(line, token[1:].rstrip("*"), at, depth)
        case _:
            line.put(token, at, spread=True)


def _group(line: _Writing, depth: int, at: int) -> None:
    """What stands in braces, up to the closing one."""
    while line.next < len(line.tokens) and line.tokens[line.next][0] != "}":
        _one(line, depth + 1)
    if line.next >= len(line.tokens):
        raise _Untold(at)
    line.next += 1


def _argument(line: _Writing, depth: int, at: int) -> None:
    """The braces behind a command, or the one figure that may stand for them."""
    _skip_space(line)
    if line.next >= len(line.tokens):
        raise _Untold(at)
    token, place = line.tokens[line.next]
    if token[0] in "{\\":
        return _one(line, depth + 1)
    line.tokens[line.next : line.next + 1] = (
        [(token[0], place), (token[1:], place + 1)] if len(token) > 1 else [(token, place)]
    )
    _one(line, depth + 1)


def _skip_space(line: _Writing) -> None:
    while line.next < len(line.tokens) and not line.tokens[line.next][0].strip():
        line.next += 1


def _script(line: _Writing, sign: str, at: int, depth: int) -> None:
    """A power or a subscript: ^\\circ is a degree sign, a subscript is one word."""
    first = len(line.out)
    places = len(line.places)
    _argument(line, depth, at)
    inner = "".join(line.out[first:])
    if sign == "^" and inner.strip() in ("°", "'"):
        return
    del line.out[first:], line.places[places:]
    line.put(f"^({inner.strip()})" if sign == "^" else f"_{re.sub(_IN_SUBSCRIPTS, '', inner)} ", at)


def _command(line: _Writing, name: str, at: int, depth: int) -> None:
    if name in _SIGNS or name in _GREEK:
        line.put(_SIGNS.get(name) or _GREEK.get(name, ""), at)
    elif name in _SPACES:
        line.put(" ", at)
    elif name in _FUNCTIONS:
        line.put(f" {name} ", at)
    elif name in _CONTENT:
        _argument(line, depth, at)
    elif name in ("begin", "end"):
        _argument_left_out(line, at, depth)
    elif name in ("frac", "dfrac", "tfrac"):
        _fraction(line, at, depth)
    elif name == "sqrt":
        _root(line, at, depth)
    elif name == "\\":
        line.put("; " if line.next < len(line.tokens) else "", at)
    elif name not in _NOTHING:
        raise _Untold(at)


def _argument_left_out(line: _Writing, at: int, depth: int) -> None:
    kept, places = len(line.out), len(line.places)
    _argument(line, depth, at)
    del line.out[kept:], line.places[places:]


def _fraction(line: _Writing, at: int, depth: int) -> None:
    line.put("((", at)
    _argument(line, depth, at)
    line.put(")/(", at)
    _argument(line, depth, at)
    line.put("))", at)


def _root(line: _Writing, at: int, depth: int) -> None:
    """A square root; one of another degree is refused."""
    _skip_space(line)
    if line.next < len(line.tokens) and line.tokens[line.next][0].startswith("["):
        raise _Untold(at)
    line.put("√(", at)
    _argument(line, depth, at)
    line.put(")", at)
