"""What an answer means: the sentence that closes a page. Knows sentences, and works nothing out."""

from __future__ import annotations

from collections.abc import Mapping
from math import hypot

from ..solve.answers import spelled
from ..mechanics.body import Force, Twist
from ..document.english import is_plural, listed, the, verb
from ..solve.outcome import Outcome
from .answer_sentences import measured_from, pretty, size_of, turned, which_side
from .forces_found import MANY, forces_sentence
from .general_words import body_name


def in_a_sentence(outcome: Outcome) -> str:
    """The answer once more, with what it means."""
    if not outcome.body.problem.balanced or not outcome.answers or not outcome.possible:
        return ""
    name, key = outcome.working.asked[0]
    owner, _, what = key.rpartition(".")
    muscle = outcome.muscles[0] if len(outcome.muscles) == 1 else None
    held = (
        f"with {the(muscle.name)} pulling {outcome.force(outcome.size(muscle))}, "
        if muscle and f"{muscle.name}.force" in _given(outcome)
        else ""
    )
    answer = outcome.answers[name]
    if what == "at":
        side = ", on its other side" if answer.value < 0 else ""
        far = f"{size_of(answer)} from {measured_from(outcome, owner)}{side or which_side(outcome, owner)}"
        if not held:
            body = body_name(outcome)
            slips = ", and about to slip" if outcome.body.problem.pivot.slips else ""
            return f"{body} {'are' if _are_many(outcome) else 'is'} at rest with {the(owner)} {far}{slips}."
        return f"{held}{the(owner)} {verb(owner, 'balance')} {far}{_farther(outcome, owner, muscle)}."
    if key.startswith("*angle "):
        name = key.removeprefix("*angle ")
        return (
            f"{held}{the(name)} {verb(name, 'be')} at rest {turned(outcome, name, answer)}."
            if name in outcome.body.bearings
            else ""
        )
    if what == "hung":
        return f"{held}{pretty(answer)} at the other end of {the(owner)} hold the balance."
    if what == "mass":
        return f"{held}{the(owner)} can have a mass of {pretty(answer)}."
    if muscle is None or muscle.size.name in _given(outcome):
        return forces_sentence(outcome)
    return _pull_sentence(outcome, muscle) if outcome.size(muscle) > 0 else ""


def _are_many(outcome: Outcome) -> bool:
    names = [segment.name for segment in outcome.body.problem.segments]
    return len(names) > 1 or any(map(is_plural, names))


def _farther(outcome: Outcome, name: str, muscle: Force | None) -> str:
    """That a load cannot go farther out, where it turns against the muscle and its distance alone is its arm's."""
    if muscle is None or name not in {force.name for force in outcome.weights}:
        return ""
    against = outcome.moments[name] * outcome.moments[muscle.name] < 0
    straight = len(outcome.body.force(name).steps) == 1 and outcome.values[f"{name}.at"] > 0
    return "; farther out it would take a larger pull" if against and straight else ""


def _given(outcome: Outcome) -> set[str]:
    return {each.letter.name for each in outcome.body.givens}


def _pull_sentence(outcome: Outcome, muscle: Force) -> str:
    """What the muscle holds, what it holds out against, how hard it pulls, and what the joint carries."""
    pull, against, helping = outcome.pull(muscle), _turners(outcome, muscle, -1), _turners(outcome, muscle, 1)
    if not against:
        return ""
    main = max(against, key=lambda name: abs(outcome.moments[name]))
    carried = against if len(against) <= MANY else [main]
    weights = {force.name: outcome.size(force) for force in outcome.weights}
    lead = "to" if carried == against else "above all to"
    said = (
        f"{lead} {_what_is_held(outcome, carried, weights)} {the(muscle.name)} {verb(muscle.name, 'pull')} with "
        f"{outcome.force(pull)}"
    )
    sizes = weights if weights.keys() >= set(carried) else _forces_alone(outcome, carried)
    if carried == against and sizes.keys() >= set(carried) and not helping:
        ratio = pull / sum(sizes[name] for name in carried)
        said += f", {outcome.times(ratio) if ratio < 10 else f'{outcome.number(ratio)} times'} that"
    if helping:
        said += f", helped by {listed([the(name) for name in helping])}"
    if outcome.joint_asked and outcome.joint is not None:
        said += f", and {the(outcome.pivot)} {verb(outcome.pivot, 'carry')} {outcome.force(hypot(*outcome.joint))}"
    return said + "."


def _turners(outcome: Outcome, muscle: Force, way: int) -> list[str]:
    """What else but muscles turns the body the muscle's way (1), or against it (-1)."""
    others = [force.name for force in outcome.body.forces if force.kind != "muscle"] + [
        each.name for each in outcome.body.twists
    ]
    largest = max(map(abs, outcome.moments.values()))
    return [
        name
        for name in others
        if way * outcome.moments[name] * outcome.moments[muscle.name] > 0
        and abs(outcome.moments[name]) > 1e-9 * largest
    ]


def _what_is_held(outcome: Outcome, carried: list[str], weights: Mapping[str, float]) -> str:
    """What a muscle holds, weights with what they weigh, a couple with its moment."""
    if weights.keys() >= set(carried):
        together = " together" if len(carried) > 1 else ""
        return (
            f"hold {listed([the(name) for name in carried])}, "
            f"{outcome.force(sum(weights[name] for name in carried))}{together},"
        )
    twists = {each.name: each for each in outcome.body.twists}
    if len(carried) > 1 and twists.keys() & set(carried):
        turning = sum(abs(outcome.moments[name]) for name in carried)
        return f"hold out against {listed([the(name) for name in carried])}, {outcome.moment(turning)} together,"
    for name, size in _forces_alone(outcome, carried).items():
        return f"hold out against {the(name)}, {outcome.force(size)},"
    named = [f"{the(name)}, {_moment(outcome, twists[name])}," if name in twists else the(name) for name in carried]
    return f"hold out against {listed(named)}"


def _forces_alone(outcome: Outcome, carried: list[str]) -> dict[str, float]:
    """The size of the one force that is held, where it is one."""
    forces = {force.name: force for force in outcome.body.forces if force.kind == "force"}
    return {name: outcome.pull(forces[name]) for name in carried if len(carried) == 1 and name in forces}


def _moment(outcome: Outcome, twist: Twist) -> str:
    """The moment of a couple as it was given, else as the class writes it."""
    found = next((each.value for each in outcome.body.givens if each.letter == twist.size), None)
    return (
        f"{found.number:f} {spelled(found.unit).replace(' ', '·')}"
        if found is not None
        else outcome.moment(abs(outcome.moments[twist.name]))
    )
