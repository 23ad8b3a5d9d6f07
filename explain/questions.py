"""How what is asked of a problem is put as a question. Knows the names of answers, not their values."""
from __future__ import annotations

from collections.abc import Sequence

from .asked import sought
from .english import listed, sentence, the, verb
from .phrases import before, segment_of, way
from .problem import Couple, Load, Problem, Pull, Segment

_PARTS = {"reaction.right": "its part to the right", "reaction.up": "its upward part",
          "reaction.along": "", "reaction.across": ""}


def question(problem: Problem) -> str:
    """One sentence that asks for every answer wanted, each force with the body it acts on."""
    things = _things(problem, problem.ask or sought(problem))
    if len(things) > 2:
        return sentence(f"find {listed([thing for thing, _ in things])}")
    clauses = [put or f"what {'are' if thing.startswith('the pulls') else 'is'} {thing}" for thing, put in things]
    return sentence(", and ".join(clauses) + "?") if clauses else ""


def _things(problem: Problem, names: Sequence[str]) -> list[tuple[str, str]]:
    """What is asked for, as a noun and (or "") as a question; the pulls of several muscles are one, and the reaction's parts."""
    muscles = [each.name for each in problem.pulls if each.kind == "muscle" and each.name in names]
    reaction = [name for name in names if name.partition(".")[0] == "reaction"]
    things: list[tuple[str, str]] = []
    for name in names:
        if name in muscles and len(muscles) > 1:
            things += [(_together(problem, muscles), "")] if name == muscles[0] else []
        elif name in reaction:
            things += [_reaction(problem, reaction)] if name == reaction[0] else []
        else:
            things.append((_thing(problem, name), _how(problem, name)))
    return things


def _together(problem: Problem, muscles: Sequence[str]) -> str:
    bodies = {_body(problem, _named(problem, each)) for each in muscles}
    on = f" on {bodies.pop()}" if len(bodies) == 1 else ""
    return f"the pulls of {listed([the(each) for each in muscles])}{on}"


def _thing(problem: Problem, name: str) -> str:
    owner, _, part = name.rpartition(".")
    pivot, word = the(problem.pivot.name), problem.course.word
    if not owner:
        return _force(problem, name)
    if part == "moment":
        return f"the total {word} about {pivot}" if owner == "total" else f"the {word} of {the(owner)} about {pivot}"
    item = _named(problem, owner)
    match part, item:
        case "at", Load() | Pull():
            return f"the distance of {the(owner)} from {_near_end(problem, segment_of(problem, item.place))}"
        case "direction", Segment():
            turned = way(item.direction, before(problem, owner)).removeprefix("at an unknown angle ")
            return f"the angle of {the(owner)} {turned}"
        case "direction", Pull():
            return f"the direction in which {the(owner)} {verb(owner, 'pull' if item.kind == 'muscle' else 'act')}"
    nouns = {"moment_arm": f"the moment arm of {the(owner)} about {pivot}", "stress": f"the stress in {the(owner)}",
             "com": f"the distance of the centre of mass of {the(owner)} from {_near_end(problem, owner)}"}
    return nouns.get(part, f"the {part} of {the(owner)}")


def _force(problem: Problem, name: str) -> str:
    item = _named(problem, name)
    if isinstance(item, Couple):
        return f"the {problem.course.word} of {the(name)}"
    what = "pull" if isinstance(item, Pull) and item.kind == "muscle" else "force"
    return f"the {what} of {the(name)} on {_body(problem, item)}"


def _how(problem: Problem, name: str) -> str:
    """A question of its own where one sounds better than "what is ...?", "" elsewhere."""
    owner, _, part = name.rpartition(".")
    item = _named(problem, owner or name)
    if isinstance(item, Pull) and item.kind == "muscle" and not owner:
        return f"how hard {verb(name, 'do')} {the(name)} pull on {_body(problem, item)}"
    if part == "at" and isinstance(item, Load):
        return f"how far from {_near_end(problem, segment_of(problem, item.place))} {verb(owner, 'be')} {the(owner)}"
    return ""


def _reaction(problem: Problem, names: Sequence[str]) -> tuple[str, str]:
    bone, pivot = problem.pivot.bone, problem.pivot.name
    first = next((each.name for each in problem.segments if not before(problem, each.name)), "body")
    pusher, pushed = (first, bone or "other bone") if problem.course.reaction_on == "the other bone" else (bone, first)
    at = "" if bone == pivot else f" at {the(pivot)}"
    force = f"the force{f' of {the(pusher)}' if pusher else ''} on {the(pushed)}{at}"
    parts = [_PARTS[name] or f"its part {name[9:]} {the(problem.course.axes)}" for name in names if name in _PARTS]
    acts = f"{verb(pusher, 'do')} {the(pusher)} exert" if pusher else "acts"
    asked = f"what force {acts} on {the(pushed)}{at}"
    if "reaction" in names and not parts:
        return f"the size and direction of {force}", f"{asked}, and which way"
    whole = ["its size", "its direction"] if "reaction" in names else ["its direction"] if "reaction.direction" in names else []
    wanted = parts + whole
    return f"{force} ({listed(wanted)})", f"{asked} ({listed(wanted)})"


def _named(problem: Problem, name: str) -> Segment | Load | Pull | Couple | None:
    everything: tuple[Segment | Load | Pull | Couple, ...] = (
        *problem.segments, *problem.loads, *problem.pulls, *problem.couples)
    return next((each for each in everything if each.name == name), None)


def _body(problem: Problem, item: object) -> str:
    segment = segment_of(problem, item.place) if isinstance(item, Pull | Load) else ""
    return the(segment or "body")


def _near_end(problem: Problem, segment: str) -> str:
    return f"the near end of {the(segment)}" if before(problem, segment) else the(problem.pivot.name)
