"""Cuts a plain line into tokens: numbers with their units, names, functions, signs. Loses nothing; what it does not
know is a word.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from .limits import MOST_TOKENS
from .unit_words import UNITS

_NUMBER = re.compile(r"(?:\d+\.\d*|\.\d+|\d+)(?:[eE][+-]?\d{1,2}(?![\w.]))?")
_WORD = re.compile(r"[A-Za-zα-ωΑ-Ωäöüåøæéèêàçñß][A-Za-zα-ωΑ-Ω0-9_'äöüåøæéèêàçñß]*")
FUNCTIONS = {
    "sin": "sin",
    "cos": "cos",
    "tan": "tan",
    "asin": "asin",
    "acos": "acos",
    "atan": "atan",
    "arcsin": "asin",
    "arccos": "acos",
    "arctan": "atan",
    "sqrt": "sqrt",
    "root": "sqrt",
    "sine": "sin",
    "cosine": "cos",
    "atand": "atan",
    "sind": "sin",
    "cosd": "cos",
    "cot": "cot",
}
_GLUED = re.compile(r"^((?:[A-Za-z]_?[A-Za-z]{0,3})?)(sin|cos|tan)(\d*|[θφαβγ]|\d+\w*)$")
_NOT_INCHES = re.compile(
    r"\s+(?:the|front|a|each|order|both|total|all|line|this|that|step|kg|N|cm|body|BW|quad|my|one)\b"
)
SEPARATORS = frozenset(
    (
        "so",
        "and",
        "thus",
        "hence",
        "therefore",
        "then",
        "where",
        "vs",
        "et",
        "og",
        "und",
        "y",
        "because",
        "plus",
        "giving",
        "gives",
        "makes",
        "means",
        "since",
        "but",
        "also",
        "donc",
        "also",
    )
)


@dataclass(slots=True)
class Token:
    """One token: `kind` num, func, op, word, eq, sep, colon, arrow or end; a number with its unit, half of its last
    place, and its figures.
    """

    kind: str
    text: str
    value: float = 0.0
    unit: str = ""
    half: float = 0.0
    gap: int = 0
    figures: int = 0
    hundredths: bool = False  # per cent of a weight

    @property
    def share(self) -> float:
        """The number that it stands for: per cent are hundredths."""
        return self.value / 100 if self.unit == "%" or self.hundredths else self.value

    @property
    def step(self) -> float:
        return self.half / 100 if self.unit == "%" or self.hundredths else self.half


@dataclass(frozen=True, slots=True)
class Habits:
    """What a working's writer does: the letters they declare, whether lengths are in inches, whether N is a letter."""

    letters: frozenset[str]
    inches: bool = False
    newton_is_letter: bool = False


