"""The fixed table of signs that are typed for the same thing, and the refusal of every other sign by its name. Knows
no mechanics.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping, Sequence
from typing import NamedTuple

REFUSED = "\ufffd"  # stands in the plain text where a character was refused
Places = Sequence[int]  # of each character, and of the end, in the line as typed

_SIGNS = {
    "-": "−–—‐‑‒―",
    "*": "×·⋅∙•✕✖⨯∗‧",
    "/": "÷∕⁄",
    "≈": "≅≃∼≐",
    "=": "≡",
    "→": "⟶➔➜",
    "⇒": "⟹∴∵⇔",
    "Σ": "∑",
    "°": "º˚",
    "'": "′’‘ʹ´",
    '"': "″“”",
    " ": "\t\u00a0\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u202f\u205f\u2061\u2062",
    "": "✓✔☑★",
    "μ": "µ",
    "Δ": "∆",
    "θ": "ϑ",
    "φ": "ϕ",
    "ε": "ϵ",
    "...": "…",
    " up ": "↑",
    " down ": "↓",
    " left ": "←",
    " counter-clockwise ": "↺",
    " clockwise ": "↻",
    " angle ": "∠",
    ".5": "½",
    ".25": "¼",
    ".75": "¾",
}
_RAISED = dict(zip("⁰¹²³⁴⁵⁶⁷⁸⁹⁻⁺", "0123456789-+", strict=True))
_LOWERED = dict(zip("₀₁₂₃₄₅₆₇₈₉ₐₑₕᵢⱼₖₗₘₙₒₚᵣₛₜᵤᵥₓ", "0123456789aehijklmnoprstuvx", strict=True))
_GREEK = "αβγδεζηθικλμνξπρστυφχψωΓΔΘΛΞΠΣΦΨΩ"
PLAIN_SIGNS = frozenset(_GREEK + "√≈⇒→°≤≥≠⊥")  # that the reader knows as they are
LATIN = "ßæøœåðþÆØŒÅÐÞ"  # letters of names that are no letter with a mark


def _table() -> dict[str, str]:
    signs = {sign: plain for plain, alike in _SIGNS.items() for sign in alike}
    slanted = (chr(code) for code in (*range(0x1D400, 0x1D7CB), 0x210E))
    return signs | {
        sign: unicodedata.normalize("NFKC", sign) for sign in slanted if unicodedata.category(sign)[0] == "L"
    }


_TABLE: Mapping[str, str] = _table()
_ODD = re.compile("[" + "".join(_RAISED) + "]+|[" + "".join(_LOWERED) + "]+|[^ -~]")
_CONTROLS: Mapping[str, str] = {
    "\0": "NULL",
    "\x07": "BELL",
    "\x08": "BACKSPACE",
    "\x0b": "VERTICAL TAB",
    "\x0c": "FORM FEED",
    "\x1b": "ESCAPE",
    "\x7f": "DELETE",
}


class Plain(NamedTuple):
    """A line in plain signs. `places` has one entry a character and one for the end; `refused` says why, by place in
    the plain text.
    """

    text: str
    places: Places
    changed: tuple[str, ...]
    refused: Mapping[int, str]


def normal(text: str, places: Places) -> Plain:
    """The text in plain signs, with what was taken for what. Superscripts become `^(2)`, subscripts `_1`."""
    out: list[str] = []
    origin: list[int] = []
    changed: dict[str, None] = {}
    refused: dict[int, str] = {}
    done = 0
    for found in _ODD.finditer(text):
        out.append(text[done : found.start()])
        origin += places[done : found.start()]
        done = found.end()
        plain = _plain(found[0], refused, len(origin))
        out.append(plain)
        origin += [places[found.start()]] * len(plain)
        _note(found[0], plain, changed)
    if not done:
        return Plain(text, places, (), {})
    origin += places[done:]
    return Plain("".join(out) + text[done:], origin, tuple(changed), refused)


def _plain(sign: str, refused: dict[int, str], at: int) -> str:
    if sign[0] in _RAISED:
        return f"^({''.join(_RAISED[each] for each in sign)})"
    if sign[0] in _LOWERED:
        return "_" + "".join(_LOWERED[each] for each in sign)
    if sign in _TABLE:
        return _TABLE[sign]
    if sign in PLAIN_SIGNS or _is_latin(sign):
        return sign
    if unicodedata.category(sign) == "Mn":  # an arrow or a bar over a letter
        return ""
    refused[at] = f"the character {named(sign)}"
    return REFUSED


def _note(sign: str, plain: str, changed: dict[str, None]) -> None:
    if plain in (sign, REFUSED):
        return
    shown = f'"^{"".join(_RAISED[each] for each in sign)}"' if sign[0] in _RAISED else f'"{plain.strip()}"'
    if not plain.strip():
        changed[f"{named(sign)} {'read as a space' if plain else 'left out'}"] = None
    else:
        changed[f'"{sign}" read as {shown}'] = None


def _is_latin(sign: str) -> bool:
    """Whether it is a Latin letter with a mark on it, as names have: not a look-alike such as the long s."""
    base = unicodedata.normalize("NFD", sign)
    return sign in LATIN or len(base) > 1 and base[0].isascii() and base[0].isalpha()


def named(sign: str) -> str:
    """A character by its name: CYRILLIC SMALL LETTER A, RIGHT-TO-LEFT MARK, BELL (U+0007)."""
    code = f"U+{ord(sign):04X}"
    return unicodedata.name(sign, "") or f"{_CONTROLS.get(sign, 'control character')} ({code})"
