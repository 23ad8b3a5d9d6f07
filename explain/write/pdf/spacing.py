"""Spaces that ziamath would set otherwise than the MathML says, or too narrow to read. Knows ziamath (0.13), and no
formulas.

Its em is four thirds of the size of the type. And its formula font moves a subscript under the bowl of a P and the arms
of F, T,
V, W and Y, where it is hard to tell from the letter.
"""

from __future__ import annotations

from collections.abc import Iterator
from copy import deepcopy
from functools import lru_cache
from xml.etree import ElementTree
from xml.etree.ElementTree import Element

LEAST = 0.05  # from the ink of a letter to that of its subscript, in em
_SIZE = 100.0
_EM = 1.333  # what ziamath takes for an em, in the size of the type
_SPACES = ("width", "lspace", "rspace")


def spaced(math: Element) -> Element:
    """The same element made ready for ziamath: its spaces in ziamath's em, and no subscript nearer to its letter
    than 0.05 em.
    """
    for each in math.iter():
        for name in _SPACES:
            if each.get(name, "").endswith("em"):
                each.set(name, f"{float(each.get(name, '')[:-2]) / _EM:.4f}em")
    for each in math.iter():
        if _name(each) in ("msub", "msubsup"):
            space = _wanting(ElementTree.tostring(_pair(each), encoding="unicode"))
            if space:
                each[1] = _behind(space, each[1])
    return math


def gap(pair: Element) -> float:
    """From the right end of a letter's ink to the left end of its subscript's, in hundredths of an em; 0 where one has
    no ink.

    `pair` is an <msub> as ziamath takes it.
    """
    from ziamath.zmath import Math

    math = Element("math")
    math.append(deepcopy(pair))
    node = Math(math, size=_SIZE, margin=0).node.nodes[0]
    letter, subscript = (list(_ends(each, x)) for each, (x, _) in zip(node.nodes[:2], node.nodexy, strict=False))
    return min(left for left, _ in subscript) - max(right for _, right in letter) if letter and subscript else 0.0


def _name(element: Element) -> str:
    return element.tag.rpartition("}")[2]


def _pair(element: Element) -> Element:
    """A letter with its subscript and nothing else, without a namespace."""
    pair = Element("msub")
    pair.extend(deepcopy(list(element)[:2]))
    for each in pair.iter():
        each.tag, each.tail = _name(each), None
    return pair


def _behind(space: float, subscript: Element) -> Element:
    namespace = subscript.tag.removesuffix(_name(subscript))
    row = Element(f"{namespace}mrow")
    ElementTree.SubElement(row, f"{namespace}mspace", width=f"{space:.4f}em")
    row.append(subscript)
    return row


@lru_cache(maxsize=4096)
def _wanting(pair: str) -> float:
    """The space that a subscript wants before it, in ziamath's em; 0 for none.

    A subscript with a space before it is no longer moved under its letter, so what it wants is not what it lacked.
    """
    if gap(ElementTree.fromstring(pair)) >= LEAST * _SIZE:
        return 0.0
    one, two = (gap(_with(space, pair)) for space in (1.0, 2.0))
    return 1.0 + (LEAST * _SIZE - one) / (two - one) if two > one else 0.0


def _with(space: float, pair: str) -> Element:
    math = ElementTree.fromstring(pair)
    math[1] = _behind(space, math[1])
    return math


def _ends(node: object, x: float) -> Iterator[tuple[float, float]]:
    """The left and the right end of each letter in what ziamath has laid out at `x`."""
    from ziamath.drawable import Drawable, Glyph

    match node:
        case Glyph():
            yield x + node.bbox.xmin, x + node.bbox.xmax
        case Drawable():
            for (right, _), inner in zip(getattr(node, "nodexy", ()), node.nodes, strict=False):
                yield from _ends(inner, x + right)
