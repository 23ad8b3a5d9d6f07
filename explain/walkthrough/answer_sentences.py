"""What an answer says, in a sentence: how hard, which way, on which body. Knows sentences, and works nothing out."""

from __future__ import annotations

from collections.abc import Sequence

from ..solve.answers import Answer, direction_of, written_angle
from ..mechanics.body import Force
from ..equation import key as keys
from ..document.english import each_of, force_of, is_plural, sentence, the, verb
from ..equation.terms import term
from ..solve.outcome import Outcome
from ..document.passage import Line, Maths, Strong, Text
from ..wording.phrases import acts, what_out_is_along
from ..wording.direction_words import direction_words, turned_words
from .general_words import body_name, friction_line, joint_pusher, pushes

PARTS = ("reaction.right", "reaction.up", "reaction.along", "reaction.across")


def pretty(answer: Answer) -> str:
    """A value as shown, with the signs of print."""
    number, _, unit = answer.shown.partition(" ")
    unit = {"deg": "°"}.get(unit, " " + unit.replace("^2", "²").replace(" ", "·"))
    whole, point, rest = number.replace("-", "−").partition(".")
    if len(whole.lstrip("−")) > 4:
        whole = f"{int(whole.replace('−', '-')):,}".replace(",", "\u202f").replace("-", "−")
    return whole + point + rest + unit


def size_of(answer: Answer) -> str:
    """A value without its sign."""
    return pretty(answer).lstrip("−")


def answer_line(outcome: Outcome, name: str) -> Line:
    """One answer in a sentence."""
    answer = outcome.answers[name]
    key = dict(outcome.working.asked).get(name, name)
    owner, _, what = key.rpartition(".")
    force = next((each for each in outcome.body.forces if each.size.name == key), None)
    if name == "reaction":
        return _reaction(outcome, answer)
    if force is not None:
        return _force(outcome, force, answer)
    if key.startswith("*angle "):
        return _angle(outcome, key.removeprefix("*angle "), answer)
    if key == "total":
        begins = (
            ""
            if outcome.body.problem.balanced
            else f" The body begins to turn {_way(outcome, answer)}."
            if answer.value
            else ""
        )
        return (
            Text(f"The {outcome.word}s add to "),
            Strong(size_of(answer)),
            Text(f", {_way(outcome, answer)}.{begins}" if answer.value else "."),
        )
    if key.startswith("*moment ") or what == "moment":
        turner = key.removeprefix("*moment ") if key.startswith("*moment ") else owner
        sense = _way(outcome, answer) if key.startswith("*moment ") else _couple_way(outcome, turner, answer)
        if not answer.value:
            idle = f"{_start(the(turner))} {verb(turner, 'do')} not turn the body: "
            return (Text(idle), Strong(size_of(answer)), Text("."))
        return (
            Text(f"{_start(the(turner))} {verb(turner, 'turn')} the body with "),
            Strong(size_of(answer)),
            Text(f", {sense}."),
        )
    if what in ("mass", "hung", "moment_arm") and answer.value < 0:
        ends = "which cannot be" if what == "moment_arm" else "which nothing has"
        needs = "would need a mass at its other end" if what == "hung" else f"would need a {what.replace('_', ' ')}"
        return (
            Text(f"{_start(the(owner))} {needs} of "),
            Strong(pretty(answer)),
            Text(f", {ends}."),
        )
    if key == keys.FRICTION:
        return friction_line(outcome, answer.shown)
    lead = {
        "at": f"{_start(the(owner))} {verb(owner, 'be')} ",
        "mass": f"{_start(the(owner))} {verb(owner, 'have')} a mass of ",
        "hung": f"What hangs at the other end of {the(owner)} has a mass of ",
        "moment_arm": f"{_start(the(owner))} {verb(owner, 'have')} a moment arm of ",
        "stress": f"The stress in {the(owner)} is ",
        "com": f"The centre of mass of {the(owner)} is ",
    }.get(what)
    if lead is None:
        return (Maths((term(outcome.body.letters(key)),)), Text(" is "), Strong(pretty(answer)), Text("."))
    if what == "at" and answer.value < 0:
        return (
            Text(f"{_start(the(owner))} would have to be "),
            Strong(size_of(answer)),
            Text(f" from {measured_from(outcome, owner)}, on its other side."),
        )
    behind = f" from {measured_from(outcome, owner)}{which_side(outcome, owner)}." if what in ("at", "com") else "."
    return (Text(lead), Strong(pretty(answer)), Text(behind))


def _start(name: str) -> str:
    return sentence(name).rstrip(".")


