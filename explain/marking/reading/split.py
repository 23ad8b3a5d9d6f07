"""Where one piece of a line ends and the next begins: semicolons, arrows, "so", commas and "and" between equations.
Reads no expression.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from .cursor import is_plain
from .tokens import BEGINS, ENDS, OPERATORS, Token
from .units import are_one_unit, unit_word
from .vocabulary import Vocabulary
from .words import ABBREVIATED, ABOUT, GLUE, JOINTS, LEADS

Row = tuple[Token, ...]
_DEGREES = (("deg", 1),)


def pieces(tokens: Sequence[Token], vocabulary: Vocabulary) -> list[Row]:
    """The tokens of each piece, none empty; what parts them is left out."""
    out: list[Row] = []
    start = 0
    row = _spoken(tokens, vocabulary)
    for place, token in enumerate(row):
        if token.kind in ("semicolon", "arrow"):
            out += _softly(row[start:place], vocabulary)
            start = place + 1
        elif _is_part(row, place, vocabulary):
            out += _softly(row[start:place], vocabulary)
            start = place + 3
        elif _begins_anew(row, start, place, vocabulary):
            out += _softly(row[start:place], vocabulary)
            start = place
    return [*out, *_softly(row[start:], vocabulary)]


def _is_part(row: Row, place: int, vocabulary: Vocabulary) -> bool:
    """Whether a part of the question opens here: "302 N (b) 257 N"."""
    kinds = tuple(each.kind for each in row[place : place + 4])
    letter = row[place + 1].text if len(kinds) == 4 else ""
    return (
        kinds[:3] == ("open", "word", "close")
        and letter in tuple("abcdefgh")
        and not vocabulary.keys(letter)
        and place > 0
        and row[place].spaced
        and row[place + 3].spaced
        and kinds[3] in ("number", "word", "sigma")
    )


def _begins_anew(row: Row, start: int, place: int, vocabulary: Vocabulary) -> bool:
    """Whether an equation begins here with nothing but space before it: "F = 302 N R = 257 N", "F = 302    R = 257"."""
    token, before = row[place], row[place - 1]
    if (
        place < start + 3
        or not token.spaced
        or before.kind not in (*ENDS, "word")
        or not has_relation(row[start:place])
    ):
        return False
    gap = token.at - before.end
    unit = (
        before.kind == "word"
        and row[place - 2].kind == "number"
        and unit_word(before.text) is not None
        and not vocabulary.keys(before.text)
    )
    if token.kind == "number":
        return gap > 2 and (unit or before.kind == "number") and has_relation(row[place:])
    following = row[place + 1 : place + 3]
    named = (
        token.kind == "word"
        and not is_plain(token, vocabulary)
        and following
        and following[0].kind == "relation"
        or token.kind == "sigma"
        and len(following) > 1
        and following[1].kind == "relation"
    )
    return bool(named) and (unit or gap > 1) and not (unit and are_one_unit(before.text, token.text))


def has_relation(row: Sequence[Token]) -> bool:
    return any(each.kind in ("relation", "compare") for each in row)


def has_arithmetic(row: Sequence[Token], vocabulary: Vocabulary) -> bool:
    """Whether a sign stands between two operands, at least one of them a number, a bracket or a function."""
    for before, sign, after in zip(row, row[1:], row[2:], strict=False):
        words = [each for each in (before, after) if each.kind == "word"]
        fits = before.kind in (*ENDS, "word") and after.kind in (*BEGINS, "word")
        if sign.kind in OPERATORS and fits and len(words) < 2 and not any(is_plain(word, vocabulary) for word in words):
            return True
    return False


# ---------------------------------------------------------------------- signs told in words
def _spoken(tokens: Sequence[Token], vocabulary: Vocabulary) -> Row:
    """The tokens with relations that are told in words as signs, an arrow behind a value as its direction, and stops
    that say nothing left out.
    """
    out: list[Token] = []
    for place, token in enumerate(tokens):
        after = tokens[place + 1] if place + 1 < len(tokens) else None
        before = out[-1] if out else None
        if token.kind == "stop" and _says_nothing(before, after):
            continue
        if token.kind == "word" and before is not None and after is not None:
            token = _as_relation(token, before, after, vocabulary, tokens[place + 2 : place + 3])
        if before is not None and after is None and _points_right(token, before):
            token = token._replace(kind="word", text="right")
        if token.kind == "relation" and token.text == "≈" and before is not None and before.kind == "relation":
            out.pop()  # "= about": one sign
        out.append(token)
    return tuple(out)


def _points_right(token: Token, before: Token) -> bool:
    """An arrow at the end, behind a value: "45 N →"."""
    return token.kind == "arrow" and token.text[0] in "→-" and before.kind in (*ENDS, "word")


def _says_nothing(before: Token | None, after: Token | None) -> bool:
    """A stop behind a number or a shortened word with a sign behind it."""
    if before is None or after is None:
        return before is None
    return (
        before.kind == "number"
        and (after.kind in (*OPERATORS, "relation", "close") or after.text in ("x", "X"))
        or before.text.casefold() in ABOUT
        or before.text == "≈"
    )


def _as_relation(token: Token, before: Token, after: Token, vocabulary: Vocabulary, unit: Sequence[Token]) -> Token:
    """The token as a relation where it is one in words: "F equals 3", "F is 3", "the pull is 3 N", "g as 10", "F =
    about 3", "F approx. 3".
    """
    word = token.text.casefold()
    value = after.kind in ("number", "stop", "relation") or after.text.casefold() in ABOUT
    name = (
        before.kind == "word"
        and not is_plain(before, vocabulary)
        and not (before.text.isalpha() and len(before.text) > 2)
    )
    if (
        word in ABOUT
        and value
        and (before.kind == "relation" or word.startswith("approx") and before.kind in (*ENDS, "word") and name)
    ):
        return token._replace(kind="relation", text="≈")
    told = (
        after.kind == "number"
        and bool(unit)
        and unit[0].kind == "word"
        and unit_word(unit[0].text) not in (None, _DEGREES)
    )
    if word == "equals" or word in ("is", "as") and name and value or word == "is" and told and before.kind == "word":
        return token._replace(kind="relation", text="=")
    return token


# ---------------------------------------------------------------------- commas and words
def _softly(row: Row, vocabulary: Vocabulary) -> list[Row]:
    """A row without semicolons, parted at the commas, stops and words that stand between two equations."""
    marks = [place for place in _outside_brackets(row) if _may_part(row, place)]
    out: list[Row] = []
    start = 0
    for mark, next_mark in pairwise((*marks, len(row))):
        if _parts(row[start:mark], row[mark], row[mark + 1 : next_mark], vocabulary):
            out.append(row[start:mark])
            start = mark + 1
    return [each for each in (*out, row[start:]) if each]


def _outside_brackets(row: Row) -> list[int]:
    depth, out = 0, []
    for place, token in enumerate(row):
        depth = max(0, depth + (token.kind == "open") - (token.kind == "close"))
        if depth == 0 and token.kind != "close":
            out.append(place)
    return out


def _may_part(row: Row, place: int) -> bool:
    token = row[place]
    if token.kind == "stop":
        following = row[place + 1 : place + 2]
        return (
            bool(following)
            and following[0].spaced
            and following[0].kind == "word"
            and row[place - 1].text.casefold() not in ABBREVIATED
        )
    return token.kind in ("comma", "colon") or token.kind == "word" and token.text.casefold() in GLUE | JOINTS


def _parts(left: Row, mark: Token, right: Row, vocabulary: Vocabulary) -> bool:
    """Whether a comma, a stop or a word parts what stands on its two sides."""
    if not right or all(each.text.casefold() in LEADS for each in left):
        return False
    if mark.kind == "colon" or mark.kind == "word" and mark.text.casefold() in JOINTS:
        return has_relation(left) and has_relation(right)
    if mark.kind == "word" and has_relation(left):
        return True
    sentence = is_plain(right[0], vocabulary) and any(_counts(right, place) for place in range(len(right)))
    return (
        has_relation(right)
        or has_arithmetic(right, vocabulary)
        or has_relation(left)
        and (mark.kind == "stop" or sentence)
    )


def _counts(row: Row, place: int) -> bool:
    """Whether a number stands there that is no angle."""
    after = row[place + 1 : place + 2]
    return row[place].kind == "number" and not (
        after and (after[0].kind == "degree" or after[0].text.casefold().startswith("deg"))
    )