class _Cutter:
    """One line on its way to tokens."""

    def __init__(self, line: str, habits: Habits) -> None:
        self.line, self.habits, self.at, self.gap = line, habits, 0, 0
        self.out: list[Token] = []

    def tokens(self) -> list[Token]:
        while self.at < len(self.line) and len(self.out) < MOST_TOKENS:
            if self.line[self.at].isspace():
                self.gap += 1
                self.at += 1
                continue
            if not (self._number() or self._word()):
                self._sign()
            self.gap = 0
        return self.out

    def _put(self, kind: str, text: str, length: int) -> bool:
        self.out.append(Token(kind, text, gap=self.gap))
        self.at += length
        return True

    def _number(self) -> bool:
        found = _NUMBER.match(self.line, self.at)
        if not found or len(found[0]) > 24:
            return False
        text, end = (
            found[0].rstrip("."),
            found.end() - (found[0].endswith(".") and self.line[found.end() : found.end() + 1].strip() != ""),
        )
        mantissa, _, power = text.lower().partition("e")
        places = len(mantissa.partition(".")[2]) - int(power or 0)
        figures = len(mantissa.replace(".", "").lstrip("0"))
        token = Token("num", text, float(text), "", 0.5 * 10.0**-places, self.gap, figures)
        self.out.append(token)
        self.at = end
        if not found[0].endswith("."):
            self._unit(token)
        elif self.line[found.end() : found.end() + 2].strip() and self.line[end : end + 1] == ".":
            self.at = end
        return True

    def _unit(self, token: Token) -> None:
        letters = self.habits.letters
        for name, pattern in UNITS:
            found = pattern.match(self.line, self.at)
            if not found:
                continue
            bare, rest = found[0].strip(), self.line[found.end() :]
            if (
                name == "m"
                and bare == "m"
                and ("m" in letters and "=" in self.line or re.match(r"\s+g\b", rest))
                or name == "N"
                and bare == "N"
                and self._n_is_letter(rest)
            ):
                continue
            if name == "lbin" and _NOT_INCHES.match(rest):
                continue
            if name == "in" and (not self.habits.inches and bare == "in" or _NOT_INCHES.match(rest)):
                continue
            token.unit, token.hundredths = name.replace("%BW", "BW"), name == "%BW"
            self.at = found.end()
            square = re.match(r"\s?\^\s?2(?!\d)", rest)
            if square and name in ("N", "lb", "kN", "cm", "m"):
                self.at += square.end()
                token.unit = ""
            return

    def _n_is_letter(self, rest: str) -> bool:
        known = "N" in self.habits.letters
        return self.habits.newton_is_letter or known and bool(re.match(r"\s*(?:\(\s*[\d.-]|\*\s*\d)", rest))

    def _word(self) -> bool:
        found = _WORD.match(self.line, self.at)
        if not found:
            return False
        text, low = found[0], found[0].lower()
        if text in ("x", "X") and self._multiplies(found.end()):
            return self._put("op", "*", 1)
        glued = _GLUED.match(text)
        if text in FUNCTIONS or low in FUNCTIONS and low != "root":
            return self._put("func", FUNCTIONS[low], len(text))
        if re.match(r"^[xX]\d+$", text) and self.out and (self.out[-1].kind == "num" or self.out[-1].text == ")"):
            return self._put("op", "*", 1)
        if glued:
            if glued[1]:
                self._put("word", glued[1], len(glued[1]))
                self.gap = 0
            return self._put("func", glued[2], 3)
        if low in ("equals", "equal"):
            return self._put("eq", "=", len(text))
        if low == "root":
            return self._put("func", "sqrt", len(text))
        return self._put(
            "sep"
            if low in SEPARATORS and (len(low) > 1 or text == low and text not in self.habits.letters)
            else "word",
            text,
            len(text),
        )

    def _multiplies(self, end: int) -> bool:
        """Whether an x between two operands is a times sign."""
        before, after = self.out[-1] if self.out else None, self.line[end:].lstrip()
        if (
            before is None
            or before.kind not in ("num", "word")
            and before.text != ")"
            or not re.match(r"[\d.(A-Za-zα-ω√-]", after)
        ):
            return False
        return not ("x" in self.habits.letters and before.kind in ("num", "word") and not re.match(r"[\d.(]", after))

    def _sign(self) -> None:
        sign = self.line[self.at]
        if sign == "/" and self._parts_statements():
            self._put("sep", ";", 1)
            return
        kind = (
            "op"
            if sign in "+-*/^()"
            else {
                "=": "eq",
                "→": "arrow",
                ":": "colon",
                ",": "sep",
                ";": "sep",
                ".": "sep",
                "?": "sep",
                "!": "sep",
            }.get(sign, "")
        )
        if kind:
            self._put(kind, sign, 1)
        elif sign in "Σ@":
            self._put("word", {"Σ": "Σ", "@": "at"}[sign], 1)
        elif sign in "%°" and self.out and self.out[-1].kind == "num":
            self.out[-1].unit = {"%": "%", "°": "deg"}[sign]
            self.at += 1
        else:
            self.at += 1

    def _parts_statements(self) -> bool:
        """Whether a slash stands between two statements, as in "a x b = c N / d x e = f N"."""
        last = self.out[-1] if self.out else None
        if last is None or not self.gap or not last.unit or not any(each.kind == "eq" for each in self.out[-3:-1]):
            return False  # only a result may end a statement
        return bool(re.match(r"/ (?!\()[^=/]*\d[^=/]*[*(a-z][^=/]*\d[^=/]*=", self.line[self.at :])) and not re.match(
            r"/ ?[\d.]+ ?[a-zA-Z]*(?:\^?[23])? ?=", self.line[self.at :]
        )


def tokens_of(line: str, habits: Habits) -> list[Token]:
    """The tokens of a plain line."""
    return _Cutter(line, habits).tokens()
