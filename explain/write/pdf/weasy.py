"""Where WeasyPrint is run, with fonts and stylesheet kept between documents, once for a whole book. Knows no
passages.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from functools import lru_cache
from importlib.resources import files
from logging import ERROR, getLogger
from typing import Any, NamedTuple

from weasyprint import CSS, HTML
from weasyprint.text.fonts import FontConfiguration

from .paper_markup import Paper
from .weasy_fetch import SCHEME, Shelf
from .pdf_tags import finisher

_FEW = 0.3  # of a sheet: so little a last one bears that less space may save it
_WIDEST = 90  # widths of labels and notes come in halves of an em


class Press(NamedTuple):
    """What documents share: the shelf with the fonts, the fonts and the stylesheet as WeasyPrint has read them."""

    shelf: Shelf
    fonts: FontConfiguration
    style: CSS


@lru_cache(maxsize=1)
def press() -> Press:
    """The press, made ready once a process."""
    shelf, fonts = Shelf(_fonts()), FontConfiguration()
    widths = "".join(f".w{halves}{{width:{halves / 2}rem}}" for halves in range(_WIDEST + 1))
    style = (files(__package__) / "paper.css").read_text(encoding="utf-8") + widths
    return Press(shelf, fonts, CSS(string=style, url_fetcher=shelf, font_config=fonts))


def _fonts() -> Mapping[str, tuple[bytes, str]]:
    """The text in three cuts, and what people typed; the formula font lends the arrows, ticks and Greek letters that
    these lack.
    """
    own, symbols = files(__package__) / "fonts", files("ziamath") / "fonts" / "STIXTwoMath-Regular.ttf"
    found = {f"{SCHEME}{cut}": own / f"STIXTwoText-{cut}.ttf" for cut in ("Regular", "Italic", "Bold")}
    found |= {f"{SCHEME}Symbols": symbols, f"{SCHEME}Typed": own / "DejaVuSansMono.ttf"}
    return {name: (file.read_bytes(), "font/ttf") for name, file in found.items()}


@lru_cache(maxsize=8)
def _style(name: str) -> CSS:
    """A stylesheet by its name; one of those for the screen by "html/" before it."""
    shelf, fonts, _ = press()
    folder = files("explain.write") if "/" in name else files(__package__)
    return CSS(string=(folder / name).read_text(encoding="utf-8"), url_fetcher=shelf, font_config=fonts)


def printed(markup: str, hand: Paper, *more: str, tighter: Sequence[str] = ()) -> bytes:
    """A whole HTML document as PDF/UA, with what the hand that set it has made: images, letters and their words.

    `more` are names of stylesheets that go behind the one of every page; `tighter` those that are tried, each behind
    the one before it, where few lines stand on the last sheet, until that sheet is saved. Raises `ua.NoAlternative` for
    a figure without alternative text.
    """
    return written(rendered(markup, hand, *more, tighter=tighter), hand)


def rendered(markup: str, hand: Paper, *more: str, tighter: Sequence[str] = ()) -> Any:
    """The same laid out on sheets, as WeasyPrint's document."""
    shelf, fonts, style = press()
    styles = [style, *map(_style, more)]
    with _quiet():
        source = HTML(string=markup, url_fetcher=shelf)
        document = source.render(font_config=fonts, stylesheets=styles, **_options(hand))
        few = len(document.pages) > 1 and _filled(document.pages[-1]) < _FEW
        for place in range(1, len(tighter) + 1 if few else 1):
            closer = [*styles, *map(_style, tighter[:place])]
            other = source.render(font_config=fonts, stylesheets=closer, **_options(hand))
            if len(other.pages) < len(document.pages):
                return other
    return document


def written(document: Any, hand: Paper) -> bytes:
    """A document that has been laid out, as PDF/UA."""

    def finish(document: Any, pdf: Any) -> None:
        hand.case.lay_in(pdf)
        finisher(hand.spoken)(document, pdf)

    with _quiet():
        printing: bytes = document.write_pdf(finisher=finish, **_options(hand))
    return printing


def _options(hand: Paper) -> dict[str, Any]:
    return {"pdf_variant": "pdf/ua-1", "cache": dict(hand.images)}


def _filled(page: Any) -> float:
    """The share of a sheet's height that its lines and images reach down to."""
    box = page._page_box
    bodies = (each for each in box.children if each.element_tag == "html")
    return max((_low(each) - float(box.margin_top) for each in bodies), default=0.0) / float(box.height)


def _low(box: Any) -> float:
    """The lower edge of the lowest thing in a box that holds no others."""
    inner = getattr(box, "children", ())
    return max(map(_low, inner)) if inner else float(box.position_y) + float(box.height)


@contextmanager
def _quiet() -> Iterator[None]:
    """WeasyPrint warns once for every letter that no font has; such a letter is plain to see as a box on the page."""
    log = getLogger("weasyprint")
    level = log.level
    log.setLevel(ERROR)
    try:
        yield
    finally:
        log.setLevel(level)