def measured_from(outcome: Outcome, name: str) -> str:
    steps = outcome.body.force(name).steps
    return the(outcome.pivot) if len(steps) == 1 else f"the near end of {the(outcome.body.force(name).segment)}"


def which_side(outcome: Outcome, name: str) -> str:
    """ ", to the right": the side of the pivot, where something acts on a horizontal segment on its other side too."""
    force = outcome.body.force(name)
    if len(force.steps) != 1 or force.segment not in outcome.body.bearings:
        return ""
    own = outcome.body.bearings[force.segment]
    if own.unknown or own.degrees % 180:
        return ""
    beside = (each.steps[0] for each in outcome.body.forces if each.segment == force.segment and each.steps)
    return (
        f", {'to the left' if own.degrees % 360 else 'to the right'}"
        if any(step.bearing != own for step in beside)
        else ""
    )


def _way(outcome: Outcome, answer: Answer) -> str:
    """The turning sense of a moment that is counted in the class's own sense."""
    sense = outcome.working.checker.premises.sense()
    return "counter-clockwise" if answer.value * sense > 0 else "clockwise"


def _couple_way(outcome: Outcome, name: str, answer: Answer) -> str:
    turns = next(each.turns for each in outcome.body.twists if each.name == name)
    return "counter-clockwise" if answer.value * turns > 0 else "clockwise"


def _force(outcome: Outcome, force: Force, answer: Answer) -> Line:
    """What one force does: "The rope pulls with 40 N", "Each hand pushes up with 90 N", "The force of the carrot is "
    "90 N"."""
    one = force.count == 1
    who, muscle, number = (
        _start(the(force.name) if one else each_of(force.name)),
        force.kind == "muscle",
        Strong(pretty(answer)),
    )

    def does(stem: str) -> str:
        return verb(force.name if one else "one", stem)

    if force.kind in ("weight", "load"):
        impossible = answer.value < 0
        lead = f"{who} would have to weigh " if impossible else f"{who} {does('weigh')} "
        return (Text(lead), number, Text(", which nothing does." if impossible else "."))
    if not answer.value:
        return (Text(f"No {'pull' if muscle else 'force'} of {the(force.name)} is needed: "), number, Text("."))
    if answer.value < 0 and muscle:
        return (
            Text(f"{who} would need a force of "),
            number,
            Text(": the minus sign says that it would have to push, and a muscle cannot."),
        )
    if answer.value < 0:
        way = f": {direction_words((answer.direction + 180) % 360)}" if answer.direction is not None else ""
        return (
            Text(f"{who} {does('act')} with "),
            Strong(size_of(answer)),
            Text(f" against the stated direction{way}."),
        )
    stem = next(acts(pull) for pull in outcome.body.problem.pulls if pull.name == force.name)
    where = f", {answer.words}" if answer.words else ""
    if stem == "act" and answer.words != "straight up" or force_of(force.name) == the(force.name):
        named = force_of(force.name) if one else f"the force of {each_of(force.name)}"
        return (Text(f"{_start(named)} is "), number, Text(f"{where}."))
    if answer.words == "straight up" and stem != "pull":
        return (Text(f"{who} {does('push')} up with "), number, Text("."))
    return (Text(f"{who} {does(stem)} with "), number, Text(f"{where}."))


def _angle(outcome: Outcome, owner: str, answer: Answer) -> Line:
    force = next(
        (each for each in outcome.body.forces if each.name == owner and each.kind in ("muscle", "force")), None
    )
    does = (
        f"{verb(owner, 'be')} at rest"
        if owner in outcome.body.bearings
        else verb(owner, "pull" if force and force.kind == "muscle" else "act")
    )
    way = turned(outcome, owner, answer)
    number, mark, rest = way.partition("°") if way[:1].isdigit() else ("", "", f" {way}")
    at = (
        (Text(f"{_start(the(owner))} {does} "), Strong(number + mark))
        if number
        else (Text(f"{_start(the(owner))} {does}"),)
    )
    return (*at, Text(f"{rest}."))


def turned(outcome: Outcome, owner: str, answer: Answer) -> str:
    """The angle that was sought, as a direction: "32.2° below the level, to the right"."""
    along = what_out_is_along(outcome.body.problem, owner)
    return turned_words(direction_of(outcome.working, owner), answer.value, pretty(answer), along)


