"""How what is asked of a problem is put as a question. Knows the names of answers, not their values."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from ..problem.answer_names import sought
from ..document.english import each_of, force_of, listed, mass_of, noun_of, sentence, the, verb, weight_of
from .hung_words import hung_meaning
from .pivot_words import pusher
from .phrases import acts, before, body_of, segment_of, way
from ..problem.model import Couple, Load, Problem, Pull, Segment

_PARTS: Mapping[str, str] = {
    "reaction.right": "its part to the right",
    "reaction.up": "its upward part",
    "reaction.along": "",
    "reaction.across": "",
}


def question(problem: Problem) -> str:
    """One sentence that asks for every answer wanted, each force with the body it acts on."""
    things = _things(problem, problem.ask or sought(problem))
    if len(things) > 2:
        return sentence(f"find {listed([thing for thing, _ in things])}")
    clauses = [put or f"what is {thing}" for thing, put in things]
    return sentence(", and ".join(clauses) + "?") if clauses else ""


def _things(problem: Problem, names: Sequence[str]) -> list[tuple[str, str]]:
    """What is asked for, as a noun and (or "") as a question; the pulls of several muscles are one, and the
    reaction's parts.
    """
    muscles = [pull.name for pull in problem.pulls if pull.kind == "muscle" and pull.name in names]
    reaction = [name for name in names if name.partition(".")[0] == "reaction" and name != "reaction.friction"]
    turning = [name.removesuffix(".moment") for name in names if name.endswith(".moment") and name != "total.moment"]
    things: list[tuple[str, str]] = []
    for name in names:
        if name == "reaction.friction":
            least = f"the least coefficient of friction at {the(problem.pivot.name)} that holds {_body(problem)}"
            things.append((least, ""))
        elif name in muscles and len(muscles) > 1:
            things += [_together(problem, muscles, bool(reaction))] if name == muscles[0] else []
        elif name.removesuffix(".moment") in turning and len(turning) > 1 and name.endswith(".moment"):
            things += [_moments(problem, turning)] if name == f"{turning[0]}.moment" else []
        elif name in reaction:
            things += [_reaction(problem, reaction)] if name == reaction[0] else []
        else:
            things.append((_thing(problem, name), _how(problem, name, bool(reaction))))
    return things


def _body(problem: Problem) -> str:
    return body_of(problem, None) if not problem.segments else listed([the(each.name) for each in problem.segments])


def _together(problem: Problem, muscles: Sequence[str], with_reaction: bool) -> tuple[str, str]:
    bodies = {body_of(problem, _named(problem, muscle)) for muscle in muscles}
    on = f" on {bodies.pop()}" if len(bodies) == 1 else ""
    named = listed([the(muscle) for muscle in muscles])
    return f"the pulls of {named}{on}", f"how hard do {named} pull{'' if with_reaction else on}"


def _moments(problem: Problem, owners: Sequence[str]) -> tuple[str, str]:
    moments = (
        f"the {problem.course.word}s of {listed([the(owner) for owner in owners])} about {the(problem.pivot.name)}"
    )
    return moments, f"what are {moments}"


def _thing(problem: Problem, name: str) -> str:
    owner, _, part = name.rpartition(".")
    pivot, word = the(problem.pivot.name), problem.course.word
    if not owner:
        return _force(problem, name)
    if part == "moment":
        return f"the total {word} about {pivot}" if owner == "total" else f"{noun_of(word, owner)} about {pivot}"
    item = _named(problem, owner)
    match part, item:
        case "at", Load() | Pull():
            return f"the distance of {the(owner)} from {_near_end(problem, segment_of(problem, item.place))}"
        case "direction", Segment() | Pull():
            return f"the angle {_between_commas(_turned(problem, item))} {_pointing(item)}"
    nouns = {
        "moment_arm": f"{noun_of('moment arm', owner)} about {pivot}",
        "stress": f"the stress in {the(owner)}",
        "mass": mass_of(owner),
        "weight": weight_of(owner),
        "hung": f"the {hung_meaning(item)}" if isinstance(item, Pull) else "",
        "com": f"the distance of the centre of mass of {the(owner)} from {_near_end(problem, owner)}",
    }
    return nouns.get(part, f"the {part} of {the(owner)}")


def _force(problem: Problem, name: str) -> str:
    item = _named(problem, name)
    if isinstance(item, Couple) or item is None:
        return noun_of(problem.course.word, name)
    what = "pull" if isinstance(item, Pull) and item.kind == "muscle" else "force"
    one = noun_of(what, name) if what == "pull" else force_of(name)
    owner = f"the {what} of {each_of(name)}" if isinstance(item, Pull) and item.count > 1 else one
    return f"{owner} on {body_of(problem, item)}"


def _how(problem: Problem, name: str, with_reaction: bool) -> str:
    """A question of its own where one sounds better than "what is ...?", "" elsewhere. The reaction names the body
    itself.
    """
    owner, _, part = name.rpartition(".")
    item = _named(problem, owner or name)
    if isinstance(item, Pull) and not owner:
        stem, many = acts(item), item.count > 1
        doer = each_of(name) if many else the(name)
        on = (
            ""
            if with_reaction and item.kind == "muscle"
            else f"{'' if stem == 'lift' else ' on'} {body_of(problem, item)}"
        )
        asked = "with what force" if stem == "act" else "how hard"
        return f"{asked} {'does' if many else verb(name, 'do')} {doer} {stem}{on}"
    if part == "at" and isinstance(item, Load | Pull):
        far = f"how far from {_near_end(problem, segment_of(problem, item.place))}"
        return f"{far} {verb(owner, 'be')} {the(owner)}" if isinstance(item, Load) else f"{far} {_inverted(item)}"
    if part == "direction" and isinstance(item, Segment | Pull):
        return f"at what angle {_between_commas(_turned(problem, item))} {_inverted(item)}"
    return ""


def _turned(problem: Problem, item: Segment | Pull) -> str:
    """The lines of an angle without its size: "to the right of straight down"."""
    if isinstance(item, Segment):
        turned = way(item.direction, before(problem, item.name))
    else:
        turned = way(item.direction, segment_of(problem, item.place), item.kind == "muscle") if item.direction else ""
    return turned.removeprefix("at an unknown angle ")


def _pointing(item: Segment | Pull) -> str:
    return (
        f"of {the(item.name)}"
        if isinstance(item, Segment)
        else f"at which {the(item.name)} {verb(item.name, acts(item))}"
    )


def _between_commas(turned: str) -> str:
    """ "below the level, to the left," before what follows it."""
    return f"{turned}," if "," in turned else turned


def _inverted(item: Segment | Pull) -> str:
    if isinstance(item, Segment):
        return f"{verb(item.name, 'be')} {the(item.name)}"
    return f"{verb(item.name, 'do')} {the(item.name)} {acts(item)}"


def _reaction(problem: Problem, names: Sequence[str]) -> tuple[str, str]:
    """What one body pushes on the other with at the pivot, whole or in parts."""
    bone, pivot = problem.pivot.bone or problem.pivot.support, the(problem.pivot.name)
    first = next((each.name for each in problem.segments if not before(problem, each.name)), "")
    body = the(first) if first else body_of(problem, None)
    other = pusher(problem)
    onto_other = problem.course.reaction_on == "the other bone"
    doer, pushed = (body, other) if onto_other else (the(bone) if bone else "", body)
    at = "" if bone else f" at {pivot}"
    force = f"the force{f' of {doer}' if doer else ''} on {pushed}{at}"
    parts = [_PARTS[name] or f"its part {name[9:]} {the(problem.course.axes)}" for name in names if name in _PARTS]
    push = f"{verb(doer, 'do')} {doer} push on {pushed}{at}" if doer else f"{verb(pushed, 'be')} {pushed} pushed{at}"
    if "reaction" in names and not parts:
        return f"the size and direction of {force}", f"how hard and which way {push}"
    whole = (
        ["its size", "its direction"]
        if "reaction" in names
        else ["its direction"]
        if "reaction.direction" in names
        else []
    )
    wanted = listed(parts + whole)
    return f"{force} ({wanted})", f"with what force {push} ({wanted})"


def _named(problem: Problem, name: str) -> Segment | Load | Pull | Couple | None:
    everything: tuple[Segment | Load | Pull | Couple, ...] = (
        *problem.segments,
        *problem.loads,
        *problem.pulls,
        *problem.couples,
    )
    return next((item for item in everything if item.name == name), None)


def _near_end(problem: Problem, segment: str) -> str:
    return f"the near end of {the(segment)}" if before(problem, segment) else the(problem.pivot.name)
