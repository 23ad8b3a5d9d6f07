"""The free-body diagram of a working: what to draw and where, in metres and degrees. Knows nothing of how it will look."""
from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import cos, hypot, radians, sin

from .answers import force_direction
from .body import Bearing, Force, Step, Toward
from .equation import Quantity, Terms, term
from .field import scale
from .legend import caption, describe
from .outcome import Outcome
from .passage import Arm, Arrow, Bone, Drawing, Opening, Picture, Point, Span, Turn
from .problem import Direction, Segment, Unknown
from .wording import body_name

LEVEL = {"right": 0.0, "up": 90.0, "left": 180.0, "down": 270.0}
HIGH = 0.6                                        # of the width: heights that no arm uses are drawn no higher than that
GRIP = 0.45                                       # of its bone: where a pull along the bone is drawn to begin


def picture(outcome: Outcome) -> Picture:
    """The diagram with its title and a description in words that gives no answer away."""
    drawing, what = draw(outcome), body_name(outcome)
    squeezed = any(share < 1.0 for share in _heights(outcome).values())
    return Picture(drawing, f"Free-body diagram of {what}", describe(outcome, drawing), caption(drawing, what, squeezed))


def draw(outcome: Outcome) -> Drawing:
    """Bones, forces with their letters, lever arms that were given or worked, stated angles, distances that are used, what counts as positive."""
    body = outcome.body
    arrows = [_arrow(outcome, force) for force in body.forces if force.directed]
    turns = [Turn(force.name, _letter(force), (0.0, 0.0), force.turns, force.kind) for force in body.forces if not force.directed]
    turns += [Turn(each.name, (term(each.size),), (0.0, 0.0), each.turns) for each in body.twists]
    course = body.problem.course
    return Drawing((0.0, 0.0), outcome.pivot, tuple(_bones(outcome)), (*arrows, *_joint(outcome)), tuple(turns), tuple(_openings(outcome, arrows)),
                   tuple(_spans(outcome)), axes=tuple(_axes(outcome)), sense=0 if course.positive == "up" else course.sense)


# ---------------------------------------------------------------------- places
def _turn(outcome: Outcome, bearing: Bearing) -> float:
    return (float(bearing.degrees) + sum(k * outcome.values.get(letter.name, 45.0) for letter, k in bearing.unknown)) % 360


def _unit(direction: float) -> Point:
    return cos(radians(direction)), sin(radians(direction))


def _walk(outcome: Outcome, steps: tuple[Step, ...]) -> Point:
    x = y = 0.0
    for step in steps:
        (across, up), size = _unit(_turn(outcome, step.bearing)), outcome.values.get(step.distance.name, 0.1)
        x, y = x + size * across, y + size * up
    return x, y


def _place(outcome: Outcome, force: Force) -> Point:
    """Where a force is drawn; one whose height does not matter may be drawn lower or higher on its line than it is."""
    x, y = _walk(outcome, force.steps)
    return x, y * _heights(outcome).get(force.name, 1.0)


def _heights(outcome: Outcome) -> Mapping[str, float]:
    """For forces given by points, by what share their heights are drawn: an upright force may be moved along its line."""
    if outcome.body.bearings:
        return {}
    places = {force.name: _walk(outcome, force.steps) for force in outcome.body.forces}
    free = {force.name for force in outcome.body.forces if _upright(outcome, force)}
    held = [y for name, (_, y) in places.items() if name not in free]
    held += [_target(outcome, force.toward, places[force.name])[1] for force in outcome.body.forces if force.toward]
    low, high = min(0.0, *held, 0.0), max(0.0, *held, 0.0)
    wide = max([x for x, _ in places.values()] + [0.0]) - min([x for x, _ in places.values()] + [0.0])
    top, bottom = max([high] + [places[name][1] for name in free]), min([low] + [places[name][1] for name in free])
    spare, lack = max(0.0, HIGH * wide - (high - low)), (top - high) + (low - bottom)
    share = min(1.0, spare / lack) if lack else 1.0
    return {name: _squeezed(places[name][1], low, high, share) for name in free}


