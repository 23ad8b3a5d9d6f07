"""One side of a chain: its expression, and the words behind it. Knows which words are no part of the arithmetic."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from .cursor import Unreadable, is_long, is_plain
from .parse import expression
from .split import has_arithmetic
from .tokens import BEGINS, OPERATORS, Token
from .tree import Expr, Measured, Number, parts
from .vocabulary import Vocabulary
from .words import APPOSED, SMALL

_APART = frozenset(("comma", "colon", "stop", "mark", "minus", "rule"))
_BEFORE_A_POINT = frozenset(("about", "around", "at", "of", "on", "point", "the"))
_BEFORE_A_COUNT = frozenset(("part", "line", "step", "eq", "equation", "question", "fig", "no"))
_WORKS_OUT = frozenset(("over", "by", "from", "per", "of", "into", "less", "more", "to", "and"))  # what may mean a sign
_PART_OF_IT = "Is it part of the working? Then write it with signs."


class Reader(NamedTuple):
    """What sides are read with: the vocabulary, what a pound is, and the less likely ways that are wanted."""

    vocabulary: Vocabulary
    pound: str = "lbf"
    flipped: frozenset[str] = frozenset()


class Told(NamedTuple):
    """A side as it was read: the words before it, the expression (None: words only), the words behind it, and what
    could be meant otherwise.
    """

    expr: Expr | None
    before: Sequence[Token] = ()
    behind: Sequence[Token] = ()
    met: frozenset[str] = frozenset()


def side(tokens: Sequence[Token], reader: Reader, first: bool, last: bool) -> Told:
    """One side. Raises Unreadable where it is neither an expression nor words."""
    words = _apposed(tokens, reader) if first else 0
    try:
        told = _expression(tokens[words:], reader, first, last)
    except Unreadable:
        if _is_words(tokens, reader):
            return Told(None, tokens)
        words = _label(tokens, reader) if first else 0
        if not words:
            raise
        told = _expression(tokens[words:], reader, first, last)
    return told._replace(before=tokens[:words])


def _label(tokens: Sequence[Token], reader: Reader) -> int:
    """How many words stand in front of the arithmetic: "stick takes off 30 × 50/10"; 0 where the first is no word."""
    words = next((place for place, each in enumerate(tokens) if each.kind != "word"), 0)
    plain = is_plain(tokens[0], reader.vocabulary) or is_long(tokens[0].text)
    return words if words and plain and tokens[words].kind in BEGINS and tokens[words].spaced else 0


def _expression(tokens: Sequence[Token], reader: Reader, first: bool, last: bool) -> Told:
    parsed = expression(tokens, reader.vocabulary, reader.flipped, reader.pound, first)
    behind = tokens[parsed.taken :]
    if behind:
        _check_words(parsed.expr, behind, reader, last)
    return Told(parsed.expr, (), behind, parsed.met)


def _apposed(tokens: Sequence[Token], reader: Reader) -> int:
    """How many words before a letter only say what it is: "the muscle force Fm"."""
    words = next(
        (
            place
            for place, each in enumerate(tokens)
            if each.text.casefold() not in APPOSED or reader.vocabulary.keys(each.text)
        ),
        0,
    )
    return (
        words
        if words == len(tokens) - 1
        and tokens[words].kind == "word"
        and not is_plain(tokens[words], reader.vocabulary)
        and not is_long(tokens[words].text)
        else 0
    )


def _is_words(tokens: Sequence[Token], reader: Reader) -> bool:
    """Whether a side that is no expression is words: one plain word at least, no number that is part of any
    arithmetic, nothing refused.
    """
    if any(each.kind in ("refused", "function", "root") for each in tokens) or has_arithmetic(
        tokens, reader.vocabulary
    ):
        return False
    counts = [each for each in tokens if each.kind == "number"]
    if any(each.number is None or len(each.text) > 1 for each in counts) or counts and tokens[0].kind == "number":
        return False
    known = [
        each for each in tokens if each.kind == "word" and (is_plain(each, reader.vocabulary) or is_long(each.text))
    ]
    return bool(known)


def _check_words(expr: Expr, behind: Sequence[Token], reader: Reader, last: bool) -> None:
    """Raises Unreadable unless what stands behind an expression is words and no part of the arithmetic."""
    first = next((place for place, each in enumerate(behind) if each.kind not in _APART), None)
    dashed = any(each.kind in ("minus", "rule") for each in behind[:first])
    if first is None:
        if dashed:
            raise Unreadable(behind[0], f'nothing stands behind "{behind[0].text}"', "What is missing here?")
        return  # a full stop, a tick
    token = behind[first]
    small = token.kind == "word" and token.text.casefold() in SMALL
    apart = first > 0 and not dashed or last and _ends_in_unit(expr) and not first
    told = token.kind == "word" and is_plain(token, reader.vocabulary) or first > 0 and _is_angle(behind, first)
    if not (small and (last or not dashed)) and not (apart and told):
        raise _no_words(token, isinstance(expr, Number) and not first)
    _check_no_arithmetic(behind, reader, last, _ends_in_unit(expr))


def _is_angle(row: Sequence[Token], place: int) -> bool:
    """Whether the number at a place is an angle: 66.9°, 66.9 deg."""
    after = row[place + 1] if place + 1 < len(row) else row[place]
    return row[place].kind == "number" and (after.kind == "degree" or after.text.casefold().startswith("deg"))


def _ends_in_unit(expr: Expr) -> bool:
    while not isinstance(expr, Measured):
        inner = parts(expr)
        if not inner:
            return False
        expr = inner[-1]
    return True


def _no_words(token: Token, behind_number: bool = False) -> Unreadable:
    """Why a token cannot stand behind an expression."""
    text = token.text
    match token.kind:
        case "refused":
            return Unreadable(token, f"{token.why} is not read here", "Can it be typed in plain signs?")
        case "number":
            why = token.why or f'no sign between "{text}" and what stands before it'
            return Unreadable(token, why, "Is it multiplied, added, or another value?")
        case "close":
            return Unreadable(token, "a bracket that was never opened", "Where does the bracket begin?")
        case "word" if behind_number:
            return Unreadable(
                token, f'"{text}" behind a number is no unit that is known', f'Is "{text}" a unit or a letter?'
            )
        case "word":
            return Unreadable(token, f'"{text}" is no letter of this problem', f'Which quantity is "{text}"?')
    return Unreadable(token, f'"{text}" cannot stand here', f'What does "{text}" stand for?')


def _check_no_arithmetic(behind: Sequence[Token], reader: Reader, last: bool, measured: bool) -> None:
    """Raises Unreadable for a sign with an operand behind it, for a number that may be one, and, before a relation,
    for a letter but after "about".
    """
    for place, token in enumerate(behind):
        before = behind[place - 1].text.casefold() if place else ""
        if token.kind == "refused":
            raise _no_words(token)
        if token.kind in OPERATORS and place + 1 < len(behind) and _is_operand(token, behind[place + 1], reader):
            raise Unreadable(token, f'"{token.text}" behind words', _PART_OF_IT)
        if not last and before not in _BEFORE_A_POINT and _is_name(token, reader):
            raise Unreadable(token, f'"{token.text}" behind words', f'Is "{token.text}" part of the equation?')
        counts = token.kind == "number" and not _is_angle(behind, place) and before not in _BEFORE_A_COUNT
        if counts and (not last or not measured or before in _WORKS_OUT):
            raise Unreadable(token, f'"{token.text}" behind words', _PART_OF_IT)


def _is_operand(sign: Token, token: Token, reader: Reader) -> bool:
    return (
        token.kind in BEGINS or token.kind == "word" and sign.kind != "minus" and not is_plain(token, reader.vocabulary)
    )


def _is_name(token: Token, reader: Reader) -> bool:
    """Whether a word of a remark is a letter."""
    return (
        token.kind == "word"
        and token.text.casefold() not in SMALL
        and not is_plain(token, reader.vocabulary)
        and not is_long(token.text)
    )
