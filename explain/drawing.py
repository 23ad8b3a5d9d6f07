"""The free-body diagram of a working: what to draw and where, in metres and degrees. Knows nothing of how it will look."""
from __future__ import annotations

from collections.abc import Iterator
from math import cos, radians, sin

from .answers import force_direction
from .body import Bearing, Force, Step
from .english import listed, the, verb
from .equation import Quantity, term
from .outcome import Outcome
from .passage import Arrow, Bone, Drawing, Opening, Picture, Point, Span, Text, Turn
from .problem import Direction, Unknown

LEVEL = {"right": 0.0, "up": 90.0, "left": 180.0, "down": 270.0}


def picture(outcome: Outcome) -> Picture:
    """The diagram with its title and a description in words that gives no answer away."""
    names = [segment.name for segment in outcome.body.problem.segments]
    what = listed([the(name) for name in names]) if names else f"the body cut free at the {outcome.pivot}"
    return Picture(draw(outcome), f"Free-body diagram of {what}", describe(outcome), (Text(f"The forces on {what}. Thick arrow: muscle; hollow head: weight; dashed: joint force, drawn the way that counts as positive."),))


def draw(outcome: Outcome) -> Drawing:
    """Bones, forces with their letters, stated angles, distances."""
    arrows, turns = [], []
    for force in outcome.body.forces:
        letter = (term(force.size),)
        if force.directed and not (force.arm is not None and not force.steps):
            arrows.append(Arrow(force.name, force.kind, letter, _place(outcome, force), force_direction(outcome.working, force.name)))
        else:
            turns.append(Turn(force.name, letter, (0.0, 0.0), force.turns))
    turns += [Turn(each.name, (term(each.size),), (0.0, 0.0), each.turns) for each in outcome.body.twists]
    arrows += _joint(outcome)
    return Drawing((0.0, 0.0), outcome.pivot, tuple(_bones(outcome)), tuple(arrows), tuple(turns), tuple(_openings(outcome)),
                   tuple(_spans(outcome)))


def _turn(outcome: Outcome, bearing: Bearing) -> float:
    return (float(bearing.degrees) + sum(k * outcome.values.get(letter.name, 45.0) for letter, k in bearing.unknown)) % 360


def _walk(outcome: Outcome, steps: tuple[Step, ...]) -> Point:
    x = y = 0.0
    for step in steps:
        turn, size = radians(_turn(outcome, step.bearing)), outcome.values.get(step.distance.name, 0.1)
        x, y = x + size * cos(turn), y + size * sin(turn)
    return x, y


def _place(outcome: Outcome, force: Force) -> Point:
    return _walk(outcome, force.steps)


def _bones(outcome: Outcome) -> Iterator[Bone]:
    body = outcome.body
    for segment in body.problem.segments:
        start = _walk(outcome, body.starts[segment.name])
        turn = radians(_turn(outcome, body.bearings[segment.name]))
        acting = [outcome.values.get(force.steps[-1].distance.name, 0.1) for force in body.forces
                  if force.segment == segment.name and force.steps and force.steps[-1].bearing == body.bearings[segment.name]]
        length = outcome.values.get(f"{segment.name}.length") or _given_length(segment.length) or 1.06 * max(acting, default=0.3)
        yield Bone(segment.name, start, (start[0] + length * cos(turn), start[1] + length * sin(turn)))


def _given_length(length: Quantity | None) -> float | None:
    from .field import scale

    return float(length.number) * float(scale(length.unit)) if length is not None else None


def _joint(outcome: Outcome) -> Iterator[Arrow]:
    body, letters = outcome.body, outcome.body.letters
    if not body.problem.pivot.reaction or not outcome.directed or not body.problem.balanced:
        return
    if body.problem.course.axes and outcome.joint_asked:
        turn = _turn(outcome, body.bearings[body.problem.course.axes])
        yield Arrow("joint", "joint", (term(letters("reaction.along")),), (0.0, 0.0), turn)
        yield Arrow("joint", "joint", (term(letters("reaction.across")),), (0.0, 0.0), (turn + 90) % 360)
        return
    if any(abs(right) > 1e-9 * outcome.largest_force for right, _ in outcome.components.values()):
        yield Arrow("joint", "joint", (term(letters("reaction.right")),), (0.0, 0.0), 0.0)
    yield Arrow("joint", "joint", (term(letters("reaction.up")),), (0.0, 0.0), 90.0)


