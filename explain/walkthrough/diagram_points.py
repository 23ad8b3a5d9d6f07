"""Where the points of a worked body are drawn, in metres from the pivot: ends of bones, places of forces. Knows no
letters and no look.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import cos, radians, sin

from ..solve.answers import force_direction
from ..mechanics.body import Bearing, Force, Step, Toward
from ..exact.prime_field import scale
from ..solve.outcome import Outcome
from ..document.passage import Band, Bone, Point
from ..problem.magnitudes import in_metres
from ..problem.model import Segment

HIGH = 0.6  # of the width: heights that no arm uses are drawn no higher than that


def degrees_of(outcome: Outcome, bearing: Bearing) -> float:
    """A bearing in degrees, with what was found for its unknown angles."""
    return (
        float(bearing.degrees) + sum(k * outcome.values.get(letter.name, 45.0) for letter, k in bearing.unknown)
    ) % 360


def unit(direction: float) -> Point:
    """The unit vector of a direction in degrees."""
    return cos(radians(direction)), sin(radians(direction))


def walk(outcome: Outcome, steps: tuple[Step, ...]) -> Point:
    """Where steps from the pivot lead."""
    x = y = 0.0
    for step in steps:
        (run, rise), size = unit(degrees_of(outcome, step.bearing)), outcome.values.get(step.distance.name, 0.1)
        x, y = x + size * run, y + size * rise
    return x, y


def place(outcome: Outcome, force: Force) -> Point:
    """Where a force is drawn; one whose height does not matter may be drawn lower or higher on its line than it is."""
    x, y = walk(outcome, force.steps)
    return x, y * heights(outcome).get(force.name, 1.0)


def target(outcome: Outcome, toward: Toward, grip: Point) -> Point:
    """The point that a pull aims at."""
    values = outcome.values
    return grip[0] + toward.right * values[toward.across.name], grip[1] + toward.up * values[toward.rise.name]


def heights(outcome: Outcome) -> Mapping[str, float]:
    """For forces given by points, by what share their heights are drawn: an upright force may be moved along its
    line.
    """
    if outcome.body.bearings:
        return {}
    forces = outcome.body.forces
    places = {force.name: walk(outcome, force.steps) for force in forces}
    free = {force.name for force in forces if upright(outcome, force)}
    aims = [target(outcome, force.toward, places[force.name]) for force in forces if force.toward]
    held = [0.0, *(y for name, (_, y) in places.items() if name not in free), *(y for _, y in aims)]
    sides = [0.0, *(x for x, _ in places.values()), *(x for x, _ in aims)]
    low, high, moved = min(held), max(held), [places[name][1] for name in free]
    lack = max(high, *moved, high) - high + low - min(low, *moved, low)
    spare = max(0.0, HIGH * (max(sides) - min(sides)) - (high - low))
    share = min(1.0, spare / lack) if lack else 1.0
    return {name: _share(places[name][1], low, high, share) for name in sorted(free)}


def _share(y: float, low: float, high: float, share: float) -> float:
    """By what a height is multiplied so that of what lies beyond `low` and `high` only a share is left."""
    near = min(max(y, low), high)
    return (near + (y - near) * share) / y if y else 1.0


def upright(outcome: Outcome, force: Force) -> bool:
    """Whether a force is known to act straight up or down."""
    return force.directed and not across(force_direction(outcome.working, force.name), 90.0)


def across(direction: float, other: float) -> bool:
    """Whether two directions do not lie on one line."""
    return abs(sin(radians(direction - other))) > 1e-9


def bones(outcome: Outcome) -> Iterator[Bone]:
    """Each segment, begun before its near end where a force acts behind it."""
    body = outcome.body
    for segment in body.problem.segments:
        (x, y), bearing = walk(outcome, body.starts[segment.name]), body.bearings[segment.name]
        run, rise = unit(degrees_of(outcome, bearing))
        behind = max(_far(outcome, segment, bearing.turned(180)), -min(_band_ends(outcome, segment), default=0.0))
        length = _length(outcome, segment)
        yield Bone(segment.name, (x - behind * run, y - behind * rise), (x + length * run, y + length * rise))


def _band_ends(outcome: Outcome, segment: Segment) -> list[float]:
    """How far from the near end of a segment the spread loads on it begin and end, in metres; behind it negative."""
    loads = outcome.body.problem.loads
    return [
        float(in_metres(end))
        for load in loads
        if load.spread is not None and outcome.body.force(load.name).segment == segment.name
        for end in load.spread.ends
    ]


def bands(outcome: Outcome) -> Iterator[Band]:
    """Where each spread load begins and ends on its segment."""
    body = outcome.body
    for load in body.problem.loads:
        if load.spread is not None:
            segment = body.force(load.name).segment
            (x, y), (run, rise) = walk(outcome, body.starts[segment]), unit(degrees_of(outcome, body.bearings[segment]))
            start, end = ((x + far * run, y + far * rise) for far in map(float, map(in_metres, load.spread.ends)))
            yield Band(start, end, load.spread.growing)


def _length(outcome: Outcome, segment: Segment) -> float:
    """In metres; one that was not given ends just past the last force on it."""
    known = outcome.values.get(f"{segment.name}.length")
    if known is not None:
        return known
    if segment.length is not None:
        return float(segment.length.number) * float(scale(segment.length.unit))
    far = max(_far(outcome, segment, outcome.body.bearings[segment.name]), *_band_ends(outcome, segment), 0.0)
    return 1.06 * (far or 0.3)


def _far(outcome: Outcome, segment: Segment, bearing: Bearing) -> float:
    """How far out the last force on a segment acts in a direction from its near end; 0 where none does."""
    steps = [
        force.steps[-1]
        for force in outcome.body.forces
        if force.segment == segment.name and force.steps and force.arm is None
    ]
    return max((outcome.values.get(step.distance.name, 0.1) for step in steps if step.bearing == bearing), default=0.0)