# ---------------------------------------------------------------------- the joint
def _reaction(outcome: Outcome, answer: Answer) -> Line:
    pusher, body = joint_pusher(outcome), body_name(outcome)
    if answer.direction is None:
        return (Text(f"{_start(pusher)} and {body} do not press on each other at all."),)
    parts = _parts_in_brackets(outcome)
    if outcome.body.problem.course.reaction_on == "the other bone":
        back = direction_words((answer.direction + 180) % 360, written_angle(outcome.working))
        return (
            Text(f"{_start(body)} {'push' if is_plural(body) else 'pushes'} on {pusher} with "),
            Strong(pretty(answer)),
            Text(f", {back}. "),
            Text(f"Action and reaction: {pusher} {pushes(outcome)} back on {body} as hard, {answer.words}{parts}."),
        )
    return (
        Text(f"{_start(pusher)} {pushes(outcome)} on {body} with "),
        Strong(pretty(answer)),
        Text(f", {_from_bone(outcome)}{answer.words}{parts}."),
    )


def _from_bone(outcome: Outcome) -> str:
    """The angle from the line of a bone, where the parts were taken along it."""
    bone = outcome.body.problem.course.axes
    if not bone or "*angle reaction" not in outcome.values:
        return ""
    return f"{outcome.number(outcome.values['*angle reaction'])}° from the line of {the(bone)}, that is "


def _parts_in_brackets(outcome: Outcome) -> str:
    resultant = outcome.body.problem.course.resultant
    if not ("parts" in resultant and len(resultant) > 1) and not any(
        name in PARTS for name, _ in outcome.working.asked
    ):
        return ""
    found = [each for each in PARTS if each in outcome.answers and abs(outcome.answers[each].value) > 0]
    said = [f"{size_of(outcome.answers[each])} {part_way(outcome, each)}" for each in found]
    return f" (in parts: {_both(said)})" if len(said) > 1 else ""


def _both(parts: Sequence[str]) -> str:
    """Two parts in a sentence, with a comma before the second where the first has one."""
    return ", and ".join(parts) if "," in parts[0] else " and ".join(parts)


def part_way(outcome: Outcome, name: str, listed_after: bool = True) -> str:
    """Which way a part of the joint force points, its sign counted; "across it" where the part along the bone was
    named just before.
    """
    value, bone = outcome.answers[name].value, outcome.body.problem.course.axes
    if name == "reaction.right":
        return "to the right" if value >= 0 else "to the left"
    if name == "reaction.up":
        return "up" if value >= 0 else "down"
    if name == "reaction.along":
        return f"along {the(bone)}, {'away from' if value >= 0 else 'towards'} {the(outcome.pivot)}"
    bearing = outcome.body.bearings[bone]
    turn = (
        float(bearing.degrees)
        + sum(k * outcome.values[letter.name] for letter, k in bearing.unknown)
        + (90 if value >= 0 else 270)
    )
    return f"across {'it' if listed_after else the(bone)}, {direction_words(turn % 360)}"


def parts_line(outcome: Outcome) -> Line:
    """The parts of the joint force in a sentence, where they were asked and not the whole."""
    asked = [name for name, _ in outcome.working.asked if name in PARTS] or [
        name for name in PARTS if name in outcome.answers
    ]
    pusher, body = joint_pusher(outcome), body_name(outcome)
    other = outcome.body.problem.course.reaction_on == "the other bone"
    said = [f"{size_of(outcome.answers[name])} {part_way(outcome, name)}" for name in asked]
    tail = (
        f" On {pusher} {body} {'press' if is_plural(body) else 'presses'} as hard, the opposite way." if other else ""
    )
    return (Text(f"{_start(pusher)} {pushes(outcome)} {body} with "), Strong(_both(said)), Text(f".{tail}"))


def sign_line(outcome: Outcome, key: str) -> str:
    """What the sign of a force says that was sought, where letters have their signs."""
    force = next((each for each in outcome.body.forces if each.size.name == key), None)
    if force is None or not outcome.body.problem.course.letters_have_signs or not outcome.values.get(key):
        return ""
    sign, way = ("plus", "upwards") if outcome.values[key] > 0 else ("minus", "downwards")
    return f"The {sign} sign says that {the(force.name)} {verb(force.name, 'act')} {way}."


def minus_line(outcome: Outcome, key: str) -> str:
    """What the minus sign of a part says, or that the part is no more than rounding leaves."""
    if not outcome.answers[key].value and outcome.values[key]:
        return "That is no more than rounding leaves: there is nothing this way."
    if outcome.answers[key].value >= 0:
        return ""
    way = part_way(outcome, key, False)
    if key in ("reaction.along", "reaction.across"):
        return f"The minus sign says that this part of the force points {way}."
    return f"The minus sign says that {joint_pusher(outcome)} {pushes(outcome)} {body_name(outcome)} {way}."
