"""A free-body diagram as a picture: puts body, arrows, angles, distances and their letters on one sheet. Decides no
mechanics.
"""

from __future__ import annotations

from collections.abc import Container, Iterator, Sequence
from dataclasses import replace
from itertools import pairwise
from math import dist
from typing import NamedTuple

from ...document.figure_parts import ARMS, BODY, SIGNS, part_of
from ...document.passage import Arrow, Band, Drawing, Picture
from .angles import openings, turns
from .arms import Armed, arms
from .axes import axes
from .bands import bands
from .crowd import Crowd, crowd, key
from .cells import Ground
from .body import INK, Body, Ray, beside_joint, body
from .forces import PAPER, Drawn, forces, lettered, rays_of
from .frame import Frame, framed
from .ground import ground
from .outlines import words
from .parts import Part, owners, parts
from .rows import ROW, Length, parallel_arms, rows
from .shapes import Arc, Box, Capsule, Shape, bounds, capsules
from .spans import Spanned, spans
from .svg import HIGHEST, WIDEST, svg
from .labels import Label, guessed, place
from .places import Wanted

_WIDE, _HIGH = 400.0, 280.0  # what the body itself spans, in pixels, where there is room
_LEAST = 0.45  # the body is not drawn smaller than this share of that
_SPARE = 1.1  # so much more than is lacking it is made smaller at once: to lay it out again takes long
_OVER = 0.08  # so little too large, the whole is shrunk rather than laid out again
_MARGIN = 14.0
_ROOMY = 40.0  # pixels on each side for labels and the first distance
_NAME = 14.0  # size of the joint's name, in pixels


class Layout(NamedTuple):
    """A figure in pixels: the labels in their places, all else that is drawn, in painting order, and the view around
    it.

    `mark` are those of the shapes that say what counts as positive, `parts` what belongs to one force or bone.
    `lettered` and `drawn` name what each label and each shape belongs to, as a board draws it; a plot has none.
    """

    labels: tuple[Label, ...]
    shapes: tuple[Shape, ...]
    view: Box
    mark: tuple[Shape, ...] = ()
    parts: tuple[Part, ...] = ()
    lettered: tuple[str, ...] = ()
    drawn: tuple[str, ...] = ()

    def only(self, parts: Container[str]) -> Layout:
        """The same with nothing but these parts, each where it was."""
        return self._replace(
            labels=tuple(each for each, part in zip(self.labels, self.lettered, strict=True) if part in parts),
            shapes=tuple(each for each, part in zip(self.shapes, self.drawn, strict=True) if part in parts),
        )


class Sheet(NamedTuple):
    """The most that a figure may take up, and how large its words are, the names of joint and axes; in pixels."""

    wide: float = WIDEST
    high: float = HIGHEST
    words: float = _NAME


_PAGE = Sheet()


class _Bare(NamedTuple):
    """A figure without distances and labels: the room that is taken, of that what the forces take, their lines, the
    labels wanted; what is drawn
    below the distances and above them."""

    drawing: Drawing
    sheet: Sheet
    frame: Frame
    room: Ground
    tips: Sequence[Capsule]
    rays: Sequence[Ray]
    arms: Sequence[Length]
    near: tuple[Wanted, ...]
    name: tuple[Wanted, ...]
    under: tuple[Shape, ...]
    over: tuple[Shape, ...]
    parts: tuple[Part, ...]
    near_of: tuple[str, ...]  # the parts that the labels near their spots, and the shapes above, belong to
    over_of: tuple[str, ...]


class Parted(NamedTuple):
    """A figure as SVG in which the shapes of one force or bone stand in groups with its name, and these parts in the
    pixels of its view box, which is so wide and high.
    """

    svg: str
    parts: tuple[Part, ...]
    width: float
    height: float


def figure(picture: Picture, ident: str = "figure") -> str:
    """The picture as one SVG that stands alone: no script, no font, no reference; `ident` makes its identifiers unique
    on a page.

    Lengths are to scale, except that points too close to be told apart are drawn a little apart; arrows are not.
    """
    laid = layout(picture.drawing)
    return svg(laid.view, laid.shapes, laid.labels, ident, picture.title, picture.description, PAPER)


