"""How formulas, derivations and figures are set for paper: what is an image, where the columns stand. Knows no PDF."""

from __future__ import annotations

from collections.abc import MutableMapping, Sequence
from dataclasses import dataclass, field, replace
from hashlib import sha256
from math import inf

from ...equation.terms import Equation, Terms
from ...document.passage import Line, Page, Picture, Plot, Row
from ...document.untrusted_text import clean
from .equation_image import EquationImage, TypeCase
from ..figure.shapes import Box
from .figure_image import FigureImage
from .formula_breaks import Formula, fitted
from ..html.elements import article, line, lone_number, text
from ...formula.mathml import mathml, mathml_row
from .derivation_columns import Columns, Set, columns
from ..figure.plot import laid_out
from .figure_room import figure_on_first_sheet, room
from .weasy_fetch import SCHEME
from ...formula.speech import speech, speech_row
from .glyph_outlines import EM, NOTHING, Ink, moved

_SENTENCE = 34.0
_WHOLE = 10  # a derivation of so many rows is not parted by the end of a page
_JOINED = ' class="joined"'  # a row that is not parted from the next
_WIDEST, _HIGHEST = 145.0, 90.0  # of a figure, in mm
_PIXEL = 25.4 / 96
_SMALLER, _BESIDE = 0.75, 84.0  # of a figure's size in compact pages, and the greatest width of one beside words, in mm
_HARDLY = 1.1  # how many times too wide a figure in compact pages may be and is still drawn smaller for it
_LEAST = 0.5  # a figure is not drawn smaller than this for want of room
_ABOVE, _BELOW = 78.0, 28.0  # the box of a formula without fractions, in hundredths of an em: one baseline for all
_AIR = 18.0  # over and under what is taller


@dataclass(frozen=True, slots=True)
class Paper:
    """Sets formulas as images in the text. `inks` keeps formulas laid out, by their MathML and greatest length.

    Filled while a document is set: `images` by address, the letters formulas are made of, and the texts they are read
    aloud as.
    `room` is what the sheet leaves for a figure, in mm; where all is `compact` a figure is smaller, and stands beside
    words if it is narrow enough. A formula in a sentence that is longer than `sentence`, in em, is broken.
    """

    strokes: bool
    inks: MutableMapping[str, Ink]
    images: dict[str, EquationImage | FigureImage] = field(default_factory=dict)
    case: TypeCase = field(default_factory=TypeCase)
    spoken: set[str] = field(default_factory=set)
    room: float = 0.0
    compact: bool = False
    sentence: float = _SENTENCE

    def article(self, page: Page) -> str:
        """A whole page, beginning a sheet."""
        placed, hand = self.placed(page)
        return f'<article lang="{text(page.language)}">{"".join(article(placed, hand))}</article>'

    def placed(self, page: Page, start: int = 0) -> tuple[Page, Paper]:
        """The page with its figure on the first sheet where that can be, and who sets it in the room it has there; the
        page begins with the passage `start`, behind what stands on its first sheet already.
        """
        figure = next((each for each in page.passages[start:] if isinstance(each, Picture)), None)
        least = _LEAST * _PIXEL * laid_out(figure).view.height if figure is not None else 0.0
        if self.compact:  # figures stand beside words there
            return page, replace(self, room=room(page))
        placed, left = figure_on_first_sheet(page, least, start)
        return placed, replace(self, room=left)

    def formula(self, of: Terms | Equation) -> str:
        """A lone number as text, anything else as an image."""
        markup = mathml(of, strokes=self.strokes)
        return lone_number(of) or self.image(markup, self._ink(markup, self.sentence), speech(of))

    def heard(self, cell: Line) -> str:
        """Nothing: every formula on paper has its words."""
        return ""

    def figure(self, picture: Picture | Plot, caption: str) -> str:
        """A figure as an image, drawn smaller where that keeps it on its sheet; in compact pages one that is narrow is
        in a box with its caption, which may stand beside words.
        """
        laid = laid_out(picture)
        name = sha256(
            repr(picture.drawing if isinstance(picture, Picture) else picture).encode(errors="backslashreplace")
        ).hexdigest()[:20]
        self.images.setdefault(SCHEME + name, FigureImage(name, laid))
        words = f"{picture.title}. {picture.description}" if picture.description else picture.title
        high = _compact(laid.view) if self.compact else self._height(laid.view)
        image = f'<img src="{SCHEME}{name}" alt="{text(words)}" style="height:{high:.1f}mm">'
        markup = f'<div class="sheet">{image}</div>{caption}'
        if not self.compact or high * laid.view.width > 1.0001 * _BESIDE * laid.view.height:
            return markup
        return f'<div class="{"beside" if isinstance(picture, Picture) else "plot"}">{markup}</div>'

    def _height(self, view: Box) -> float:
        """The height of a figure in mm: as it is drawn, or what its sheet has left for it if it can still be read
        then.
        """
        natural = _natural(view)
        return self.room if _LEAST * _PIXEL * view.height <= self.room < natural else natural

    def derivation(self, rows: Sequence[Row]) -> str:
        """A list of rows, each one image, with blank space before it so that all equals signs stand under each
        other.
        """
        laid = [self.laid(each, first=not place) for place, each in enumerate(rows)]
        places = columns(laid)
        joined = {0, 1, len(rows) - 2} - {len(rows) - 1}
        items = (self._row(each, places, _JOINED if place in joined else "") for place, each in enumerate(laid))
        return f'<ol class="derivation{" whole" if len(rows) <= _WHOLE else ""}">{"".join(items)}</ol>'

    def laid(self, row: Row, first: bool) -> Set:
        left = mathml(row.left, True, self.strokes) if row.left or first else ""
        links = (mathml_row(Row((), (pair,)), True, self.strokes) for pair in row.right)
        return Set(row, self._formula(left), tuple(map(self._formula, links)))

    def _formula(self, markup: str) -> Formula:
        return Formula(markup, self._ink(markup, inf) if markup else NOTHING)

    def _row(self, laid: Set, places: Columns, style: str) -> str:
        row, room = laid.row, places.room(laid.row)
        before = 0.0 if row.label else places.label
        drawn = laid.drawn(places.equals, room)
        beside = bool(row.note) and drawn.advance <= room * EM
        if not beside:
            drawn = laid.drawn(places.equals, places.whole)
        drawn = moved(drawn, right=before * EM)
        if beside:
            drawn = drawn._replace(advance=(before + places.note) * EM)
        label = f'<span class="label {_wide(places.label)}">{line(row.label, self)}</span>' if row.label else ""
        place = _wide(places.whole - places.note) if beside else "under"
        note = f'<span class="{place} note">{line(row.note, self)}</span>' if row.note else ""
        markup = f"{before} {places} {beside} {mathml_row(row, True, self.strokes)}"
        image = self.image(markup, drawn, speech_row(row)) if drawn.strokes else ""
        return f"<li{style}>{label}{image}{note}</li>"

    def image(self, markup: str, drawn: Ink, spoken: str) -> str:
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


def _natural(view: Box) -> float:
    return view.height * min(_PIXEL, _WIDEST / view.width, _HIGHEST / view.height)


def _compact(view: Box) -> float:
    """The height in mm in compact pages; what is hardly too wide to stand beside words is made to."""
    high = _natural(view) * _SMALLER
    narrow = _BESIDE * view.height / view.width
    return narrow if narrow < high <= narrow * _HARDLY else high


def _wide(width: float) -> str:
    """A class of the stylesheet for a width, in halves of an em: WeasyPrint reads a class faster than a style."""
    return f"w{int(width * 2)}"
