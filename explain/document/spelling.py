"""How words are spelled that Britain and America spell in two ways: sentences are written in one, and put into the
other at the end. Knows no mechanics; names and what people typed are left as they are.
"""

from __future__ import annotations

import re
from collections.abc import Container, Iterable, Mapping
from dataclasses import replace
from functools import lru_cache
from typing import Any

from .passage import (
    Answer,
    Axis,
    Blanks,
    Bullets,
    Caution,
    Curve,
    Derivation,
    Emphasis,
    Heading,
    Inline,
    Judged,
    Line,
    Paragraph,
    Passage,
    Picture,
    Plot,
    Reference,
    Space,
    Strong,
    Table,
    Text,
)

SPELLINGS = ("British", "American")
AMERICAN: Mapping[str, str] = {
    "anticlockwise": "counterclockwise",
    "behaviour": "behavior",
    "cancelled": "canceled",
    "cancelling": "canceling",
    "catalogue": "catalog",
    "centre": "center",
    "centred": "centered",
    "centres": "centers",
    "colour": "color",
    "colours": "colors",
    "emphasised": "emphasized",
    "favour": "favor",
    "fibre": "fiber",
    "fibres": "fibers",
    "grey": "gray",
    "judgement": "judgment",
    "labelled": "labeled",
    "levelled": "leveled",
    "licence": "license",
    "metre": "meter",
    "metres": "meters",
    "mislabelled": "mislabeled",
    "modelled": "modeled",
    "modelling": "modeling",
    "neighbour": "neighbor",
    "neighbouring": "neighboring",
    "neighbours": "neighbors",
    "organised": "organized",
    "recognised": "recognized",
    "towards": "toward",
    "travelled": "traveled",
} | {
    f"{prefix}metre{plural}": f"{prefix}meter{plural}"
    for prefix in ("centi", "deci", "kilo", "milli")
    for plural in ("", "s")
}
_WORDS = "|".join(sorted(AMERICAN, key=len, reverse=True))


class Spelling:
    """The spelling of one class; `names` are what its author wrote, which stays."""

    def __init__(self, spelling: str, names: Iterable[str] = ()) -> None:
        self._change = spelling == "American"
        kept = frozenset(name for name in names if self._change and _pattern(frozenset()).search(name))
        self._pattern = _pattern(kept) if self._change else None

    def text(self, text: str) -> str:
        """A text of ours in this spelling."""
        return text if self._pattern is None else self._pattern.sub(_american, text)

    def record(self, value: Any, keys: Container[str], said: bool = False) -> Any:
        """A record for JSON with the texts under these keys, and in lists under them, in this spelling."""
        match value:
            case dict():
                return {key: self.record(each, keys, key in keys) for key, each in value.items()}
            case list() | tuple():
                return [self.record(each, keys, said) for each in value]
            case str():
                return self.text(value) if said else value
        return value

    def passages(self, passages: Iterable[Passage]) -> tuple[Passage, ...]:
        """Passages in this spelling; an author's prose and the lines that somebody typed stay as they are."""
        return tuple(map(self.passage, passages)) if self._change else tuple(passages)

    def passage(self, passage: Passage) -> Passage:
        if not self._change:
            return passage
        match passage:
            case Heading() | Paragraph() | Answer() | Caution():
                return replace(passage, line=self._line(passage.line))
            case Derivation(rows):
                own = (replace(row, label=self._line(row.label), note=self._line(row.note)) for row in rows)
                return Derivation(tuple(own))
            case Blanks(reasons):
                return Blanks(self._lines(reasons))
            case Bullets(items):
                return Bullets(self._lines(items))
            case Table(caption, header, rows, right):
                return Table(self.text(caption), self._lines(header), tuple(map(self._lines, rows)), right)
            case Picture(drawing, title, description, caption):
                return Picture(drawing, self.text(title), self.text(description), self._line(caption))
            case Plot():
                return self._plot(passage)
            case Space(title, height, checklist):
                return Space(self.text(title), height, self._lines(checklist))
            case Judged(caption, lines):
                judged = (replace(each, word=self.text(each.word), notes=self._lines(each.notes)) for each in lines)
                return Judged(self.text(caption), tuple(judged))
        return passage

    def _plot(self, plot: Plot) -> Plot:
        return replace(
            plot,
            title=self.text(plot.title),
            description=self.text(plot.description),
            x=Axis(self.text(plot.x.title), plot.x.unit),
            y=Axis(self.text(plot.y.title), plot.y.unit),
            curves=tuple(Curve(self.text(each.name), each.points) for each in plot.curves),
            caption=self._line(plot.caption),
        )

    def _lines(self, lines: Iterable[Line]) -> tuple[Line, ...]:
        return tuple(map(self._line, lines))

    def _line(self, line: Line) -> Line:
        return tuple(map(self._inline, line))

    def _inline(self, piece: Inline) -> Inline:
        match piece:
            case Text(text) | Strong(text) | Emphasis(text) | Reference(text):
                return replace(piece, text=self.text(text))
        return piece


@lru_cache(maxsize=64)
def _pattern(kept: frozenset[str]) -> re.Pattern[str]:
    """Names that are kept, or else one of the words that are spelled in two ways."""
    names = "|".join(sorted(map(re.escape, kept), key=len, reverse=True))
    return re.compile(rf"(?P<name>{names})|\b(?:{_WORDS})\b" if names else rf"\b(?:{_WORDS})\b", re.IGNORECASE)


def _american(found: re.Match[str]) -> str:
    if found.groupdict().get("name"):
        return found[0]
    word = AMERICAN[found[0].casefold()]
    return word.capitalize() if found[0][0].isupper() else word