def parted(picture: Picture, ident: str = "figure") -> Parted:
    """The same figure with its parts told apart, for a page on which they can be turned."""
    laid = layout(picture.drawing)
    view, of = laid.view, owners(laid.parts)
    made = svg(view, laid.shapes, laid.labels, ident, picture.title, picture.description, PAPER, of)
    found = tuple(
        part._replace(
            about=(part.about[0] - view.left, part.about[1] - view.top),
            end=(part.end[0] - view.left, part.end[1] - view.top),
        )
        for part in laid.parts
    )
    return Parted(made, found, view.width, view.height)


def layout(drawing: Drawing, sheet: Sheet = _PAGE) -> Layout:
    """Where everything goes; the body is drawn smaller where its arrows and distances would not fit on the sheet.

    How much smaller is found with labels at a guess, because looking for their places takes longest.
    """
    crowded = crowd(drawing)
    return _keyed(_fitted(crowded.drawing, sheet), crowded)


def _fitted(drawing: Drawing, sheet: Sheet) -> Layout:
    share, bare = 1.0, _bare(drawing, sheet, 1.0)
    if not _roomy(bare, sheet):
        share = _fitting(_guess(bare), share, _OVER, sheet)
        bare = bare if share == 1.0 else _bare(drawing, sheet, share)
    laid = _laid(bare)
    for _ in range(2):
        smaller = _fitting(laid.view, share, _OVER, sheet)
        if smaller == share:
            break
        share, laid = smaller, _laid(_bare(drawing, sheet, smaller))
    return laid


def _keyed(laid: Layout, crowded: Crowd) -> Layout:
    """The figure with the key to its numbers below it."""
    if not crowded.entries:
        return laid
    labels = key(crowded, laid.view, _MARGIN)
    low = bounds((), [label.box for label in labels]).grown(_MARGIN)
    return laid._replace(
        labels=laid.labels + labels,
        view=bounds((), [laid.view, low]),
        lettered=laid.lettered + (ARMS,) * len(labels),
    )


def _roomy(bare: _Bare, sheet: Sheet) -> bool:
    """Whether the figure fits on the sheet, wherever its distances and labels go."""
    view = bounds(bare.room.strokes).grown(_ROOMY + ROW * (len(bare.drawing.spans) + len(bare.arms)))
    return view.width <= sheet.wide and view.height <= sheet.high


def _fitting(view: Box, share: float, over: float, sheet: Sheet) -> float:
    """The share of its full size at which a body fits whose view came out so at this one: the same, if that is at
    most `over` too large.
    """
    spare = min((sheet.wide - view.width) / _WIDE, (sheet.high - view.height) / _HIGH)
    return share if spare > -over else max(share + spare * _SPARE, min(share, _LEAST))


def _bare(drawing: Drawing, sheet: Sheet, share: float) -> _Bare:
    frame = framed(drawing, _WIDE * share, _HIGH * share)
    shape_of_body = body(drawing, frame)
    bones, joint = capsules(shape_of_body.under), capsules(shape_of_body.over)
    levers, spread = arms(drawing, frame), (*ground(drawing, frame), *bands(drawing, frame))
    arrows = forces(drawing, frame, bones, joint, levers)
    rays, reached = rays_of(arrows), _reached(levers, arrows)
    tips = [piece for arrow in arrows for piece in arrow.room]
    room = [*tips, *capsules(reached)]
    angles = openings(drawing, frame, (*shape_of_body.rays, *rays), [*room, *joint])
    room += capsules(angles.shapes)
    couples = turns(drawing, frame, bones, [*room, *joint])
    room += [*capsules(couples.shapes), *bones, *joint, *capsules(spread)]
    arms_wanted = [each for lever in levers for each in lever.wanted]
    near = (*angles.wanted, *couples.wanted, *arms_wanted, *lettered(arrows))
    turned = [part_of(turn) for turn in drawing.turns]
    near_of = (
        *_all(ARMS, angles.wanted),
        *turned,
        *_all(ARMS, arms_wanted),
        *(part_of(each.arrow) for each in arrows if each.arrow.letter),
    )
    over = (
        (BODY, ground(drawing, frame)),
        *((_laden(band, drawing.arrows), bands(replace(drawing, bands=(band,)), frame)) for band in drawing.bands),
        (ARMS, reached),
        (ARMS, angles.shapes),
        *zip(turned, _at_arcs(couples.shapes), strict=True),
        *((part_of(each.arrow), each.shapes) for each in arrows),
        (BODY, shape_of_body.over),
    )
    return _Bare(
        drawing,
        sheet,
        frame,
        Ground(room),
        tips,
        rays,
        parallel_arms(drawing, frame, arrows),
        near,
        _named(drawing, shape_of_body, frame, sheet.words),
        shape_of_body.under,
        tuple(shape for _, shapes in over for shape in shapes),
        parts(drawing, shape_of_body, arrows),
        near_of,
        tuple(part for part, shapes in over for _ in shapes),
    )


