"""How much a board holds, by estimate from its stylesheet: lines of words, rows of formulas. Lays nothing out."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from math import ceil

from ..document.passage import (
    Answer,
    Blanks,
    Bullets,
    Caution,
    Derivation,
    Line,
    Maths,
    Paragraph,
    Passage,
    Row,
    Table,
    Text,
)
from ..equation.terms import Quotient, Term, Terms, leaves
from ..formula.plain import plain

BESIDE, WHOLE = 19.6, 39.6  # the width of the words beside a figure, and without one, in em of their type
HIGH = 17.6  # the height of what stands under the heading, in em
SMALLER = 0.8  # the smaller type, a thirtieth of the height
_LETTER, _SIGN = 0.47, 0.54  # what a letter of words takes, and one of a formula
_LINE, _ROW, _FRACTION, _GAP = 1.32, 1.75, 1.5, 0.55
_ASIDE = 22  # letters of a left side that stands in a column
_AROUND = 3.6  # the mark before a line, a relation with the space around it
_SENTENCES = re.compile(r"(?<=[.?!;]) +(?=\S)")


def width(figure: bool) -> float:
    """What words may take up across."""
    return BESIDE if figure else WHOLE


def fits(passages: Sequence[Passage], figure: bool, tight: bool = False) -> bool:
    """Whether all this stands on one board."""
    size = SMALLER if tight else 1.0
    return sum(high(each, width(figure) / size) for each in passages) * size <= HIGH


def high(passage: Passage, wide: float) -> float:
    """The height of a passage in em of its type."""
    match passage:
        case Paragraph(line) | Caution(line):
            return _LINE * _lines(line, wide) + _GAP
        case Answer(line):
            return _LINE * _lines(line, wide - 2.2) * 1.06 + 2.2
        case Bullets(items):
            return sum(_LINE * _lines(each, wide - 1.2) + _GAP for each in items)
        case Derivation(rows):
            return _rows(rows, wide) + _GAP
        case Table():
            return _table(passage, wide)
        case Blanks(reasons):
            return 3.0 * len(reasons)
    return 2.0


def broad(passages: Sequence[Passage]) -> float:
    """The width in em of the widest line that cannot be broken, because a long fraction stands in it."""
    rows = [row for each in passages if isinstance(each, Derivation) for row in each.rows]
    lefts = [_run(row.left) for row in rows if len(plain(row.left)) <= _ASIDE]
    pieces = (_run((term,)) for row in rows for _, terms in row.right for term in terms)
    across = (_run((term,)) for row in rows if len(plain(row.left)) > _ASIDE for term in row.left)
    return max(max(pieces, default=0.0) + max(lefts, default=0.0), max(across, default=0.0) + 2.0) + _AROUND


def squeeze(passages: Sequence[Passage]) -> float:
    """How much smaller than the smaller type the lines have to be so that the widest stands on a board."""
    return min(1.0, WHOLE / SMALLER / broad(passages)) if broad(passages) else 1.0


def _run(terms: Terms) -> float:
    """The width of a sum on one line; a fraction takes what its longer side takes."""
    return sum(_factors(term) for term in terms) + 2.0 * (len(terms) - 1)


def _factors(term: Term) -> float:
    stacked = [each for each in term.factors if isinstance(each, Quotient)]
    rest = Term(term.sign, tuple(each for each in term.factors if not isinstance(each, Quotient)))
    beside = len(plain((rest,))) * _SIGN if rest.factors or not stacked else 0.0
    return beside + sum(max(_run(each.top), _run(each.bottom)) for each in stacked)


def _lines(line: Line, wide: float) -> int:
    letters = sum(len(plain(each.of)) * _SIGN if isinstance(each, Maths) else len(each.text) * _LETTER for each in line)
    return max(1, ceil((letters + 1.0) / wide))


def _rows(rows: Sequence[Row], wide: float) -> float:
    last = len(rows) - 1
    return sum(_row(each, wide, noted=place == last) for place, each in enumerate(rows))


def _row(row: Row, wide: float, noted: bool) -> float:
    sides = (row.left, *(terms for _, terms in row.right))
    fraction = any(isinstance(leaf, Quotient) for terms in sides for leaf in leaves(terms))
    long = sum(len(plain(terms)) + 3 for terms in sides) * _SIGN
    lines = ceil(long / (wide - 3.4))
    note = _LINE * 0.85 * _lines(row.note, (wide - 2.0) / 0.85) if noted and row.note else 0.0
    label = _LINE * bool(row.label)
    return _ROW * lines + (_FRACTION if fraction else 0.0) + note + label


def _table(table: Table, wide: float) -> float:
    columns = max(len(row) for row in (table.header, *table.rows))
    longest = [
        max((_wide(row[place]) for row in (table.header, *table.rows) if place < len(row)), default=1.0)
        for place in range(columns)
    ]
    given = _shared(longest, wide - columns)
    rows = (
        max(ceil(_wide(cell) / given[place] - 0.02) for place, cell in enumerate(row))
        for row in (table.header, *table.rows)
    )
    return sum(_LINE * each + 0.55 for each in rows) + 2.2 * bool(table.caption)


def _shared(wanted: Sequence[float], wide: float) -> list[float]:
    """The widths of columns: narrow ones have what they want, the others share what is left."""
    given = [0.0] * len(wanted)
    left, open_ones = wide, sorted(range(len(wanted)), key=lambda place: wanted[place])
    for place in list(open_ones):
        given[place] = max(2.0, min(wanted[place], left / len(open_ones)))
        left -= given[place]
        open_ones.remove(place)
    return given


def _wide(cell: Line) -> float:
    return 0.6 + sum(
        len(plain(each.of)) * _SIGN if isinstance(each, Maths) else len(each.text) * _LETTER for each in cell
    )


def parted(passage: Passage, figure: bool) -> Iterator[Passage]:
    """A passage in pieces of which each stands on one board: words between sentences, tables and lists between rows."""
    if fits((passage,), figure):
        yield passage
        return
    match passage:
        case Paragraph(line) if all(isinstance(each, Text) for each in line):
            words = "".join(each.text for each in line if isinstance(each, Text))
            yield from (Paragraph((Text(each),)) for each in _gathered(_SENTENCES.split(words), figure))
        case Bullets(items) if len(items) > 1:
            yield from (each for item in items for each in parted(Bullets((item,)), figure))
        case Table(caption, header, rows, right) if len(rows) > 1:
            count = next(each for each in range(2, len(rows) + 1) if _apart(passage, each, figure))
            size = ceil(len(rows) / count)
            for start in range(0, len(rows), size):
                yield Table(caption, header, rows[start : start + size], right)
        case _:
            yield passage


def _apart(table: Table, count: int, figure: bool) -> bool:
    size = ceil(len(table.rows) / count)
    pieces = (
        Table(table.caption, table.header, table.rows[start : start + size], table.right)
        for start in range(0, len(table.rows), size)
    )
    return size == 1 or all(fits((each,), figure) for each in pieces)


def _gathered(sentences: Sequence[str], figure: bool) -> Iterator[str]:
    held = ""
    for each in sentences:
        if held and not fits((Paragraph((Text(f"{held} {each}"),)),), figure):
            yield held
            held = ""
        held = f"{held} {each}".strip()
    yield held
