"""A page as one HTML file that stands alone: MathML, figures inline, no script, nothing fetched. Knows no mechanics."""
from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from importlib.resources import files
from itertools import count
from xml.etree import ElementTree

from ..equation import Equation, Terms
from ..passage import Page, Picture, Row
from .figure import figure
from .markup import article, line, lone_number, text, unframed
from .mathml import mathml, mathml_row
from .plain import plain

_POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'"

_NAMESPACE = 'xmlns="http://www.w3.org/1998/Math/MathML"'     # which HTML does not need
_SIGNS = ("+", "−", "=", "≈")
_SHORT = 22                    # letters of a formula that fits into half the width of a telephone


def html(page: Page, strokes: bool = True) -> str:
    """One page as a whole HTML document; with `strokes` the units that cancel in a fraction are struck out."""
    return html_pages((page,), page.title, strokes)


def html_pages(pages: Sequence[Page], title: str, strokes: bool = True) -> str:
    """Several pages in one HTML document, with a list of them in front where they are more than one."""
    language = text(pages[0].language) if pages else "en"
    hand = _Screen(strokes)
    return "".join((
        f'<!DOCTYPE html>\n<html lang="{language}">\n<head>\n<meta charset="utf-8">\n',
        f'<meta http-equiv="Content-Security-Policy" content="{_POLICY}">\n',
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n',
        '<meta name="color-scheme" content="light dark">\n',
        f"<title>{text(title)}</title>\n<style>\n{_stylesheet()}</style>\n</head>\n<body>\n",
        _contents(pages, title) if len(pages) > 1 else "",
        "<main>\n", *_articles(pages, language, hand), "</main>\n</body>\n</html>\n",
    ))


def _stylesheet() -> str:
    return (files(__package__) / "screen.css").read_text(encoding="utf-8")


def _contents(pages: Sequence[Page], title: str) -> str:
    items = "".join(f'<li><a href="#page-{place}">{text(page.title)}</a></li>\n' for place, page in enumerate(pages, 1))
    return f'<nav aria-label="{text(title)}">\n<p>{text(title)}</p>\n<ol>\n{items}</ol>\n</nav>\n'


def _articles(pages: Sequence[Page], language: str, hand: _Screen) -> Iterator[str]:
    for place, page in enumerate(pages, 1):
        own = "" if text(page.language) == language else f' lang="{text(page.language)}"'
        yield f'<article id="page-{place}"{own}>\n'
        for element in article(page, hand):
            yield element + "\n"
        yield "</article>\n"


def _breakable(of: Terms | Equation, markup: str) -> str:
    """A long formula as one <math> element for each of its terms: browsers break lines between such elements, but never inside one."""
    if len(plain(of)) <= _SHORT:
        return markup
    math = ElementTree.fromstring(markup.replace(_NAMESPACE, ""))
    terms = [ElementTree.Element("math", math.attrib)]
    for child in math:
        if child.tag == "mo" and child.text in _SIGNS and child.get("form") == "infix" and len(terms[-1]):
            terms.append(ElementTree.Element("math", math.attrib))
        terms[-1].append(child)
    return "<wbr>".join(ElementTree.tostring(each, encoding="unicode") for each in terms)


@dataclass(frozen=True, slots=True)
class _Screen:
    """Sets formulas as MathML and figures as SVG inside the page."""

    strokes: bool
    figures: Iterator[int] = field(default_factory=lambda: count(1))

    def formula(self, of: Terms | Equation) -> str:
        return lone_number(of) or _breakable(of, mathml(of, strokes=self.strokes))

    def derivation(self, rows: Sequence[Row]) -> str:
        labelled = " labelled" if any(row.label for row in rows) else ""
        noted = " noted" if any(row.note for row in rows) else ""
        items = "".join(f"<li>{self._row(row, first=not place)}</li>\n" for place, row in enumerate(rows))
        # a list whose markers are hidden stays a list for those who hear it; what scrolls must be reached from the keyboard
        return f'<div class="scroll" tabindex="0"><ol role="list" class="derivation{labelled}{noted}">\n{items}</ol></div>'

    def picture(self, picture: Picture) -> str:
        return unframed(figure(picture, f"figure-{next(self.figures)}"))

    def _row(self, row: Row, first: bool) -> str:
        left = _breakable(row.left, mathml(row.left, True, self.strokes)) if row.left or first else ""
        rest = "".join(f"<span>{mathml_row(Row((), (pair,)), True, self.strokes)}</span>" for pair in row.right)
        label = f'<div class="label">{line(row.label, self)}</div>' if row.label else ""
        note = f'<div class="note">{line(row.note, self)}</div>' if row.note else ""
        return f'{label}<div class="left"><span>{left}</span></div><div class="rest">{rest}</div>{note}'
