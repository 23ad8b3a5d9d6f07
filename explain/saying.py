"""What an answer says, in a sentence: how hard, which way, on which body. Knows sentences, and works nothing out."""
from __future__ import annotations

from .answers import Answer, direction_words, plain_degrees
from .body import Force
from .english import each_of, is_plural, listed, sentence, the, verb
from .equation import term
from .outcome import Outcome
from .passage import Line, Maths, Strong, Text
from .problem import Direction
from .wording import body_name, joint_pusher

STARTS = {"up": "straight up", "down": "straight down", "right": "the level, to the right", "left": "the level, to the left",
          "out": "the line of the bone",
          "back": "the line back along the bone"}
ONE_OF_THEM = {"pull": "pulls", "push": "pushes", "act": "acts"}
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
        begins = "" if outcome.body.problem.balanced else f" The body begins to turn {_way(outcome, answer)}." if answer.value else ""
        return (Text(f"The {outcome.word}s add to "), Strong(size_of(answer)), Text(f", {_way(outcome, answer)}.{begins}" if answer.value else "."))
    if key.startswith("*moment ") or what == "moment":
        turner = key.removeprefix("*moment ") if key.startswith("*moment ") else owner
        sense = _way(outcome, answer) if key.startswith("*moment ") else _couple_way(outcome, turner, answer)
        return (Text(f"{_start(the(turner))} {verb(turner, 'turn')} the body with "), Strong(size_of(answer)), Text(f", {sense}."))
    if what == "mass" and answer.value < 0:
        return (Text(f"{_start(the(owner))} would need a mass of "), Strong(pretty(answer)), Text(", which nothing has."))
    lead = {"at": f"{_start(the(owner))} {verb(owner, 'be')} ", "mass": f"{_start(the(owner))} {verb(owner, 'have')} a mass of ",
            "moment_arm": f"{_start(the(owner))} {verb(owner, 'have')} a moment arm of ", "stress": f"The stress in {the(owner)} is ",
            "com": f"The centre of mass of {the(owner)} is "}.get(what)
    if lead is None:
        return (Maths((term(outcome.body.letters(key)),)), Text(" is "), Strong(pretty(answer)), Text("."))
    behind = f" from {_from(outcome, owner)}." if what in ("at", "com") else "."
    return (Text(lead), Strong(pretty(answer)), Text(behind))


def _start(name: str) -> str:
    return sentence(name).rstrip(".")


def _from(outcome: Outcome, name: str) -> str:
    steps = outcome.body.force(name).steps
    return the(outcome.pivot) if len(steps) == 1 else f"the near end of {the(outcome.body.force(name).segment)}"


def _way(outcome: Outcome, answer: Answer) -> str:
    """The turning sense of a moment that is counted in the class's own sense."""
    sense = outcome.working.checker.premises.sense()
    return "counter-clockwise" if answer.value * sense > 0 else "clockwise"


def _couple_way(outcome: Outcome, name: str, answer: Answer) -> str:
    turns = next(each.turns for each in outcome.body.twists if each.name == name)
    return "counter-clockwise" if answer.value * turns > 0 else "clockwise"


def _force(outcome: Outcome, force: Force, answer: Answer) -> Line:
    name = _start(the(force.name)) if force.count == 1 else _start(each_of(force.name))
    if not answer.value and force.kind not in ("weight", "load"):
        return (Text(f"No {'pull' if force.kind == 'muscle' else 'force'} of {the(force.name)} is needed: "), Strong(pretty(answer)), Text("."))
    if answer.value < 0 and force.kind == "muscle":
        return (Text(f"{name} would need a force of "), Strong(pretty(answer)),
                Text(": the minus sign says that it would have to push, and a muscle cannot."))
    if force.kind in ("weight", "load"):
        return (Text(f"{name} {verb(force.name, 'weigh')} "), Strong(pretty(answer)), Text("."))
    upward = answer.words == "straight up" and answer.value >= 0
    stem = "pull" if force.kind == "muscle" else "push" if upward else "act"
    does = (ONE_OF_THEM[stem] if force.count > 1 else verb(force.name, stem)) + (" up" if upward and force.kind != "muscle" else "")
    if answer.value < 0:
        turned = direction_words(((answer.direction or 0.0) + 180) % 360) if answer.words else ""
        return (Text(f"{name} {does} with "), Strong(size_of(answer)), Text(f" against the stated direction{': ' if turned else ''}{turned}."))
    where = "" if not answer.words or (upward and force.kind != "muscle") else f", {answer.words}"
    return (Text(f"{name} {does} with "), Strong(pretty(answer)), Text(f"{where}."))


