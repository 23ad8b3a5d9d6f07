"""The last touch to a tagged PDF: formulas, headers of tables, running feet. Knows PDF's structure tree, and no
page.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping
from typing import Any

import pydyf

Finisher = Callable[[Any, pydyf.PDF], None]
Objects = Mapping[bytes, Any]


class NoAlternative(ValueError):
    """A figure has no text for those who cannot see it."""


def finisher(spoken: Collection[str]) -> Finisher:
    """What WeasyPrint calls with the document and its PDF before it is written.

    `spoken` are the alternative texts of formulas: figures that bear one become /Formula. A figure without any raises
    NoAlternative.
    """

    def finish(document: Any, pdf: pydyf.PDF) -> None:
        objects = {each.reference: each for each in pdf.objects}
        elements = [each for each in pdf.objects if _is_element(each)]
        for element in elements:
            match element["S"]:
                case "/Figure":
                    _figure(element, spoken)
                case "/TH":
                    _scope(element, objects)
        _feet(pdf, elements, objects)

    return finish


def _is_element(each: Any) -> bool:
    return isinstance(each, pydyf.Dictionary) and each.get("Type") == "/StructElem"


def _figure(element: Any, spoken: Collection[str]) -> None:
    if "Alt" not in element or not element["Alt"].string.strip():
        raise NoAlternative("a figure has no alternative text: give its picture a title")
    if element["Alt"].string in spoken:
        element["S"] = "/Formula"


def _scope(element: Any, objects: Objects) -> None:
    row = objects[element["P"]]
    element["A"]["Scope"] = "/Column" if objects[row["P"]]["S"] == "/THead" else "/Row"


def _feet(pdf: pydyf.PDF, elements: Collection[Any], objects: Objects) -> None:
    """Running feet become artifacts: WeasyPrint marks them as content whose elements hang nowhere in the tree (as of
    70.0).
    """
    tree = objects[pdf.catalog["StructTreeRoot"]]
    hanging = set(_under(tree["K"], objects))
    loose = [each for each in elements if each.reference not in hanging]
    for element in loose:
        marks = {kid for kid in element["K"] if isinstance(kid, int)}
        if marks:
            _unmark(objects[objects[element["Pg"]]["Contents"]].stream, marks)
    _forget({each.reference for each in loose}, objects[tree["ParentTree"]]["Nums"])
    for element in loose:
        element.clear()


def _under(references: Collection[Any], objects: Objects) -> Iterator[bytes]:
    waiting = [each for each in references if isinstance(each, bytes)]
    while waiting:
        reference = waiting.pop()
        yield reference
        waiting.extend(each for each in objects[reference].get("K", ()) if isinstance(each, bytes))


def _unmark(stream: list[Any], marks: Collection[int]) -> None:
    """Marked content of these numbers, written as a tag, a dictionary and an operator, becomes an artifact, written
    as two.
    """
    for place in range(len(stream) - 2, 0, -1):
        if isinstance(stream[place], pydyf.Dictionary) and stream[place].get("MCID") in marks:
            stream[place - 1 : place + 2] = [b"/Artifact", b"BMC"]


def _forget(loose: Collection[bytes], numbers: Any) -> None:
    """Take the elements out of the pages' lists, which find an element by the number of its content."""
    for owners in numbers[1::2]:
        if isinstance(owners, pydyf.Array):
            owners[:] = [b"null" if each in loose else each for each in owners]
