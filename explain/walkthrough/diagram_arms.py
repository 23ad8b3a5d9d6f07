"""Which lever arms a diagram shows: from the pivot to the line of every force, where that is no distance it shows
already and can be told from the others. Draws nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from math import hypot

from ..document.passage import Arm, Arrow, Bone, Point, Span
from ..equation.terms import term
from ..solve.outcome import Outcome
from .diagram_points import unit

_SAME = 1e-9  # metres
_FLAT = 0.7  # the height of a figure, as a share of its width
_SEEN = 0.045  # an arm is no shorter than this share of the figure's width
_APART = 0.12  # nor, beside another one across an oblique line of pull, than this
_MOST = 6  # so many parallel forces may have arms


def with_arms(
    outcome: Outcome, arrows: Sequence[Arrow], bones: Sequence[Bone], spans: Sequence[Span]
) -> tuple[Arrow, ...]:
    """The arrows, each with its lever arm where it has one of its own and there is room for it."""
    letters, wide = outcome.body.letters, _wide(arrows, bones)
    lacking = [arrow for arrow in arrows if lacks_arm(arrow, spans)]
    given = {
        id(arrow): replace(arrow, arm=Arm(_foot(arrow), (term(letters(f"*arm {arrow.name}")),), needed=False))
        for arrow in lacking
        if _has_room(arrow, lacking, wide)
    }
    return tuple(given.get(id(arrow), arrow) for arrow in arrows)


def lacks_arm(arrow: Arrow, spans: Iterable[Span]) -> bool:
    """Whether a force has a lever arm that is shown neither as such nor as a distance."""
    foot = _foot(arrow)
    return arrow.arm is None and hypot(*foot) > _SAME and not any(_leads(span, foot) for span in spans)


def _foot(arrow: Arrow) -> Point:
    """The point of a force's line that is nearest to the pivot."""
    (run, rise), (x, y) = unit(arrow.direction), arrow.at
    far = x * run + y * rise
    return x - far * run, y - far * rise


def _leads(span: Span, foot: Point) -> bool:
    """Whether a distance runs beside an arm from the pivot to its foot, and is as long."""
    (x, y), (u, v) = span.start, span.end
    return hypot(u - x - foot[0], v - y - foot[1]) < _SAME and abs(x * foot[0] + y * foot[1]) < _SAME


def _wide(arrows: Sequence[Arrow], bones: Sequence[Bone]) -> float:
    """About how wide a figure is, in metres."""
    points = [(0.0, 0.0), *(arrow.at for arrow in arrows), *(end for bone in bones for end in (bone.start, bone.end))]
    across, up = ([point[axis] for point in points] for axis in (0, 1))
    return max(max(across) - min(across), (max(up) - min(up)) / _FLAT)


def _has_room(arrow: Arrow, others: Sequence[Arrow], wide: float) -> bool:
    parallel = sum(abs((arrow.direction - other.direction + 90.0) % 180.0 - 90.0) < 0.5 for other in others)
    oblique = abs(arrow.direction % 90.0 - 45.0) < 44.5
    return parallel <= _MOST and hypot(*_foot(arrow)) >= wide * (_APART if parallel > 1 and oblique else _SEEN)