def _angle(outcome: Outcome, owner: str, answer: Answer) -> Line:
    segment = next((each for each in outcome.body.problem.segments if each.name == owner), None)
    pull = next((each for each in outcome.body.problem.pulls if each.name == owner), None)
    direction = segment.direction if segment else pull.direction if pull and pull.direction else Direction("right")
    does = "come to rest at" if segment else "act at" if pull and pull.kind == "force" else "pull at"
    ways = {"right": "the right", "left": "the left", "up": "straight up", "down": "straight down"}
    toward = ways.get(direction.toward, f"the way {direction.toward}")
    first, _, rest = does.partition(" ")
    return (Text(f"{_start(the(owner))} {verb(owner, first)} {rest} "), Strong(pretty(answer)),
            Text(f" from {STARTS[direction.start]}, toward {toward}: {answer.words}."))


# ---------------------------------------------------------------------- the joint
def _reaction(outcome: Outcome, answer: Answer) -> Line:
    pusher, body = joint_pusher(outcome), body_name(outcome)
    if answer.direction is None:
        return (Text(f"{_start(pusher)} and {body} do not press on each other at all."),)
    parts = _parts_in_brackets(outcome)
    if outcome.body.problem.course.reaction_on == "the other bone":
        back = direction_words((answer.direction + 180) % 360)
        return (Text(f"{_start(body)} {'push' if is_plural(body) else 'pushes'} on {pusher} with "), Strong(pretty(answer)), Text(f", {back}. "),
                Text(f"Action and reaction: {pusher} pushes back on {body} as hard, {answer.words}{parts}."))
    return (Text(f"{_start(pusher)} pushes on {body} with "), Strong(pretty(answer)), Text(f", {_from_bone(outcome)}{answer.words}{parts}."))


def _from_bone(outcome: Outcome) -> str:
    """The angle from the line of a bone, where the parts were taken along it."""
    bone = outcome.body.problem.course.axes
    if not bone or "*angle reaction" not in outcome.values:
        return ""
    return f"{plain_degrees(round(outcome.values['*angle reaction'], 1))} from the line of {the(bone)}, that is "


def _parts_in_brackets(outcome: Outcome) -> str:
    resultant = outcome.body.problem.course.resultant
    if not ("parts" in resultant and len(resultant) > 1) and not any(name in PARTS for name, _ in outcome.working.asked):
        return ""
    found = [each for each in PARTS if each in outcome.answers and abs(outcome.answers[each].value) > 0]
    said = [f"{size_of(outcome.answers[each])} {part_way(outcome, each)}" for each in found]
    return f" (in parts: {' and '.join(said)})" if len(said) > 1 else ""


def part_way(outcome: Outcome, name: str) -> str:
    """Which way a part of the joint force points, its sign counted."""
    value, bone = outcome.answers[name].value, outcome.body.problem.course.axes
    if name == "reaction.right":
        return "to the right" if value >= 0 else "to the left"
    if name == "reaction.up":
        return "up" if value >= 0 else "down"
    if name == "reaction.along":
        return f"along {the(bone)}, {'away from' if value >= 0 else 'towards'} the {outcome.pivot}"
    bearing = outcome.body.bearings[bone]
    turn = float(bearing.degrees) + sum(k * outcome.values[letter.name] for letter, k in bearing.unknown) + (90 if value >= 0 else 270)
    return f"across it, {direction_words(turn % 360)}"


