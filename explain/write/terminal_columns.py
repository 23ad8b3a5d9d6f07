"""How wide text is on a terminal, where its lines break, and how columns stand beside each other. Knows nothing of
pages.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from unicodedata import category, east_asian_width

GLUE = "\u00a0"  # a space at which a line breaks only where it must
_GAP = 2
_NARROWEST = 8


def width_of(text: str) -> int:
    """The columns a text takes: two for a wide letter of East Asia, none for a mark set on another or a joiner."""
    return sum(_columns(letter) for letter in text)


def wrapped(text: str, width: int, hanging: str = "") -> list[str]:
    """A text in lines of at most `width` columns, the second and later ones behind `hanging`; a word that is too
    long is cut.
    """
    lines: list[str] = []
    line = ""
    for word in filter(None, text.split(" ")):
        for piece in _cut(word, max(width - len(hanging), 1)):
            if line.strip() and width_of(line) + 1 + width_of(piece) > width:
                lines.append(line)
                line = ""
            start = hanging if lines else ""
            line = f"{line} {piece}" if line else start + piece
    return [each.replace(GLUE, " ").rstrip() for each in [*lines, line]]


def padded(text: str, width: int, right: bool = False) -> str:
    """A text filled with spaces to a width, set at the left or at the right."""
    space = " " * (width - width_of(text))
    return space + text if right else text + space


def grid(rows: Sequence[Sequence[str]], right: frozenset[int], width: int) -> Iterator[str]:
    """Rows of cells in aligned columns, the first ruled off as a header; wide cells are wrapped to keep within the
    width.
    """
    widths = _shrunk([max(width_of(row[place]) for row in rows) for place in range(len(rows[0]))], width)
    for place, row in enumerate(rows):
        yield from beside([wrapped(cell, size) for cell, size in zip(row, widths, strict=True)], widths, right)
        if not place:
            yield (" " * _GAP).join("-" * size for size in widths)


def beside(cells: Sequence[Sequence[str]], widths: Sequence[int], right: frozenset[int] = frozenset()) -> Iterator[str]:
    """Blocks of lines beside each other, each as wide as its column."""
    for depth in range(max(map(len, cells))):
        lines = [cell[depth] if depth < len(cell) else "" for cell in cells]
        parts = [
            padded(line, size, place in right) for place, (line, size) in enumerate(zip(lines, widths, strict=True))
        ]
        yield (" " * _GAP).join(parts).rstrip()


def _columns(letter: str) -> int:
    if category(letter) in ("Mn", "Me", "Cf"):
        return 0
    return 2 if east_asian_width(letter) in "WF" else 1


def _cut(word: str, width: int) -> Iterator[str]:
    while width_of(word) > width:
        end = max(_reach(word, width), 1)
        glue = word.rfind(GLUE, 1, end + 1)
        end = glue if glue > 0 else end
        yield word[:end]
        word = word[end:].lstrip(GLUE)
    if word:
        yield word


def _reach(word: str, width: int) -> int:
    """How many letters of a word fit into a width."""
    used = 0
    for place, letter in enumerate(word):
        used += _columns(letter)
        if used > width:
            return place
    return len(word)


def _shrunk(widths: Sequence[int], width: int) -> list[int]:
    """Column widths that fit: the widest gives way first, none below what can still be read."""
    sizes = [max(size, 1) for size in widths]
    while sum(sizes) + _GAP * (len(sizes) - 1) > width and max(sizes) > _NARROWEST:
        sizes[sizes.index(max(sizes))] -= 1
    return sizes
