"""The sentences of a page that belong to no single move: what is sought, what is taken for granted, what an answer
says. Data beside logic.
"""

from __future__ import annotations

from ..equation import key as keys
from ..document.english import force_of, is_plural, listed, noun_of, sentence, the, verb
from ..equation.terms import term
from ..solve.outcome import Outcome
from ..wording.phrases import left_out
from ..wording.pivot_words import pusher
from ..problem.model import Hung
from ..wording.pivot_words import has_joint
from ..wording.pivot_words import pushes as push_of
from ..document.passage import Inline, Line, Maths, Strong, Text


def body_name(outcome: Outcome) -> str:
    """What was cut free: "the forearm and hand"."""
    names = [segment.name for segment in outcome.body.problem.segments]
    if not names:
        above = [force.name for force in outcome.body.forces if force.kind == "load"]
        return the(above[0]) if len(above) == 1 else "the body"
    return listed([the(name) for name in names])


def joint_pusher(outcome: Outcome) -> str:
    """What pushes at the pivot: "the humerus"."""
    return pusher(outcome.body.problem)


def pushes(outcome: Outcome) -> str:
    """The verb that goes with it."""
    return push_of(outcome.body.problem)


def friction_line(outcome: Outcome, shown: str) -> Line:
    """What the least friction means."""
    place = the(outcome.pivot)
    return (
        Text("With a coefficient of friction of "),
        Strong(shown),
        Text(f" at {place} it just holds; with less it slips."),
    )


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
                line += [
                    Text("" if not place else " and " if place == len(joint) - 1 else ", "),
                    Maths((term(letters(each)),)),
                ]
            line.append(
                Text(f", {_of_reaction(outcome, joint)}force of {joint_pusher(outcome)} on {body_name(outcome)}")
            )
            if outcome.body.problem.course.reaction_on == "the other bone":
                line.append(Text(f", and from it the force of {body_name(outcome)} on {joint_pusher(outcome)}"))
            continue
        line += sought_line(outcome, name, key)
    return (*line, Text("."))


def sought_line(outcome: Outcome, name: str, key: str) -> Line:
    """One thing that is sought, but for the joint force: its letter, and what that stands for."""
    what = (
        f"the least coefficient of friction at {the(outcome.pivot)}"
        if key == keys.FRICTION
        else sought_words(outcome, name, key)
    )
    return Maths((term(outcome.body.letters(key)),)), Text(f", {what}")


def _of_reaction(outcome: Outcome, keys: list[str]) -> str:
    bone = outcome.body.problem.course.axes
    words = {
        "reaction.right": "horizontal part",
        "reaction.up": "vertical part",
        "reaction.along": f"part along the {bone}",
        "reaction.across": f"part across the {bone}",
    }
    parts = [words[key] for key in keys if key in words]
    if not parts:
        return "the "
    return f"the {listed([*parts, 'size'] if 'reaction' in keys else parts)} of the "


def sought_words(outcome: Outcome, name: str, key: str) -> str:
    """What is sought, but for the joint force, in words with an article."""
    found = next((each.meaning for each in outcome.body.sought if each.letter.name == key), None)
    if found is not None:
        return (
            f"the distance from {the(found.partition(' to ')[0])} to {the(found.partition(' to ')[2])}"
            if key.endswith(".at")
            else f"the {found}"
        )
    if key == "total":
        return f"the sum of all {outcome.word}s about {the(outcome.pivot)}"
    owner = name.rpartition(".")[0] or name
    return {
        "moment": f"the {outcome.word} of {the(owner)} about {the(outcome.pivot)}",
        "stress": f"the stress in {the(owner)}",
        "at": f"the distance at which the weight of {the(owner)} acts",
    }.get(
        name.rpartition(".")[2],
        noun_of("pull", owner) if any(each.name == owner for each in outcome.muscles) else force_of(owner),
    )


def taken_for_granted(outcome: Outcome) -> str:
    """The assumptions that hold on this page."""
    problem = outcome.body.problem
    if not problem.balanced:
        return ""
    many = len(problem.segments) > 1
    names = body_name(outcome)
    said = [
        f"{sentence(names).rstrip('.')} {'are' if many or is_plural(names) else 'is'} "
        f"rigid{', held rigidly together,' if many else ''} and at rest, and all forces lie in one plane"
    ]
    muscles = [force.name for force in outcome.muscles]
    alone = all(force.kind in ("weight", "load", "muscle") for force in outcome.body.forces) and not outcome.body.twists
    if len(muscles) == 1 and not alone:
        said.append(f"of the muscles only {the(muscles[0])} {verb(muscles[0], 'pull')}, along a straight line")
    elif len(muscles) == 1:
        said.append(
            f"{the(muscles[0])} alone {verb(muscles[0], 'hold')} {'them' if many or is_plural(names) else 'it'} and "
            f"{verb(muscles[0], 'pull')} along a straight line"
        )
    elif muscles:
        said.append("no other muscle helps, and each pulls along a straight line")
    if problem.pivot.reaction and has_joint(problem):
        said.append("the joint turns without friction")
    hung = [pull.name for pull in problem.pulls if isinstance(pull.force, Hung)]
    if hung:
        said.append(
            f"the {'pulley turns' if len(hung) == 1 else 'pulleys turn'} without friction, and what hangs is at rest"
        )
    absent = left_out(problem)
    if absent:
        said.append(f"{listed(absent)} {'is' if len(absent) == 1 else 'are'} left out")
    return sentence("; ".join(said))
