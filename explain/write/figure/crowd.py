"""Many forces side by side: numbers in place of their letters, and a key that says which force and distance a number
means. Knows no mechanics.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import replace
from math import ceil
from typing import NamedTuple

from ...equation.terms import Quantity, term
from ...document.passage import Arrow, Drawing, Span
from .body import INK
from .forces import LOOKS, NUMBER
from .outlines import Outline, letters, words
from .shapes import Box, unit
from .labels import Label

MANY = 14  # so many forces side by side are a crowd
_ROOM = 15.0  # pixels from one number to the next
_WIDE = 400.0  # pixels that a crowd may span
_EVERY = (1, 2, 5, 10, 20, 50)
_SIZE, _BETWEEN, _COLUMN, _LINE = (
    11.0,
    5.0,
    16.0,
    6.0,
)  # of the key: its letters, and the pixels between letters, columns and lines


class Entry(NamedTuple):
    """A line of the key: what the number means."""

    number: int
    arrow: Arrow
    distance: Span | None


class Crowd(NamedTuple):
    """A drawing with numbers at the forces that stand side by side, and its key; `heading` says how they are
    counted.
    """

    drawing: Drawing
    entries: tuple[Entry, ...] = ()
    heading: str = ""


def crowd(drawing: Drawing) -> Crowd:
    """The drawing as it is, or with numbers where very many forces stand side by side; of a long row only every
    second, fifth, ... has its own.
    """
    beside = defaultdict(list)
    angles = {opening.at for opening in drawing.openings}
    for arrow in drawing.arrows:
        if arrow.kind != "joint" and not arrow.arm and not arrow.toward and arrow.at not in angles:
            beside[round(arrow.direction % 180.0, 3)].append(arrow)
    turn, arrows = max(beside.items(), key=lambda each: len(each[1]), default=(0.0, []))
    if len(arrows) < MANY:
        return Crowd(drawing)
    entries = _entries(arrows, drawing, turn)
    every = next((every for every in _EVERY if every * _WIDE / len(entries) >= _ROOM), _EVERY[-1])
    written = {
        id(each.arrow): replace(
            each.arrow, letter=(term(Quantity.of(str(each.number))),) if each.number % every == 0 else ()
        )
        for each in entries
    }
    listed = {id(each.distance) for each in entries}
    return Crowd(
        replace(
            drawing,
            arrows=tuple(written.get(id(arrow), arrow) for arrow in drawing.arrows),
            spans=tuple(span for span in drawing.spans if id(span) not in listed),
        ),
        entries,
        "Counted from left to right" if 1.0 < turn < 179.0 else "Counted upwards",
    )


def _entries(arrows: Sequence[Arrow], drawing: Drawing, turn: float) -> tuple[Entry, ...]:
    """The forces in the order in which they stand, each with the distance that leads to its line where that is
    plain.
    """
    right, down = unit(turn + 90.0 if turn <= 1.0 else turn - 90.0)  # to the right, or of level forces upwards

    def place(point: tuple[float, float]) -> float:
        return round(point[0] * right - point[1] * down, 9)

    leading = defaultdict(list)
    for span in drawing.spans:
        if abs(place(span.end) - place(span.start)) > 1e-9:
            leading[place(span.end)].append(span)
    standing = defaultdict(list)
    for arrow in drawing.arrows:
        if arrow.kind != "joint":
            standing[place(arrow.at)].append(arrow)
    own = {
        id(arrow): span
        for spot, there in standing.items()
        if len(there) == len(leading[spot])
        for arrow, span in zip(there, leading[spot], strict=True)
    }
    entries = [(arrow, own.get(id(arrow))) for arrow in arrows]
    return tuple(
        Entry(number, *each) for number, each in enumerate(sorted(entries, key=lambda each: place(each[0].at)), 1)
    )


def key(of: Crowd, view: Box, margin: float) -> tuple[Label, ...]:
    """The key below a view, in columns."""
    nothing = Outline("", 0.0, 0.0)
    cells = [
        (
            words(str(each.number), NUMBER),
            letters(each.arrow.letter, _SIZE),
            letters(each.distance.label, _SIZE) if each.distance else nothing,
        )
        for each in of.entries
    ]
    wide = [max(outline.width for outline in column) for column in zip(*cells, strict=True)]
    high = max(outline.height for cell in cells for outline in cell) + _LINE
    across = sum(wide) + 2 * _BETWEEN + _COLUMN
    columns = max(1, int((max(view.width, 1.3 * _WIDE) - 2 * margin + _COLUMN) / across))
    lines = ceil(len(cells) / columns)
    heading = words(of.heading, NUMBER + 2.0)
    left, top = view.left + margin, view.bottom
    labels, top = [_at(heading, left, top, INK)], top + heading.height + 1.5 * _LINE
    for number, (cell, entry) in enumerate(zip(cells, of.entries, strict=True)):
        x, y = left + number // lines * across, top + number % lines * high
        for outline, width, ink in zip(
            cell, wide, (INK, LOOKS.get(entry.arrow.kind, LOOKS["force"]).ink, "#4a4a4a"), strict=True
        ):
            if outline.path:
                labels.append(_at(outline, x, y, ink))
            x += width + _BETWEEN
    return tuple(labels)


def _at(outline: Outline, left: float, top: float, ink: str) -> Label:
    return Label(Box(left, top, left + outline.width, top + outline.height), outline, ink)
