"""The line as numbers, words and signs, each with its place. Knows no vocabulary and no grammar."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import NamedTuple

from .limits import TOKENS
from .normal import REFUSED, Plain
from .numbers import RUN, Comma, spelled
from .tree import Number
from .words import GLUE, GREEK, SPOKEN

_L = "A-Za-zÀ-ÖØ-öø-ſα-ωΓΔΘΛΞΠΦΨΩ⊥"
_NAMED = "|".join(name for name in GREEK if len(name) > 3)
_TRIG = r"(?:(?:arc|a|inv)?(?:sine?|cos(?:ine)?|tan(?:gent)?))"
_TOKEN = re.compile(
    rf"""
  (?P<space>\ +)
 |(?P<arrow><=+>|=+>|-{{1,3}}>|[⇒→])
 |(?P<relation>=\s*[~≈]|[~≈]\s*=|[≈~]|:=|==?)
 |(?P<compare><=|>=|!=|[<>≠≤≥])
 |(?P<figures>(?:(?<=[(\[])|(?<=to\ ))[0-9]\ ?
   (?:s\.?f|d\.?p|sig(?:nificant|\.)?\ ?fig(?:ure)?s?|decimals?(?:\ places?)?)(?![A-Za-z])\.?)
 |(?P<compass>[NS]\ of\ [EW](?![{_L}0-9_]))
 |(?P<number>{RUN})
 |(?P<function>(?i:inv\ {_TRIG})(?=\ ?\()|(?i:{_TRIG}|sqrt)(?![{_L}_])|(?i:{_TRIG})(?={_NAMED}|[α-ω]))
 |(?P<word>[{_L}][{_L}0-9]{{0,2}}(?:_[{_L}0-9]{{1,8}}?)?(?=(?:sin|cos|tan)(?:\ ?[0-9(α-ω^]|{_NAMED}))
   |[{_L}][{_L}0-9]*(?:_(?:\{{[^{{}}]{{1,24}}\}}|[{_L}0-9]+))*(?:'[a-z]{{1,2}}(?![{_L}])|'+)?)
 |(?P<power>\^|\*\*)
 |(?P<ellipsis>\.{{2,}}(?![0-9]))
 |(?P<rule>-{{2,}}|_{{2,}}|\*{{3,}})
 |(?P<times>\*) |(?P<over>/) |(?P<plus>\+) |(?P<minus>-)
 |(?P<open>[(\[{{]) |(?P<close>[)\]}}])
 |(?P<comma>,) |(?P<semicolon>;) |(?P<colon>:) |(?P<stop>\.)
 |(?P<degree>°) |(?P<percent>%) |(?P<root>√) |(?P<sigma>Σ) |(?P<quote>["']+)
 |(?P<refused>{REFUSED}) |(?P<mark>.)
 """,
    re.VERBOSE | re.DOTALL,
)
_TIMES = re.compile(r"[xX](?=\s*(?:[0-9.(\[]|,[0-9]|(?i:sin|cos|tan)[ (0-9]))")
_UNIT_AND_TIMES = re.compile(
    r"(?:kg|cm|mm|m|N|lbs?|in|ft|g|s2?|deg(?:rees?)?)(?=[xX](?:[0-9(.]|,[0-9]|(?i:sin|cos|tan)[ (0-9]))"
)
_ANGLE_AND_TIMES = re.compile(rf"(?:[α-ω]|{_NAMED})(?=[xX](?:,?[0-9]|\.[0-9]))")
_BARE_COMMA = re.compile(r",[0-9]{1,30}(?![0-9.,])")
OPERATORS = frozenset(("times", "over", "plus", "minus", "power"))
BEGINS = frozenset(("number", "open", "function", "root"))  # an operand, where a word does not
ENDS = frozenset(("number", "close", "degree", "percent", "quote"))
_BEFORE_A_NUMBER = GLUE | {"of"}
_BEFORE_A_COMMA = OPERATORS | {"open", "relation", "colon", "mark", "arrow"}


class Token(NamedTuple):
    """`at` and `end` are places in the plain text, `spaced` says that a space stands before. A number has its value,
    or `why` it has none.
    """

    kind: str
    text: str
    at: int
    end: int
    spaced: bool = False
    number: Number | None = None
    other: Number | None = None
    why: str = ""


class Tokens(NamedTuple):
    """The tokens of a line; `cut` says that there were more than are read."""

    all: tuple[Token, ...]
    cut: bool
    changed: tuple[str, ...]


def tokens_of(line: Plain, comma: Comma) -> Tokens:
    """The tokens of a line in plain signs, at most as many as are read."""
    found: list[Token] = []
    changed: dict[str, None] = {}
    place, spaced = 0, True
    while place < len(line.text) and len(found) <= TOKENS:
        token = _token(line.text, place, found, spaced, line.refused, comma)
        place = token.end
        spaced = token.kind == "space"
        if spaced or token.kind == "ellipsis":
            continue
        if token.kind == "number":
            token = _joined(found, _valued(token, line.text, comma, found), changed)
        found.append(token)
    return Tokens(tuple(found[:TOKENS]), len(found) > TOKENS, tuple(changed))


def _token(text: str, place: int, before: list[Token], spaced: bool, refused: Mapping[int, str], comma: Comma) -> Token:
    operand = bool(before) and (
        before[-1].kind in ENDS or before[-1].kind == "word" and before[-1].text.casefold() not in GLUE
    )
    if operand and (times := _TIMES.match(text, place)):
        return Token("times", times[0], place, times.end(), spaced)
    if before and before[-1].kind in ("number", "over") and (unit := _UNIT_AND_TIMES.match(text, place)):
        return Token("word", unit[0], place, unit.end(), spaced)
    begins = (
        not before
        or before[-1].kind in _BEFORE_A_COMMA
        or before[-1].kind == "comma"
        and spaced
        or before[-1].kind == "word"
        and before[-1].text.casefold() in _BEFORE_A_NUMBER
    )
    if angle := _ANGLE_AND_TIMES.match(text, place):
        return Token("word", angle[0], place, angle.end(), spaced)
    if comma == "decimal" and text[place] == "," and begins and (bare := _BARE_COMMA.match(text, place)):
        return Token("number", bare[0], place, bare.end(), spaced)
    match = _TOKEN.match(text, place)
    assert match is not None and match.lastgroup is not None  # the last alternative takes any character
    kind = "word" if match.lastgroup in ("figures", "compass") else match.lastgroup
    if kind == "word" and match[0].casefold() in SPOKEN:
        kind = SPOKEN[match[0].casefold()]
    return Token(kind, match[0], place, match.end(), spaced, why=refused.get(place, "") if kind == "refused" else "")


def _valued(token: Token, text: str, comma: Comma, before: list[Token]) -> Token:
    """The token with its number, unless something that could belong to the number touches it."""
    value = spelled(token.text if token.text[0] != "," else f"0{token.text}", comma)
    after = text[token.end : token.end + 2]
    grown = "e" in token.text.lower() and re.match(r"[.eE][0-9]", after) is not None
    touched = not token.spaced and bool(before) and before[-1].kind in ("number", "stop", "quote")
    if after[:1] == "_" or grown or touched:
        return token._replace(why="a number that runs into another sign")
    return token._replace(number=value.number, other=value.other, why=value.why)


def _joined(found: list[Token], token: Token, changed: dict[str, None]) -> Token:
    """Thousands set apart by a space are one number: "1 200"."""
    before = found[-1] if found else token
    groups = before.kind == "number" and before.number is not None and token.number is not None and token.spaced
    if (
        not groups
        or token.at != before.end + 1
        or not re.fullmatch(r"[1-9][0-9]{0,2}", before.text)
        or not re.fullmatch(r"[0-9]{3}(?:[.,][0-9]+)?", token.text)
    ):
        return token
    found.pop()
    whole = before.text + token.text
    changed[f'"{before.text} {token.text}" read as {whole}'] = None
    return Token("number", whole, before.at, token.end, before.spaced, spelled(whole, "decimal").number)
