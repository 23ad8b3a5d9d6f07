"""How formulas, derivations and figures are set for paper: what is an image, where the columns stand. Knows no PDF."""
from __future__ import annotations

from collections.abc import Iterator, MutableMapping, Sequence
from dataclasses import dataclass, field, replace
from hashlib import sha256
from itertools import count
from math import ceil
from typing import NamedTuple

from ..equation import Equation, Terms
from ..passage import Line, Maths, Picture, Row
from .clean import clean
from .equation_image import EquationImage, TypeCase
from .figure import figure
from .ink import EM, NOTHING, Ink, aligned, fitted
from .markup import line, lone_number, text
from .mathml import mathml, mathml_row
from .plain import plain
from .shelf import SCHEME
from .speech import speech, speech_row

_MEASURE = 41.5                # the width of a derivation with its notes, in em of the text
_SENTENCE = 34.0               # a formula in a sentence that is longer is broken
_LEFT = 22.0                   # so is a left side, where notes stand beside
_NOTE = 9.5                    # a note beside its row has at least this
_GAP = 1.6
_LETTER, _CAPITAL = 0.5, 0.75  # what a letter of a label takes
_LABEL = 9.0                   # a label is broken there
_ABOVE, _BELOW = 78.0, 28.0    # the box of a formula without fractions, in hundredths of an em: one baseline for all
_AIR = 12.0                    # over and under what is taller


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
        markup = mathml(of, strokes=self.strokes)
        return lone_number(of) or self._image(markup, self._ink(markup, _SENTENCE), speech(of))

    def picture(self, picture: Picture) -> str:
        """A figure's title alone becomes its alternative text, so the description is added to it."""
        whole = f"{picture.title}. {picture.description}" if picture.description else picture.title
        return figure(replace(picture, title=whole, description=""), f"figure-{next(self.figures)}")

    def derivation(self, rows: Sequence[Row]) -> str:
        """A list of rows, each one image, with blank space before it so that all equals signs stand under each other."""
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
        before = 0.0 if row.label else columns.label
        beside = bool(row.note) and columns.equals + laid.rest + _GAP <= columns.note
        end = columns.note if beside else _MEASURE - columns.label
        drawn = aligned(laid.left, laid.links, (before + columns.equals) * EM, (before + end) * EM)
        if beside:
            drawn = drawn._replace(advance=(before + end) * EM)
        label = f'<span class="label {_wide(columns.label)}">{line(row.label, self)}</span>' if row.label else ""
        place = _wide(_MEASURE - columns.label - columns.note) if beside else "under"
        note = f'<span class="{place} note">{line(row.note, self)}</span>' if row.note else ""
        markup = f"{before + columns.equals:.2f} {drawn.advance:.1f} {mathml_row(row, True, self.strokes)}"
        image = self._image(markup, drawn, speech_row(row)) if drawn.strokes else ""
        return f"<li>{label}{image}{note}</li>"

    def _image(self, markup: str, drawn: Ink, spoken: str) -> str:
        above = _ABOVE if drawn.rise <= _ABOVE else drawn.rise + _AIR
        below = _BELOW if drawn.drop <= _BELOW else drawn.drop + _AIR
        name = sha256(markup.encode()).hexdigest()[:20]
        self.images.setdefault(SCHEME + name, EquationImage(name, drawn, above, below, self.case))
        words = clean(spoken)
        self.spoken.add(words)
        deep = f' style="vertical-align:{-below / EM:.3f}em"' if below > _BELOW else ""
        return f'<img src="{SCHEME}{name}" alt="{text(words)}"{deep}>'

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
    """What a label takes, generously; a long one is broken."""
    words = "".join(plain(piece.of) if isinstance(piece, Maths) else piece.text for piece in label)
    wide = sum(_CAPITAL if letter.isupper() else _LETTER for letter in words)
    return min(ceil(2 * wide + 2) / 2, _LABEL) if words else 0.0


def _wide(width: float) -> str:
    """A class of the stylesheet for a width, in halves of an em: WeasyPrint reads a class faster than a style."""
    return f"w{int(width * 2)}"
