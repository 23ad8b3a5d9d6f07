"""How formulas, derivations and figures are set for paper: which formula is an image, and where the columns stand. Knows no PDF."""
from __future__ import annotations

from collections.abc import Iterator, MutableMapping, Sequence
from dataclasses import dataclass, field, replace
from hashlib import sha256
from itertools import count
from typing import NamedTuple

from ..equation import Equation, Terms, number
from ..passage import Emphasis, Line, Maths, Picture, Row, Strong, Text
from .equation_image import EquationImage, TypeCase
from .figure import figure
from .ink import EM, NOTHING, Ink, aligned, fitted
from .markup import line, text
from .mathml import mathml, mathml_row
from .plain import plain
from .shelf import SCHEME
from .speech import speech, speech_row

_MEASURE = 41.5                # the width of a derivation with its notes, in em of the text
_SENTENCE = 34.0               # a formula in a sentence that is longer is broken
_LEFT = 26.0                   # so is a left side, where notes stand beside
_NOTE = 9.5                    # a note beside its row has at least this
_GAP = 1.6
_LETTER = 0.5                  # what a letter of a label takes, generously
_ABOVE, _BELOW = 78.0, 28.0    # the box of a formula without fractions, in hundredths of an em: one baseline for all


class _Set(NamedTuple):
    """The formulas of a row laid out, before they are put in columns."""

    left: Ink
    links: tuple[Ink, ...]

    @property
    def rest(self) -> float:
        return sum(each.advance for each in self.links) / EM


class _Columns(NamedTuple):
    """Where things stand in a derivation, in em: the width of its labels, the equals signs and the notes behind them."""

    label: float
    equals: float
    note: float


@dataclass(frozen=True, slots=True)
class Paper:
    """Sets formulas as images in the text. `inks` keeps formulas laid out, by their MathML and greatest length.

    Filled while a document is set: `images` by address, the letters they are made of, and the texts they are read aloud as.
    """

    strokes: bool
    inks: MutableMapping[str, Ink]
    images: dict[str, EquationImage] = field(default_factory=dict)
    case: TypeCase = field(default_factory=TypeCase)
    spoken: set[str] = field(default_factory=set)
    figures: Iterator[int] = field(default_factory=lambda: count(1))

    def formula(self, of: Terms | Equation) -> str:
        """A lone number as text, anything else as an image."""
        if isinstance(of, tuple) and (not of or number(of)):
            return text(plain(of)).replace(" ", "\u00a0")
        markup = mathml(of, strokes=self.strokes)
        return self._image(markup, self._ink(markup, _SENTENCE), speech(of))

    def picture(self, picture: Picture) -> str:
        """A figure's title alone becomes its alternative text, so the description is added to it."""
        whole = f"{picture.title}. {picture.description}" if picture.description else picture.title
        return figure(replace(picture, title=whole, description=""), f"figure-{next(self.figures)}")

    def derivation(self, rows: Sequence[Row]) -> str:
        """A list of rows, each one image; the images begin so far to the left of the equals sign as the longest left side needs."""
        longest = _LEFT if any(row.note for row in rows) else _SENTENCE
        laid = [self._laid(row, longest, first=not place) for place, row in enumerate(rows)]
        columns = _columns(rows, laid)
        items = (self._row(row, each, columns) for row, each in zip(rows, laid, strict=True))
        return f'<ol class="derivation">{"".join(items)}</ol>'

    def _laid(self, row: Row, longest: float, first: bool) -> _Set:
        left = self._ink(mathml(row.left, True, self.strokes), longest) if row.left or first else NOTHING
        links = (mathml_row(Row((), (pair,)), True, self.strokes) for pair in row.right)
        return _Set(left, tuple(self._ink(link, _LEFT) for link in links))

    def _row(self, row: Row, laid: _Set, columns: _Columns) -> str:
        beside = columns.equals + laid.rest + _GAP <= columns.note
        room = _MEASURE - columns.label
        drawn = aligned(laid.left, laid.links, columns.equals * EM, (columns.note if beside and row.note else room) * EM)
        if beside and row.note:
            drawn = drawn._replace(advance=columns.note * EM)
        label = f'<span class="label {_wide(columns.label)}">{line(row.label, self)}</span>' if columns.label else ""
        note = f'<span class="{_wide(room - columns.note) if beside else "under"} note">{line(row.note, self)}</span>' if row.note else ""
        markup = f"{columns.equals:.2f} {drawn.advance:.1f} {mathml_row(row, True, self.strokes)}"
        return f"<li>{label}{self._image(markup, drawn, speech_row(row))}{note}</li>"

    def _image(self, markup: str, drawn: Ink, spoken: str) -> str:
        above, below = max(_ABOVE, drawn.rise), max(_BELOW, drawn.drop)
        name = sha256(markup.encode()).hexdigest()[:20]
        self.images.setdefault(SCHEME + name, EquationImage(name, drawn, above, below, self.case))
        self.spoken.add(spoken)
        deep = f' style="vertical-align:{-below / EM:.3f}em"' if below > _BELOW else ""
        return f'<img src="{SCHEME}{name}" alt="{text(spoken)}"{deep}>'

    def _ink(self, markup: str, longest: float) -> Ink:
        key = f"{longest} {markup}"
        if key not in self.inks:
            self.inks[key] = fitted(markup, longest * EM)
        return self.inks[key]


def _columns(rows: Sequence[Row], laid: Sequence[_Set]) -> _Columns:
    """Notes stand in one column, behind the longest row that leaves them room; those of longer rows go under their row."""
    label = max((_length(row.label) for row in rows), default=0.0)
    equals = max((each.left.advance for each in laid), default=0.0) / EM
    ends = [equals + each.rest + _GAP for row, each in zip(rows, laid, strict=True) if row.note]
    fitting = [end for end in ends if end <= _MEASURE - label - _NOTE]
    return _Columns(label, equals, max(fitting, default=0.0))


def _length(label: Line) -> float:
    letters = 0
    for piece in label:
        match piece:
            case Text(words) | Strong(words) | Emphasis(words):
                letters += len(words)
            case Maths(of):
                letters += len(plain(of))
    return letters * _LETTER + 1.0 if letters else 0.0


def _wide(width: float) -> str:
    """A class of the stylesheet for a width, in halves of an em: WeasyPrint reads a class faster than a style."""
    return f"w{int(width * 2)}"