def _all(part: str, of: Sequence[object]) -> tuple[str, ...]:
    """A part's name, once for each."""
    return (part,) * len(of)


def _at_arcs(shapes: Sequence[Shape]) -> Iterator[tuple[Shape, ...]]:
    """The shapes of couples one after the other: each begins with its arc."""
    starts = [place for place, shape in enumerate(shapes) if isinstance(shape, Arc)]
    for start, end in pairwise([*starts, len(shapes)]):
        yield tuple(shapes[start:end])


def _laden(band: Band, arrows: Sequence[Arrow]) -> str:
    """The part of the load that a band spreads out: the one whose arrow is nearest to its middle, or a third of the way
    on.
    """
    share = 2 / 3 if band.growing else 1 / 2
    middle = tuple(a + share * (b - a) for a, b in zip(band.start, band.end, strict=True))
    loads = [each for each in arrows if each.kind == "load"]
    return part_of(min(loads, key=lambda each: dist(each.at, middle))) if loads else BODY


def _measured(bare: _Bare, around: Sequence[Capsule]) -> Spanned:
    """The distances, kept away from what lies around."""
    placed = rows(bare.drawing, bare.frame, bare.room.plus(around), bare.rays, [*bare.tips, *around], bare.arms)
    return spans(placed, bare.frame, bare.room, bare.rays)


def _guess(bare: _Bare) -> Box:
    """The view as it will be, nearly."""
    lengths = _measured(bare, guessed(bare.near).room)
    labels = (*lengths.settled, *guessed((*bare.near, *lengths.wanted, *bare.name)).labels)
    return bounds([*bare.room.strokes, *capsules(lengths.shapes)], [label.box for label in labels]).grown(_MARGIN)


def _laid(bare: _Bare) -> Layout:
    first = place(bare.near, bare.room, roughly=True)  # only to keep the rows of distances away from them
    lengths = _measured(bare, first.room)
    lettering = place(
        (*bare.near, *lengths.wanted, *bare.name), bare.room.plus(capsules(lengths.shapes)), lengths.settled, first
    )
    whose = (*bare.near_of, *_all(ARMS, lengths.wanted), *_all(BODY, bare.name))
    shapes = (*lengths.shapes, *bare.under, *bare.over, *lettering.leaders)
    drawn = (*_all(ARMS, lengths.shapes), *_all(BODY, bare.under), *bare.over_of)
    led = (owner for owner, each in zip(whose, lettering.placed, strict=True) for _ in each.leader)
    lettered = (*_all(ARMS, lengths.settled), *whose)
    laid = Layout(lettering.labels, shapes, bounds(()), (), bare.parts, lettered, (*drawn, *led))
    return _with_axes(bare, laid)


def _reached(levers: Sequence[Armed], arrows: Sequence[Drawn]) -> tuple[Shape, ...]:
    """The lever arms, and the lines of pull that they stand on."""
    lines = (
        line
        for lever in levers
        for arrow in arrows
        if arrow.arrow is lever.arrow
        for line in lever.lines(Ray(arrow.tail, arrow.tip))
    )
    return (*lines, *(shape for lever in levers for shape in lever.shapes))


def _named(drawing: Drawing, shape_of_body: Body, frame: Frame, size: float) -> tuple[Wanted, ...]:
    name = words(drawing.pivot_name, size)
    return (Wanted(name, INK, beside_joint(shape_of_body.rays, frame.spot(drawing.pivot)), 32.0),) if name.path else ()


def _with_axes(bare: _Bare, laid: Layout) -> Layout:
    room: tuple[Capsule, ...] = capsules(laid.shapes)
    inner = bounds(room, [label.box for label in laid.labels])
    cross = axes(bare.drawing.axes, bare.drawing.sense, inner, room, laid.labels, bare.sheet.words)
    view = bounds(capsules(cross.shapes), [inner, *(label.box for label in cross.labels)]).grown(_MARGIN)
    return Layout(
        laid.labels + cross.labels,
        laid.shapes + cross.shapes,
        view,
        cross.shapes,
        laid.parts,
        laid.lettered + _all(SIGNS, cross.labels),
        laid.drawn + _all(SIGNS, cross.shapes),
    )