def _squeezed(y: float, low: float, high: float, share: float) -> float:
    """By what a height is multiplied so that of what lies beyond `low` and `high` only a share is left."""
    near = min(max(y, low), high)
    return (near + (y - near) * share) / y if y else 1.0


def _upright(outcome: Outcome, force: Force) -> bool:
    return force.directed and not _across(force_direction(outcome.working, force.name), 90.0)


def _across(direction: float, other: float) -> bool:
    """Whether two directions do not lie on one line."""
    return abs(sin(radians(direction - other))) > 1e-9


def _target(outcome: Outcome, toward: Toward, grip: Point) -> Point:
    values = outcome.values
    return grip[0] + toward.right * values[toward.across.name], grip[1] + toward.up * values[toward.rise.name]


# ---------------------------------------------------------------------- the body
def _bones(outcome: Outcome) -> Iterator[Bone]:
    """Each segment, begun before its near end where a force acts behind it."""
    body = outcome.body
    for segment in body.problem.segments:
        start, bearing = _walk(outcome, body.starts[segment.name]), body.bearings[segment.name]
        across, up = _unit(_turn(outcome, bearing))
        acting = [force.steps[-1] for force in body.forces if force.segment == segment.name and force.steps and force.arm is None]
        back = max((outcome.values.get(step.distance.name, 0.1) for step in acting if step.bearing == bearing.turned(180)), default=0.0)
        length = _length(outcome, segment)
        yield Bone(segment.name, (start[0] - back * across, start[1] - back * up), (start[0] + length * across, start[1] + length * up))


def _length(outcome: Outcome, segment: Segment) -> float:
    """In metres; one that was not given ends just past the last force on it."""
    known = outcome.values.get(f"{segment.name}.length")
    if known is not None:
        return known
    if segment.length is not None:
        return float(segment.length.number) * float(scale(segment.length.unit))
    bearing = outcome.body.bearings[segment.name]
    acting = [outcome.values.get(force.steps[-1].distance.name, 0.1) for force in outcome.body.forces
              if force.segment == segment.name and force.steps and force.steps[-1].bearing == bearing]
    return 1.06 * max(acting, default=0.3)


# ---------------------------------------------------------------------- forces
def _letter(force: Force) -> Terms:
    """A force's letter, with how many alike there are; times its moment arm where that is all that is known of its line."""
    count = (Quantity.of(str(force.count)),) if force.count > 1 else ()
    return (term(*count, force.size, *((force.arm,) if force.arm is not None and not force.directed else ())),)


def _arrow(outcome: Outcome, force: Force) -> Arrow:
    direction = force_direction(outcome.working, force.name)
    if force.arm is not None:
        far = abs(outcome.values[force.arm.name]) * force.turns
        across, up = _unit(direction)
        foot = far * up, -far * across            # so that r × F turns the way that was said
        return Arrow(force.name, force.kind, _letter(force), _on_line(outcome, force, foot, direction), direction, Arm(foot, (term(force.arm),)))
    at = _place(outcome, force)
    if force.toward is None:
        return Arrow(force.name, force.kind, _letter(force), at, direction)
    return Arrow(force.name, force.kind, _letter(force), at, direction, _worked_arm(outcome, force, at, direction), _target(outcome, force.toward, at))


def _on_line(outcome: Outcome, force: Force, foot: Point, direction: float) -> Point:
    """Where on its line a pull known by its arm begins: beside its place, or beside the bone that it pulls back along, or at the foot."""
    across, up = _unit(direction)
    x, y = _walk(outcome, force.steps)
    if not force.steps:
        bone = next((each for each in _bones(outcome) if each.name == force.segment), None)
        if bone is None:
            return foot
        run, rise = bone.end[0] - bone.start[0], bone.end[1] - bone.start[1]
        if run * across + rise * up > -0.7 * hypot(run, rise):
            return foot
        x, y = bone.start[0] + GRIP * run, bone.start[1] + GRIP * rise
    far = x * across + y * up
    return foot[0] + far * across, foot[1] + far * up


