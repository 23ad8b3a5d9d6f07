"""The sentences of a page that belong to no single move: what is sought, what is taken for granted, what an answer says. Data beside logic."""
from __future__ import annotations

from .answers import Answer, direction_words
from .body import Force
from .english import is_plural, listed, sentence, the, verb
from .equation import term
from .outcome import Outcome, number
from .passage import Inline, Line, Maths, Strong, Text


def body_name(outcome: Outcome) -> str:
    """What was cut free: "the forearm and hand"."""
    names = [segment.name for segment in outcome.body.problem.segments]
    if not names:
        above = [force.name for force in outcome.body.forces if force.kind == "load"]
        return the(above[0]) if len(above) == 1 else "the body cut free"
    return listed([the(name) for name in names])


def joint_pusher(outcome: Outcome) -> str:
    """What pushes at the pivot: "the humerus"."""
    return the(outcome.body.problem.pivot.bone) if outcome.body.problem.pivot.bone else f"the other bone at the {outcome.pivot}"


def find_line(outcome: Outcome) -> Line:
    """What is sought, letter by letter."""
    letters = outcome.body.letters
    line: list[Inline] = []
    joint = [key for _, key in outcome.working.asked if key.startswith("reaction")]
    for name, key in outcome.working.asked:
        if key.startswith("reaction") and key != joint[0]:
            continue
        if line:
            line.append(Text("; "))
        if key.startswith("reaction"):
            for place, each in enumerate(joint):
                line += [Text("" if not place else " and " if place == len(joint) - 1 else ", "), Maths((term(letters(each)),))]
            line.append(Text(f", {_of_reaction(outcome, joint)}force of {joint_pusher(outcome)} on {body_name(outcome)}"))
            continue
        line += [Maths((term(letters(key)),)), Text(f", {_what(outcome, name, key)}")]
    return (*line, Text("."))


def _of_reaction(outcome: Outcome, keys: list[str]) -> str:
    bone = outcome.body.problem.course.axes
    words = {"reaction.right": "level part", "reaction.up": "upright part", "reaction.along": f"part along the {bone}", "reaction.across": f"part across the {bone}"}
    parts = [words[key] for key in keys if key in words]
    if not parts:
        return "the "
    return f"the {listed([*parts, 'size'] if 'reaction' in keys else parts)} of the "


def _what(outcome: Outcome, name: str, key: str) -> str:
    found = next((each.meaning for each in outcome.body.sought if each.letter.name == key), None)
    if found is not None:
        return _with_article(found)
    if key == "total":
        return f"the sum of all {outcome.word}s about the {outcome.pivot}"
    owner = name.rpartition(".")[0] or name
    return {"moment": f"the {outcome.word} of {the(owner)} about the {outcome.pivot}", "stress": f"the stress in {the(owner)}"}.get(
        name.rpartition(".")[2], f"the force of {the(owner)}")


def _with_article(meaning: str) -> str:
    if " to " in meaning and not meaning.startswith(("pull", "force", "mass", "weight", "moment", "angle")):
        start, _, end = meaning.partition(" to ")
        return f"the distance from the {start} to {the(end)}"
    return f"the {meaning}"


def taken_for_granted(outcome: Outcome) -> str:
    """The assumptions that hold on this page."""
    problem = outcome.body.problem
    if not problem.balanced:
        return ""
    many = len(problem.segments) > 1
    names = body_name(outcome)
    said = [f"{sentence(names).rstrip('.')} {'are' if many or is_plural(names) else 'is'} rigid{', held rigidly together,' if many else ''} and at rest, and all forces lie in one plane"]
    muscles = [force.name for force in outcome.muscles]
    if len(muscles) == 1:
        said.append(f"{the(muscles[0])} alone {verb(muscles[0], 'hold')} {'them' if many or is_plural(names) else 'it'} and {verb(muscles[0], 'pull')} along a straight line")
    elif muscles:
        said.append("no other muscle helps, and each pulls along a straight line")
    if problem.pivot.reaction:
        said.append("the joint has no friction")
    weightless = [segment.name for segment in problem.segments if segment.mass is None and segment.weight is None]
    left_out = [*(f"the weight of {the(name)}" for name in weightless), *problem.neglect]
    if left_out:
        said.append(f"{listed(left_out)} {'is' if len(left_out) == 1 else 'are'} left out")
    return sentence("; ".join(said))