def _openings(outcome: Outcome) -> Iterator[Opening]:
    body = outcome.body
    for segment in body.problem.segments:
        if segment.direction.turn is not None:
            at = _walk(outcome, body.starts[segment.name])
            yield _opening(outcome, segment.direction, segment.name, at, _turn(outcome, body.bearings[segment.name]))
    for pull in body.problem.pulls:
        force = body.force(pull.name)
        if pull.direction is not None and pull.direction.turn is not None and force.steps and force.bearing is not None:
            yield _opening(outcome, pull.direction, force.segment, _place(outcome, force), _turn(outcome, force.bearing), pull.name)


def _opening(outcome: Outcome, direction: Direction, segment: str, at: Point, second: float, owner: str = "") -> Opening:
    first = LEVEL.get(direction.start)
    if first is None:
        bone = _turn(outcome, outcome.body.bearings[segment])
        first = bone if direction.start == "out" else (bone + 180) % 360
    if isinstance(direction.turn, Unknown):
        return Opening(at, first, second, (term(outcome.body.letters(f"angle {owner or segment}")),))
    assert direction.turn is not None
    return Opening(at, first, second, (term(direction.turn),))


def _spans(outcome: Outcome) -> Iterator[Span]:
    seen: set[str] = set()
    for force in outcome.body.forces:
        for index, step in enumerate(force.steps):
            if step.distance.name not in seen:
                seen.add(step.distance.name)
                yield Span(_walk(outcome, force.steps[:index]), _walk(outcome, force.steps[:index + 1]), (term(step.distance),))


def describe(outcome: Outcome) -> str:
    """The diagram in words: what pulls where and which way, in the data's own numbers and never an answer."""
    asked = {name.partition(".")[0] for name in outcome.answers if name.endswith(".direction")}
    said = [f"The body is cut free at the {outcome.pivot}, marked by a circle."]
    for force in outcome.body.forces:
        where = _where(outcome, force)
        if force.kind in ("weight", "load"):
            said.append(f"The weight of {the(force.name)} pulls straight down{where}.")
        elif not force.directed:
            said.append(f"{the(force.name).capitalize()} {verb(force.name, 'turn')} the body {'counter-clockwise' if force.turns > 0 else 'clockwise'}.")
        elif force.name in asked:
            said.append(f"{the(force.name).capitalize()} {verb(force.name, 'act')}{where}, at an angle that is sought.")
        else:
            said.append(f"{the(force.name).capitalize()} {verb(force.name, 'pull') if force.kind == 'muscle' else verb(force.name, 'act')}{where}, "
                        f"{_way(outcome, force)}.")
    if outcome.body.problem.pivot.reaction and outcome.body.problem.balanced:
        said.append(f"The force of the {outcome.body.problem.pivot.bone or 'joint'} acts at the {outcome.pivot}.")
    return " ".join(said)


def _where(outcome: Outcome, force: Force) -> str:
    given = {each.letter.name: each.value for each in outcome.body.givens}
    if not force.steps:
        return f" at the {outcome.pivot}"
    if len(force.steps) > 1 or not isinstance(given.get(force.steps[0].distance.name), Quantity):
        return f" on the {force.segment}" if force.segment else ""
    value = given[force.steps[0].distance.name]
    unit = value.unit[0][0]
    return f", {value.number:f} {unit} from the {outcome.pivot}"


def _way(outcome: Outcome, force: Force) -> str:
    from .answers import direction_words

    if force.bearing is not None and force.bearing.unknown:
        return "at an angle to the moving bone"
    return direction_words(force_direction(outcome.working, force.name))