def _worked_arm(outcome: Outcome, force: Force, at: Point, direction: float) -> Arm | None:
    """The arm of a pull that was given by two points, where the page works it out."""
    if not any(move.goal.kind == "arm" and move.goal.key == force.name and not move.goal.about for move in outcome.working.moves):
        return None
    across, up = _unit(direction)
    far = at[0] * across + at[1] * up
    return Arm((at[0] - far * across, at[1] - far * up), (term(outcome.body.letters(f"arm {force.name}")),), needed=False)


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
        turn = _turn(outcome, body.bearings[body.problem.course.axes])
        return ("along", turn), ("across", (turn + 90) % 360)
    if all(_upright(outcome, force) for force in body.forces):
        return (("up", 90.0),)
    return ("right", 0.0), ("up", 90.0)


def _axes(outcome: Outcome) -> Iterator[tuple[str, float]]:
    if not any(move.goal.kind == "forces" for move in outcome.working.moves):
        return
    for part, direction in _parts(outcome):
        yield {"right": "x", "up": "y"}.get(part, part), direction


# ---------------------------------------------------------------------- angles and distances
def _openings(outcome: Outcome, arrows: list[Arrow]) -> Iterator[Opening]:
    body = outcome.body
    for segment in body.problem.segments:
        if segment.direction.turn is not None:
            at = _walk(outcome, body.starts[segment.name])
            yield _opening(outcome, segment.direction, segment.name, at, _turn(outcome, body.bearings[segment.name]))
    drawn = {arrow.name: arrow for arrow in arrows}
    for pull in body.problem.pulls:
        force = body.force(pull.name)
        if pull.direction is not None and pull.direction.turn is not None and force.bearing is not None:
            yield _opening(outcome, pull.direction, force.segment, drawn[pull.name].at, drawn[pull.name].direction, pull.name)
        if pull.name in drawn and f"fold {pull.name}" in outcome.values:
            yield from _folded(outcome, drawn[pull.name])


def _opening(outcome: Outcome, direction: Direction, segment: str, at: Point, second: float, owner: str = "") -> Opening:
    first = LEVEL.get(direction.start)
    if first is None:
        bone = _turn(outcome, outcome.body.bearings[segment])
        first = bone if direction.start == "out" else (bone + 180) % 360
    if isinstance(direction.turn, Unknown):
        return Opening(at, first, second, (term(outcome.body.letters(f"angle {owner or segment}")),))
    assert direction.turn is not None
    return Opening(at, first, second, (term(direction.turn),))


def _folded(outcome: Outcome, arrow: Arrow) -> Iterator[Opening]:
    """The angle of a pull to the level, where the page works it out from the stated ones."""
    angle = outcome.values[f"fold {arrow.name}"]
    for level in (0.0, 180.0):
        if abs(abs((arrow.direction - level + 180) % 360 - 180) - angle) < 1e-6:
            yield Opening(arrow.at, level, arrow.direction, (term(outcome.body.letters(f"fold {arrow.name}")),))


def _spans(outcome: Outcome) -> Iterator[Span]:
    """The distances that the working uses, each once."""
    seen: set[str] = set()
    about = {move.goal.about for move in outcome.working.moves}
    for force in outcome.body.forces:
        for index, step in enumerate(force.steps):
            if step.distance.name not in seen and (force.name in about or _uses(outcome, force, step)):
                seen.add(step.distance.name)
                yield Span(_walk(outcome, force.steps[:index]), _walk(outcome, force.steps[:index + 1]), (term(step.distance),))
        if force.toward is not None:
            grip = _place(outcome, force)
            target = _target(outcome, force.toward, grip)
            yield Span(grip, (target[0], grip[1]), (term(force.toward.across),))
            yield Span((target[0], grip[1]), target, (term(force.toward.rise),))


def _uses(outcome: Outcome, force: Force, step: Step) -> bool:
    """Whether a distance is part of a force's arm: not where the arm was given, nor along the force itself."""
    if force.arm is not None:
        return False
    return force.toward is not None or _across(force_direction(outcome.working, force.name), _turn(outcome, step.bearing))
