"""A free-body diagram as a picture: puts body, arrows, angles, distances and their letters on one sheet. Decides no mechanics."""
from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from ..passage import Drawing, Picture
from .fig_angles import openings, turns
from .fig_arms import Armed, arms
from .fig_axes import axes
from .fig_body import INK, Body, Ray, beside_joint, body
from .fig_forces import PAPER, Drawn, forces, lettered, rays_of
from .fig_frame import Frame, framed
from .fig_outlines import words
from .fig_rows import rows
from .fig_shapes import Box, Capsule, Shape, bounds, capsules
from .fig_spans import spans
from .fig_svg import HIGHEST, WIDEST, svg
from .labels import Label, Wanted, place

_WIDE, _HIGH = 400.0, 280.0                       # what the body itself spans, in pixels, where there is room
_LEAST = 0.45                                     # the body is not drawn smaller than this share of that
_MARGIN = 14.0
_NAME = 14.0                                      # size of the joint's name, in pixels


class Layout(NamedTuple):
    """A figure in pixels: the labels in their places, all else that is drawn, in painting order, and the view around it.

    `mark` are those of the shapes that say what counts as positive.
    """

    labels: tuple[Label, ...]
    shapes: tuple[Shape, ...]
    view: Box
    mark: tuple[Shape, ...] = ()


def figure(picture: Picture, ident: str = "figure") -> str:
    """The picture as one SVG that stands alone: no script, no font, no reference; `ident` makes its identifiers unique on a page.

    Lengths are to scale, except that points too close to be told apart are drawn a little apart; arrows are not.
    """
    laid = layout(picture.drawing)
    return svg(laid.view, laid.shapes, laid.labels, ident, picture.title, picture.description, PAPER)


def layout(drawing: Drawing) -> Layout:
    """Where everything goes; the body is drawn smaller where its arrows and distances would not fit on the page."""
    wide, high = _WIDE, _HIGH
    for _ in range(3):
        laid = _laid(drawing, framed(drawing, wide, high))
        spare = min((WIDEST - laid.view.width) / wide, (HIGHEST - laid.view.height) / high)
        if spare >= 0.0 or wide <= _WIDE * _LEAST:
            break
        share = max(1.0 + spare * 1.02, _WIDE * _LEAST / wide)
        wide, high = wide * share, high * share
    return laid


def _laid(drawing: Drawing, frame: Frame) -> Layout:
    shape_of_body = body(drawing, frame)
    bones, joint = capsules(shape_of_body.under), capsules(shape_of_body.over)
    levers = arms(drawing, frame, bones)
    arrows = forces(drawing, frame, bones, joint, levers)
    rays, reached = rays_of(arrows), _reached(levers, arrows)
    tips = [piece for arrow in arrows for piece in arrow.room]
    room = [*tips, *capsules(reached)]
    angles = openings(drawing, frame, (*shape_of_body.rays, *rays), [*room, *joint])
    room += capsules(angles.shapes)
    couples = turns(drawing, frame, bones, [*room, *joint])
    room += [*capsules(couples.shapes), *bones, *joint]
    near = (*angles.wanted, *couples.wanted, *(each for lever in levers for each in lever.wanted), *lettered(arrows))
    first = place(near, room).room                # only to keep the rows of distances away from them
    lengths = spans(rows(drawing, frame, [*room, *first], rays, [*tips, *first]), frame, room, rays)
    room += capsules(lengths.shapes)
    lettering = place((*near, *lengths.wanted, *_named(drawing, shape_of_body, frame)), room, lengths.settled)
    shapes = (*lengths.shapes, *shape_of_body.under, *reached, *angles.shapes, *couples.shapes, *_arrows(arrows), *shape_of_body.over,
              *lettering.leaders)
    return _with_axes(drawing, lettering.labels, shapes)


def _reached(levers: Sequence[Armed], arrows: Sequence[Drawn]) -> tuple[Shape, ...]:
    """The lever arms, and the lines of pull that they stand on."""
    lines = (line for lever in levers for arrow in arrows if arrow.arrow is lever.arrow for line in lever.lines(Ray(arrow.tail, arrow.tip)))
    return (*lines, *(shape for lever in levers for shape in lever.shapes))


def _arrows(arrows: Sequence[Drawn]) -> list[Shape]:
    return [shape for arrow in arrows for shape in arrow.shapes]


def _named(drawing: Drawing, shape_of_body: Body, frame: Frame) -> tuple[Wanted, ...]:
    name = words(drawing.pivot_name, _NAME)
    return (Wanted(name, INK, beside_joint(shape_of_body.rays, frame.spot(drawing.pivot)), 32.0),) if name.path else ()


def _with_axes(drawing: Drawing, labels: tuple[Label, ...], shapes: tuple[Shape, ...]) -> Layout:
    room: tuple[Capsule, ...] = capsules(shapes)
    cross = axes(drawing.axes, drawing.sense, bounds(room, [label.box for label in labels]), room, labels)
    labels, shapes = labels + cross.labels, shapes + cross.shapes
    return Layout(labels, shapes, bounds(capsules(shapes), [label.box for label in labels]).grown(_MARGIN), cross.shapes)
