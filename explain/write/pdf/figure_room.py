"""How much of its sheet is left for a figure, by estimate from the stylesheet for paper. Knows no figure, and lays
nothing out.

A figure that does not fit goes on to the next sheet and leaves the rest of its own blank, so it had better be drawn a
little smaller.
For that an estimate will do: it counts letters and rows, and puts them rather too high.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import ceil

from ...equation.terms import Quotient, leaves
from ...document.passage import (
    Blanks,
    Bullets,
    Derivation,
    Heading,
    Judged,
    Line,
    Maths,
    Page,
    Paragraph,
    Passage,
    Picture,
    Plot,
    Prose,
    Row,
    Space,
    Table,
)
from ...formula.plain import plain
from ...document.author_markdown import prose

SHEETS = {"A4": 252.0, "letter": 234.0}  # the height of a sheet between its margins; all lengths are millimetres
_SLACK = 2.0
_TITLE, _TEXT, _NOTE = (8.5, 43), (5.52, 95), (4.55, 112)  # the height of a line and the letters in it
_HEADING = 14.0
_BELOW = 2.2  # a paragraph
_CELL, _CELL_LETTERS = 6.2, 66
_TABLE = 12.0  # its caption and the space around it
_ROW, _TALL = 6.0, 10.5
_DERIVATION = 6.0
_RULED = 12.0  # an empty line to write on
_SPACE = 11.0  # over a blank space, with its title
_FIGURE = 5.5  # the space over a figure and over its caption, and its frame


def room(page: Page) -> float:
    """The height left for the first picture of a page on its sheet, its caption beneath it allowed for, in mm; below
    0 for none.
    """
    sheet = SHEETS[page.paper]
    used = 0.0 if _titled(page) else 8.0 + _lines(len(page.title), *_TITLE)
    for passage in page.passages:
        if isinstance(passage, Picture | Plot):
            return sheet - _SLACK - used - _FIGURE - _lines(_length(passage.caption), *_NOTE)
        used = (used + _height(passage)) % sheet
    return 0.0


def figure_on_first_sheet(page: Page, least: float, start: int = 0) -> tuple[Page, float]:
    """The page, and the room for its first figure as `room` tells it. Where the figure, drawn at `least` mm high, would
    only come on a later sheet, it stands before the table of what is given: small enough for the table to end on the
    first sheet, if it can be read then. What stands before the passage `start` keeps its place.
    """
    places = range(start, len(page.passages))
    figure = next((place for place in places if isinstance(page.passages[place], Picture)), 0)
    table = next((place for place in places if isinstance(page.passages[place], Table) and place < figure), figure)
    if table == figure or _room_at(page, figure) >= least:
        return page, room(page)
    ahead = _room_at(page, table, figure)
    if ahead < least:
        return page, room(page)
    given = page.passages[table:figure]
    order = (*page.passages[:table], page.passages[figure], *given, *page.passages[figure + 1 :])
    with_table = ahead - _height(page.passages[table])
    return replace(page, passages=order), with_table if with_table >= least else ahead


def _room_at(page: Page, place: int, figure: int | None = None) -> float:
    """The height left of the first sheet for a figure at a place among the passages; below 0 for none."""
    picture = page.passages[place if figure is None else figure]
    assert isinstance(picture, Picture)
    used = 0.0 if _titled(page) else 8.0 + _lines(len(page.title), *_TITLE)
    used += sum(map(_height, page.passages[:place]))
    return SHEETS[page.paper] - _SLACK - used - _FIGURE - _lines(_length(picture.caption), *_NOTE)


def left(passages: Sequence[Passage], paper: str = "A4") -> float:
    """The height that these passages leave of the last sheet they reach, in mm."""
    used, sheet = 0.0, SHEETS[paper]
    for passage in passages:
        height = _height(passage)
        whole = isinstance(passage, Space) and used + height > sheet
        used = height if whole else (used + height) % sheet
    return sheet - _SLACK - used


def _titled(page: Page) -> bool:
    match page.passages:
        case (Heading(level=1), *_):
            return True
    return False


def _height(passage: Passage) -> float:
    match passage:
        case Heading(1, line):
            return 8.0 + _lines(_length(line), *_TITLE)
        case Heading():
            return _HEADING
        case Prose(markdown):
            return sum(map(_height, prose(markdown)))
        case Bullets(items):
            return sum(_lines(_length(item), *_TEXT) for item in items) + _BELOW
        case Table(_, header, rows):
            return _TABLE + sum(_cells(row) for row in (header, *rows))
        case Derivation(rows):
            return _DERIVATION + sum(_TALL if _stacked(row) else _ROW for row in rows)
        case Judged(_, lines):
            return _TABLE + sum(_CELL * (1 + ceil(len(each.typed) / _CELL_LETTERS) + len(each.notes)) for each in lines)
        case Blanks(reasons):
            return sum(_RULED + _lines(_length(each), *_NOTE) for each in reasons)
        case Space(_, height):
            return height + _SPACE
        case Paragraph(line):
            return _lines(_length(line), *_TEXT) + _BELOW
    return 4 * _TEXT[0]


def _lines(letters: int, high: float, wide: int) -> float:
    return high * max(ceil(letters / wide), 1)


def _cells(row: tuple[Line, ...]) -> float:
    return _CELL * max((ceil(_length(cell) / _CELL_LETTERS) for cell in row), default=1)


def _stacked(row: Row) -> bool:
    return any(
        isinstance(leaf, Quotient) for side in (row.left, *(side for _, side in row.right)) for leaf in leaves(side)
    )


def _length(line: Line) -> int:
    return sum(len(plain(piece.of)) if isinstance(piece, Maths) else len(piece.text) for piece in line)
