"""Formulas laid out: their outlines and where they stand. Knows MathML rows, fractions, roots and powers, but no page.

A row's pieces stand one after the other whatever they are, so a piece is laid out by ziamath once and then only moved:
numbers,
brackets and letters come back in every line of a derivation. For what stands in a fraction, under a root or below a
power ziamath
only tells the places, from blanks that are as large.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache
from xml.etree import ElementTree

from .glyph_outlines import BAR, Ink, Stroke, beside, laid, moved, strokes

_SPACE = "{http://www.w3.org/1998/Math/MathML}"
_BESIDE = 6.0  # the space on both sides of a fraction


def ink(markup: str) -> Ink:
    """The formula of one <math> element, laid out. Raises ValueError for a kind of stroke that our formulas do not
    have.
    """
    math = ElementTree.fromstring(markup)
    return _drawn(math, math.get("display", "inline"))


def summands(markup: str) -> tuple[Ink, ...]:
    """The same in parts, each but the first beginning with the plus or minus before it. What stands in a fraction or
    a root is whole.
    """
    math = ElementTree.fromstring(markup)
    parts: list[list[ElementTree.Element]] = [[]]
    for child in math:
        if child.tag == f"{_SPACE}mo" and child.text in ("+", "−") and child.get("form") == "infix" and parts[-1]:
            parts.append([])
        parts[-1].append(child)
    return tuple(_drawn(part, math.get("display", "inline")) for part in parts)


def _drawn(children: Iterable[ElementTree.Element], display: str) -> Ink:
    return beside(each for child in children for each in _inks(child, display))


def _inks(child: ElementTree.Element, display: str) -> Iterator[Ink]:
    """What is laid out by itself: a number digit by digit (they do not kern), what stands in a fraction or under a
    root piece by piece.
    """
    match child.tag.removeprefix(_SPACE):
        case "mn":
            for character in child.text or "":
                yield _leaf(
                    "mtext" if character.isspace() else "mn", character, (), display
                )  # only <mtext> keeps a space
        case "mfrac" if display == "block":
            yield _fraction(*(_drawn(each, "inline") for each in child))
        case "msqrt":
            yield _root(_drawn(child, display), display)
        case "msup" if (
            len(child[0]) and child[0][-1].get("stretchy") != "true"
        ):  # what stretches looks at its whole row
            base = _drawn(child[0], display)
            yield beside(
                (
                    base,
                    _power(
                        base.rise,
                        base.drop,
                        *(ElementTree.tostring(each) for each in (child[0][-1], child[1])),
                        display,
                    ),
                )
            )
        case tag if not len(child):
            yield _leaf(tag, child.text or "", tuple(child.attrib.items()), display)
        case _:
            yield _whole(ElementTree.tostring(child, encoding="unicode"), display)


@lru_cache(maxsize=8192)
def _leaf(tag: str, text: str, attributes: tuple[tuple[str, str], ...], display: str) -> Ink:
    element = ElementTree.Element(tag, dict(attributes))
    element.text = text
    return _laid(element, display)


@lru_cache(maxsize=8192)
def _whole(markup: str, display: str) -> Ink:
    return _laid(ElementTree.fromstring(markup), display)


def _laid(element: ElementTree.Element, display: str) -> Ink:
    fraction = element.tag == f"{_SPACE}mfrac"
    node = laid(element, display)
    box = node.bbox
    drawn = Ink(tuple(strokes(node)), node.xadvance(), box.xmin, box.xmax, box.ymax, -box.ymin)
    return _between(drawn) if fraction else drawn


def _between(fraction: Ink) -> Ink:
    """The same space on both sides of a fraction; ziamath leaves some behind it only."""
    bar = max((stroke for stroke in fraction.strokes if stroke.outline == BAR), key=lambda stroke: stroke.wide)
    return moved(fraction, right=_BESIDE)._replace(advance=bar.x + bar.wide + 2 * _BESIDE)


def _fraction(top: Ink, bottom: Ink) -> Ink:
    """Two sums over each other in the middle of a bar."""
    wide = max(top.advance, bottom.advance)
    up, down, bar = _levels(top.rise, top.drop, bottom.rise, bottom.drop)
    above, below = (
        moved(each, _BESIDE + (wide - each.advance) / 2, level) for each, level in ((top, up), (bottom, down))
    )
    strokes = (*above.strokes, *below.strokes, bar._replace(wide=wide, x=_BESIDE))
    return Ink(
        strokes, wide + 2 * _BESIDE, min(above.left, below.left), max(above.right, below.right), above.rise, below.drop
    )


@lru_cache(maxsize=1024)
def _levels(*sizes: float) -> tuple[float, float, Stroke]:
    """How far down the two parts of a fraction stand, and its bar, as ziamath sets them: with blanks as high and as
    deep as the parts.
    """
    blanks = (_blank(*sizes[:2]), _blank(*sizes[2:]))
    fraction = ElementTree.Element("mfrac")
    fraction.extend(blanks)
    node = laid(fraction, "block").nodes[0]
    (_, up), (_, down), _ = node.nodexy
    return up, down, *strokes(node)


def _root(radicand: Ink, display: str) -> Ink:
    """A root over what is laid out already."""
    empty = _empty_root(radicand.rise, radicand.drop, display)
    inner = moved(radicand, right=empty.advance)
    sign, bar = empty.strokes
    return Ink(
        (sign, bar._replace(wide=radicand.advance), *inner.strokes),
        inner.advance,
        0.0,
        inner.right,
        empty.rise,
        empty.drop,
    )


@lru_cache(maxsize=1024)
def _empty_root(rise: float, drop: float, display: str) -> Ink:
    """A root sign and its bar as ziamath sets them over a blank that is so high and so deep; the advance is where
    the blank begins.
    """
    root = ElementTree.Element("msqrt")
    root.append(_blank(rise, drop))
    node = laid(root, display).nodes[0]
    return Ink(tuple(strokes(node)), node.nodexy[1][0], 0.0, 0.0, node.bbox.ymax, -node.bbox.ymin)


@lru_cache(maxsize=1024)
def _power(rise: float, drop: float, end: bytes, exponent: bytes, display: str) -> Ink:
    """An exponent, from the end of its base on: that ends in `end`, and the rest of it may be blank."""
    base, power = ElementTree.Element("mrow"), ElementTree.Element("msup")
    base.extend((_blank(rise, drop), ElementTree.fromstring(end)))
    power.extend((base, ElementTree.fromstring(exponent)))
    node = laid(power, display).nodes[0]
    (written, raised), (_, (x, y)) = node.nodes, node.nodexy
    x -= written.xadvance()
    drawn = tuple(strokes(raised, x, y))
    right = x + raised.bbox.xmax
    return Ink(drawn, node.bbox.xmax - written.xadvance(), x, right, raised.bbox.ymax - y, y - raised.bbox.ymin)


def _blank(rise: float, drop: float) -> ElementTree.Element:
    return ElementTree.Element("mspace", width="1px", height=f"{rise:.4f}px", depth=f"{drop:.4f}px")
