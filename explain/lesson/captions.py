"""What is said, as WebVTT: one cue a sentence, in order, none over another. Knows how long words take to say.

The form is that of the W3C's WebVTT: a header, then cues of an identifier, a line of times and a line of text.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from ..document.board import Board, Lesson
from ..document.untrusted_text import one_line
from .marks import Marks

RATE = 130.0  # words a minute, digits and the names of letters counted as words
_PAUSE, _THINK, _TURN = 0.4, 3.0, 0.6  # seconds behind a sentence, behind a question, behind a page
_LEAST = 0.8  # seconds of the shortest sentence
_WORD = re.compile(r"[\w'’]+(?:[.,]\d+)*")
_NUMBER = re.compile(r"\d")


class _Said(NamedTuple):
    """A sentence with the seconds that it takes, and those behind it."""

    text: str
    long: float
    behind: float


class Cue(NamedTuple):
    """A sentence with the milliseconds between which it is said."""

    start: int
    end: int
    text: str


def captions(lesson: Lesson, marks: Marks | None, rate: float = RATE) -> str:
    """The file as text."""
    blocks = ["WEBVTT"]
    for number, cue in enumerate(cues(lesson, marks, rate), 1):
        blocks.append(f"{number}\n{_time(cue.start)} --> {_time(cue.end)}\n{_escaped(cue.text)}")
    return "\n\n".join(blocks) + "\n"


def cues(lesson: Lesson, marks: Marks | None, rate: float = RATE) -> Iterator[Cue]:
    """All cues. What is said of a page begins when it comes up, and is pressed together where the next comes too
    early for it.
    """
    at = 0.0
    for number, board in enumerate(lesson.boards, 1):
        told = list(_told(board, rate))
        whole = sum(each.long + each.behind for each in told)
        share = 1.0
        if marks is not None:
            at = marks[number]
            room = marks.get(number + 1, at + whole) - at
            share = min(1.0, room / whole) if whole else 1.0
        for each in told:
            end = at + each.long * share
            yield Cue(_ms(at), max(_ms(end), _ms(at) + 1), each.text)
            at = end + each.behind * share
        at += 0.0 if marks is not None else _TURN


def _told(board: Board, rate: float) -> Iterator[_Said]:
    yield from (_Said(each, seconds(each, rate), _PAUSE) for each in board.said)
    for question in board.asks:
        yield _Said(question.ask, seconds(question.ask, rate), _THINK)
        if question.answer:
            yield _Said(question.answer, seconds(question.answer, rate), _PAUSE)


def seconds(text: str, rate: float) -> float:
    """How long a sentence takes at so many words a minute."""
    return max(_LEAST, words(text) * 60.0 / rate)


def words(text: str) -> int:
    """How many words are said: a number is read digit by digit, its point with them."""
    return sum(len(each) if _NUMBER.search(each) else 1 for each in _WORD.findall(text))


def _ms(second: float) -> int:
    return round(second * 1000)


def _time(milliseconds: int) -> str:
    rest, thousandths = divmod(milliseconds, 1000)
    minutes, second = divmod(rest, 60)
    hours, minute = divmod(minutes, 60)
    return f"{hours:02d}:{minute:02d}:{second:02d}.{thousandths:03d}"


def _escaped(text: str) -> str:
    """Text on one line in which nothing is a tag, a reference or an arrow between times."""
    words = one_line(text).replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")
    return " ".join(words.split()) or "\u2026"


def total(lesson: Lesson, rate: float = RATE) -> float:
    """The seconds that all of it takes without marks."""
    last: Sequence[Cue] = list(cues(lesson, None, rate))[-1:]
    return last[0].end / 1000 if last else 0.0
