"""A problem told in a few plain sentences, for an author who gave only its data. Works nothing out."""
from __future__ import annotations

from collections.abc import Mapping

from .english import a, is_plural, listed, sentence, the, verb
from .equation import Quantity
from .phrases import along, before, place, point, segment_of, share, told, way
from .problem import AtLimit, Couple, FromTable, Load, Multiple, Percent, Problem, Pull, Segment, Unknown
from .questions import question

_POSTURES: Mapping[str, str] = {"right": "level and pointing right", "left": "level and pointing left", "up": "upright",
                                "down": "hanging straight down"}
_TURNS: Mapping[int, str] = {1: "counter-clockwise", -1: "clockwise"}


def compose(problem: Problem) -> str:
    """The statement in two to five sentences: body, loads, pulls, what is left out, and the question. Plain text, no markup."""
    said = (_body(problem), _loads(problem), _pulls(problem), _left_out(problem), question(problem))
    return " ".join(each for each in said if each)


def _body(problem: Problem) -> str:
    parts = [_segment(problem, each, each == problem.segments[0]) for each in problem.segments]
    return sentence(", and ".join(parts)) if parts else ""


def _segment(problem: Problem, segment: Segment, first: bool) -> str:
    facts = [f"{told(segment.length)} long"] if segment.length else []
    if segment.mass or segment.weight:
        where = along(problem, segment.com, segment.name, itself=True)
        facts += [_heaviness(problem, segment), f"centre of mass {where}"]
    near = before(problem, segment.name)
    start = f"at the far end of {the(near)} " if near else ""
    bracket = f" ({', '.join(facts)})" if facts else ""
    still = " at rest," if problem.balanced and first else ""
    direction = segment.direction
    posture = _POSTURES.get(direction.start, "") if direction.turn is None else ""
    return f"{start}{the(segment.name)}{bracket} {verb(segment.name, 'be')}{still} {posture or way(direction, near)}"


def _heaviness(problem: Problem, item: Segment | Load) -> str:
    """Mass or weight with the word for it in front, or what it is a share of."""
    word, amount = ("mass", item.mass) if item.mass else ("weight", item.weight)
    whole = problem.person.mass if problem.person else None
    match amount:
        case Quantity():
            return f"{word} {told(amount)}"
        case Percent():
            return share(amount, "the body mass", whole) if item.mass else share(amount, "the body weight", None)
        case FromTable():
            return f"{word} from a table of segments"
    return f"unknown {word}"


def _loads(problem: Problem) -> str:
    loads = [(each.name, _heaviness(problem, each), place(problem, each.place)) for each in problem.loads]
    if not loads:
        return ""
    if len(loads) > 1:
        parts = [f"{a(name)} ({heavy}), {where}" for name, heavy, where in loads]
        return sentence("these loads are carried: " + "; ".join(parts))
    name, heavy, where = loads[0]
    of = f" ({heavy})" if " of the " in heavy else f" of {heavy}"
    return sentence(f"{a(name)}{of} {verb(name, 'be')} carried {where}")


def _pulls(problem: Problem) -> str:
    parts = [_pull(problem, each) for each in problem.pulls] + [_couple(problem, each) for each in problem.couples]
    return sentence("; ".join(parts)) if parts else ""


def _pull(problem: Problem, pull: Pull) -> str:
    segment, muscle = segment_of(problem, pull.place), pull.kind == "muscle"
    facts = ([f"{pull.count} alike, of which this is one"] if pull.count > 1 else []) + (
        [f"cross-section {told(pull.area)}"] if pull.area else []) + (
        [f"at most {told(pull.limit)}"] if isinstance(pull.limit, Quantity) else [])
    name = the(pull.name) + (f" ({', '.join(facts)})" if facts else "")
    where, turned, size = place(problem, pull.place), _pull_way(problem, pull, segment), _size(pull)
    turned += ("," if "," in turned and size else "") + size
    body = the(segment) if segment else ""
    if not muscle:
        return f"{_spaced(name, verb(pull.name, 'act'), body and f'on {body}', where)}, {turned}"
    pulls = f"{verb(pull.name, 'pull')} {turned}"
    if not where:
        return f"{name} {pulls}"
    return _spaced(name, verb(pull.name, "grip"), body, where + ("," if "," in where else ""), "and", pulls)


def _spaced(*words: str) -> str:
    return " ".join(word for word in words if word)


def _pull_way(problem: Problem, pull: Pull, segment: str) -> str:
    ways = []
    if pull.direction:
        ways.append(way(pull.direction, segment))
    if pull.toward:
        ways.append(f"toward the point {point(problem, pull.toward)}")
    if pull.moment_arm:
        arm = "an unknown moment arm" if isinstance(pull.moment_arm, Unknown) else f"a moment arm of {told(pull.moment_arm)}"
        turned = f"turning {the(segment) if segment else 'the body'} {_TURNS[pull.turns]}"
        ways.append(f"with {arm} about {the(problem.pivot.name)}, {turned}")
    return ", ".join(ways)


def _size(pull: Pull) -> str:
    match pull.force:
        case Quantity():
            return f" with {told(pull.force)}"
        case Percent():
            return f" with {share(pull.force, 'the body weight', None)}"
        case Multiple(factor, of):
            return f" with {told(factor)} times the force of {the(of)}"
        case AtLimit():
            return " as hard as they can" if is_plural(pull.name) else " as hard as it can"
    return ""


def _couple(problem: Problem, couple: Couple) -> str:
    word = problem.course.word
    size = f"an unknown {word}" if isinstance(couple.moment, Unknown) else f"a {word} of {told(couple.moment)}"
    return f"{the(couple.name)} {verb(couple.name, 'turn')} the body {_TURNS[couple.turns]} with {size}"


def _left_out(problem: Problem) -> str:
    """What the author leaves out, and the weight of any segment that is given none."""
    own = list(problem.neglect)
    light = [f"the weight of {the(each.name)}" for each in problem.segments
             if not each.mass and not each.weight and not any(each.name in phrase for phrase in own)]
    return sentence(f"leave out of account {listed(own + light)}") if own or light else ""
