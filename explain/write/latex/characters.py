"""Typed text as LaTeX that says the same and does nothing else, in ASCII alone. Knows no passage."""

from __future__ import annotations

import unicodedata
from collections.abc import Mapping
from functools import lru_cache

from ...document.untrusted_text import one_line
from ...formula.notation import GREEK_NAME

_SAFE: Mapping[str, str] = {
    "\\": r"\textbackslash{}",
    "{": r"\{",
    "}": r"\}",
    "$": r"\$",
    "&": r"\&",
    "#": r"\#",
    "%": r"\%",
    "_": r"\_",
    "^": r"\textasciicircum{}",
    "~": r"\textasciitilde{}",
    "<": r"\textless{}",
    ">": r"\textgreater{}",
    "|": r"\textbar{}",
    "`": r"\textasciigrave{}",
    "[": "{[}",  # what stands behind \item or \\ in brackets would be an option of it
    "]": "{]}",
    "*": "{*}",
    "-": "{-}",  # two in a row would be one dash
    "\u00a0": "~",
    "\u202f": r"\,",
    "\u2009": r"\,",
    "°": r"$^\circ$",
    "−": "$-$",
    "·": r"$\cdot$",
    "×": r"$\times$",
    "²": "$^2$",
    "³": "$^3$",
    "′": "$'$",
    "≈": r"$\approx$",
    "≤": r"$\le$",
    "≥": r"$\ge$",
    "≠": r"$\ne$",
    "→": r"$\to$",
    "√": r"$\surd$",
    "⊥": r"$\perp$",
    "∥": r"$\parallel$",
    "⁻": "$^-$",
    "½": r"$\tfrac12$",
    "–": r"\textendash{}",
    "—": r"\textemdash{}",
    "‘": r"\textquoteleft{}",
    "’": r"\textquoteright{}",
    "“": r"\textquotedblleft{}",
    "”": r"\textquotedblright{}",
    "…": r"\ldots{}",
    "✓": "(holds)",
    "✗": "(fails)",
    "ß": r"\ss{}",
    "æ": r"\ae{}",
    "Æ": r"\AE{}",
    "ø": r"\o{}",
    "Ø": r"\O{}",
    "œ": r"\oe{}",
    "Œ": r"\OE{}",
    "ł": r"\l{}",
    "Ł": r"\L{}",
    "ı": r"\i{}",
} | {letter: rf"$\{name}$" for letter, name in GREEK_NAME.items()}
_SAFE_QUOTE = "''"  # the straight double quotation mark, which the first fonts of LaTeX do not have
_ACCENTS: Mapping[str, str] = {
    "\u0300": r"\`",
    "\u0301": r"\'",
    "\u0302": r"\^",
    "\u0303": r"\~",
    "\u0304": r"\=",
    "\u0306": r"\u",
    "\u0307": r"\.",
    "\u0308": r"\"",
    "\u030a": r"\r",
    "\u030b": r"\H",
    "\u030c": r"\v",
    "\u0327": r"\c",
    "\u0323": r"\d",
}


@lru_cache(maxsize=4096)
def escaped(text: str) -> str:
    """Typed text for a sentence: no command, no group and no mode can be opened or closed by it."""
    return "".join(map(_character, unicodedata.normalize("NFC", one_line(text))))


@lru_cache(maxsize=1024)
def _character(letter: str) -> str:
    if letter == '"':
        return _SAFE_QUOTE
    if letter in _SAFE:
        return _SAFE[letter]
    if " " <= letter <= "~":
        return letter
    plain = unicodedata.normalize("NFD", letter)
    if len(plain) == 2 and plain[0].isascii() and plain[0].isalpha() and plain[1] in _ACCENTS:
        return f"{_ACCENTS[plain[1]]}{{{plain[0]}}}"
    return f"(U+{ord(letter):04X})"


def formula(latex: str) -> str:
    """A formula that amsmath alone can set: what only other packages know is spelled in its commands, in ASCII."""
    for other, ours in _INSTEAD.items():
        latex = latex.replace(other, ours)
    return "".join(each if each.isascii() else rf"\text{{{_character(each)}}}" for each in latex)


_INSTEAD: Mapping[str, str] = {r"\lt ": "< ", r"\gt ": "> ", r"\backprime ": r"\text{\textasciigrave}", "′": "'"}
