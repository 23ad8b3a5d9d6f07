"""A derivation on a terminal: equals signs under each other, the reasons at the right where there is room, else
beneath.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from ...document.passage import Row
from ..terminal_columns import GLUE, padded, width_of, wrapped
from ..derivation_margin import at_margin
from ...formula.plain import plain_rows

_INDENT = 4
_GAP = 3
_NOTE_ROOM = 24  # narrower reasons than this read badly in a column


class _Set(NamedTuple):
    """A row as it is set: its label, its formula in lines, its note, and whether the note stands beside the formula."""

    label: str
    lines: list[str]
    note: str
    beside: bool


class _Sides(NamedTuple):
    """What stands before and behind the first relation of a row, and whether the row begins at the margin whatever
    its width.
    """

    left: str
    rest: str
    flush: bool


def derivation(rows: Sequence[Row], words: Sequence[tuple[str, str]], width: int) -> Iterator[str]:
    """The lines of a derivation; `words` holds label and note of every row as text."""
    margin = max((width_of(label) + 2 for label, _ in words if label), default=0)
    if margin > width // 3:
        words, margin = [("", f"{label} {note}".strip()) for label, note in words], 0
    room = width - _INDENT - margin
    sides = [_Sides(*each, at_margin(row)) for row, each in zip(rows, plain_rows(rows), strict=True)]
    placed = _placed(sides, words, room)
    formulas = max((width_of(line) for row in placed if row.beside for line in row.lines), default=0)
    for row in placed:
        yield from _row(row, margin, _INDENT + margin + formulas + _GAP, width)


def _placed(sides: Sequence[_Sides], words: Sequence[tuple[str, str]], room: int) -> list[_Set]:
    """The rows with their notes beside them where most fit there, else set as if there were no notes."""
    close = room - _GAP - _NOTE_ROOM
    column = _column(sides, close)
    placed = [_set(each, column, room, close, *said) for each, said in zip(sides, words, strict=True)]
    if 2 * sum(row.beside for row in placed) >= sum(bool(row.note) for row in placed) > 0:
        return placed
    column = _column(sides, room)
    return [_set(each, column, room, 0, *said) for each, said in zip(sides, words, strict=True)]


def _set(sides: _Sides, column: int, room: int, close: int, label: str, note: str) -> _Set:
    lines = _formula(sides, column, room)
    return _Set(label, lines, note, bool(note) and max(map(width_of, lines)) <= close)


def _column(sides: Sequence[_Sides], room: int) -> int:
    """Where the relations stand: as far right as the widest left side, but not so far that a right side would not
    fit.
    """
    aligned = [each for each in sides if not each.flush]
    lefts = sorted({width_of(each.left) for each in aligned}, reverse=True)
    fitting = (
        column
        for column in lefts
        if all(column + 1 + width_of(each.rest) <= room for each in aligned if width_of(each.left) <= column)
    )
    return next(fitting, 0)


def _formula(sides: _Sides, column: int, room: int) -> list[str]:
    """Left side and the rest in lines; a left side wider than the column starts at the margin and is not aligned."""
    left, rest, flush = sides
    aligned = not flush and width_of(left) <= column
    whole = f"{padded(left, column, right=True)} {rest}" if aligned else f"{left} {rest}".strip()
    if width_of(whole) <= room:
        return [whole]
    return wrapped(re.sub(" (?![=≈≤≥+−×] )", GLUE, f"{left} {rest}".strip()), room, "    ")


def _row(row: _Set, margin: int, beside: int, width: int) -> Iterator[str]:
    head, rest = " " * _INDENT + padded(row.label, margin), " " * (_INDENT + margin)
    lines = [(rest if place else head) + line for place, line in enumerate(row.lines)]
    if row.beside:
        notes = wrapped(row.note, width - beside)
        for place in range(max(len(lines), len(notes))):
            line, note = (part[place] if place < len(part) else "" for part in (lines, notes))
            yield (padded(line, beside) + note).rstrip()
        return
    yield from (line.rstrip() for line in lines)
    if row.note:
        yield from (rest + " " * 4 + line for line in wrapped(row.note, width - len(rest) - 4))
