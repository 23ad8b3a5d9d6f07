"""The free-body diagram of a working: what to draw and where, in metres and degrees. Knows nothing of how it will
look.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import dist

from ..solve.answers import force_direction
from ..mechanics.body import Force, Step
from ..equation.terms import Quantity, Terms, term
from .diagram_arms import with_arms
from .diagram_words import caption, describe
from ..solve.outcome import Outcome
from ..document.passage import Arm, Arrow, Drawing, Opening, Picture, Point, Span, Turn
from .diagram_points import across, bands, bones, degrees_of, heights, place, target, unit, upright, walk
from ..problem.model import Direction, Unknown
from ..wording.pivot_words import pivot_force
from .general_words import body_name

LEVEL = {"right": 0.0, "up": 90.0, "left": 180.0, "down": 270.0}
GRIP = 0.58  # of its bone: where a pull along the bone is drawn to begin


def picture(outcome: Outcome) -> Picture:
    """The diagram with its title and a description in words that gives no answer away."""
    drawing, what = draw(outcome), body_name(outcome)
    squeezed = any(share < 1.0 for share in heights(outcome).values())
    words = caption(drawing, what, outcome.pivot, squeezed, pivot_force(outcome.body.problem))
    return Picture(drawing, f"Free-body diagram of {what}", describe(outcome, drawing), words)


def draw(outcome: Outcome) -> Drawing:
    """Bones, forces with their letters, perpendicular distances, stated angles, distances that are
    used, what counts as positive.
    """
    body = outcome.body
    arrows = [_arrow(outcome, force) for force in body.forces if force.directed]
    turns = [
        Turn(force.name, _letter(force), (0.0, 0.0), force.turns, force.kind)
        for force in body.forces
        if not force.directed
    ]
    turns += [Turn(each.name, (term(each.size),), (0.0, 0.0), each.turns) for each in body.twists]
    limbs, spans = tuple(bones(outcome)), tuple(_spans(outcome))
    course = body.problem.course
    return Drawing(
        (0.0, 0.0),
        outcome.pivot,
        limbs,
        (*with_arms(outcome, arrows, limbs, spans), *_joint(outcome)),
        tuple(turns),
        tuple(_openings(outcome, arrows)),
        spans,
        axes=tuple(_axes(outcome)),
        sense=0 if course.positive == "up" else course.sense,
        bands=tuple(bands(outcome)),
        surface=float(body.problem.pivot.surface) if body.problem.pivot.friction is not None else None,
    )


# ---------------------------------------------------------------------- forces
def _letter(force: Force) -> Terms:
    """A force's letter, with how many alike there are; times its moment arm where that is all that is known of its
    line.
    """
    count = (Quantity.of(str(force.count)),) if force.count > 1 else ()
    return (term(*count, force.size, *((force.arm,) if force.arm is not None and not force.directed else ())),)


def _arrow(outcome: Outcome, force: Force) -> Arrow:
    direction, arm, aim, at = force_direction(outcome.working, force.name), None, None, place(outcome, force)
    if force.arm is not None:
        far = abs(outcome.values[force.arm.name]) * force.turns
        run, rise = unit(direction)
        arm = Arm((far * rise, -far * run), (term(force.arm),))  # so that r × F turns the way that was said
        at = _on_line(outcome, force, arm.foot, direction)
    elif force.toward is not None:
        aim = target(outcome, force.toward, at)
    return Arrow(force.name, force.kind, _letter(force), at, direction, arm, aim)


def _on_line(outcome: Outcome, force: Force, foot: Point, direction: float) -> Point:
    """Where on its line a pull known by its arm begins: beside its place, or beside the bone that it pulls back
    along, or at the foot.
    """
    bone = next((each for each in bones(outcome) if each.name == force.segment), None)
    if force.steps:
        return _beside(walk(outcome, force.steps), foot, direction)
    if bone is None:
        return foot
    along, long = (
        _along((bone.end[0] - bone.start[0], bone.end[1] - bone.start[1]), direction),
        dist(bone.start, bone.end),
    )
    grip = bone.start[0] + GRIP * (bone.end[0] - bone.start[0]), bone.start[1] + GRIP * (bone.end[1] - bone.start[1])
    return foot if along > -0.7 * long else _beside(grip, foot, direction)


def _beside(point: Point, foot: Point, direction: float) -> Point:
    """The point of a line that is nearest to another; the line passes through its own point nearest to the pivot,
    `foot`.
    """
    (run, rise), far = unit(direction), _along(point, direction)
    return foot[0] + far * run, foot[1] + far * rise


def _along(point: Point, direction: float) -> float:
    run, rise = unit(direction)
    return point[0] * run + point[1] * rise


def _joint(outcome: Outcome) -> Iterator[Arrow]:
    """The parts of the joint force; the level one may be left out where every force is upright."""
    body, letters = outcome.body, outcome.body.letters
    if not body.problem.pivot.reaction or not body.problem.balanced:
        return
    for part, direction in _parts(outcome):
        yield Arrow("joint", "joint", (term(letters(f"reaction.{part}")),), (0.0, 0.0), direction)


def _parts(outcome: Outcome) -> tuple[tuple[str, float], ...]:
    """The axes along which this class splits forces here, with the directions that count as positive."""
    body = outcome.body
    if body.problem.course.axes and outcome.joint_asked:
        turn = degrees_of(outcome, body.bearings[body.problem.course.axes])
        return ("along", turn), ("across", (turn + 90) % 360)
    if all(upright(outcome, force) for force in body.forces):
        return (("up", 90.0),)
    return ("right", 0.0), ("up", 90.0)


def _axes(outcome: Outcome) -> Iterator[tuple[str, float]]:
    if not any(move.goal.kind == "forces" for move in outcome.working.moves):
        return
    for part, direction in _parts(outcome):
        yield {"right": "x", "up": "y"}.get(part, part), direction


# ---------------------------------------------------------------------- angles and distances
def _openings(outcome: Outcome, arrows: list[Arrow]) -> Iterator[Opening]:
    body, before = outcome.body, ""
    for segment in body.problem.segments:
        if segment.direction.turn is not None:
            at = walk(outcome, body.starts[segment.name])
            second = degrees_of(outcome, body.bearings[segment.name])
            yield _opening(outcome, segment.direction, segment.start or before, at, second, segment.name)
        before = segment.name
    drawn = {arrow.name: arrow for arrow in arrows}
    for pull in body.problem.pulls:
        force = body.force(pull.name)
        if pull.direction is not None and pull.direction.turn is not None and force.bearing is not None:
            yield _opening(
                outcome, pull.direction, force.segment, drawn[pull.name].at, drawn[pull.name].direction, pull.name
            )
        if pull.name in drawn and f"*fold {pull.name}" in outcome.values:
            yield from _folded(outcome, drawn[pull.name])


def _opening(outcome: Outcome, direction: Direction, along: str, at: Point, second: float, owner: str) -> Opening:
    """The angle of a direction as it was stated; out and back are the ways along the bone `along`."""
    first = LEVEL.get(direction.start)
    if first is None:
        bearings = outcome.body.bearings
        bone = degrees_of(outcome, bearings.get(along) or bearings[outcome.body.problem.segments[-1].name])
        first = bone if direction.start == "out" else (bone + 180) % 360
    if isinstance(direction.turn, Unknown):
        return Opening(at, first, second, (term(outcome.body.letters(f"*angle {owner}")),))
    assert direction.turn is not None
    return Opening(at, first, second, (term(direction.turn),))


def _folded(outcome: Outcome, arrow: Arrow) -> Iterator[Opening]:
    """The angle of a pull to the level, where the page works it out from the stated ones."""
    angle = outcome.values[f"*fold {arrow.name}"]
    for level in (0.0, 180.0):
        if abs(abs((arrow.direction - level + 180) % 360 - 180) - angle) < 1e-6:
            yield Opening(arrow.at, level, arrow.direction, (term(outcome.body.letters(f"*fold {arrow.name}")),))


def _spans(outcome: Outcome) -> Iterator[Span]:
    """The distances that the working uses, each once."""
    seen: set[str] = set()
    about = {move.goal.about for move in outcome.working.moves}
    for force in outcome.body.forces:
        for index, step in enumerate(force.steps):
            if step.distance.name not in seen and (force.name in about or _uses(outcome, force, step)):
                seen.add(step.distance.name)
                yield Span(
                    walk(outcome, force.steps[:index]), walk(outcome, force.steps[: index + 1]), (term(step.distance),)
                )
        if force.toward is not None:
            grip = place(outcome, force)
            aim = target(outcome, force.toward, grip)
            yield Span(grip, (aim[0], grip[1]), (term(force.toward.across),))
            yield Span((aim[0], grip[1]), aim, (term(force.toward.rise),))


def _uses(outcome: Outcome, force: Force, step: Step) -> bool:
    """Whether a distance is part of a force's arm: not where the arm was given, nor along the force itself."""
    if force.arm is not None:
        return False
    return force.toward is not None or across(
        force_direction(outcome.working, force.name), degrees_of(outcome, step.bearing)
    )
