"""What of a figure belongs to one force or one bone, for pages on which these can be turned. Draws nothing."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from ...document.passage import Drawing
from .body import Body
from .forces import Drawn
from .shapes import Shape, Spot

BONE = "bone"


class Part(NamedTuple):
    """A force or a bone: its name, the kind of the force or "bone", the spot it turns about, its far end, its shapes.

    Of a force that ends at the body, the far end is where it begins.
    """

    name: str
    kind: str
    about: Spot
    end: Spot
    shapes: tuple[Shape, ...]


def parts(drawing: Drawing, shape_of_body: Body, arrows: Sequence[Drawn]) -> tuple[Part, ...]:
    """The parts of a figure, bones first."""
    count = len(drawing.bones)
    edges, fills = shape_of_body.under[-2 * count : -count or None], shape_of_body.under[-count:]
    bones = (
        Part(bone.name, BONE, ray.start, ray.end, (edge, fill))
        for bone, ray, edge, fill in zip(drawing.bones, shape_of_body.rays, edges, fills, strict=False)
    )
    forces = (Part(each.arrow.name, each.arrow.kind, *_ends(each), each.shapes) for each in arrows)
    return (*bones, *forces)


def _ends(each: Drawn) -> tuple[Spot, Spot]:
    return (each.tip, each.tail) if each.into else (each.tail, each.tip)


def owners(of: Sequence[Part]) -> Mapping[int, Part]:
    """Of each shape, by its identity, the part that it belongs to."""
    return {id(shape): part for part in of for shape in part.shapes}
