"""A lesson as a tagged PDF: a board a page, 16 to 9, with an outline; or four boards a sheet with room for notes.

Knows no mechanics.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from hashlib import sha256

from ...document.board import Board, Lesson
from ...document.passage import Line, Picture, Plot, Row
from ...equation.terms import Equation, Terms
from ...formula.mathml import mathml_row
from ...formula.speech import speech_row
from ..derivation_margin import at_margin
from ..figure.board_figure import charted, grown
from ..figure.free_body import Layout
from ..html.elements import elements, line, text
from .figure_image import FigureImage
from .glyph_outlines import EM
from .pages import kept_inks, ready
from .paper_markup import Paper
from .weasy_fetch import SCHEME

_WHOLE, _BESIDE, _SMALLER = 38.8, 19.2, 1.25  # the width of words in em, and how many more smaller type has
_MARK = 1.5  # em before and behind a line for its mark
_LEFT = 7.0  # a left side wider than this begins at the margin
_FIGURE = (20.4, 19.6)  # the room for a figure in em
_PLOT = (38.8, 18.4)
_RULED = 8  # lines beside a board: a shading would lose some of them on paper
_SHEET = 4  # boards a sheet of a handout
_LONG = 56  # letters of a heading in smaller type


def pdf_boards(lesson: Lesson, handout: bool = False) -> bytes:
    """The whole document. Raises `pages.NoPaper` without Pango."""
    ready()
    from .weasy import printed

    paper = Paper(True, kept_inks())
    count = len(lesson.boards)
    boards = [_section(board, number, count, paper) for number, board in enumerate(lesson.boards, 1)]
    if handout:
        notes = '<div class="notes"><p>Notes</p>' + "<div></div>" * _RULED + "</div>"
        boards = [
            '<div class="four">'
            + "".join(f'<div class="pair">{each}{notes}</div>' for each in boards[start : start + _SHEET])
            + "</div>"
            for start in range(0, count, _SHEET)
        ]
    markup = (
        f'<!DOCTYPE html><html lang="{text(lesson.language)}"><head><meta charset="utf-8">'
        f"<title>{text(lesson.title)}</title></head><body>{''.join(boards)}</body></html>"
    )
    styles = ("html/board.css", "board-paper.css", *(("board-handout.css",) if handout else ()))
    return printed(markup, paper, *styles)


def _section(board: Board, number: int, of: int, paper: Paper) -> str:
    rank = 1 if number == 1 else 2
    size = _SMALLER if board.tight else 1.0
    wide = (_WHOLE if board.picture is None else _BESIDE) * size
    hand = _BoardPaper(replace(paper, sentence=wide), wide, board.squeeze)
    words = "".join(each for passage in board.passages for each in elements(passage, hand))
    figure = "" if board.picture is None else f'<div class="figure">{_drawn(board, board.picture, paper)}</div>'
    label = board.chapter or (board.part if board.label == board.part else f"{board.part}: {board.label}")
    style = f"part {'chapter' if board.chapter else 'page'}{' long' if len(board.part) > _LONG else ''}"
    return (
        f'<section class="board"><div class="face{" tight" if board.tight else ""}">'
        f'<h{rank} class="{style}" data-label="{text(" ".join(label.split()))}">{text(board.part)}</h{rank}>{figure}'
        f'<div class="words{"" if board.picture else " whole"}">{words}</div>'
        f'<p class="number">{number} / {of}</p></div></section>'
    )


def _drawn(board: Board, picture: Picture, paper: Paper) -> str:
    told = grown(picture, board.shown)
    words = f"{told.title}. {told.description}".strip()
    return _image(told.layout, repr((picture.drawing, board.shown)), words, paper, _FIGURE)


def _image(laid: Layout, what: str, words: str, paper: Paper, room: tuple[float, float]) -> str:
    """A figure as large as its room lets it be, in the middle of it."""
    name = sha256(f"board {what}".encode(errors="backslashreplace")).hexdigest()[:20]
    paper.images.setdefault(SCHEME + name, FigureImage(name, laid))
    wide, high = room
    scale = min(wide / laid.view.width, high / laid.view.height)
    across, down = laid.view.width * scale, laid.view.height * scale
    style = f"width:{across:.3f}em;height:{down:.3f}em;margin:{(high - down) / 2:.3f}em {(wide - across) / 2:.3f}em"
    return f'<img src="{SCHEME}{name}" alt="{text(words)}" style="{style}">'


@dataclass(frozen=True, slots=True)
class _BoardPaper:
    """Sets derivations for a width in em, their newest line marked; all else as every page does."""

    paper: Paper
    wide: float
    squeeze: float

    def heard(self, cell: Line) -> str:
        return self.paper.heard(cell)

    def formula(self, of: Terms | Equation) -> str:
        return self.paper.formula(of)

    def figure(self, picture: Picture | Plot, caption: str) -> str:
        words = f"{picture.title}. {picture.description}".strip()
        return _image(charted(picture), repr(picture), words, self.paper, _PLOT)

    def derivation(self, rows: Sequence[Row]) -> str:
        laid = [self.paper.laid(row, first=not place) for place, row in enumerate(rows)]
        room = self.wide / self.squeeze - _MARK
        lefts = (each.left.advance / EM for each in laid if not at_margin(each.row))
        equals = max((each for each in lefts if each <= _LEFT), default=0.0)
        items = []
        for place, each in enumerate(laid):
            drawn = each.drawn(equals, room)
            markup = f"board {equals} {room} {mathml_row(each.row, True, self.paper.strokes)}"
            image = self.paper.image(markup, drawn, speech_row(each.row))
            label = f'<div class="label">{line(each.row.label, self)}</div>' if each.row.label else ""
            note = f'<div class="note">{line(each.row.note, self)}</div>' if each.row.note else ""
            style = ' class="newest"' if place == len(laid) - 1 else ""
            items.append(f"<li{style}>{label}{image}{note}</li>")
        small = f' style="font-size:{self.squeeze:.3f}em"' if self.squeeze < 1.0 else ""
        return f'<ol class="lines"{small}>{"".join(items)}</ol>'
