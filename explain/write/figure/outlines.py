"""The outlines of letters and names, so that a figure needs no font. Knows nothing of what they stand for."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from textwrap import wrap
from typing import NamedTuple
from xml.etree import ElementTree

from ...equation.terms import Terms
from ...document.untrusted_text import one_line

_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")
_TOKEN = re.compile(r"[A-Z]|-?\d+(?:\.\d+)?")
_SLOPING = re.compile(r"(<msub(?:sup)?><mi>[FPT]</mi>)(?:<mrow>(.*?)</mrow>|(<m[a-z]+>[^<]*</m[a-z]+>))")
_SPACE = '<mspace width="0.06em"/>'  # in front of a subscript: the font tucks it under the bowl of a P
_LINE = 26  # letters to a line of a name
_LINES = 3
_KEPT = 512  # formulas whose outlines are at hand


class Outline(NamedTuple):
    """An SVG path whose ink fills the rectangle from (0, 0) to (width, height), in pixels."""

    path: str
    width: float
    height: float


_seen: dict[tuple[int, float], tuple[Terms, Outline]] = {}  # by the very formula, which is kept so that it stays itself


def letters(of: Terms, size: float) -> Outline:
    """The outline of a formula. Kept by what is written: equal numbers may be written with unequal figures."""
    key = id(of), size
    if key not in _seen:
        if len(_seen) >= _KEPT:
            _seen.clear()
        _seen[key] = of, _written(of, size)
    return _seen[key][1]


def _written(of: Terms, size: float) -> Outline:
    from ...formula.mathml import mathml

    spaced = _SLOPING.sub(lambda found: f"{found[1]}<mrow>{_SPACE}{found[2] or found[3]}</mrow>", mathml(of))
    return _drawn(spaced, size)


@lru_cache(maxsize=512)
def words(text: str, size: float, width: int = _LINE) -> Outline:
    """The outline of a name in plain upright text, in lines of at most `width` letters, at most three."""
    lines = wrap(one_line(text).replace("-", "\u2010"), width, max_lines=_LINES, placeholder=" …")
    return _stacked([_drawn(_plain(line), size) for line in lines], size)


def _plain(line: str) -> str:
    math = ElementTree.Element("math")
    ElementTree.SubElement(math, "mtext").text = line
    return ElementTree.tostring(math, encoding="unicode")


@lru_cache(maxsize=2048)
def _drawn(markup: str, size: float) -> Outline:
    from ziafont.config import config
    from ziamath.zmath import Math

    kept = config.svg2
    config.svg2 = False  # plain paths: shared symbols have identifiers that clash between figures
    try:
        picture = Math(ElementTree.fromstring(markup), size=size, margin=0).svgxml()
    finally:
        config.svg2 = kept
    return _moved(" ".join(_paths(picture)))


def _paths(picture: ElementTree.Element) -> Iterator[str]:
    """Every outline of a typeset formula; bars are rectangles there."""
    for each in picture.iter():
        match each.tag:
            case "path":
                yield each.attrib["d"]
            case "rect":
                x, y, width, height = (float(each.attrib[key]) for key in ("x", "y", "width", "height"))
                yield f"M {x} {y} L {x + width} {y} L {x + width} {y + height} L {x} {y + height} Z"


def _moved(path: str) -> Outline:
    """The path with its ink (strictly: its control points) beginning at (0, 0)."""
    numbers = [float(each) for each in _NUMBER.findall(path)]
    if not numbers:
        return Outline("", 0.0, 0.0)
    left, top = min(numbers[0::2]), min(numbers[1::2])
    return Outline(_shifted(path, -left, -top), max(numbers[0::2]) - left, max(numbers[1::2]) - top)


def _shifted(path: str, right: float, down: float) -> str:
    tokens, turn = [], 0
    for token in _TOKEN.findall(path):
        if token.isalpha():
            tokens.append(token)
            continue
        tokens.append(f"{float(token) + (down if turn else right):.2f}".rstrip("0").rstrip("."))
        turn = 1 - turn
    return " ".join(tokens)


def _stacked(lines: list[Outline], size: float) -> Outline:
    """Lines under each other, centred."""
    wide = max((line.width for line in lines), default=0.0)
    paths, down = [], 0.0
    for line in lines:
        paths.append(_shifted(line.path, (wide - line.width) / 2, down))
        down += line.height + size * 0.25
    return Outline(" ".join(paths), wide, max(0.0, down - size * 0.25))
