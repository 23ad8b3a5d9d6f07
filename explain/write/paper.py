"""How formulas, derivations and figures are set for paper: what is an image, where the columns stand. Knows no PDF."""
from __future__ import annotations

from collections.abc import MutableMapping, Sequence
from dataclasses import dataclass, field, replace
from hashlib import sha256
from math import ceil, inf
from typing import NamedTuple

from ..equation import Equation, Terms
from ..passage import Line, Maths, Page, Picture, Row
from .clean import clean
from .equation_image import EquationImage, TypeCase
from .figure import figure
from .ink import EM, NOTHING, Ink, moved
from .lines import Formula, fitted, set_row
from .markup import article, line, lone_number, size, text, unframed
from .mathml import mathml, mathml_row
from .plain import plain
from .sheets import room
from .shelf import SCHEME
from .speech import speech, speech_row

_MEASURE = 41.5                # the width of a derivation with its notes, in em of the text
_SENTENCE = 34.0               # a formula in a sentence that is longer is broken
_LEFT = 10.0                   # a left side wider than this begins at the margin, whatever its equals sign stands under
_PLACES = (1 / 2, 2 / 3)       # where notes begin, as shares of the measure
_GAP = 1.6                     # before a note, at least
_WHOLE = 10                    # a derivation of so many rows is not parted by the end of a page
_JOINED = ' class="joined"'    # a row that is not parted from the next
_LETTER, _CAPITAL = 0.5, 0.75  # what a letter of a label takes
_LABEL = 9.0                   # a label is broken there
_WIDEST, _HIGHEST = 145.0, 90.0  # of a figure, in mm
_PIXEL = 25.4 / 96
_LEAST = 0.55                  # a figure is not drawn smaller than this for want of room
_ABOVE, _BELOW = 78.0, 28.0    # the box of a formula without fractions, in hundredths of an em: one baseline for all
_AIR = 12.0                    # over and under what is taller


class _Set(NamedTuple):
    """A row with its formulas laid out on one line each, before they are put in columns."""

    row: Row
    left: Formula
    links: tuple[Formula, ...]

    @property
    def balance(self) -> bool:
        """Whether it says that a sum is zero, rather than what the unknown is."""
        return bool(self.row.left and self.row.right) and not self.row.right[-1][1]

    def drawn(self, column: float, room: float) -> Ink:
        """In the aligned columns of its derivation, or at the margin if it does not fit there; all in em."""
        placed = set_row(self.left, self.links, -1.0 if self.balance else column * EM, room * EM)
        return placed if placed.advance <= room * EM else set_row(self.left, self.links, -1.0, room * EM)


class _Columns(NamedTuple):
    """Where things stand in a derivation, in em: the width of its labels, and behind them the equals signs and the notes."""

    label: float
    equals: float
    note: float

    @property
    def room(self) -> float:
        """For a formula with its note beside it."""
        return self.note - _GAP


