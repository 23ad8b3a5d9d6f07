"""The letters and words of one side: known names, known letters in a row, letters brought in, sums of moments and
forces. Knows no numbers.
"""

from __future__ import annotations

import re

from .cursor import MOST_WORDS, Cursor, Unreadable, is_long, is_plain
from .tree import Expr, Name, Product, Sigma, UnknownName
from .units import unit_word
from .vocabulary import is_letter
from .words import FUNCTIONS, SMALL, SUMMED, SUMS

_NET = re.compile(r"([FMTτ]|tau)_?\{?(?:net|sum)\}?")


def name(cursor: Cursor) -> Expr:
    """The name that stands here. Raises Unreadable for any other word."""
    token = cursor.here
    if token.text.casefold() in SUMS and (found := _sum_in_words(cursor)) is not None:
        return found
    cursor.names += 1
    if subscript := _subscript(cursor):
        cursor.at += 4
        keys = cursor.vocabulary.keys(token.text + subscript)
        return Name(keys, token.text + subscript) if keys else UnknownName(token.text + subscript)
    for count in range(min(cursor.vocabulary.longest, MOST_WORDS), 0, -1):
        words = cursor.tokens[cursor.at : cursor.at + count]
        text = " ".join(each.text for each in words)
        if all(each.kind == "word" for each in words) and (keys := cursor.vocabulary.keys(text)):
            cursor.at += count
            cursor.long = is_long(words[-1].text) and not cursor.vocabulary.lettered(text)
            return Name(keys, text)
    return _new(cursor)


def _subscript(cursor: Cursor) -> str:
    """A word in brackets close behind the letter here, as its subscript: the "(bag)" of Fg(bag); "" where none
    stands.
    """
    token = cursor.here
    opened, inner, closed = (cursor.ahead(by) for by in (1, 2, 3))
    if (opened.kind, inner.kind, closed.kind) != ("open", "word", "close") or opened.spaced or is_long(token.text):
        return ""
    if not cursor.known(inner.text) and cursor.known(f"{token.text}({inner.text})"):
        return f"({inner.text})"
    least = 4 if unit_word(inner.text) else 3
    letter = cursor.known(token.text) or is_letter(token.text)
    word = is_plain(inner, cursor.vocabulary) or is_long(inner.text) or bool(unit_word(inner.text))
    if (
        not letter
        or not word
        or len(inner.text) < least
        or inner.text.casefold() in FUNCTIONS
        or inner.text.casefold() in SMALL
    ):
        return ""
    return f"({inner.text})"


def may_follow(cursor: Cursor) -> bool:
    """Whether the word here is one more factor of a row, with no sign before it."""
    token, after = cursor.here, cursor.ahead()
    if cursor.is_word(token) or cursor.long or token.text.casefold() in SUMS:
        return False
    if token.text in ("a", "A", "I") and after.kind == "word" and cursor.is_word(after):
        return False
    if cursor.known(token.text):
        return not is_long(token.text) or cursor.vocabulary.lettered(token.text)
    return (
        bool(cursor.vocabulary.split(token.text))
        or is_letter(token.text)
        and not (unit_word(token.text) and len(token.text) > 1)
    )


def _new(cursor: Cursor) -> Expr:
    """Known letters in a row ("mg"), or a letter that the student brings in. Alone on its side a "Fd" is rather one
    letter.
    """
    token = cursor.here
    letters = cursor.vocabulary.split(token.text)
    alone = cursor.first and cursor.at == 0 and cursor.ahead().kind == "end" and token.text[0].isupper()
    if letters and (not is_letter(token.text) or cursor.choose("split") == alone):
        cursor.take()
        return Product(tuple(Name(cursor.vocabulary.keys(letter), letter) for letter in letters))
    if (
        unit_word(token.text)
        and len(token.text) > 1
        and not (token.text[0].isupper() and token.text[1:].islower() and is_letter(token.text))
    ):
        raise Unreadable(token, f'the unit "{token.text}" without a number', "Which number does it belong to?")
    net = _NET.fullmatch(token.text)
    if not is_letter(token.text) and not net:
        raise cursor.missing()
    cursor.take()
    return Sigma(net[1], token.text) if net else UnknownName(token.text)


def sigma(cursor: Cursor) -> Sigma:
    """ΣM, Σ F_y, Σ(M), Σ moments."""
    sign, bracket = cursor.take(), cursor.here.kind == "open" and cursor.ahead(2).kind == "close"
    word = cursor.ahead(int(bracket))
    letter = _summed(cursor, word.text) if word.kind == "word" else ""
    if not letter:
        raise Unreadable(sign, "a sum of something that is not named", "The sum of what?")
    cursor.at += 3 if bracket else 1
    return Sigma(letter, sign.text + word.text)


def _sum_in_words(cursor: Cursor) -> Sigma | None:
    """ "Sum M", "sum of the moments", "net torque"; None where the words say something else."""
    ahead = 1
    while cursor.ahead(ahead).text.casefold() in ("of", "the", "all") and ahead < 4:
        ahead += 1
    word = cursor.ahead(ahead)
    letter = _summed(cursor, word.text) if word.kind == "word" else ""
    if not letter:
        return None
    words = cursor.tokens[cursor.at : cursor.at + ahead + 1]
    cursor.at += ahead + 1
    return Sigma(letter, " ".join(each.text for each in words))


def _summed(cursor: Cursor, word: str) -> str:
    """The letter of what is summed: M for moments, T for torques, F for forces, else the word's own; "" for anything
    else.
    """
    if word.casefold() in SUMMED:
        return SUMMED[word.casefold()]
    fits = word[:1] in ("M", "T", "τ", "F") or word.startswith("tau")
    return word if fits and (is_letter(word) or cursor.known(word)) and not is_long(word) else ""
