"""Passages as the XHTML and MathML that an item may hold. Knows the element of each; all text is cleaned here."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Protocol
from xml.etree import ElementTree
from xml.etree.ElementTree import Element

from ...document.author_markdown import prose
from ...document.passage import (
    Answer,
    Bullets,
    Caution,
    Emphasis,
    Heading,
    Inline,
    Line,
    Maths,
    Paragraph,
    Passage,
    Picture,
    Prose,
    Reference,
    Strong,
    Table,
    Text,
)
from ...document.untrusted_text import clean
from ...equation.terms import Equation, Terms
from ...formula.mathml import mathml

MATHML = "http://www.w3.org/1998/Math/MathML"


class Files(Protocol):
    """Takes the figures of an item and says where each lies, from the item's own file."""

    def put(self, picture: Picture) -> str: ...


def body(passages: tuple[Passage, ...], files: Files) -> Iterator[Element]:
    """Passages as elements. Raises TypeError for one that no question has."""
    for passage in passages:
        yield from _elements(passage, files)


def filled(tag: str, line: Line, **attributes: str) -> Element:
    """An element that holds a line."""
    found = Element(tag, {name.replace("_", "-"): value for name, value in attributes.items()})
    for piece in line:
        _add(found, piece)
    return found


def add_text(element: Element, words: str) -> None:
    """Text behind all that an element holds already."""
    if len(element):
        element[-1].tail = (element[-1].tail or "") + clean(words)
    else:
        element.text = (element.text or "") + clean(words)


def _elements(passage: Passage, files: Files) -> Iterator[Element]:
    match passage:
        case Heading(_, line):
            head = Element("p")
            head.append(filled("strong", line))
            yield head
        case Paragraph(line) | Answer(line) | Caution(line):
            yield filled("p", line)
        case Prose(markdown):
            for each in prose(markdown):
                yield from _elements(each, files)
        case Bullets(items):
            bullets = Element("ul")
            bullets.extend(filled("li", item) for item in items)
            yield bullets
        case Table():
            yield _table(passage)
        case Picture():
            figure = Element("figure")
            figure.append(Element("img", {"src": files.put(passage), "alt": clean(passage.description)}))
            yield figure
            if passage.caption:
                yield filled("p", passage.caption)
        case _:
            raise TypeError(f"a {type(passage).__name__} in a question")


def _table(table: Table) -> Element:
    found = Element("table")
    if table.caption:
        ElementTree.SubElement(found, "caption").text = clean(table.caption)
    if table.header:
        row = ElementTree.SubElement(ElementTree.SubElement(found, "thead"), "tr")
        row.extend(filled("th", cell, scope="col") for cell in table.header)
    rows = ElementTree.SubElement(found, "tbody")
    for cells in table.rows:
        row = ElementTree.SubElement(rows, "tr")
        for place, cell in enumerate(cells):
            row.append(filled("td", cell) if place else filled("th", cell, scope="row"))
    return found


def _add(element: Element, piece: Inline) -> None:
    match piece:
        case Text(words) | Reference(words):
            add_text(element, words)
        case Strong(words):
            ElementTree.SubElement(element, "strong").text = clean(words)
        case Emphasis(words):
            ElementTree.SubElement(element, "em").text = clean(words)
        case Maths(of):
            element.append(_formula(of))


def _formula(of: Terms | Equation) -> Element:
    """A formula in its namespace, which stands on it alone so that no prefix is needed."""
    math = ElementTree.fromstring(mathml(of).replace(f'xmlns="{MATHML}"', "", 1))
    found = Element("math", {"xmlns": MATHML, **math.attrib})
    found.extend(math)
    return found
