"""A page as one HTML file that stands alone: MathML, figures inline, no script, nothing fetched. Knows no mechanics."""

from __future__ import annotations

from collections.abc import Container, Iterator, Sequence
from dataclasses import dataclass, field
from importlib.resources import files
from itertools import count
from xml.etree import ElementTree

from ...equation.terms import Equation, Terms
from ...document.passage import Line, Maths, Page, Passage, Picture, Plot, Row
from ..derivation_margin import at_margin
from .elements import article, elements, line, lone_number, text
from ...formula.mathml import mathml, mathml_row
from ...formula.plain import plain
from ...formula.speech import speech
from ..figure.plot import drawn

_POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'"

_NAMESPACE = 'xmlns="http://www.w3.org/1998/Math/MathML"'  # which HTML does not need
_SIGNS, _RELATIONS = ("+", "−"), ("=", "≈")
_SHORT = 22  # letters of a formula that fits into half the width of a telephone


def html(page: Page, strokes: bool = True) -> str:
    """One page as a whole HTML document; with `strokes` the units that cancel in a fraction are struck out."""
    return html_pages((page,), page.title, strokes)


def html_pages(pages: Sequence[Page], title: str, strokes: bool = True) -> str:
    """Several pages in one HTML document, with a list of them in front where they are more than one."""
    language = text(pages[0].language) if pages else "en"
    hand = Screen(strokes)
    return "".join(
        (
            head(pages[0].language if pages else "en", title),
            _contents(pages, title) if len(pages) > 1 else "",
            "<main>\n",
            *_articles(pages, language, hand),
            "</main>\n</body>\n</html>\n",
        )
    )


def passages_html(passages: Sequence[Passage], prefix: str, strokes: bool = True) -> str:
    """Passages as elements, without a document around them; `prefix` makes the identifiers of their figures unique
    in it.
    """
    hand = Screen(strokes, prefix)
    return "\n".join(element for passage in passages for element in elements(passage, hand))


def head(language: str, title: str, more: str = "") -> str:
    """The head of a document, its body open; `more` are rules of style behind the ones of every page."""
    return bare_head(language, title, _stylesheet() + more)


def bare_head(language: str, title: str, style: str, allowed: str = "") -> str:
    """The same with these rules of style alone; `allowed` goes behind the policy."""
    return "".join(
        (
            f'<!DOCTYPE html>\n<html lang="{text(language)}">\n<head>\n<meta charset="utf-8">\n',
            f'<meta http-equiv="Content-Security-Policy" content="{_POLICY}{allowed}">\n',
            '<meta name="viewport" content="width=device-width, initial-scale=1">\n',
            '<meta name="color-scheme" content="light dark">\n',
            f"<title>{text(title)}</title>\n<style>\n{style}</style>\n</head>\n<body>\n",
        )
    )


def _stylesheet() -> str:
    return (files(__package__) / "screen.css").read_text(encoding="utf-8")


def _contents(pages: Sequence[Page], title: str) -> str:
    items = "".join(f'<li><a href="#page-{place}">{text(page.title)}</a></li>\n' for place, page in enumerate(pages, 1))
    return f'<nav aria-label="{text(title)}">\n<p>{text(title)}</p>\n<ol>\n{items}</ol>\n</nav>\n'


def _articles(pages: Sequence[Page], language: str, hand: Screen) -> Iterator[str]:
    for place, page in enumerate(pages, 1):
        own = "" if text(page.language) == language else f' lang="{text(page.language)}"'
        yield f'<article id="page-{place}"{own}>\n'
        for element in article(page, hand):
            yield element + "\n"
        yield "</article>\n"


def _breakable(markup: str, letters: int, signs: Container[str], short: int = _SHORT) -> str:
    """A long formula as one <math> element for each of its parts: browsers break lines between such elements, but
    never inside one.
    """
    if letters <= short:
        return markup
    math = ElementTree.fromstring(markup.replace(_NAMESPACE, ""))
    parts = [ElementTree.Element("math", math.attrib)]
    for child in math:
        if child.tag == "mo" and child.text in signs and child.get("form") == "infix" and len(parts[-1]):
            parts.append(ElementTree.Element("math", math.attrib))
        parts[-1].append(child)
    return "<wbr>".join(ElementTree.tostring(each, encoding="unicode") for each in parts)


@dataclass(frozen=True, slots=True)
class Screen:
    """Sets formulas as MathML and figures as SVG inside the page; one of more than `short` letters may be broken."""

    strokes: bool
    prefix: str = "figure"
    short: int = _SHORT
    figures: Iterator[int] = field(default_factory=lambda: count(1))

    def formula(self, of: Terms | Equation) -> str:
        markup = mathml(of, strokes=self.strokes)
        return lone_number(of) or _breakable(markup, len(plain(of)), _RELATIONS + _SIGNS, self.short)

    def derivation(self, rows: Sequence[Row]) -> str:
        labelled = " labelled" if any(row.label for row in rows) else ""
        noted = " noted" if any(row.note for row in rows) else ""
        items = "".join(f"<li>{self._row(row, first=not place)}</li>\n" for place, row in enumerate(rows))
        # a list whose markers are hidden stays a list for those who hear it; what scrolls must be reached from the
        # keyboard
        return (
            '<div class="scroll" tabindex="0" role="group" aria-label="Lines of working">'
            f'<ol role="list" class="derivation{labelled}{noted}">\n{items}</ol></div>'
        )

    def heard(self, cell: Line) -> str:
        """The words of a cell with a formula: not everything that reads tables aloud reads MathML in their heads."""
        formulas = any(isinstance(piece, Maths) and not lone_number(piece.of) for piece in cell)
        return "".join(speech(piece.of) if isinstance(piece, Maths) else piece.text for piece in cell) * formulas

    def figure(self, picture: Picture | Plot, caption: str) -> str:
        return f'<div class="sheet">{drawn(picture, f"{self.prefix}-{next(self.figures)}")}</div>{caption}'

    def _row(self, row: Row, first: bool) -> str:
        label = f'<div class="label">{line(row.label, self)}</div>' if row.label else ""
        note = f'<div class="note">{line(row.note, self)}</div>' if row.note else ""
        return label + self.row(row, first) + note

    def row(self, row: Row, first: bool) -> str:
        """The formula of a row, in two columns or across both."""
        return self._across(row) if _long(row) else self._aligned(row, first)

    def _aligned(self, row: Row, first: bool) -> str:
        left = mathml(row.left, True, self.strokes) if row.left or first else ""
        rest = "".join(f"<span>{self._link(pair)}</span>" for pair in row.right)
        return f'<div class="left">{left}</div><div class="rest">{rest}</div>'

    def _link(self, pair: tuple[str, Terms]) -> str:
        return _breakable(mathml_row(Row((), (pair,)), True, self.strokes), len(plain(pair[1])), _SIGNS, self.short)

    def _across(self, row: Row) -> str:
        """A row at the margin; a zero is not parted from the sum that it is said of."""
        signs = _SIGNS if at_margin(row) else _RELATIONS + _SIGNS
        letters = sum(len(plain(terms)) for terms in (row.left, *(terms for _, terms in row.right)))
        markup = mathml_row(row, True, self.strokes)
        return f'<div class="across">{_breakable(markup, letters, signs, self.short)}</div>'


def _long(row: Row) -> bool:
    """Whether a row begins at the margin, so that it moves no equals sign of the others to the right."""
    return at_margin(row) or len(plain(row.left)) > _SHORT
