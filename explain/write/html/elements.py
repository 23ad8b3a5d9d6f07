"""Passages as HTML elements, for a screen and for paper alike. Knows the element of each; not how formulas and figures
are set.

All text, people's and our own, is cleaned and escaped here; what a `Hand` returns is taken as markup.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from html import escape
from typing import Protocol

from ...equation.unit_spellings import OFFERED
from ...equation.terms import Equation, Terms, number
from ...document.passage import (
    Answer,
    Blanks,
    Bullets,
    Caution,
    Derivation,
    Emphasis,
    Heading,
    Inline,
    Judged,
    Line,
    Maths,
    Page,
    Paragraph,
    Passage,
    Picture,
    Plot,
    Prose,
    Reference,
    Row,
    Space,
    Strong,
    Table,
    Text,
)
from ...document.untrusted_text import clean
from ..marked_lines import HEADER
from ...formula.plain import plain
from ...document.author_markdown import prose


_UNITS = sorted({word for each in OFFERED.values() for unit in each for word in unit.split()}, key=len, reverse=True)
_UNIT = rf"(?:N[·.][cm]?m|{'|'.join(map(re.escape, _UNITS))}|pounds?|degrees)(?![^\W²³]|\^)[²³]?(?:[/·][\w²³·]+)?"
_ASKED = r"\((?:[a-z]|i{2,3}|iv|vi{1,3})\) [^\s(]+"
_WHOLE = re.compile(rf"\d[\d.,]* {_UNIT}|{_ASKED}")  # a number with its unit, the letter of a question with a word
_MARKS = tuple(".,:;)?")


class Hand(Protocol):
    """Sets what plain elements cannot: formulas, derivations and figures, these with the markup of their caption; and
    says in words what a cell shows as a formula, "" where the markup says it.
    """

    def heard(self, cell: Line) -> str: ...

    def formula(self, of: Terms | Equation) -> str: ...

    def derivation(self, rows: Sequence[Row]) -> str: ...

    def figure(self, picture: Picture | Plot, caption: str) -> str: ...


def text(words: str) -> str:
    """Plain text as HTML text, also fit for an attribute in double quotes."""
    return escape(clean(words))


def kept(words: str) -> str:
    """Plain text as HTML text in which a number is not parted from its unit at a line's end, nor "(a)" from the word
    behind it.
    """
    parts, at = list[str](), 0
    for found in _WHOLE.finditer(words := clean(words)):
        parts += [escape(words[at : found.start()]), f'<span class="kept">{escape(found[0])}</span>']
        at = found.end()
    return "".join((*parts, escape(words[at:])))


def lone_number(of: Terms | Equation) -> str:
    """A number that stands alone, with its unit, as text that does not break; "" for any other formula."""
    if isinstance(of, Equation) or (of and not number(of)):
        return ""
    return text(plain(of)).replace(" ", "\u00a0")


def line(pieces: Line, hand: Hand) -> str:
    """One line of text with its formulas; a mark behind a formula is not parted from it at a line's end."""
    parts, rest = list[str](), list(pieces)
    for place, piece in enumerate(rest):
        behind = rest[place + 1] if place + 1 < len(rest) else None
        if isinstance(piece, Maths) and isinstance(behind, Text) and behind.text[:1] in _MARKS:
            parts.append(f'<span class="kept">{_inline(piece, hand)}{text(behind.text[:1])}</span>')
            rest[place + 1] = Text(behind.text[1:])
        else:
            parts.append(_inline(piece, hand))
    return "".join(parts)


def article(page: Page, hand: Hand) -> Iterator[str]:
    """The passages of a page as elements, under its title unless the page begins with a heading of its own of the
    first level.
    """
    match page.passages:
        case (Heading(level=1), *_):
            pass
        case _:
            yield f"<h1>{text(page.title)}</h1>"
    for passage in page.passages:
        yield from elements(passage, hand)


