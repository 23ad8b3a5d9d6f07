"""A free-body diagram in words: what it shows, for those who cannot see it, and what its kinds of arrow mean. Draws
nothing.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from ..solve.answers import force_direction
from ..mechanics.body import Force, Step
from ..document.english import its, listed, sentence, the, verb
from ..equation.terms import Quantity
from ..solve.outcome import Outcome
from ..document.figure_parts import BODY, JOINT, SIGNS, force_part
from ..document.passage import Drawing, Line, Text
from ..problem.model import Direction, Hung, Pull, Unknown
from .diagram_arms import lacks_arm
from ..wording.phrases import what_out_is_along
from ..wording.pivot_words import pivot_force, pusher
from ..wording.direction_words import direction_words, sought_words
from ..wording.pivot_words import rough
from ..wording.spread_words import spread_between

COUNTS = ("", "", "two", "three", "four", "five", "six")
_NAMED = 4  # so many forces are named, of more only their number
SIDES: Mapping[int, str] = {0: "to the right of", 180: "to the left of", 90: "above", 270: "below"}
KINDS: Mapping[str, str] = {  # each known by its form too: a page may be printed in black and white
    "muscle": "Thick red arrow: muscle.",
    "weight": "Blue arrow, hollow head: weight.",
    "load": "Blue arrow, solid head: weight.",
    "both": "Blue arrow: weight (hollow head: of a segment; solid: of a load).",
    "force": "Brown arrow, open head: other force.",
    "joint": "Dashed green arrow: {}, drawn the way that counts as positive.",
    "muscle arc": "Thick red arc: a muscle known only by its moment arm.",
    "force arc": "Brown arc: a force known only by its moment arm.",
    "couple arc": "Purple arc, open head: a couple.",
}


def caption(drawing: Drawing, what: str, pivot: str, squeezed: bool, force: str = "joint force") -> Line:
    """What was cut free, what the kinds of arrow mean, as far as they are drawn, and which lever arms are; `squeezed`
    where heights are not to scale.
    """
    kinds = {arrow.kind for arrow in drawing.arrows} | {f"{turn.kind} arc" for turn in drawing.turns}
    if {"weight", "load"} <= kinds:
        kinds = kinds - {"weight", "load"} | {"both"}
    said = [f"The forces on {what}.", *(words.format(force) for kind, words in KINDS.items() if kind in kinds)]
    said.append(
        "Neither arrows nor the heights of vertical forces are to scale." if squeezed else "Arrows are not to scale."
    )
    if drawing.surface is not None:
        said.append("Line with short strokes: the rough surface.")
    if drawing.bands:
        said.append("Row of thin blue arrows: how a load is spread; its whole weight is the one arrow.")
    return (Text(" ".join((*said, *_arms(drawing, pivot)))),)


def _arms(drawing: Drawing, pivot: str) -> Iterator[str]:
    """What shows the lever arms, and which there is no room for."""
    if any(arrow.arm for arrow in drawing.arrows):
        yield f"Line with a right-angle mark: lever arm, the perpendicular distance from {the(pivot)}."
    left = [arrow.name for arrow in drawing.arrows if lacks_arm(arrow, drawing.spans)]
    if left:
        owners = listed([the(name) for name in left]) if len(left) <= _NAMED else f"{len(left)} forces"
        yield f"Left out for want of room: the lever {'arm' if len(left) == 1 else 'arms'} of {owners}."


def describe(outcome: Outcome, drawing: Drawing) -> str:
    """The diagram in words: what pulls where and which way, in the data's own numbers and never an answer."""
    return " ".join(said for _, said in described(outcome, drawing))


def described(outcome: Outcome, drawing: Drawing) -> Iterator[tuple[str, str]]:
    """The same sentence by sentence, each with the part of the drawing that it tells of."""
    yield BODY, sentence(f"the body is cut free at {the(outcome.pivot)}, marked by a circle")
    yield from ((BODY, sentence(each)) for each in _segments(outcome))
    yield from ((force_part(force.name), sentence(_force(outcome, force))) for force in outcome.body.forces)
    for each in outcome.body.twists:
        turns = f"{the(each.name)} {verb(each.name, 'turn')} the body {_sense(each.turns)}"
        yield force_part(each.name), sentence(turns)
    joint = [arrow.direction for arrow in drawing.arrows if arrow.kind == "joint"]
    if joint:
        parts = listed([_part(outcome, number, len(joint)) for number in range(len(joint))])
        problem = outcome.body.problem
        named = problem.pivot.bone or problem.pivot.support
        force = f"the force of {pusher(problem)}" if named else f"the {pivot_force(problem)}"
        yield JOINT, sentence(f"{force} acts at {the(outcome.pivot)}, drawn {parts}")
    if drawing.surface is not None:
        yield BODY, sentence(rough(outcome.body.problem))
    if drawing.sense:
        yield SIGNS, sentence(f"{_sense(drawing.sense)} counts as positive")


def _sense(turns: int) -> str:
    return "counter-clockwise" if turns > 0 else "clockwise"


def _part(outcome: Outcome, number: int, count: int) -> str:
    if count == 1:
        return "upwards"
    bone = outcome.body.problem.course.axes
    if bone and outcome.joint_asked:
        return ("in two parts, along " + the(bone), "across it")[number]
    return ("in two parts, to the right", "upwards")[number]