def parts_line(outcome: Outcome) -> Line:
    """The parts of the joint force in a sentence, where they were asked and not the whole."""
    asked = [name for name, _ in outcome.working.asked if name in PARTS] or [name for name in PARTS if name in outcome.answers]
    pusher, body = joint_pusher(outcome), body_name(outcome)
    other = outcome.body.problem.course.reaction_on == "the other bone"
    said = [f"{size_of(outcome.answers[name])} {part_way(outcome, name)}" for name in asked]
    tail = f" On {pusher} {body} {'press' if is_plural(body) else 'presses'} as hard, the opposite way." if other else ""
    return (Text(f"{_start(pusher)} pushes {body} with "), Strong(listed(said)), Text(f".{tail}"))


def minus_line(outcome: Outcome, key: str) -> str:
    """What the minus sign of a part says."""
    if outcome.answers[key].value >= 0:
        return ""
    return f"The minus sign says that {joint_pusher(outcome)} pushes {body_name(outcome)} {part_way(outcome, key)}."


# ---------------------------------------------------------------------- what it means
def in_a_sentence(outcome: Outcome) -> str:
    """The answer once more, with what it means."""
    if not outcome.body.problem.balanced or not outcome.answers:
        return ""
    name, key = outcome.working.asked[0]
    owner, _, what = key.rpartition(".")
    muscle = outcome.muscles[0] if len(outcome.muscles) == 1 else None
    held = f"with {the(muscle.name)} pulling {outcome.force(outcome.size(muscle))}, " if muscle and f"{muscle.name}.force" in _given(outcome) else ""
    answer = outcome.answers[name]
    if what == "at":
        return f"{held}{the(owner)} {verb(owner, 'balance')} {pretty(answer)} from {_from(outcome, owner)}."
    if key.startswith("*angle "):
        turned = key.removeprefix("*angle ")
        return f"{held}{the(turned)} {verb(turned, 'come')} to rest {answer.words}." if turned in outcome.body.bearings else ""
    if what == "mass":
        return "" if answer.value < 0 else f"{held}{the(owner)} can have a mass of {pretty(answer)}."
    if muscle is None or muscle.size.name in _given(outcome) or outcome.size(muscle) <= 0:
        return ""
    return _pull_sentence(outcome, muscle)


def _given(outcome: Outcome) -> set[str]:
    return {each.letter.name for each in outcome.body.givens}


def _pull_sentence(outcome: Outcome, muscle: Force) -> str:
    pull, sense = outcome.size(muscle) * muscle.count, outcome.moments[muscle.name]
    others = [force for force in outcome.body.forces if force.kind != "muscle" and abs(outcome.moments[force.name]) > 1e-9]
    against = [force for force in others if outcome.moments[force.name] * sense < 0]
    helping = [force for force in others if outcome.moments[force.name] * sense > 0]
    if not against:
        return ""
    total = sum(abs(outcome.moments[force.name]) for force in against)
    main = max(against, key=lambda force: abs(outcome.moments[force.name]))
    carried = [main] if abs(outcome.moments[main.name]) > 0.9 * total else against
    weights = all(force.kind in ("load", "weight") for force in carried)
    size = sum(outcome.size(force) for force in carried)
    what = "hold" if weights else "hold out against"
    weight = f", {outcome.force(size)}{' together' if len(carried) > 1 else ''}," if weights else ""
    compared = outcome.number if weights and pull / size >= 10 else _two
    ratio = f", {compared(pull / size)} times that" if weights and not helping else ""
    borne = f"{listed([the(force.name) for force in carried])}{weight}"
    said = f"to {what} {borne} {the(muscle.name)} {verb(muscle.name, 'pull')} with {outcome.force(pull)}{ratio}"
    if helping:
        said += f", helped by {listed([the(force.name) for force in helping])}"
    if outcome.joint_asked and outcome.joint is not None:
        said += f", and the {outcome.pivot} carries {outcome.force((outcome.joint[0] ** 2 + outcome.joint[1] ** 2) ** 0.5)}"
    return said + "."


def _two(value: float) -> str:
    from .outcome import number

    return number(value, 2)