def elements(passage: Passage, hand: Hand) -> Iterator[str]:
    """One passage as elements: one, except that an author's prose may be several."""
    match passage:
        case Heading(level, words):
            rank = min(max(level, 1), 6)
            yield f"<h{rank}>{line(words, hand)}</h{rank}>"
        case Paragraph(words):
            yield f"<p>{line(words, hand)}</p>"
        case Prose(markdown):
            for each in prose(markdown):
                yield from elements(each, hand)
        case Derivation(rows):
            yield hand.derivation(rows)
        case Blanks(reasons):
            items = "".join(f'<li><p>{line(each, hand)}</p><div class="rule"></div></li>' for each in reasons)
            yield f'<ol role="list" class="blanks">{items}</ol>'
        case Answer(words):
            yield f'<p class="answer">{line(words, hand)}</p>'
        case Bullets(items):
            yield "<ul>" + "".join(f"<li>{line(item, hand)}</li>" for item in items) + "</ul>"
        case Table():
            yield _table(passage, hand)
        case Caution(words):
            yield f'<p class="caution">{line(words, hand)}</p>'
        case Picture() | Plot():
            caption = f"<figcaption>{line(passage.caption, hand)}</figcaption>" if passage.caption else ""
            yield f"<figure>{hand.figure(passage, caption)}</figure>"
        case Judged():
            yield _judged(passage, hand)
        case Space(title, height, checklist):
            ticks = "".join(f"<li>{line(item, hand)}</li>" for item in checklist)
            ticks = f'<ul class="checklist">{ticks}</ul>' if ticks else ""
            yield (
                f'<div class="space"><p>{text(title)}</p>{ticks}<div class="blank" '
                f'style="height:{int(height)}mm"></div></div>'
            )


def _inline(piece: Inline, hand: Hand) -> str:
    match piece:
        case Text(words):
            return kept(words)
        case Strong(words):
            return f"<strong>{kept(words)}</strong>"
        case Emphasis(words):
            return f"<em>{kept(words)}</em>"
        case Maths(of):
            return hand.formula(of)
        case Reference(words, anchor):
            return f'<a href="#{text(anchor)}">{text(words)}</a>'


def _judged(judged: Judged, hand: Hand) -> str:
    """A working as a table: the sign is for the eye only, its word for everyone."""
    head = "".join(f'<th scope="col">{each}</th>' for each in HEADER)
    rows = []
    for each in judged.lines:
        notes = "".join(f'<p class="read">{line(note, hand)}</p>' for note in each.notes)
        verdict = f'<td class="verdict"><span aria-hidden="true">{text(each.sign)}</span> {text(each.word)}</td>'
        style = ' class="marked"' if each.marked else ""
        rows.append(
            f'<tr{style}><th scope="row">{each.number}</th>{verdict}'
            f"<td><code>{text(each.typed)}</code>{notes}</td></tr>"
        )
    top = f"<caption>{text(judged.caption)}</caption><thead><tr>{head}</tr></thead>"
    return f'<table class="judged">{top}<tbody>{"".join(rows)}</tbody></table>'


def _table(table: Table, hand: Hand) -> str:
    head = "".join(_cell("th", "col", place, cell, table, hand) for place, cell in enumerate(table.header))
    rows = "".join(f"<tr>{_row(row, table, hand)}</tr>" for row in table.rows)
    caption = f"<caption>{text(table.caption)}</caption>" if table.caption else ""
    header = f"<thead><tr>{head}</tr></thead>" if head else ""
    name = text(table.caption or "Table")
    return (
        f'<div class="wide" tabindex="0" role="group" aria-label="{name}">'
        f"<table>{caption}{header}<tbody>{rows}</tbody></table></div>"
    )


def _row(row: Sequence[Line], table: Table, hand: Hand) -> str:
    return "".join(_cell("td" if place else "th", "row", place, cell, table, hand) for place, cell in enumerate(row))


def _cell(tag: str, scope: str, place: int, cell: Line, table: Table, hand: Hand) -> str:
    side = ' class="right"' if place in table.right else ""
    words = text(hand.heard(cell)) if tag == "th" else ""
    heads = f' scope="{scope}"' if tag == "th" else ""
    shown = line(cell, hand)
    if words:
        shown = f'<span class="heard">{words}</span><span aria-hidden="true">{shown}</span>'
    return f"<{tag}{heads}{side}>{shown}</{tag}>"