def _segments(outcome: Outcome) -> Iterator[str]:
    for segment in outcome.body.problem.segments:
        bearing = outcome.body.bearings[segment.name]
        along = what_out_is_along(outcome.body.problem, segment.name)
        way = direction_words(float(bearing.degrees)) if not bearing.unknown else _sought(segment.direction, along)
        yield f"{the(segment.name)} {verb(segment.name, 'point')} {way}"


def _sought(direction: Direction, along: str) -> str:
    """A direction that is an answer, or follows from one; the ways out and back are `along` a segment."""
    if not isinstance(direction.turn, Unknown):
        return f"at an angle that turns with {along}"
    return sought_words(direction, along)


def _force(outcome: Outcome, force: Force) -> str:
    if force.kind in ("weight", "load"):
        what = the(force.name) if "weight" in force.name.casefold() else f"the weight of {the(force.name)}"
        load = next((each for each in outcome.body.problem.loads if each.name == force.name and each.spread), None)
        if load is not None and load.spread is not None:
            how = "growing evenly" if load.spread.growing else "spread evenly"
            return f"{what} pulls straight down, {how} {spread_between(outcome.body.problem, load)}"
        return f"{what} pulls straight down{_where(outcome, force)}"
    name = the(force.name) + (
        f", {COUNTS[force.count] if force.count < len(COUNTS) else force.count} alike," if force.count > 1 else ""
    )
    if not force.directed:
        return (
            f"{name} {verb(force.name, 'pull')} {_arm(outcome, force)} and {verb(force.name, 'turn')} the body "
            f"{_sense(force.turns)}"
        )
    pull = next(each for each in outcome.body.problem.pulls if each.name == force.name)
    pulls = force.kind == "muscle" or pull.toward or isinstance(pull.force, Hung)
    does = f"{name} {verb(force.name, 'pull' if pulls else 'act')}"
    if force.arm is not None:
        return f"{does} {_way(outcome, force, pull)}, {_arm(outcome, force)}"
    if pull.toward is not None:
        return f"{does} from a point{_where(outcome, force)} toward one {_point(pull.toward, outcome.pivot)}".replace(
            "point,", "point"
        )
    return f"{does} {_way(outcome, force, pull)}{_where(outcome, force)}"


def _way(outcome: Outcome, force: Force, pull: Pull) -> str:
    """The direction of a pull, as it was stated where that was along a segment or at an angle that is sought."""
    direction = pull.direction
    if direction is not None and force.bearing is not None and force.bearing.unknown:
        return _sought(direction, what_out_is_along(outcome.body.problem, force.name))
    words = direction_words(force_direction(outcome.working, force.name))
    if direction is not None and direction.turn is None and direction.start in ("out", "back"):
        bone = force.segment or outcome.body.problem.segments[-1].name
        return f"{direction.start} along {the(bone)}, {words}"
    return words


def _arm(outcome: Outcome, force: Force) -> str:
    assert force.arm is not None
    far = _given(outcome, force.arm.name)
    return (
        f"on a line {far} from {the(outcome.pivot)}"
        if far
        else f"on a line whose distance from {the(outcome.pivot)} is sought"
    )


def _where(outcome: Outcome, force: Force) -> str:
    """Where a force acts, with the distances that matter: no answer, and no height of an upright force."""
    body = outcome.body
    if not force.steps:
        return f", at {the(outcome.pivot)}"
    if not force.segment:
        upright = force.bearing is not None and force.bearing.degrees % 180 == 90
        used = [_step(outcome, step) for step in force.steps if not (upright and step.bearing.degrees % 180 == 90)]
        return f", {listed(used) or f'in line with {the(outcome.pivot)}'}"
    last = force.steps[-1]
    far = _given(outcome, last.distance.name)
    if not far:
        sought = any(each.letter == last.distance for each in body.sought)
        return (
            ", at a distance that is sought"
            if sought
            else f", at {its(force.name)} centre of mass"
            if force.kind == "weight"
            else _on(force)
        )
    if len(force.steps) > 1:
        return f", {far} along {the(force.segment)}"
    behind = last.bearing != body.bearings.get(force.segment)
    if behind and not last.bearing.unknown and last.bearing.degrees % 180 == 0:
        return f", {far} {SIDES[int(last.bearing.degrees) % 360]} {the(outcome.pivot)}"
    return f", {far} from {the(outcome.pivot)}{', on the other side' if behind else ''}"


def _on(force: Force) -> str:
    return f", on {the(force.segment)}" if force.segment else ""


def _step(outcome: Outcome, step: Step) -> str:
    far = _given(outcome, step.distance.name) or "at a distance that is sought"
    return f"{far} {SIDES[int(step.bearing.degrees) % 360]} {the(outcome.pivot)}"


def _given(outcome: Outcome, key: str) -> str:
    """A distance as it was given; empty where it is sought or follows from others."""
    value = next((each.value for each in outcome.body.givens if each.letter.name == key), None)
    return f"{value.number:f} {value.unit[0][0]}" if isinstance(value, Quantity) else ""


def _point(pair: tuple[Quantity, Quantity], pivot: str) -> str:
    sides = [(pair[0], ("to the right of", "to the left of")), (pair[1], ("above", "below"))]
    return listed(
        [
            f"{abs(value.number):f} {value.unit[0][0]} {words[value.number < 0]} {the(pivot)}"
            for value, words in sides
            if value.number
        ]
    )