# ---------------------------------------------------------------------- answers
def answer_line(outcome: Outcome, name: str) -> Line:
    """One answer in a sentence."""
    answer = outcome.answers[name]
    if name == "reaction":
        return _reaction(outcome, answer)
    key = dict(outcome.working.asked).get(name, name)
    force = next((each for each in outcome.body.forces if each.size.name == key), None)
    if force is not None:
        return _force(outcome, force, answer)
    if answer.unit == "deg":
        return (*_lead(outcome, key), Strong(f"{pretty(answer)}"), Text(f": {the(name.rpartition('.')[0])} {verb(name.rpartition('.')[0], 'point')} {answer.words}."))
    return (*_lead(outcome, key), Strong(pretty(answer)), Text("."))


def _lead(outcome: Outcome, key: str) -> Line:
    return (Maths((term(outcome.body.letters(key)),)), Text(" is "))


def pretty(answer: Answer) -> str:
    """A value as shown, with the signs of print."""
    number_, _, unit = answer.shown.partition(" ")
    unit = {"deg": "°"}.get(unit, " " + unit.replace("^2", "²").replace(" ", "·").replace("/", "/"))
    return number_.replace("-", "−") + unit


def _force(outcome: Outcome, force: Force, answer: Answer) -> Line:
    name, does = the(force.name), {"muscle": "pull", "force": "act"}.get(force.kind, "weigh")
    if answer.value < 0 and force.kind == "muscle":
        return (Text(f"{sentence(name).rstrip('.')} would need a force of "), Strong(pretty(answer)),
                Text(": the minus sign says that it would have to push, and a muscle cannot."))
    each = "each " if force.count > 1 else ""
    if force.kind in ("weight", "load"):
        return (Text(f"{sentence(name).rstrip('.')} {verb(force.name, 'weigh')} "), Strong(pretty(answer)), Text("."))
    against = " against its stated direction, which was" if answer.value < 0 else ","
    where = f"{against} {answer.words}" if answer.words else ""
    return (Text(f"{sentence(name).rstrip('.')} {each}{does if force.count > 1 else verb(force.name, does)} with "), Strong(pretty(answer)), Text(f"{where}."))


def _reaction(outcome: Outcome, answer: Answer) -> Line:
    pusher, body = joint_pusher(outcome), body_name(outcome)
    if answer.direction is None:
        return (Text(f"{sentence(pusher).rstrip('.')} and {body} do not press on each other at all."),)
    parts = _parts(outcome)
    if outcome.body.problem.course.reaction_on == "the other bone":
        back = direction_words((answer.direction + 180) % 360)
        return (Text(f"{sentence(pusher).rstrip('.')} pushes {body} with "), Strong(pretty(answer)), Text(f", {answer.words}{parts}. "),
                Text(f"On the other bone it is the reverse: {body} {'push' if is_plural(body) else 'pushes'} {pusher} with "), Strong(pretty(answer)), Text(f", {back}."))
    return (Text(f"{sentence(pusher).rstrip('.')} pushes on {body} with "), Strong(pretty(answer)), Text(f", {answer.words}{parts}."))


def _parts(outcome: Outcome) -> str:
    if "parts" not in outcome.body.problem.course.resultant:
        return ""
    bone = outcome.body.problem.course.axes
    names = ("reaction.along", "reaction.across") if bone else ("reaction.right", "reaction.up")
    said = [f"{pretty(outcome.answers[each])} {way}" for each, way in
            zip(names, (f"along the {bone}", f"across the {bone}") if bone else ("to the right", "upwards"), strict=True) if each in outcome.answers]
    return f" (in parts: {' and '.join(said)})" if said else ""


def in_a_sentence(outcome: Outcome) -> str:
    """What it means: how many times the load, and what the joint carries."""
    if not outcome.body.problem.balanced or len(outcome.muscles) != 1:
        return ""
    muscle = outcome.muscles[0]
    loads = [force for force in outcome.body.forces if force.kind in ("load", "force", "weight") and outcome.size(force) > 0
             and outcome.moments[force.name] * outcome.moments[muscle.name] < 0]
    pull = outcome.size(muscle) * muscle.count
    if not loads or pull <= 0:
        return ""
    main = max(loads, key=lambda each: abs(outcome.moments[each.name]))
    ratio = pull / outcome.size(main)
    times_ = f"{number(ratio, 2)} times as much" if ratio >= 1.05 else f"only {number(ratio, 2)} of that" if ratio < 0.95 else "about as much"
    what = "hold up against" if main.kind == "force" else "hold"
    said = f"to {what} {the(main.name)} ({outcome.force(outcome.size(main))}) {the(muscle.name)} {verb(muscle.name, 'pull')} with {outcome.force(pull)}, {times_}"
    if outcome.joint_asked and outcome.joint is not None:
        size = (outcome.joint[0] ** 2 + outcome.joint[1] ** 2) ** 0.5
        said += f", and the {outcome.pivot} carries {outcome.force(size)}"
    return said + "."