@dataclass(frozen=True, slots=True)
class Paper:
    """Sets formulas as images in the text. `inks` keeps formulas laid out, by their MathML and greatest length.

    Filled while a document is set: `images` and `drawings` by address (the latter SVG), the letters formulas are made of, and the
    texts they are read aloud as. `room` is what the sheet leaves for a figure, in mm.
    """

    strokes: bool
    inks: MutableMapping[str, Ink]
    images: dict[str, EquationImage] = field(default_factory=dict)
    drawings: dict[str, str] = field(default_factory=dict)
    case: TypeCase = field(default_factory=TypeCase)
    spoken: set[str] = field(default_factory=set)
    room: float = 0.0

    def article(self, page: Page) -> str:
        """A whole page, beginning a sheet."""
        hand = replace(self, room=room(page))
        return f'<article lang="{text(page.language)}">{"".join(article(page, hand))}</article>'

    def formula(self, of: Terms | Equation) -> str:
        """A lone number as text, anything else as an image."""
        markup = mathml(of, strokes=self.strokes)
        return lone_number(of) or self._image(markup, self._ink(markup, _SENTENCE), speech(of))

    def picture(self, picture: Picture) -> str:
        """A figure as an image, drawn smaller where that keeps it on its sheet."""
        whole = f"{picture.title}. {picture.description}" if picture.description else picture.title
        drawn = unframed(figure(replace(picture, description="")))
        address = SCHEME + sha256(drawn.encode()).hexdigest()[:20]
        self.drawings[address] = drawn
        return f'<img src="{address}" alt="{text(whole)}" style="height:{self._height(drawn):.1f}mm">'

    def _height(self, drawn: str) -> float:
        """The height of a figure in mm: as it is drawn, or what its sheet has left for it if it can still be read then."""
        wide, high = size(drawn)
        natural = high * min(_PIXEL, _WIDEST / wide, _HIGHEST / high)
        return self.room if _LEAST * _PIXEL * high <= self.room < natural else natural

    def derivation(self, rows: Sequence[Row]) -> str:
        """A list of rows, each one image, with blank space before it so that all equals signs stand under each other."""
        laid = [self._laid(each, first=not place) for place, each in enumerate(rows)]
        columns = _columns(laid)
        joined = {0, 1, len(rows) - 2} - {len(rows) - 1}
        items = (self._row(each, columns, _JOINED if place in joined else "") for place, each in enumerate(laid))
        return f'<ol class="derivation{" whole" if len(rows) <= _WHOLE else ""}">{"".join(items)}</ol>'

    def _laid(self, row: Row, first: bool) -> _Set:
        left = mathml(row.left, True, self.strokes) if row.left or first else ""
        links = (mathml_row(Row((), (pair,)), True, self.strokes) for pair in row.right)
        return _Set(row, self._formula(left), tuple(self._formula(link) for link in links))

    def _formula(self, markup: str) -> Formula:
        return Formula(markup, self._ink(markup, inf) if markup else NOTHING)

    def _row(self, laid: _Set, columns: _Columns, style: str) -> str:
        row = laid.row
        before = 0.0 if row.label else columns.label
        whole = _MEASURE - columns.label
        drawn = laid.drawn(columns.equals, columns.room if row.note else whole)
        beside = bool(row.note) and drawn.advance <= columns.room * EM
        if not beside:
            drawn = laid.drawn(columns.equals, whole)
        drawn = moved(drawn, right=before * EM)
        if beside:
            drawn = drawn._replace(advance=(before + columns.note) * EM)
        label = f'<span class="label {_wide(columns.label)}">{line(row.label, self)}</span>' if row.label else ""
        place = _wide(whole - columns.note) if beside else "under"
        note = f'<span class="{place} note">{line(row.note, self)}</span>' if row.note else ""
        markup = f"{before:.2f} {columns} {beside} {mathml_row(row, True, self.strokes)}"
        image = self._image(markup, drawn, speech_row(row)) if drawn.strokes else ""
        return f"<li{style}>{label}{image}{note}</li>"

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


def _columns(laid: Sequence[_Set]) -> _Columns:
    """Equals signs stand as far right as a left side needs that is not wide; notes in one column, behind all rows that have one.

    Rows that say that a sum is zero are long as a rule, so they begin at the margin and move no other row to the right.
    """
    label = max((_length(each.row.label) for each in laid), default=0.0)
    whole = _MEASURE - label
    columns = _Columns(label, 0.0, _PLACES[-1] * whole)
    columns = columns._replace(equals=_equals([each for each in laid if not each.balance], columns.room, whole))
    ends = [each.drawn(columns.equals, columns.room).advance / EM + _GAP for each in laid if each.row.note]
    place = next((share for share in _PLACES if max(ends, default=0.0) <= share * whole), _PLACES[-1])
    return columns._replace(note=place * whole)


def _equals(laid: Sequence[_Set], room: float, whole: float) -> float:
    """The widest left side behind which every right side still fits, else the narrowest."""
    lefts = sorted({each.left.advance / EM for each in laid if each.left.advance <= _LEFT * EM}, reverse=True)

    def fit(column: float) -> bool:
        return all(column + link.advance / EM <= (room if each.row.note else whole)
                   for each in laid if each.left.advance <= column * EM for link in each.links)

    return next(filter(fit, lefts), lefts[-1] if lefts else 0.0)


def _length(label: Line) -> float:
    """What a label takes, generously; a long one is broken."""
    words = "".join(plain(piece.of) if isinstance(piece, Maths) else piece.text for piece in label)
    wide = sum(_CAPITAL if letter.isupper() else _LETTER for letter in words)
    return min(ceil(2 * wide + 2) / 2, _LABEL) if words else 0.0


def _wide(width: float) -> str:
    """A class of the stylesheet for a width, in halves of an em: WeasyPrint reads a class faster than a style."""
    return f"w{int(width * 2)}"
