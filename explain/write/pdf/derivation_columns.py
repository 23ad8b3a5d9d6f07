"""Where the columns of a derivation stand on paper: labels, equals signs and notes. Knows widths, and no page."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil
from typing import NamedTuple

from ...document.passage import Line, Maths, Row
from .formula_breaks import Formula, set_row
from ..derivation_margin import at_margin
from ...formula.plain import plain
from .glyph_outlines import EM, Ink

MEASURE = 40.2  # the width of a derivation with its notes, in em of the text: that of the page but for its margin
_LEFT = 10.0  # a left side wider than this begins at the margin, whatever its equals sign stands under
_NOTES = (0.5, 0.58, 0.66)  # where notes may begin, as shares of the measure
_GAP = 1.6  # before a note, at least
_NOTE_LINE, _NOTE_LETTER = 1.05, 0.385
_FORMULA, _UNDER = 3.0, 10.0  # what a formula counts, and a note that does not stand beside its row
_LETTER, _CAPITAL = 0.5, 0.75  # what a letter of a label takes
_LABEL = 9.0  # a label is broken there
_MARGIN = -1.0  # a column that no left side ends at


class Set(NamedTuple):
    """A row with its formulas laid out on one line each, before they are put in columns."""

    row: Row
    left: Formula
    links: tuple[Formula, ...]

    def drawn(self, column: float, room: float) -> Ink:
        """Its left side ending at the column, or beginning at the margin if the row does not fit else; all in em."""
        placed = set_row(self.left, self.links, _MARGIN if at_margin(self.row) else column * EM, room * EM)
        return placed if placed.advance <= room * EM else set_row(self.left, self.links, _MARGIN, room * EM)


class Columns(NamedTuple):
    """The width of the labels, and behind them the places of the equals signs and of the notes, in em."""

    label: float
    equals: float
    note: float

    @property
    def whole(self) -> float:
        """The room for a row without its label."""
        return MEASURE - self.label

    def room(self, row: Row) -> float:
        """The room for a formula."""
        return self.note - _GAP if row.note else self.whole


def columns(rows: Sequence[Set]) -> Columns:
    """Equals signs stand as far right as a left side needs that is not wide; notes in one column, behind all rows that
    have one.

    Rows that say that a sum is zero are long as a rule, so they begin at the margin and move no other row to the right.
    """
    label = max((_label(each.row.label) for each in rows), default=0.0)
    widest = Columns(label, 0.0, _NOTES[-1] * (MEASURE - label))
    widest = widest._replace(equals=_equals([each for each in rows if not at_margin(each.row)], widest))
    choice = (widest._replace(note=share * widest.whole) for share in _NOTES)
    return min(choice, key=lambda each: _cost(rows, each))


def _equals(rows: Sequence[Set], within: Columns) -> float:
    """The widest left side behind which every right side still fits, else the narrowest."""
    lefts = sorted({each.left.advance / EM for each in rows if each.left.advance <= _LEFT * EM}, reverse=True)

    def fit(column: float) -> bool:
        aligned = (each for each in rows if each.left.advance <= column * EM)
        return all(column + link.advance / EM <= within.room(each.row) for each in aligned for link in each.links)

    return next(filter(fit, lefts), lefts[-1] if lefts else 0.0)


def _cost(rows: Sequence[Set], at: Columns) -> float:
    """What formulas and notes take in height, one after the other, in em; a formula counts more, since it is read
    worse when broken.
    """
    cost = 0.0
    for each in rows:
        if each.row.note:
            room = at.room(each.row)
            drawn = each.drawn(at.equals, room)
            lines = ceil(len(_words(each.row.note)) * _NOTE_LETTER / (at.whole - at.note))
            cost += (
                _FORMULA * (drawn.rise + drawn.drop) / EM + _NOTE_LINE * lines + _UNDER * (drawn.advance > room * EM)
            )
    return cost


def _label(label: Line) -> float:
    """What a label takes, generously; a long one is broken."""
    words = _words(label)
    wide = sum(_CAPITAL if letter.isupper() else _LETTER for letter in words)
    return min(ceil(2 * wide + 2) / 2, _LABEL) if words else 0.0


def _words(line: Line) -> str:
    return "".join(plain(piece.of) if isinstance(piece, Maths) else piece.text for piece in line)
