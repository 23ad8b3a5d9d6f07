"""A lesson as one HTML file: a board a page, turned by keys where its one script runs, one long page where it does not.
Nothing is fetched. Knows no mechanics.
"""

from __future__ import annotations

from base64 import b64encode
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from hashlib import sha256
from importlib.resources import files
from itertools import count

from ...document.board import Board, Lesson
from ...document.passage import Line, Passage, Picture, Plot, Row
from ...equation.terms import Equation, Terms
from ..figure.board_figure import charted, grown
from ..figure.forces import PAPER
from ..figure.svg import svg
from .elements import elements, line, text
from .pages import Screen, bare_head

_SHORT = 12  # letters of a formula that fits beside a figure whatever stands before it
NEW = "New: "  # what is said of the newest line to those who do not see its mark


def html_boards(lesson: Lesson, handout: bool = False) -> str:
    """The whole document; a `handout` has four boards a sheet with room for notes, and no script."""
    style = _file("board.css") + (_file("handout.css") if handout else _file("board-screen.css"))
    script = "" if handout else _file("board.js")
    print_of = b64encode(sha256(script.encode()).digest()).decode()
    allowed = f"; script-src 'sha256-{print_of}'" if script else ""
    hand = _BoardScreen(Screen(strokes=True, short=_SHORT))
    boards = "".join(
        section(board, number, len(lesson.boards), hand, handout) for number, board in enumerate(lesson.boards, 1)
    )
    return "".join(
        (
            bare_head(lesson.language, lesson.title, style, allowed),
            f"<main>\n{boards}</main>\n",
            f"<script>{script}</script>\n" if script else "",
            "</body>\n</html>\n",
        )
    )


def section(board: Board, number: int, of: int, hand: _BoardScreen, handout: bool = False) -> str:
    """One board as an element."""
    rank = 1 if number == 1 else 2
    notes = '<div class="notes"><p>Notes</p></div>' if handout else ""
    long = " long" if len(board.part) > 56 else ""
    face = (
        f'<div class="face{" tight" if board.tight else ""}">'
        f'<h{rank} id="head-{number}" class="part{long}">{text(board.part)}</h{rank}>{_inner(board, number, hand)}'
        f'<p class="number"><span class="heard">Page </span>{number} / {of}</p></div>'
    )
    return (
        f'<article class="board" id="page-{number}" aria-labelledby="head-{number}" tabindex="-1">{face}</article>'
        f"{notes}\n"
    )


def _inner(board: Board, number: int, hand: _BoardScreen) -> str:
    hand = replace(hand, squeeze=board.squeeze)
    words = "".join(each for passage in board.passages for each in hand.passage(passage))
    if board.picture is None:
        return f'<div class="words whole">{words}</div>'
    laid = grown(board.picture, board.shown)
    title, told = laid.title, laid.description
    drawing = svg(laid.layout.view, laid.layout.shapes, laid.layout.labels, f"board-{number}", title, told, PAPER)
    return f'<div class="figure"><div class="sheet">{drawing}</div></div><div class="words">{words}</div>'


@dataclass(frozen=True, slots=True)
class _BoardScreen:
    """Sets derivations with their newest line marked; all else as every page does."""

    screen: Screen
    figures: Iterator[int] = field(default_factory=lambda: count(1))
    squeeze: float = 1.0

    def passage(self, passage: Passage) -> Iterator[str]:
        yield from elements(passage, self)

    def heard(self, cell: Line) -> str:
        return self.screen.heard(cell)

    def formula(self, of: Terms | Equation) -> str:
        return self.screen.formula(of)

    def figure(self, picture: Picture | Plot, caption: str) -> str:
        laid, name = charted(picture), f"plot-{next(self.figures)}"
        drawing = svg(laid.view, laid.shapes, laid.labels, name, picture.title, picture.description, PAPER)
        return f'<div class="sheet">{drawing}</div>{caption}'

    def derivation(self, rows: Sequence[Row]) -> str:
        last = len(rows) - 1
        items = "".join(self._row(row, newest=place == last, first=not place) for place, row in enumerate(rows))
        small = f' style="font-size:{self.squeeze:.3f}em"' if self.squeeze < 1.0 else ""
        return (
            '<div class="wide" tabindex="0" role="group" aria-label="Lines of working">'
            f'<ol role="list" class="lines"{small}>{items}</ol></div>'
        )

    def _row(self, row: Row, newest: bool, first: bool) -> str:
        label = f'<div class="label">{line(row.label, self)}</div>' if row.label else ""
        note = f'<div class="note">{line(row.note, self)}</div>' if row.note else ""
        heard = f'<span class="heard">{NEW}</span>' if newest else ""
        style = ' class="newest"' if newest else ""
        return f"<li{style}>{heard}{label}{self.screen.row(row, first)}{note}</li>"


def _file(name: str) -> str:
    return (files(__package__) / name).read_text(encoding="utf-8")
