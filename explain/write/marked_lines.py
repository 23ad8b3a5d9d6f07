"""How a working with its verdicts is set where there are only letters: Markdown's code and rows of text. Knows no
mechanics.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from ..document.passage import JudgedLine
from ..document.untrusted_text import one_line
from .terminal_columns import beside, width_of, wrapped

HEADER = ("Line", "Verdict", "As typed, and how it was read")
_SMALL = 64  # columns below which the verdict stands above its line


def code(typed: str) -> str:
    """Typed text as code in a cell of a Markdown table: backticks and bars come through, and nothing in it is
    markup.
    """
    told = one_line(typed)
    if not told.strip():
        return ""
    fence = "`" * (max(map(len, re.findall("`+", told)), default=0) + 1)
    gap = " " if told[0] in "` " or told[-1] in "` " else ""
    return f"{fence}{gap}{told}{gap}{fence}".replace("|", "\\|")


def rows_of_text(rows: Sequence[tuple[JudgedLine, Sequence[str]]], width: int) -> Iterator[str]:
    """The lines of a working on a terminal, with their notes; a `>` stands before the one to look at."""
    numbers = [f"> {each.number}" if each.marked else f"{each.number}" for each, _ in rows]
    signs = [f"{each.sign} {each.word}" for each, _ in rows]
    if width < _SMALL:
        yield from _stacked(rows, numbers, signs, width)
        return
    first, second = (
        max((width_of(each) for each in column), default=0) for column in ([*numbers, HEADER[0]], [*signs, HEADER[1]])
    )
    second = min(second, 26)
    widths = [first, second, width - first - second - 4]
    right = frozenset((0,))
    yield from beside([[HEADER[0]], [HEADER[1]], wrapped(HEADER[2], widths[2])], widths, right)
    yield "  ".join("-" * size for size in widths)
    for (each, notes), number, sign in zip(rows, numbers, signs, strict=True):
        yield from beside([[number], wrapped(sign, second), _cell(each, notes, widths[2])], widths, right)


def _stacked(
    rows: Sequence[tuple[JudgedLine, Sequence[str]]], numbers: Sequence[str], signs: Sequence[str], width: int
) -> Iterator[str]:
    for (each, notes), number, sign in zip(rows, numbers, signs, strict=True):
        yield from wrapped(f"{number} {sign}", width)
        yield from (f"    {part}" for part in _cell(each, notes, width - 4))


def _cell(each: JudgedLine, notes: Sequence[str], width: int) -> list[str]:
    told = one_line(each.typed)
    typed = [told] if width_of(told) <= width else wrapped(told, width)
    return [*typed, *(part for note in notes for part in wrapped(note, width, "  "))]
