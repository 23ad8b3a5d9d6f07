"""Brackets that hold words: taken out of the arithmetic and kept as remarks. Reads no expression."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from .cursor import is_long, is_plain
from .tokens import BEGINS, ENDS, OPERATORS, Token
from .units import unit_word
from .vocabulary import Vocabulary
from .words import SMALL


_WORDED = tuple("FWMTR")  # letters that people give a whole word for a subscript


class Comment(NamedTuple):
    """The tokens of a comment with its brackets, and how many tokens of the arithmetic stand before it."""

    tokens: tuple[Token, ...]
    after: int


def without_comments(
    row: Sequence[Token], vocabulary: Vocabulary, tags: bool = True, factors: bool = False
) -> tuple[tuple[Token, ...], tuple[Comment, ...]]:
    """The row without its comments, and the comments. With `tags` a far-off "(1)" or "(a)" at the end is the number of
    the equation.

    With `factors` a quantity that is named in brackets is none: 53.9 N(arm of can).
    """
    kept: list[Token] = []
    comments: list[Comment] = []
    closes = _closes(row)
    place = 0
    while place < len(row):
        close = closes.get(place)
        if (
            close is not None
            and _is_comment(row, place, close, vocabulary, tags)
            and not (factors and _is_named(row[place + 1 : close], vocabulary))
        ):
            comments.append(Comment(tuple(row[place : close + 1]), len(kept)))
            place = close
        else:
            kept.append(row[place])
        place += 1
    return tuple(kept), tuple(comments)


def has_tag(row: Sequence[Token]) -> bool:
    """Whether a lone figure in brackets stands at the end, two spaces or more away."""
    return len(row) > 3 and _is_tag(row, len(row) - 3, len(row) - 1) and row[-2].kind == "number"


def has_named(row: Sequence[Token], vocabulary: Vocabulary) -> bool:
    """Whether brackets hold the name of a quantity, which may be a remark and may be a factor."""
    return any(
        _is_named(row[opened + 1 : closed], vocabulary)
        for opened, closed in _closes(row).items()
        if opened and not row[opened].spaced
    )


def _is_named(inner: Sequence[Token], vocabulary: Vocabulary) -> bool:
    return (
        len(inner) > 1
        and all(each.kind == "word" for each in inner)
        and bool(vocabulary.keys(" ".join(each.text for each in inner)))
    )


def _closes(row: Sequence[Token]) -> dict[int, int]:
    """The place of the closing bracket of each opening one."""
    opened: list[int] = []
    found: dict[int, int] = {}
    for place, token in enumerate(row):
        if token.kind == "open":
            opened.append(place)
        elif token.kind == "close" and opened:
            found[opened.pop()] = place
    return found


def _is_comment(row: Sequence[Token], place: int, close: int, vocabulary: Vocabulary, tags: bool) -> bool:
    inner = row[place + 1 : close]
    if not inner or len(inner) == len(row) - 2:
        return False
    if any(each.kind in ("relation", "compare", "arrow") for each in inner):
        return True
    operand = row[place - 1].kind in OPERATORS if place else close + 1 < len(row) and row[close + 1].kind in OPERATORS
    if _is_subscript(row, place, inner, vocabulary) or operand and _is_named(inner, vocabulary):
        return False
    if len(inner) == 1 and _is_tag(row, place, close):
        return tags and (inner[0].kind == "number" or not vocabulary.keys(inner[0].text))
    words = [
        each
        for before, each in zip((row[place], *inner), inner, strict=False)
        if is_plain(each, vocabulary) or _is_small(each) and not _is_unit(before, each)
    ]
    lone = (
        len(inner) == 1
        and inner[0].kind == "word"
        and is_long(inner[0].text)
        and not _is_factor(row, place, vocabulary)
    )
    return lone or bool(words) and not _unit_told(inner) and not _words_in_arithmetic(inner, vocabulary)


def _is_tag(row: Sequence[Token], place: int, close: int) -> bool:
    """A figure or a small letter in brackets at the end of the row: far off the figure, apart the letter."""
    token = row[place + 1]
    far = place > 0 and row[place].at - row[place - 1].end
    if close != len(row) - 1 or close != place + 2 or not far:
        return False
    return (
        token.kind == "number"
        and len(token.text) == 1
        and far >= 2
        or token.kind == "word"
        and token.text in "abcdefgh"
    )


def _is_subscript(row: Sequence[Token], place: int, inner: Sequence[Token], vocabulary: Vocabulary) -> bool:
    """Fg(bag): one word close behind a letter."""
    before = row[place - 1] if place else row[place]
    letter = (
        before.kind == "word"
        and not is_plain(before, vocabulary)
        and not is_long(before.text)
        and not row[place].spaced
    )
    if not letter or place > 1 and row[place - 2].kind in ("number", "close") and before.text in ("N", "m", "g"):
        return False
    return (
        len(inner) == 1
        and len(inner[0].text) > 2
        and inner[0].text.casefold() not in SMALL
        and (is_plain(inner[0], vocabulary) or is_long(inner[0].text))
    )


def _is_factor(row: Sequence[Token], place: int, vocabulary: Vocabulary) -> bool:
    """Whether a word in brackets close behind a number is a letter with its subscript: 4.9(Fmuscle), but 44.1(tin)."""
    letter, subscript = row[place + 1].text[:1], row[place + 1].text[1:]
    before = row[place - 1]
    behind = (
        place > 0
        and not row[place].spaced
        and (before.kind in ENDS or before.kind == "word" and unit_word(before.text) is not None)
    )
    named = len(subscript) > 2 and bool(vocabulary.keys(subscript) or subscript in SMALL)
    return behind and letter in _WORDED and named and bool(vocabulary.keys(row[place + 1].text))


def _is_small(token: Token) -> bool:
    return token.kind == "word" and token.text.casefold() in SMALL and len(token.text) > 1


def _is_unit(before: Token, token: Token) -> bool:
    """Whether a small word is a unit here: the "in" of 6.2 in, of lb in and of lb-in."""
    behind = (
        before.kind in ("number", "minus", "times", "stop")
        or before.kind == "word"
        and unit_word(before.text) is not None
    )
    return behind and unit_word(token.text) is not None


def _unit_told(inner: Sequence[Token]) -> bool:
    """ "(in N)"."""
    return len(inner) > 1 and inner[0].text == "in" and all(len(each.text) < 3 for each in inner)


def _words_in_arithmetic(inner: Sequence[Token], vocabulary: Vocabulary) -> bool:
    """Whether a word that is no name is an operand: "(33 - arm)" is no comment."""
    for before, sign, after in zip(inner, inner[1:], inner[2:], strict=False):
        if sign.kind not in OPERATORS:
            continue
        plain = [is_plain(each, vocabulary) for each in (before, after)]
        operand = [
            each.kind in BEGINS | ENDS or each.kind == "word" and not is_plain(each, vocabulary)
            for each in (before, after)
        ]
        if plain[0] and operand[1] or operand[0] and plain[1]:
            return True
    return False
