"""Words that a class may have in two ways: the spelling of Britain or America, horizontal or level, the mark of
decimals. Sentences are written in one, and put into the other at the end. Knows no mechanics; names and what people
typed are left as they are.
"""

from __future__ import annotations

import re
from collections.abc import Container, Iterable, Mapping
from dataclasses import replace
from functools import lru_cache
from typing import Any, TypeVar

from .decimal_comma import POINT, with_commas
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
    Maths,
    Paragraph,
    Passage,
    Picture,
    Plot,
    Reference,
    Row,
    Space,
    Strong,
    Table,
    Text,
)

Formula = TypeVar("Formula")
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
LEVEL: Mapping[str, str] = {
    "a vertical": "an upright",
    "horizontal": "level",
    "horizontally": "level",
    "vertical": "upright",
    "vertically": "upright",
}


class Spelling:
    """The words of one class; `names` are what its author wrote, which stays."""

    def __init__(
        self,
        spelling: str,
        names: Iterable[str] = (),
        level: str = "horizontal and vertical",
        decimal: str = "point",
    ) -> None:
        self._comma = decimal == "comma"
        changed = (spelling == "American", level == "level and upright", self._comma)
        self._words = _words(*changed[:2])
        self._change = any(changed)
        kept = frozenset(name for name in names if self._change and _pattern(frozenset(), *changed).search(name))
        self._pattern = _pattern(kept, *changed) if self._change else None

    def text(self, text: str) -> str:
        """A text of ours in these words."""
        return text if self._pattern is None else self._pattern.sub(self._other, text)

    def _other(self, found: re.Match[str]) -> str:
        if found.groupdict().get("name"):
            return found[0]
        if found[0] == ".":
            return ","
        word = self._words[found[0].casefold()]
        return word[0].upper() + word[1:] if found[0][0].isupper() else word

    def formula(self, of: Formula) -> Formula:
        """A formula, a row, or a drawing with formulas, its numbers as this class writes them."""
        return with_commas(of) if self._comma else of

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
                return Derivation(tuple(map(self._row, rows)))
            case Blanks(reasons):
                return Blanks(self.lines(reasons))
            case Bullets(items):
                return Bullets(self.lines(items))
            case Table(caption, header, rows, right):
                return Table(self.text(caption), self.lines(header), tuple(map(self.lines, rows)), right)
            case Picture(drawing, title, description, caption):
                return Picture(self.formula(drawing), self.text(title), self.text(description), self._line(caption))
            case Plot():
                return self._plot(passage)
            case Space(title, height, checklist):
                return Space(self.text(title), height, self.lines(checklist))
            case Judged(caption, lines):
                judged = (replace(each, word=self.text(each.word), notes=self.lines(each.notes)) for each in lines)
                return Judged(self.text(caption), tuple(judged))
        return passage

    def _row(self, row: Row) -> Row:
        left, right = self.formula(row.left), self.formula(row.right)
        return Row(left, right, self._line(row.label), self._line(row.note))

    def _plot(self, plot: Plot) -> Plot:
        return replace(
            plot,
            title=self.text(plot.title),
            description=self.text(plot.description),
            x=Axis(self.text(plot.x.title), plot.x.unit),
            y=Axis(self.text(plot.y.title), plot.y.unit),
            curves=tuple(Curve(self.text(each.name), each.points) for each in plot.curves),
            caption=self._line(plot.caption),
            comma=self._comma,
        )

    def lines(self, lines: Iterable[Line]) -> tuple[Line, ...]:
        """Lines in these words."""
        return tuple(map(self._line, lines))

    def _line(self, line: Line) -> Line:
        return tuple(map(self._inline, line))

    def _inline(self, piece: Inline) -> Inline:
        match piece:
            case Text(text) | Strong(text) | Emphasis(text) | Reference(text):
                return replace(piece, text=self.text(text))
            case Maths(of):
                return Maths(self.formula(of))
        return piece


@lru_cache(maxsize=4)
def _words(american: bool, level: bool) -> Mapping[str, str]:
    """The words that are changed, each with its other one."""
    return {**(AMERICAN if american else {}), **(LEVEL if level else {})}


@lru_cache(maxsize=64)
def _pattern(kept: frozenset[str], american: bool, level: bool, comma: bool) -> re.Pattern[str]:
    """Names that are kept, or else one of the words, or points of numbers, that are changed."""
    words = "|".join(sorted(_words(american, level), key=len, reverse=True))
    ours = "|".join(filter(None, (rf"\b(?:{words})\b" if words else "", POINT if comma else "")))
    names = "|".join(sorted(map(re.escape, kept), key=len, reverse=True))
    return re.compile(f"(?P<name>{names})|{ours}" if names else ours, re.IGNORECASE)
