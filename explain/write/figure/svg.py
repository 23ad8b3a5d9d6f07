"""A laid-out figure as SVG: nothing but elements and their numbers. Refers to nothing outside and to no font."""

from __future__ import annotations

import re
from itertools import groupby
from types import MappingProxyType
from collections.abc import Iterable, Mapping
from xml.etree import ElementTree

from ...document.untrusted_text import clean
from .parts import Part
from .shapes import Arc, Box, Disc, Line, Patch, Pen, Shape, on_arc
from .labels import Label

WIDEST = 560.0
HIGHEST = 440.0


def svg(
    view: Box,
    shapes: Iterable[Shape],
    labels: Iterable[Label],
    ident: str,
    title: str,
    description: str,
    paper: str,
    owners: Mapping[int, Part] = MappingProxyType({}),
) -> str:
    """The picture with its title and description, at most 560 by 440 pixels; `ident` makes its identifiers unique on
    a page. Shapes that have an owner, by their identity, stand in a group with its name.
    """
    shrunk = min(1.0, WIDEST / view.width, HIGHEST / view.height)
    name = re.sub(r"[^A-Za-z0-9_-]", "-", ident) or "figure"
    root = ElementTree.Element(
        "svg",
        {
            "xmlns": "http://www.w3.org/2000/svg",
            "width": _n(view.width * shrunk),
            "height": _n(view.height * shrunk),
            "viewBox": f"0 0 {_n(view.width)} {_n(view.height)}",
            "role": "img",
            "aria-labelledby": f"{name}-title {name}-desc" if description else f"{name}-title",
        },
    )
    ElementTree.SubElement(root, "title", {"id": f"{name}-title"}).text = clean(title)
    if description:
        ElementTree.SubElement(root, "desc", {"id": f"{name}-desc"}).text = clean(description)
    ElementTree.SubElement(
        root,
        "rect",
        {
            "x": "0.5",
            "y": "0.5",
            "width": _n(view.width - 1),
            "height": _n(view.height - 1),
            "rx": "10",
            "fill": paper,
            "stroke": "#cfccc4",
        },
    )
    drawing = ElementTree.SubElement(root, "g", {"transform": f"translate({_n(-view.left)} {_n(-view.top)})"})
    for owner, run in groupby(shapes, lambda shape: owners.get(id(shape))):
        named = {"data-name": clean(owner.name), "data-kind": owner.kind} if owner else {}
        (ElementTree.SubElement(drawing, "g", named) if owner else drawing).extend(map(_element, run))
    for label in labels:
        ElementTree.SubElement(
            drawing,
            "path",
            {
                "d": label.outline.path,
                "fill": label.ink,
                "transform": f"translate({_n(label.box.left)} {_n(label.box.top)})",
            },
        )
    return ElementTree.tostring(root, encoding="unicode")


def _n(value: float) -> str:
    """A number to a hundredth of a pixel, without needless zeros."""
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def _element(shape: Shape) -> ElementTree.Element:
    match shape:
        case Line((ax, ay), (bx, by), pen):
            return ElementTree.Element("line", {"x1": _n(ax), "y1": _n(ay), "x2": _n(bx), "y2": _n(by), **_pen(pen)})
        case Disc((x, y), radius, pen):
            return ElementTree.Element("circle", {"cx": _n(x), "cy": _n(y), "r": _n(radius), **_pen(pen)})
        case Patch(corners, pen):
            return ElementTree.Element(
                "path", {"d": "M" + "L".join(f"{_n(x)} {_n(y)}" for x, y in corners) + "Z", **_pen(pen)}
            )
        case Arc(_, radius, _, sweep, pen):
            (ax, ay), (bx, by) = on_arc(shape, 0.0), on_arc(shape, 1.0)
            flags = f"0 {int(abs(sweep) > 180)} {int(sweep < 0)}"
            way = f"M{_n(ax)} {_n(ay)}A{_n(radius)} {_n(radius)} {flags} {_n(bx)} {_n(by)}"
            return ElementTree.Element("path", {"d": way, **_pen(pen)})


def _pen(pen: Pen) -> dict[str, str]:
    style = {"fill": pen.fill}
    if pen.width:
        style |= {"stroke": pen.ink, "stroke-width": _n(pen.width)}
    if pen.dash:
        style["stroke-dasharray"] = pen.dash
    if pen.round:
        style |= {"stroke-linecap": "round"}
    return style
