"""A lesson as pages for a board, one idea a page: what stands on each, how far its figure has grown, what is said.

Knows no mechanics and no looks.
"""

from __future__ import annotations

from dataclasses import dataclass

from .passage import Passage, Picture


@dataclass(frozen=True, slots=True)
class Question:
    """What is put to the class before the next page, and what may be answered; "" where that page itself answers."""

    ask: str
    answer: str = ""


@dataclass(frozen=True, slots=True)
class Board:
    """One page. `part` heads it, `label` says what is new on it, `chapter` is the title of a problem that begins here.

    The last row of a derivation is its newest. `picture` shows no more than `shown` of its parts, all of them where
    that is None. `tight` asks for the smaller of two sizes of type, `squeeze` for lines smaller still. `said` are
    sentences in spoken words; `asks` come behind them.
    """

    part: str
    label: str
    passages: tuple[Passage, ...] = ()
    picture: Picture | None = None
    shown: tuple[str, ...] | None = None
    tight: bool = False
    chapter: str = ""
    squeeze: float = 1.0
    said: tuple[str, ...] = ()
    asks: tuple[Question, ...] = ()


@dataclass(frozen=True, slots=True)
class Lesson:
    """All pages in order, with the language they are in."""

    title: str
    boards: tuple[Board, ...]
    language: str = "en"
