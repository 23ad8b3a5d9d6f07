"""A page as plain text for a terminal: wrapped, aligned, without a single escape sequence. Knows no mechanics."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ...document.passage import (
    Answer,
    Blanks,
    Bullets,
    Caution,
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
    Space,
    Table,
    Text,
)
from ...document.untrusted_text import one_line
from ..terminal_columns import GLUE, grid, padded, width_of, wrapped
from ..marked_lines import rows_of_text
from ...formula.plain import plain
from ..figure.plot import rows as plot_rows
from ...document.author_markdown import prose
from .derivation import derivation

_UNDERLINES = "=-~"
_NARROWEST = 24
_RULE = 20  # of an empty line
_WHOLE = 24  # a formula up to this width is kept on one line


def text(page: Page, width: int = 80) -> str:
    """A page as text of at most `width` columns (at least 24), ending in a line end.

    The page's title heads it unless the page begins with a heading of level 1; a picture is its description.
    """
    width = max(width, _NARROWEST)
    first = page.passages[0] if page.passages else None
    titled = isinstance(first, Heading) and first.level == 1
    passages = page.passages if titled else (Heading(1, (Text(page.title),)), *page.passages)
    blocks = ("\n".join(lines) for passage in passages for lines in _blocks(passage, width))
    return "\n\n".join(block for block in blocks if block.strip()) + "\n"


def line_text(line: Line) -> str:
    """A line as plain text; inside its formulas a glued space stands wherever they should not be broken."""
    return "".join(_glued(plain(piece.of)) if isinstance(piece, Maths) else one_line(piece.text) for piece in line)


def _glued(formula: str) -> str:
    if width_of(formula) <= _WHOLE:
        return formula.replace(" ", GLUE)
    return re.sub(" (?![=≈≤≥+−×] )", GLUE, formula)


def _blocks(passage: Passage, width: int) -> Iterator[list[str]]:
    match passage:
        case Heading(level, line):
            yield _heading(level, line_text(line), width)
        case Paragraph(line):
            yield wrapped(line_text(line), width)
        case Prose(source):
            for inner in prose(source):
                yield from _blocks(inner, width)
        case Derivation(rows):
            words = [(line_text(row.label), line_text(row.note)) for row in rows]
            yield list(derivation(rows, words, width))
        case Blanks(reasons):
            yield [
                part
                for each in reasons
                for part in (*wrapped(line_text(each), width - 4), "", f"    {'_' * _RULE}", "")
            ]
        case Answer(line):
            yield _boxed(wrapped(line_text(line), width - 4))
        case Bullets(items):
            yield [part for item in items for part in wrapped("- " + line_text(item), width, "  ")]
        case Table():
            yield _table(passage, width)
        case Caution(line):
            yield wrapped("! " + line_text(line), width, "  ")
        case Picture():
            yield wrapped(f"[{one_line(passage.title)}: {one_line(passage.description)}]", width)
            yield wrapped(line_text(passage.caption), width)
        case Plot():
            yield wrapped(f"[{one_line(passage.title)}: {one_line(passage.description)}]", width)
            if not passage.tabled:
                cells = [[one_line(cell) for cell in row] for row in plot_rows(passage)]
                yield list(grid(cells, frozenset(range(1, len(cells[0]))), width))
            yield wrapped(line_text(passage.caption), width)
        case Judged(caption, lines):
            judged = [(each, [line_text(note) for note in each.notes]) for each in lines]
            yield [*wrapped(one_line(caption), width), "", *rows_of_text(judged, width)]
        case Space(title, _, checklist):
            yield wrapped(one_line(title), width)
            yield [part for item in checklist for part in wrapped("[ ] " + line_text(item), width, "    ")]


def _heading(level: int, words: str, width: int) -> list[str]:
    lines = wrapped(words, width)
    underline = _UNDERLINES[min(max(level, 1), len(_UNDERLINES)) - 1]
    return [*lines, underline * max(map(width_of, lines))]


def _boxed(lines: list[str]) -> list[str]:
    size = max(map(width_of, lines))
    rule = "─" * (size + 2)
    return [f"┌{rule}┐", *(f"│ {padded(line, size)} │" for line in lines), f"└{rule}┘"]


def _table(table: Table, width: int) -> list[str]:
    columns = max(map(len, (table.header, *table.rows)))
    if not columns:
        return []
    cells = [[line_text(cell) for cell in row] + [""] * (columns - len(row)) for row in (table.header, *table.rows)]
    caption = [*wrapped(one_line(table.caption), width), ""] if table.caption else []
    return caption + list(grid(cells, table.right, width))
