"""What the forces and couples that were sought hold, where no one muscle holds it all. Works nothing out."""

from __future__ import annotations

from collections.abc import Sequence
from math import hypot

from ..document.english import each_of, force_of, listed, the, verb
from ..mechanics.body import Force, Twist
from ..solve.outcome import Outcome
from ..wording.phrases import acts
from ..wording.pivot_words import has_joint

MANY = 4  # more things that are held, or that hold, are not listed in a sentence


def forces_sentence(outcome: Outcome) -> str:
    """ "to hold the bag and the forearm, 55.9 N together, the biceps pulls with 203 N and the brachialis with 308 N";
    "" where one of them cannot be, or where they are many."""
    asked = {key for _, key in outcome.working.asked}
    sought = [each for each in _others(outcome) if each.size.name in asked and not outcome.is_given(each.size)]
    couples = [each for each in outcome.body.twists if each.size.name in asked and not outcome.is_given(each.size)]
    if not 0 < len(sought) + len(couples) <= MANY:
        return ""
    sizes = [*map(outcome.size, sought), *(outcome.sizes[each.size.name] for each in couples)]
    if min(sizes) <= outcome.moved * max(sizes):
        return ""
    parts = (_held(outcome), _known(outcome, sought, couples), listed(_found(outcome, sought, couples)))
    return ", ".join(filter(None, (*parts, _carried(outcome)))) + "."


def _others(outcome: Outcome) -> list[Force]:
    return [each for each in outcome.body.forces if each.kind in ("muscle", "force")]


def _held(outcome: Outcome) -> str:
    """The weights, with what they weigh."""
    weights = outcome.weights
    if not 0 < len(weights) <= MANY:
        return ""
    names, sum_of_all = listed([the(each.name) for each in weights]), outcome.force(sum(map(outcome.size, weights)))
    return f"to hold {names}, {sum_of_all}{' together' if len(weights) > 1 else ''}"


def _known(outcome: Outcome, sought: Sequence[Force], couples: Sequence[Twist]) -> str:
    """What else acts: "against 40 N of the wind", "with the masseter pulling 240 N"."""
    pulling = [each for each in _others(outcome) if each not in sought]
    turning = [each for each in outcome.body.twists if each not in couples]
    if not 0 < len(pulling) + len(turning) <= MANY:
        return ""
    stems = ["pull" if _stem(outcome, each) == "pull" else "push" for each in pulling]
    said = [
        f"{_each(each)} {stem}ing {outcome.force(abs(outcome.size(each)))}"
        for each, stem in zip(pulling, stems, strict=True)
    ]
    said += [f"{the(each.name)} turning with {outcome.moment(abs(outcome.moments[each.name]))}" for each in turning]
    return f"with {listed(said)}"


def _found(outcome: Outcome, sought: Sequence[Force], couples: Sequence[Twist]) -> list[str]:
    """What each does, its verb said once where it is the same."""
    said, last = [], ""
    for force in sought:
        name = force.name if force.count == 1 else "one"
        does = f"{verb(name, _stem(outcome, force))} with"
        if does.startswith("act"):
            said.append(f"{force_of(force.name)} is {outcome.force(outcome.size(force))}")
        else:
            said.append(f"{_each(force)} {'with' if does == last else does} {outcome.force(outcome.size(force))}")
        last = does
    for couple in couples:
        turns = outcome.moment(abs(outcome.moments[couple.name]))
        said.append(f"{the(couple.name)} {verb(couple.name, 'turn')} with {turns}")
    return said


def _carried(outcome: Outcome) -> str:
    """What the pivot carries, where it was asked; a support that is pulled up carries nothing."""
    joint = outcome.joint
    if not outcome.joint_asked or joint is None or not (joint[1] > 0 or has_joint(outcome.body.problem)):
        return ""
    return f"and {the(outcome.pivot)} {verb(outcome.pivot, 'carry')} {outcome.force(hypot(*joint))}"


def _each(force: Force) -> str:
    return the(force.name) if force.count == 1 else each_of(force.name)


def _stem(outcome: Outcome, force: Force) -> str:
    """What a force does; what acts straight up is known to push."""
    pull = next(each for each in outcome.body.problem.pulls if each.name == force.name)
    stem = acts(pull)
    up = force.bearing is not None and not force.bearing.unknown and force.bearing.degrees == 90
    return "push" if stem == "act" and up else stem
